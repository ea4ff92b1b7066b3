import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy, type StudyCopy } from "../support/studyCopy.js";

const SOIL = "sheets/site-soil-sieve.csv";
const HYDROMETER = "sheets/site-soil-hydrometer.csv";
const COMPACTION = "sheets/compaction.csv";
const BLOCKS = "sheets/blocks.csv";

async function told({ folder }: StudyCopy): Promise<string[]> {
  const { study, findings } = await readStudy(folder);
  const all = study ? computeStudy(study, findings).findings : findings;
  return all.map(({ severity, code }) => `${severity} ${code}`);
}

describe("a value that cannot be", () => {
  it.each<[string, string, string | RegExp, string, string]>([
    ["blocks in lb/ft3 under kg/m3", BLOCKS, "10.66,1964", "10.66,122", "error out-of-range"],
    [
      "a density in kg/m3 under g/cm3",
      BLOCKS,
      "dry density (kg/m3)",
      "dry density (g/cm3)",
      "error out-of-range",
    ],
    [
      "sides in mm under cm",
      BLOCKS,
      /length \(mm\),width \(mm\),height \(mm\)/,
      "length (m),width (m),height (m)",
      "error out-of-range",
    ],
    [
      "a strength in psi under MPa",
      "sheets/site-blocks.csv",
      "6,7,1.40",
      "6,7,203",
      "error out-of-range",
    ],
    ["an age in hours under days", BLOCKS, "L01,A1,4,7,", "L01,A1,4,16800,", "error out-of-range"],
    [
      "a mould ten times too large",
      COMPACTION,
      "(cm3),1000",
      "(cm3),10000",
      "error density-impossible",
    ],
    [
      "a mould ten times too small",
      COMPACTION,
      "(cm3),1000",
      "(cm3),100",
      "error density-impossible",
    ],
    [
      "sieves in millimetres under inches",
      SOIL,
      "sieve (mm),retained",
      "sieve (in),retained",
      "error out-of-range",
    ],
    [
      "a sample ten times too large",
      SOIL,
      "split dry mass (g),418.6",
      "split dry mass (g),4186",
      "warning washed-away",
    ],
    [
      "a sample a thousand times too large",
      SOIL,
      "split dry mass (g),418.6",
      "split dry mass (kg),418.6",
      "error washed-away",
    ],
    [
      "hydrometer times in minutes under hours",
      HYDROMETER,
      "time (min)",
      "time (h)",
      "error out-of-range",
    ],
    [
      "hydrometer times in hours under minutes",
      HYDROMETER,
      "\n1,30,",
      "\n0.0167,30,",
      "error out-of-range",
    ],
    ["readings of another hydrometer", HYDROMETER, "152H", "151H", "error off-scale"],
    [
      "a cylinder with fifty kilograms",
      HYDROMETER,
      "dry mass (g)",
      "dry mass (kg)",
      "error out-of-range",
    ],
    [
      "a wall of 0.4 mm",
      "study.yaml",
      "thickness: 400 mm",
      "thickness: 0.4 mm",
      "error wrong-value",
    ],
    ["a wall of 400 m", "study.yaml", "thickness: 400 mm", "thickness: 400 m", "error wrong-value"],
    [
      "a lift of 100 m",
      "study.yaml",
      "compacted-lift: 100 mm",
      "compacted-lift: 100 m",
      "error wrong-value",
    ],
    ["a batch of 120 t", "study.yaml", "dry-mass: 120 kg", "dry-mass: 120 t", "error wrong-value"],
    [
      "a loose soil of rock",
      "study.yaml",
      "loose-bulk-density: 1180 kg/m3",
      "loose-bulk-density: 3000 kg/m3",
      "error wrong-value",
    ],
    [
      "a loose soil as dense as the rammed wall",
      "study.yaml",
      "loose-bulk-density: 1180 kg/m3",
      "loose-bulk-density: 1945 kg/m3",
      "error heap-denser-than-wall",
    ],
  ])("%s", async (_, file, from, to, finding) => {
    const study = copyStudy("reading-room");
    study.edit(file, from, to);
    expect(await told(study)).toContain(finding);
  });
});

describe("sheets that contradict each other", () => {
  it("blocks whose density the compaction test does not reach", async () => {
    const study = copyStudy("reading-room");
    study.edit(COMPACTION, "(cm3),1000", "(cm3),1250");
    expect(await told(study)).toContain("warning blocks-against-compaction");
  });

  it.each([
    // The blocks have 1953 kg/m³ in the mean: 0.905 and 0.895 of the maximum.
    [2155, false],
    [2185, true],
  ])("blocks against a maximum of %s kg/m³", async (maximum, isAsked) => {
    const study = copyStudy("reading-room");
    study.write(
      COMPACTION,
      `optimum water content (%),7.5\nmaximum dry density (kg/m3),${maximum}\n`,
    );
    expect((await told(study)).includes("warning blocks-against-compaction")).toBe(isAsked);
  });

  it("a gravel whose sheet is that of a sand", async () => {
    const study = copyStudy("reading-room");
    study.edit(
      "study.yaml",
      "sieve: sheets/gravel-sieve.csv",
      "sieve: sheets/river-sand-sieve.csv",
    );
    const all = await told(study);
    expect(all).toContain("warning role-against-curve");
    const { study: read, findings } = await readStudy(study.folder);
    const role = computeStudy(read!, findings).findings.find(
      ({ code }) => code === "role-against-curve",
    );
    // 104.8 g of 812.4 g stay on 4 and 2 mm.
    expect(role?.message).toContain("more than half of it (87 %) is finer than 2 mm");
    expect(all).toContain("warning same-readings");
  });

  it("a sand that is neither sand nor anything else by half", async () => {
    const study = copyStudy("reading-room");
    const rows = (gravelG: number, sandG: number, fineG: number) =>
      `dry mass (g),1000\n\nsieve (mm),retained (g)\n10,0\n4.75,${gravelG}\n0.063,${sandG}\npan,${fineG}\n`;
    study.write("sheets/river-sand-sieve.csv", rows(350, 300, 350));
    expect(await told(study)).toContain("warning role-against-curve");
    study.write("sheets/river-sand-sieve.csv", rows(200, 600, 200));
    expect(await told(study)).not.toContain("warning role-against-curve");
  });

  it("every block twice, under another name", async () => {
    const study = copyStudy("reading-room");
    const text = readFileSync(join(study.folder, BLOCKS), "utf8");
    const copies = text.split("\n").filter((line) => /^L\d/.test(line));
    study.write(BLOCKS, `${text}${copies.map((line) => `M${line}\n`).join("")}`);
    expect(await told(study)).toContain("error same-readings");
    study.write(BLOCKS, `${text}M${copies[0]}\n`);
    expect(await told(study)).toContain("warning same-readings");
  });
});
