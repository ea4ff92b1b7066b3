import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { MAX_SHEET_BYTES } from "../../src/lab/sheet/grid.js";
import { classFigure, classTables, groupResults } from "../../src/page/classGroups.js";
import {
  packFiles,
  packGroups,
  storedPage,
  unpackFiles,
  unpackGroups,
} from "../../src/page/pageData.js";
import {
  dropMaterial,
  editMaterial,
  entriesText,
  isListed,
  listedMaterials,
  placeSheet,
  type StudyFiles,
  studyOfSheets,
  withMix,
  withTestedShares,
  withWritten,
  writtenAt,
} from "../../src/page/studyFiles.js";
import { openOnBench } from "../../src/page/tune.js";
import { csvOfTyped, rowsOfTyped, TYPED_FORMS } from "../../src/page/typedSheet.js";
import { readDropped } from "../../src/page/view/sheetsView.js";
import { studyFromFiles } from "../../src/study/studyFromFiles.js";
import { render, renderAll } from "../../src/words/render.js";
import { EXAMPLES } from "../support/studyCopy.js";

const bytes = (text: string) => new TextEncoder().encode(text);
const sheet = async (study: string, name: string) =>
  new Uint8Array(await readFile(join(EXAMPLES, study, "sheets", name)));
const entriesOf = (files: StudyFiles) =>
  parse(new TextDecoder().decode(files.get("study.yaml"))) as Record<string, unknown>;

/** An empty bench with sheets put on it one after the other. */
async function bench(...sheets: readonly (readonly [string, Uint8Array])[]) {
  let files: StudyFiles = new Map();
  const messages: string[] = [];
  for (const [name, content] of sheets) {
    const placed = await placeSheet(files, name, content);
    if (placed.files) files = placed.files;
    if (placed.message) messages.push(render(placed.message));
  }
  return { files, messages };
}

describe("a sheet that is put on the bench", () => {
  it("becomes a material, and further sheets of it join it", async () => {
    const { files, messages } = await bench(
      ["site-soil-sieve.csv", await sheet("reading-room", "site-soil-sieve.csv")],
      ["site-soil-hydrometer.csv", await sheet("reading-room", "site-soil-hydrometer.csv")],
      ["river-sand-sieve.csv", await sheet("reading-room", "river-sand-sieve.csv")],
      ["compaction.csv", await sheet("reading-room", "compaction.csv")],
      ["blocks.csv", await sheet("reading-room", "blocks.csv")],
    );
    expect(messages).toEqual([
      "sheets/site-soil-sieve.csv: taken as sieve analysis of Site soil.",
      "sheets/site-soil-hydrometer.csv: taken as hydrometer test of Site soil.",
      "sheets/river-sand-sieve.csv: taken as sieve analysis of River sand.",
      "sheets/compaction.csv: taken as compaction test.",
      "sheets/blocks.csv: taken as crushed blocks.",
    ]);
    expect(entriesOf(files)).toMatchObject({
      invented: true,
      materials: [
        { id: "site-soil", role: "soil", hydrometer: "sheets/site-soil-hydrometer.csv" },
        { id: "river-sand", role: "sand", sieve: "sheets/river-sand-sieve.csv" },
      ],
      compaction: "sheets/compaction.csv",
      strength: { sheet: "sheets/blocks.csv" },
    });
    const { study, findings } = await studyFromFiles(files);
    const { open } = openOnBench(study!, findings);
    expect(open?.result.materials.map(({ id }) => id)).toEqual(["site-soil", "river-sand"]);
  });

  it("with readings that are none is refused, and changes nothing", async () => {
    const placed = await placeSheet(
      new Map(),
      "soil-sieve.csv",
      bytes("dry mass (g),500\n\nsieve (mm),retained (g)\n4,0\n2,twelve\npan,400\n"),
    );
    expect(placed.files).toBeUndefined();
    expect(placed.findings.map(({ severity, row }) => [severity, row])).toContainEqual([
      "error",
      5,
    ]);
  });

  it("keeps its name harmless, and apart from another file of that name", async () => {
    const sieve = await sheet("reading-room", "site-soil-sieve.csv");
    const sand = await sheet("reading-room", "river-sand-sieve.csv");
    const { files } = await bench(["../../x y.csv", sieve], ["x y.csv", sand], ["x y.csv", sand]);
    expect([...files.keys()].sort()).toEqual(["sheets/x-y-2.csv", "sheets/x-y.csv", "study.yaml"]);
  });

  it("is edited and taken off by its material", async () => {
    const { files } = await bench([
      "pit-soil-sieve.csv",
      await sheet("reading-room", "site-soil-sieve.csv"),
    ]);
    const named = editMaterial(files, "pit-soil", { name: '<b>Pit: "A"</b>', moisture: "5 %" });
    expect(listedMaterials(named)).toMatchObject([
      { id: "pit-soil", name: '<b>Pit: "A"</b>', role: "soil", written: { moisture: "5 %" } },
    ]);
    expect(listedMaterials(editMaterial(named, "pit-soil", { moisture: "" }))[0].written).toEqual({
      sieve: "sheets/pit-soil-sieve.csv",
    });
    expect(listedMaterials(dropMaterial(named, "pit-soil"))).toEqual([]);
  });
});

describe("a mix that is written into a study", () => {
  it("keeps the study's comments and replaces what the bench set", async () => {
    const text = await readFile(join(EXAMPLES, "reading-room", "study.yaml"), "utf8");
    const files = withMix(
      new Map([["study.yaml", bytes(text)]]),
      {
        sharesPct: [55.5, 100 / 7, 0, 100 - 55.5 - 100 / 7],
        locked: [],
        cementPct: 6.5,
        target: { kind: "power", exponent: { min: 0.2, max: 0.3 }, topSizeMm: 16 },
        limits: [{ kind: "fines", minPct: 10, maxPct: 28 }],
      },
      ["site-soil", "river-sand", "pit-sand", "gravel"],
      { locale: "es", units: "US" },
    );
    const saved = new TextDecoder().decode(files.get("study.yaml"));
    expect(saved).toContain("# a first guide, never part of the curve");
    expect(entriesOf(files)).toMatchObject({
      mix: {
        shares: {
          "site-soil": "55.5 %",
          "river-sand": `${100 / 7} %`,
          "pit-sand": "0 %",
        },
        cement: "6.5 %",
      },
      target: { exponent: "0.2 to 0.3", "top-size": "16 mm" },
      limits: { fines: { min: "10 %", max: "28 %" } },
      units: "US",
      language: "es",
    });
    expect(entriesOf(files).limits as object).not.toHaveProperty("plasticity-index");
  });
});

describe("files and groups", () => {
  it("are carried as text and come back byte by byte", () => {
    const all = Uint8Array.from({ length: 70_000 }, (_, index) => index % 256);
    const files = new Map([["a/ñ.bin", all]]);
    expect(unpackFiles(packFiles(files))).toEqual(files);
    const groups = [{ name: "East", sheets: [{ file: "j.csv", bytes: all }] }];
    expect(unpackGroups(packGroups(groups))).toEqual(groups);
  });
});

describe("sheets alone", () => {
  it("become a study that names them and computes as they did", async () => {
    const names = ["class-soil-sieve.csv", "washed-sand-sieve.csv", "gravel-sieve.csv"];
    const sheets = await Promise.all(
      names.map(async (name) => [name, await sheet("two-blends", name)] as const),
    );
    const alone = new Map(sheets);
    const study = await studyOfSheets(alone);
    expect(listedMaterials(study).map(({ id, role }) => [id, role])).toEqual([
      ["class-soil", "soil"],
      ["washed-sand", "sand"],
      ["gravel", "gravel"],
    ]);
    const opened = async (files: StudyFiles) => {
      const { study: read, findings } = await studyFromFiles(files);
      return openOnBench(read!, findings).open!;
    };
    const [before, after] = [await opened(alone), await opened(study)];
    expect(after.result.materials.map(({ id, curve }) => [id, curve.points])).toEqual(
      before.result.materials.map(({ id, curve }) => [id, curve.points]),
    );
    expect(after.result.config.invented).toBe(before.result.config.invented);
    // Saved with a mix it is a study, and stays one.
    const ids = after.result.materials.map(({ id }) => id);
    const mix = { ...after.start, sharesPct: [50, 20, 30] };
    const saved = withMix(study, mix, ids, { locale: "en", units: "SI" });
    const again = await opened(await studyOfSheets(saved));
    expect(again.start.sharesPct).toEqual([50, 20, 30]);
  });
});

describe("a typed sheet", () => {
  it("is read by the reader of its kind", async () => {
    const sieve = csvOfTyped(
      "sieve",
      ["1000", ""],
      [
        ["4", "0"],
        ["2", "300"],
        ["0.063", "400"],
        ["pan", "300"],
      ],
    );
    const jar = csvOfTyped(
      "jar",
      ["200", "20", ""],
      [
        ["sand and gravel", "1", "52"],
        ["silt", "60", "71"],
        ["clay", "1440", "88"],
      ],
    );
    const hydrometer = csvOfTyped(
      "hydrometer",
      ["152H", "50", "2", "0.5"],
      [
        ["1", "23", "4.5", "20"],
        ["30", "16.5", "4.5", "20"],
        ["1440", "12", "4.5", "20"],
        ["2880", "", "", "20"],
      ],
    );
    for (const [name, csv] of [
      ["soil-sieve.csv", sieve],
      ["soil-jar.csv", jar],
      ["soil-hydrometer.csv", hydrometer],
    ]) {
      const placed = await placeSheet(new Map(), name, bytes(csv));
      expect(
        placed.findings.filter(({ severity }) => severity === "error"),
        name,
      ).toEqual([]);
      expect(placed.files?.size, name).toBe(2);
    }
    expect(hydrometer).not.toContain("2880");
  });

  it("numbers its rows as the findings on the file do", async () => {
    const typed = [
      "hydrometer",
      ["152H", "50", "", "0.5"],
      [
        ["1", "23", "4.5", "20"],
        ["2", "", "4.5", "20"],
        ["30", "sixteen", "4.5", "20"],
      ],
    ] as const;
    const numbered = rowsOfTyped(...typed);
    expect(numbered).toEqual([6, undefined, 7]);
    const { findings } = await placeSheet(new Map(), "h.csv", bytes(csvOfTyped(...typed)));
    expect(findings.find(({ value }) => value === "sixteen")?.row).toBe(7);
  });

  it("quotes what would fall apart", () => {
    expect(csvOfTyped("sieve", ['1,000 "dry"', ""], [])).toContain('dry mass (g),"1,000 ""dry"""');
  });

  it("has headers that the readers know", () => {
    expect(TYPED_FORMS.map(({ kind }) => kind)).toEqual(["sieve", "jar", "hydrometer"]);
  });
});

describe("a class", () => {
  const jar = (name: string, tops: readonly number[]) => ({
    name,
    sheets: [
      {
        file: "jar.csv",
        bytes: bytes(
          csvOfTyped(
            "jar",
            ["200", "20", ""],
            tops.map((top, index) => [
              ["sand and gravel", "silt", "clay"][index],
              String([1, 960, 2880][index]),
              String(top),
            ]),
          ),
        ),
      },
    ],
  });

  it("has its groups side by side, with mean, standard deviation and range", async () => {
    const groups = [jar("East", [50, 75, 100]), jar("West", [60, 80, 100])];
    const found = (await Promise.all(groups.map(groupResults))).flat();
    const [table] = classTables(found);
    const rows = renderAll(table).rows;
    expect(rows[0]).toEqual(["sand and gravel", "50.0", "60.0", "55.0", "7.1", "50.0", "60.0"]);
    expect(rows[2]).toEqual(["clay", "25.0", "20.0", "22.5", "3.5", "20.0", "25.0"]);
    expect(classFigure(found)).toBeUndefined();
  });

  it("takes jar and sieves of a group together, and tells what is wrong with a sheet", async () => {
    const sieve = await sheet("class-day", "class-soil-sieve.csv");
    const [east] = [jar("East", [50, 75, 100])];
    const group = {
      ...east,
      sheets: [
        ...east.sheets,
        { file: "s.csv", bytes: sieve },
        { file: "x.csv", bytes: bytes("a,b\n1,2\n") },
      ],
    };
    const [found] = await groupResults(group);
    expect(found.jar?.shares[0].heightSharePct).toBe(50);
    expect(found.curve?.points.length).toBe(7);
    expect(found.findings.map(({ file, code }) => [file, code])).toContainEqual([
      "x.csv",
      "unknown-sheet",
    ]);
    expect(classFigure([found])?.data.length).toBe(1);
  });

  it("takes the sheet of the class with a column for each group, and its mark of invented data", async () => {
    const file = join(EXAMPLES, "class-day", "class.csv");
    const sheets = [{ file: "class.csv", bytes: new Uint8Array(await readFile(file)) }];
    const found = await groupResults({ name: "All", sheets });
    expect(found.map(({ name }) => name)).toEqual(["group 1", "group 2", "group 3", "group 4"]);
    // 52 of 88 mm of the first group's jar.
    expect(found[0].jar?.shares[0].heightSharePct).toBeCloseTo((100 * 52) / 88, 9);
    expect(found.every(({ curve, invented }) => curve && invented)).toBe(true);
    const both = await groupResults({
      name: "East",
      sheets: [...jar("", [50, 75, 100]).sheets, ...sheets],
    });
    expect(both.map(({ name, invented }) => [name, invented]).slice(0, 2)).toEqual([
      ["East", false],
      ["group 1", true],
    ]);
  });

  it("tells of a jar that is far from the sieves", async () => {
    const bytesOfSieve = await sheet("class-day", "class-soil-sieve.csv");
    const { name, sheets } = jar("East", [20, 75, 100]);
    const [far] = await groupResults({
      name,
      sheets: [...sheets, { file: "s.csv", bytes: bytesOfSieve }],
    });
    expect(far.findings.map(({ file, code, value }) => [file, code, value])).toContainEqual([
      "jar.csv",
      "jar-against-laboratory",
      "sand and gravel",
    ]);
  });
});

describe("what a browser stored", () => {
  const stored = {
    files: [["study.yaml", "YQ=="]],
    link: "x",
    groups: [{ name: "East", sheets: [{ file: "j.csv", bytes: "YQ==" }] }],
    locale: "es-MX",
    units: "SI",
    light: "dark",
    view: "keep",
    trace: { past: ["x"], future: [], kept: "x" },
  };

  it("is taken where it is what a page stores, and nothing else is", () => {
    expect(storedPage(stored)).toBe(stored);
    for (const change of [
      { files: "x" },
      { files: [["study.yaml"]] },
      { files: [["study.yaml", "<b>"]] },
      { groups: [{ name: 3, sheets: [] }] },
      { groups: [{ name: "East", sheets: [{ file: "j.csv", bytes: null }] }] },
      { locale: "xx" },
      { units: "old" },
      { light: "dim" },
      { view: "constructor" },
      { trace: { past: "x", future: [] } },
      { trace: { past: [], future: [4] } },
      { trace: { past: [], future: [], kept: {} } },
      { link: 4 },
    ]) {
      expect(storedPage({ ...stored, ...change }), JSON.stringify(change)).toBeUndefined();
    }
    expect(storedPage(null)).toBeUndefined();
  });
});

describe("entries that are typed", () => {
  const start: StudyFiles = new Map([
    [
      "study.yaml",
      bytes(
        "# mine\nformat: loambook-study/1\nmaterials: []\nstrength: { requirement: { age: 28 d } }\n",
      ),
    ],
  ]);

  it("are left to the text where a study lists several", () => {
    const files: StudyFiles = new Map([
      [
        "study.yaml",
        bytes("guidance: [walker-2005, own]\nelement:\n  - name: East wall\ncement: { name: C }\n"),
      ],
    ]);
    const listed = (...path: string[]) => isListed(files, path);
    expect([listed("guidance"), listed("element", "name"), listed("cement", "name")]).toEqual([
      true,
      true,
      false,
    ]);
    expect(listed("batch", "dry-mass")).toBe(false);
  });

  it("stand in study.yaml as they were typed, and leave it when they are emptied", () => {
    const path = ["strength", "requirement", "strength"];
    const entered = withWritten(start, [{ path, value: " 1.5 MPa " }]);
    expect(writtenAt(entered, path)).toBe("1.5 MPa");
    expect(entriesText(entered)).toContain("# mine");
    const emptied = withWritten(entered, [
      { path, value: "" },
      { path: ["strength", "requirement", "age"], value: "" },
    ]);
    expect(entriesOf(emptied).strength).toEqual({});
    expect(writtenAt(emptied, path)).toBe("");
  });

  it("take the place of a key without a value", () => {
    const bare: StudyFiles = new Map([
      ["study.yaml", bytes("materials: []\nstrength:\nlimits:\n")],
    ]);
    const path = ["strength", "requirement", "age"];
    expect(writtenAt(withWritten(bare, [{ path, value: "28 d" }]), path)).toBe("28 d");
    const mix = {
      sharesPct: [],
      locked: [],
      limits: [{ kind: "clay" as const, maxPct: 12 }],
      target: { kind: "power" as const, exponent: 0.3, topSizeMm: 16 },
    };
    const saved = withMix(bare, mix, [], { locale: "en", units: "SI" });
    expect(entriesOf(saved).limits).toEqual({ clay: { max: "12 %" } });
  });

  it("tell which blend was tested", () => {
    const tested = withTestedShares(start, { soil: 55.3, sand: 44.7 });
    expect(entriesOf(tested).tested).toEqual({ shares: { soil: "55.3 %", sand: "44.7 %" } });
  });
});

describe("files that are dropped", () => {
  it("are read one by one; a folder, or a file that is gone, is told and no empty sheet", async () => {
    const gone = {
      name: "folder",
      slice: () => ({ arrayBuffer: () => Promise.reject(new Error()) }),
    };
    const { sheets, findings } = await readDropped([
      new File(["a,1"], "a.csv"),
      gone as unknown as File,
      new File([new Uint8Array(MAX_SHEET_BYTES + 9)], "large.csv"),
    ]);
    expect(sheets.map(({ name, bytes: { length } }) => [name, length])).toEqual([
      ["a.csv", 3],
      // enough of it to be refused
      ["large.csv", MAX_SHEET_BYTES + 1],
    ]);
    expect(findings.map(({ file, severity, code }) => [file, severity, code])).toEqual([
      ["folder", "error", "not-readable"],
    ]);
    expect(render(findings[0].message)).toContain("it is a folder, or the file has been moved");
  });
});
