import { readFileSync } from "node:fs";
import { join } from "node:path";
import { utils, write } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/findings/finding.js";
import { inSheetWords } from "../../src/study/computeStudy.js";
import { computeMaterial } from "../../src/study/material.js";
import type { Study } from "../../src/study/study.js";
import { sheetTable } from "../../src/tables/inputs.js";
import { renderAll } from "../../src/words/render.js";
import { readStudy } from "../support/saidStudy.js";
import { copyStudy, type StudyCopy } from "../support/studyCopy.js";

const SAND = "sheets/river-sand-sieve.csv";
const KEY = "materials.1.sieve";
/** The river sand as a laboratory of its own habits wrote it. */
const OWN_SAND = `Prüfbericht 17;;
Blatt 1;;
Nach dem Waschen (g);798,6;
;;
Rückstand;Sieb;Bemerkung
0,0;6,3;
14,6;4;
90,2;2;
224,7;1;
264,7;0,5;
151,6;0,25;
42,1;0,125;
8,4;0,063;
1,3;Rest;
`;
const MAPPED = `sieve:
      sheet: ${SAND}
      columns: { "Rückstand": "retained (g)", "Sieb": "sieve (mm)" }
      lines: { "Nach dem Waschen (g)": "dry mass after washing (g)" }
      cells: { Rest: pan }
      header-values: { "dry mass (g)": 812.4 }
      skip-rows: 2
      delimiter: semicolon
      decimal: comma`;

function mapped(yaml = MAPPED, sheet: string | Uint8Array = OWN_SAND): StudyCopy {
  const copy = copyStudy("reading-room");
  copy.write(SAND, sheet);
  copy.edit("study.yaml", `sieve: ${SAND}`, yaml);
  return copy;
}

async function errorsOf({ folder }: StudyCopy): Promise<readonly Finding[]> {
  const { study, findings } = await readStudy(folder);
  const errors = findings.filter(({ severity }) => severity === "error");
  expect(study === undefined).toBe(errors.length > 0);
  return errors;
}

/** What the sheets of a study say, without the places where they say it. */
function said(study: Study | undefined): unknown {
  if (!study) throw new Error("the study was not read");
  const { materials, envelope } = study;
  const { compaction, specimens } = study.trials[0];
  const records = materials.map(({ config: _, ...sheets }) => sheets);
  return JSON.parse(
    JSON.stringify({ records, compaction, envelope, specimens }, (key, value) =>
      key === "row" || key === "label" ? undefined : value,
    ),
  );
}

describe("a sheet of one's own layout", () => {
  it("gives the same result as the plain sheet", async () => {
    const plain = await readStudy(copyStudy("reading-room").folder);
    const copy = mapped();
    const own = await readStudy(copy.folder);
    expect(own.findings).toMatchObject([
      { severity: "note", code: "unused-column", column: "Bemerkung" },
    ]);
    expect(said(own.study)).toEqual(said(plain.study));
    const [a, b] = [plain, own].map(({ study }) => {
      const { materials, config } = study as Study;
      const { curve, sizes } = computeMaterial(materials[1], config).material;
      return { curve, sizes };
    });
    expect(b).toEqual(a);
    // Rows lead back to the user's own sheet.
    const rows = own.study?.materials[1].sieve.rows;
    expect(rows?.[0].row).toBe(copy.rowOf(SAND, "0,0;6,3"));
  });

  it("works for every kind of sheet at once", async () => {
    const copy = copyStudy("reading-room");
    copy.write(
      "sheets/envelope.csv",
      "title,Ours\nsource,trial\n\nsieve (mm),low (%),high (%)\n0.063,10,40\n31.5,100,100\n",
    );
    copy.edit(
      "study.yaml",
      "compaction: sheets",
      "envelope: sheets/envelope.csv\ncompaction: sheets",
    );
    copy.write(
      "sheets/clay-pipette.csv",
      [
        "dry mass (g),20",
        "separating sieve (mm),0.063",
        "cylinder volume (ml),500",
        "pipette volume (ml),10",
        "dispersant mass (g),1",
        "time (min),depth (mm),temperature (C),solids (g)",
        "4.7,100,20,0.22\n",
      ].join("\n"),
    );
    copy.edit(
      "study.yaml",
      "sieve: sheets/pit-sand-sieve.csv",
      "sieve: sheets/pit-sand-sieve.csv\n    pipette: sheets/clay-pipette.csv",
    );
    const plain = await readStudy(copy.folder);
    expect(plain.study).toBeDefined();
    // Every header cell gets a name of its own; the mapping names ours.
    const swap = (file: string, headers: readonly string[], at: string) => {
      const text = readFileSync(join(copy.folder, file), "utf8");
      const header = headers.join(",");
      const own = headers.map((_, index) => `Feld ${index}`);
      copy.write(file, text.replace(header, own.join(",")));
      const columns = headers.map(
        (name, index) => `${JSON.stringify(own[index])}: ${JSON.stringify(name)}`,
      );
      copy.edit(
        "study.yaml",
        at,
        `${at.split(":")[0]}: { sheet: ${file}, columns: { ${columns.join(", ")} } }`,
      );
    };
    for (const [file, key] of [
      ["site-soil-sieve", "sieve"],
      ["site-soil-hydrometer", "hydrometer"],
      ["site-soil-jar", "jar"],
      ["site-soil-limits", "limits"],
      ["clay-pipette", "pipette"],
      ["envelope", "envelope"],
      ["compaction", "compaction"],
      ["blocks", "sheet"],
    ]) {
      const path = `sheets/${file}.csv`;
      const lines = readFileSync(join(copy.folder, path), "utf8").split("\n");
      const header = lines.find((line) =>
        /^(sieve|time|layer|test|water content|block)\b.*,.*[a-z]/.test(line),
      );
      if (!header) throw new Error(`no header in ${file}`);
      swap(path, header.split(","), `${key}: ${path}`);
    }
    const own = await readStudy(copy.folder);
    expect(own.findings).toEqual(plain.findings);
    expect(said(own.study)).toEqual(said(plain.study));
  });

  it("may be a workbook, whose stored numbers have points", async () => {
    const sheet = utils.aoa_to_sheet([
      ["Sieb", "Rückstand"],
      [6.3, 0],
      [4, 14.6],
      ["0,063", "796,5"],
      ["Rest", 1.3],
    ]);
    const bytes = write(
      { SheetNames: ["a"], Sheets: { a: sheet } },
      { type: "buffer", bookType: "xlsx" },
    );
    const copy = copyStudy("reading-room");
    copy.write("sheets/own.xlsx", bytes);
    copy.edit(
      "study.yaml",
      `sieve: ${SAND}`,
      MAPPED.replace(SAND, "sheets/own.xlsx").replace(/\n\s+(lines|skip-rows|delimiter).*/g, ""),
    );
    const { study } = await readStudy(copy.folder);
    expect(study?.materials[1].sieve).toMatchObject({ dryMassG: 812.4, panG: 1.3 });
    expect(study?.materials[1].sieve.rows.map(({ retainedG }) => retainedG)).toEqual([
      0, 14.6, 796.5,
    ]);
  });

  it("stands in the annex as it was given, with how it was read", async () => {
    const { study } = await readStudy(mapped().folder);
    const grid = study?.sheets.find(({ file }) => file === SAND);
    if (!grid) throw new Error("no sheet");
    const { rows, notes } = renderAll(sheetTable(grid));
    expect(rows).toContainEqual(["5", "Rückstand", "Sieb", "Bemerkung"]);
    expect(notes?.join(" ")).toContain("“Rückstand” as “retained (g)”");
    expect(notes?.join(" ")).toContain("dry mass (g) 812.4");
    expect(notes?.join(" ")).toContain("Rows 1 to 2 were not read");
  });
});

describe("what is wrong is told in the user's own words", () => {
  it("a reading, by its own column and row", async () => {
    const copy = mapped(MAPPED, OWN_SAND.replace("264,7", "etwa 264").replace("42,1", "-42,1"));
    expect(await errorsOf(copy)).toMatchObject([
      { code: "not-a-number", file: SAND, column: "Rückstand", row: 10, value: "etwa 264" },
      { code: "out-of-range", file: SAND, column: "Rückstand", row: 12, value: "-42,1" },
    ]);
  });

  it("a point among decimal commas", async () => {
    const copy = mapped(MAPPED, OWN_SAND.replace("264,7", "264.7").replace("798,6", "798.6"));
    expect(await errorsOf(copy)).toMatchObject([
      { code: "point-decimal", file: SAND, column: "Nach dem Waschen (g)", row: 3, value: "798.6" },
      { code: "point-decimal", file: SAND, column: "Rückstand", row: 10, value: "264.7" },
    ]);
  });

  it("a fact of the study, at its key", async () => {
    const light = mapped(MAPPED.replace("812.4", "-812.4"));
    expect(await errorsOf(light)).toMatchObject([
      {
        code: "out-of-range",
        file: "study.yaml",
        column: `${KEY}.header-values.dry mass (g)`,
        value: "-812.4",
      },
    ]);
    const split = mapped(
      MAPPED.replace("812.4", '812.4, "split sieve (mm)": 3, "split dry mass (g)": 200'),
    );
    expect(await errorsOf(split)).toMatchObject([
      {
        code: "split-not-in-set",
        file: "study.yaml",
        column: `${KEY}.header-values.split sieve (mm)`,
      },
    ]);
  });

  it("a doubt of the analysis, by its own column", async () => {
    const copy = copyStudy("bus-shelter");
    const file = "sheets/site-soil-hydrometer.csv";
    copy.edit(file, ",reading,", ",Ablesung,");
    copy.edit(
      "study.yaml",
      `hydrometer: ${file}`,
      `hydrometer: { sheet: ${file}, columns: { Ablesung: reading } }`,
    );
    const { study } = await readStudy(copy.folder);
    const { materials, config } = study as Study;
    const { findings } = computeMaterial(materials[0], config);
    const told = inSheetWords(config, findings).filter((finding) => finding.file === file);
    expect(told.map(({ column }) => column)).toContain("Ablesung");
    expect(told.map(({ column }) => column)).not.toContain("reading");
  });
});

describe("a wrong mapping", () => {
  it("is told all at once", async () => {
    const copy = mapped(`sieve:
      sheet: ${SAND}
      columns: { "Rückstand": "weight (g)", "Sieb": "sieve", "Maschen": "retained (g)", "Bemerkung": "retained (g)" }
      lines: { "Vor dem Waschen (g)": "dry mass (g)" }
      cells: { Boden: pan }
      header-values: { "dry mass (kg)": 0.8124, "wet mass (g)": 900 }
      delimiter: semicolon`);
    const errors = await errorsOf(copy);
    expect(
      errors.every(
        ({ file, message, expected, remedy }) =>
          file === "study.yaml" && Boolean(message && expected && remedy),
      ),
    ).toBe(true);
    expect(errors.map(({ code, column }) => [code, column?.slice(KEY.length + 1)])).toEqual([
      ["unknown-target", "columns.Rückstand"],
      ["mapped-twice", "columns.Bemerkung"],
      ["mapped-twice", "header-values.dry mass (kg)"],
      ["unknown-target", "header-values.wet mass (g)"],
      ["absent-column", "columns.Maschen"],
      ["absent-line", "lines.Vor dem Waschen (g)"],
      ["absent-cell", "cells.Boden"],
    ]);
    expect(errors.find(({ code }) => code === "absent-column")?.expected).toContain(
      "“Rückstand”, “Sieb”",
    );
  });

  it("of a target without its unit", async () => {
    const copy = mapped(MAPPED.replace('"retained (g)"', '"retained"'));
    expect(await errorsOf(copy)).toMatchObject([
      { code: "missing-unit", file: "study.yaml", column: `${KEY}.columns.Rückstand` },
    ]);
  });

  it("of a column that the sheet has twice, or under our own name too", async () => {
    const twice = mapped(MAPPED, OWN_SAND.replace("Bemerkung", "Rückstand"));
    expect(await errorsOf(twice)).toMatchObject([{ code: "repeated-column", value: "Rückstand" }]);
    const ours = mapped(MAPPED, OWN_SAND.replace("Bemerkung", "retained (g)"));
    expect(await errorsOf(ours)).toMatchObject([
      { code: "mapped-twice", column: `${KEY}.columns.Rückstand` },
    ]);
    const line = mapped(MAPPED, OWN_SAND.replace(";;\nRück", "dry mass (g);800;\nRück"));
    expect(await errorsOf(line)).toMatchObject([
      { code: "mapped-twice", column: `${KEY}.header-values.dry mass (g)` },
    ]);
  });

  it("of a sheet without any of the columns, or skipped whole", async () => {
    const none = await errorsOf(mapped(MAPPED, "a;b\n1;2\n"));
    expect(none.map(({ code }) => code)).toEqual([
      "absent-column",
      "absent-column",
      "absent-line",
      "absent-cell",
    ]);
    const skipped = await errorsOf(mapped(MAPPED.replace("skip-rows: 2", "skip-rows: 900")));
    expect(skipped[0]).toMatchObject({ code: "absent-column" });
  });

  it("of its own keys, as everywhere in study.yaml", async () => {
    const copy = mapped(
      MAPPED.replace("skip-rows: 2", "skip-row: 2").replace(
        "delimiter: semicolon",
        "delimiter: pipe",
      ),
    );
    const errors = await errorsOf(copy);
    expect(errors.map(({ code, column }) => [code, column])).toEqual(
      expect.arrayContaining([
        ["unknown-key", `${KEY}.skip-row`],
        ["wrong-value", `${KEY}.delimiter`],
      ]),
    );
    expect(errors.find(({ column }) => column?.endsWith("delimiter"))?.row).toBe(
      copy.rowOf("study.yaml", "delimiter: pipe"),
    );
    const unnamed = mapped(MAPPED.replace(`sheet: ${SAND}\n`, "\n"));
    expect(await errorsOf(unnamed)).toMatchObject([
      { code: "missing-key", column: `${KEY}.sheet` },
    ]);
    const gone = mapped(MAPPED.replace(SAND, "sheets/none.csv"));
    expect(await errorsOf(gone)).toMatchObject([
      { code: "missing-sheet", column: KEY, value: "sheets/none.csv" },
    ]);
  });
});
