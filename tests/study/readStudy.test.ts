import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readStudy } from "../support/saidStudy.js";
import { copyStudy, EXAMPLES } from "../support/studyCopy.js";

const SOIL_SIEVE = "sheets/site-soil-sieve.csv";
const HYDROMETER = "sheets/site-soil-hydrometer.csv";
const LIMITS = "sheets/site-soil-limits.csv";
const BLOCKS = "sheets/blocks.csv";

async function errorsOf(folder: string) {
  const { study, findings } = await readStudy(folder);
  const errors = findings.filter(({ severity }) => severity === "error");
  // A study comes back exactly where nothing is wrong.
  expect(study === undefined).toBe(errors.length > 0);
  for (const error of errors) {
    expect(error.message).toMatch(/\S/);
    expect(error.expected).toMatch(/\S/);
    expect(error.remedy).toMatch(/\S/);
  }
  return errors;
}

describe("the example studies", () => {
  it.each(["reading-room", "bus-shelter"])("%s reads without an error", async (name) => {
    const { study, findings } = await readStudy(join(EXAMPLES, name));
    expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(study?.materials).toHaveLength(4);
    expect(study?.trials[0].specimens?.specimens.length).toBeGreaterThanOrEqual(24);
    expect(
      new Set(study?.trials[0].specimens?.specimens.map(({ cementPct }) => cementPct)).size,
    ).toBe(4);
    expect(new Set(study?.trials[0].specimens?.specimens.map(({ ageDays }) => ageDays)).size).toBe(
      2,
    );
    expect(study?.config.invented).toBe(true);
  });

  it("brings US units to base units", async () => {
    const { study } = await readStudy(join(EXAMPLES, "bus-shelter"));
    // 1 lb = 453.59237 g and 1 in = 25.4 mm exactly; 1 psi = 6.894757 kPa (NIST SP 811 App. B, from memory).
    expect(study?.materials[0].sieve.dryMassG).toBeCloseTo(9.85 * 453.59237, 9);
    expect(study?.materials[0].sieve.rows.map(({ sizeMm }) => sizeMm)).toEqual([
      19, 12.5, 9.5, 4.75, 2, 0.85, 0.425, 0.25, 0.15, 0.075,
    ]);
    expect(study?.materials[0].hydrometer?.readings[0].temperatureC).toBeCloseTo(21.1111, 4);
    expect(study?.config.strength.requirement?.strengthMpa).toBeCloseTo(2.0684, 4);
    expect(study?.config.target).toMatchObject({ kind: "power", topSizeMm: 19 });
    expect(study?.trials[0].specimens?.specimens[0].strengthMpa).toBeCloseTo(255 * 0.006894757, 6);
    const element = study?.config.elements[0];
    if (element?.kind !== "wall") throw new Error("no wall");
    expect(element.lengthM).toBeCloseTo(14 * 0.3048, 12);
  });

  it("keeps an excluded block with its reason", async () => {
    const { study } = await readStudy(join(EXAMPLES, "reading-room"));
    const excluded = study?.trials[0].specimens?.specimens.filter(({ excluded }) => excluded);
    expect(excluded).toMatchObject([{ id: "L13", excluded: expect.stringContaining("corner") }]);
  });
});

describe("bad input", () => {
  it("missing study file", async () => {
    expect(await errorsOf(EXAMPLES)).toMatchObject([{ code: "missing-study" }]);
  });

  it("missing sheet", async () => {
    const copy = copyStudy("reading-room");
    copy.remove(SOIL_SIEVE);
    expect(await errorsOf(copy.folder)).toMatchObject([
      {
        code: "missing-sheet",
        file: "study.yaml",
        column: "materials.0.sieve",
        value: SOIL_SIEVE,
      },
    ]);
  });

  it("wrong header", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SOIL_SIEVE, "retained (g)", "weight (g)");
    copy.edit(BLOCKS, "cement (%)", "binder (%)");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "wrong-header", file: SOIL_SIEVE },
      { code: "wrong-header", file: BLOCKS, row: 2 },
    ]);
  });

  it("text in a number column", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SOIL_SIEVE, "\n10,93", "\n10,about 93");
    expect(await errorsOf(copy.folder)).toMatchObject([
      {
        code: "not-a-number",
        file: SOIL_SIEVE,
        row: copy.rowOf(SOIL_SIEVE, "about 93"),
        column: "retained (g)",
        value: "about 93",
      },
    ]);
  });

  it("comma decimals, quoted, bare, and in a semicolon file", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SOIL_SIEVE, "\n2,34.8", '\n2,"34,8"');
    copy.edit(LIMITS, "140.0", '"140,0"');
    copy.write(
      "sheets/gravel-sieve.csv",
      "dry mass (g);3000\n\nsieve (mm);retained (g)\n25;0\n6,3;2500\n2;480\npan;20\n",
    );
    copy.edit("sheets/river-sand-sieve.csv", /\n2,[\d.]+\n/, "\n2,89,3\n");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "comma-decimal", file: SOIL_SIEVE, column: "retained (g)", value: "34,8" },
      { code: "comma-decimal", file: LIMITS, value: "140,0" },
      { code: "row-too-long", file: "sheets/river-sand-sieve.csv" },
    ]);
    // A sheet without any decimal point is read as it was meant, with a note.
    const { findings } = await readStudy(copy.folder);
    expect(findings).toContainEqual(
      expect.objectContaining({
        severity: "note",
        code: "decimal-comma",
        file: "sheets/gravel-sieve.csv",
        row: 5,
        value: "6,3",
      }),
    );
  });

  it("negative and over-100 values", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SOIL_SIEVE, "\n10,93", "\n10,-93");
    copy.edit("study.yaml", "moisture: 7.5 %", "moisture: 107.5 %");
    copy.edit("study.yaml", "share: { min: 30 %", "share: { min: -3 %");
    const first = await errorsOf(copy.folder);
    expect(first).toMatchObject([
      { code: "wrong-value", column: "materials.0.moisture", value: "107.5 %" },
      { code: "wrong-value", column: "materials.0.share.min", value: "-3 %" },
    ]);
    expect(first[0].row).toBe(copy.rowOf("study.yaml", "107.5"));
    copy.edit("study.yaml", "107.5 %", "7.5 %");
    copy.edit("study.yaml", "min: -3 %", "min: 30 %");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "out-of-range", file: SOIL_SIEVE, column: "retained (g)", value: "-93" },
    ]);
  });

  it("sieves out of order or repeated", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SOIL_SIEVE, "\n16,30", "\n5,30");
    copy.edit("sheets/river-sand-sieve.csv", "\n1,", "\n2,");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "sieve-order", file: SOIL_SIEVE, value: "10" },
      { code: "repeated-sieve", file: "sheets/river-sand-sieve.csv", value: "2" },
    ]);
  });

  it("hydrometer time zero, and time that goes back", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(HYDROMETER, "\n1,", "\n0,");
    copy.edit(HYDROMETER, "\n60,", "\n20,");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "out-of-range", file: HYDROMETER, column: "time (min)", value: "0" },
      { code: "time-order", file: HYDROMETER, column: "time (min)", value: "20" },
    ]);
  });

  it("unknown and missing units", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SOIL_SIEVE, "retained (g)", "retained (stone)");
    copy.edit(HYDROMETER, "time (min)", "time");
    copy.edit("study.yaml", "1180 kg/m3", "1180 kg/hl");
    copy.edit("study.yaml", "price: 25 to 31 per t", "price: 27");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "wrong-value", column: "materials.0.loose-bulk-density", value: "1180 kg/hl" },
      { code: "wrong-value", column: "materials.1.price", value: "27" },
    ]);
    copy.edit("study.yaml", "1180 kg/hl", "1180 kg/m3");
    copy.edit("study.yaml", "price: 27\n", "price: 25 to 31 per t\n");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "unknown-unit", file: SOIL_SIEVE, column: "retained (stone)", value: "stone" },
      { code: "missing-unit", file: HYDROMETER, column: "time" },
    ]);
  });

  it("files outside the study folder, also through a link", async () => {
    const copy = copyStudy("reading-room");
    writeFileSync(join(copy.folder, "..", "secret.csv"), "a,b\n");
    symlinkSync(join(copy.folder, "..", "secret.csv"), join(copy.folder, "sheets", "link.csv"));
    copy.edit("study.yaml", "sieve: sheets/river-sand-sieve.csv", "sieve: ../secret.csv");
    copy.edit("study.yaml", "sieve: sheets/pit-sand-sieve.csv", "sieve: /etc/hostname");
    copy.edit("study.yaml", "sieve: sheets/gravel-sieve.csv", "sieve: sheets/link.csv");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "outside-study", column: "materials.1.sieve" },
      { code: "outside-study", column: "materials.2.sieve" },
      { code: "outside-study", column: "materials.3.sieve" },
    ]);
  });

  it("YAML error", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "title: Reading-room", "title: 'Reading-room");
    const errors = await errorsOf(copy.folder);
    expect(errors[0]).toMatchObject({ code: "yaml-error", file: "study.yaml" });
    expect(errors[0].row).toBeGreaterThan(0);
  });

  it("unknown and missing keys of the study, all at once, with their rows", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "seed: 20260518", "sead: 20260518");
    copy.edit("study.yaml", "  waste: 5 %\n", "");
    copy.edit("study.yaml", "date: 2026-05-18", "date: 18 May 2026");
    copy.edit("study.yaml", "role: gravel", "role: pebbles");
    const errors = await errorsOf(copy.folder);
    expect(errors.map(({ code, column }) => [code, column])).toEqual(
      expect.arrayContaining([
        ["unknown-key", "sead"],
        ["missing-key", "element.waste"],
        ["wrong-value", "date"],
        ["wrong-value", "materials.3.role"],
      ]),
    );
    expect(errors).toHaveLength(4);
    expect(errors.find(({ column }) => column === "sead")?.row).toBe(
      copy.rowOf("study.yaml", "sead"),
    );
  });

  it("empty sheets of three kinds", async () => {
    const copy = copyStudy("reading-room");
    copy.write(SOIL_SIEVE, "");
    copy.write("sheets/river-sand-sieve.csv", "dry mass (g),800\nsieve (mm),retained (g)\n");
    copy.write(BLOCKS, "\n,,\n");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "empty-sheet", file: SOIL_SIEVE },
      { code: "empty-sheet", file: "sheets/river-sand-sieve.csv", row: 2 },
      { code: "empty-sheet", file: BLOCKS },
    ]);
  });

  it("a workbook that is not one, a damaged one, and text that is not UTF-8", async () => {
    const copy = copyStudy("bus-shelter");
    copy.write("sheets/blocks.xlsx", "block,cement (%)\nA,5\n");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "not-a-workbook", file: "sheets/blocks.xlsx" },
    ]);
    copy.write("sheets/blocks.xlsx", new Uint8Array([0x50, 0x4b, 3, 4, 9, 9, 9, 9]));
    copy.write(SOIL_SIEVE, new Uint8Array([0xff, 0xfe, 0x61, 0x00]));
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "not-a-csv", file: SOIL_SIEVE },
      { code: "not-a-workbook", file: "sheets/blocks.xlsx" },
    ]);
  });

  it("a folder or another kind of file in place of a sheet", async () => {
    const copy = copyStudy("reading-room");
    mkdirSync(join(copy.folder, "sheets", "folder.csv"));
    copy.write("sheets/notes.txt", "x");
    copy.edit("study.yaml", "sieve: sheets/river-sand-sieve.csv", "sieve: sheets/folder.csv");
    copy.edit("study.yaml", "sieve: sheets/pit-sand-sieve.csv", "sieve: sheets/notes.txt");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "missing-sheet", column: "materials.1.sieve" },
      { code: "unknown-sheet-type", column: "materials.2.sieve" },
    ]);
  });

  it("blocks named twice, or without a strength", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(BLOCKS, "\nL02,", "\nL01,");
    copy.edit(BLOCKS, /\nL03,.*/, "\nL03,A,4,7,99.5,100.0,99.8,,1946,,");
    expect(await errorsOf(copy.folder)).toMatchObject([
      { code: "repeated-block", file: BLOCKS, row: 4, value: "L01" },
      { code: "missing-value", file: BLOCKS, row: 5 },
    ]);
  });

  it("a title of markup is plain text", async () => {
    const copy = copyStudy("reading-room");
    const title = `<script>alert(1)</script> #panic() "q" 'q' \\ $x$`;
    copy.edit(
      "study.yaml",
      "title: Reading-room wall of a village library",
      `title: ${JSON.stringify(title)}`,
    );
    const { study } = await readStudy(copy.folder);
    expect(study?.config.title).toBe(title);
  });
});
