import { describe, expect, it } from "vitest";
import { analyseSieve } from "../../src/grading/sieveAnalysis.js";
import { readEnvelope } from "../../src/lab/envelope.js";
import { readJar } from "../../src/lab/jar.js";
import { readPipette } from "../../src/lab/pipette.js";
import { readGrid, type SheetGrid } from "../../src/lab/sheet/grid.js";
import type { SheetReading } from "../../src/lab/sheet/readSheet.js";
import { readSieve } from "../../src/lab/sieve.js";
import { render } from "../../src/words/render.js";

const bytes = (text: string) => new TextEncoder().encode(text);

async function read<T>(reader: (grid: SheetGrid) => SheetReading<T>, text: string) {
  const { grid, findings: noticed } = await readGrid("sheets/s.csv", bytes(text));
  const { record, findings } = grid ? reader(grid) : { findings: noticed };
  const errors = findings.filter(({ severity }) => severity === "error");
  // A record comes back exactly where nothing is wrong.
  expect(record === undefined).toBe(errors.length > 0);
  for (const each of findings) {
    expect(
      [each.message, each.expected, each.remedy].every((words) => /\S/.test(render(words))),
    ).toBe(true);
  }
  return { record: record as T, findings, errors };
}

const PIPETTE = `dry mass (g),20.4
separating sieve (mm),0.063
cylinder volume (ml),500
pipette volume (ml),10
dispersant mass (g),0.9

time (min),depth (mm),temperature (C),solids (g)
4.7,100,20,0.221
47,100,20,0.124
460,100,20.5,0.081
`;
const JAR = `water depth (mm),200
temperature (C),20

layer,time (min),top (mm)
sand and gravel,1,60
silt,930,80
clay,2880,100
`;
const ENVELOPE = `title,Our pit
source,trial walls

sieve (mm),low (%),high (%)
0.063,15,30
2,50,75
20,100,100
`;
const CUMULATIVE = `dry mass (g),1000

sieve (mm),cumulative retained (g)
20,0
2,400
0.063,900
pan,1000
`;

describe("good sheets", () => {
  it("pipette", async () => {
    const { record, findings } = await read(readPipette, PIPETTE);
    expect(findings).toEqual([]);
    expect(record).toMatchObject({ dryMassG: 20.4, pipetteVolumeCm3: 10, dispersantG: 0.9 });
    expect(record.samples[2]).toEqual({
      timeMin: 460,
      depthMm: 100,
      temperatureC: 20.5,
      solidsG: 0.081,
      row: 10,
    });
  });

  it("jar, with or without a temperature", async () => {
    const { record } = await read(readJar, JAR);
    expect(record.layers.map(({ topMm }) => topMm)).toEqual([60, 80, 100]);
    const plain = await read(readJar, JAR.replace("temperature (C),20\n", ""));
    expect(plain.record.temperatureC).toBeUndefined();
  });

  it("envelope, in either order of size", async () => {
    const { record } = await read(readEnvelope, ENVELOPE);
    expect(record.points.map(({ sizeMm }) => sizeMm)).toEqual([0.063, 2, 20]);
    const turned = ENVELOPE.replace(/0.063,15,30\n(2,50,75)\n(20,100,100)/, "$2\n$1\n0.063,15,30");
    const { record: other } = await read(readEnvelope, turned);
    expect(other.points.map(({ lowPct }) => lowPct)).toEqual([15, 50, 100]);
    const weighted = ENVELOPE.replace("high (%)", "high (%),weight")
      .replace("0.063,15,30", "0.063,15,30,4")
      .replace("2,50,75", "2,50,75,");
    const { record: unequal } = await read(readEnvelope, weighted);
    expect(unequal.points.map(({ weight }) => weight)).toEqual([4, undefined, undefined]);
  });

  it("cumulative masses give the same analysis as masses on each sieve", async () => {
    const each = CUMULATIVE.replace("cumulative retained", "retained")
      .replace("900", "500")
      .replace("pan,1000", "pan,100");
    const [a, b] = [await read(readSieve, CUMULATIVE), await read(readSieve, each)];
    expect(a.findings).toEqual([]);
    expect(a.record).toEqual(b.record);
  });

  it("percentages passing need no masses, and nothing is said about a mass balance", async () => {
    const text = "sieve (mm),passing (%)\n20,100\n2,60\n0.063,10\n";
    const { record, findings } = await read(readSieve, text);
    expect(findings).toMatchObject([{ severity: "note", code: "passing-input" }]);
    const { points, findings: after } = analyseSieve(record);
    expect(points.map(({ passingPct }) => Math.round(passingPct * 1e9) / 1e9)).toEqual([
      10, 60, 100,
    ]);
    expect(after).toEqual([]);
  });

  it("three divisions of one sample", async () => {
    const text = `dry mass (kg),40
split sieve (mm),20
split dry mass (kg),10
split 2 sieve (mm),2
split 2 dry mass (g),500
split 2 dry mass after washing (g),400

sieve (mm),retained (g)
37.5,0
20,8000
6.3,3000
2,2000
0.63,150
0.063,200
pan,50
`;
    const { record, findings } = await read(readSieve, text);
    expect(findings).toEqual([]);
    const { points } = analyseSieve(record);
    // 80 % pass 20 mm; of the 10 kg 5 kg pass 2 mm: 40 %; of the 500 g 350 and 150 pass.
    const expected = [12, 28, 40, 56, 80, 100];
    points.forEach(({ passingPct }, index) => {
      expect(passingPct).toBeCloseTo(expected[index], 9);
    });
  });
});

describe("bad sheets", () => {
  it.each([
    [/time \(min\),depth \(mm\)/, "time (min),depth", "missing-unit"],
    ["solids (g)", "mud (g)", "wrong-header"],
    ["0.124", "a little", "not-a-number"],
    ["0.124", '"0,124"', "comma-decimal"],
    ["47,100,20,0.124", "47,100,20,", "missing-value"],
    ["47,100,20,0.124", "4.2,100,20,0.124", "time-order"],
    ["47,100,20,0.124", "47,-100,20,0.124", "out-of-range"],
    ["47,100,20,0.124", "47,100,70,0.124", "out-of-range"],
    ["pipette volume (ml),10", "pipette volume (l),10", "pipette-volume"],
    ["dry mass (g),20.4\n", "", "missing-fact"],
    ["460,100,20.5,0.081", "460,100,20.5,0.081,0.2", "row-too-long"],
  ])("pipette: %s → %s: %s", async (from, to, code) => {
    const { errors } = await read(readPipette, PIPETTE.replace(from, to));
    expect(errors.map((each) => each.code)).toContain(code);
  });

  it.each([
    ["silt,930,80\n", "", "missing-layer"],
    ["silt,930,80", "mud,930,80", "layer-order"],
    ["silt,930,80", "silt,0.5,80", "time-order"],
    ["silt,930,80", "silt,930,50", "layer-sinks"],
    ["clay,2880,100", "clay,2880,220", "jar-full-of-soil"],
    ["clay,2880,100", "clay,2880,high", "not-a-number"],
    ["water depth (mm),200\n", "", "missing-fact"],
    [/sand and gravel[\s\S]*/, "", "empty-sheet"],
    ["clay,2880,100\n", "clay,2880,100\nclay,4000,100\n", "layer-order"],
  ])("jar: %s → %s: %s", async (from, to, code) => {
    const { errors } = await read(readJar, JAR.replace(from, to));
    expect(errors.map((each) => each.code)).toContain(code);
  });

  it.each([
    ["0.063,15,30", "0.063,30,15", "envelope-crossed"],
    ["2,50,75", "2,50,20", "envelope-crossed"],
    ["2,50,75", "2,10,75", "envelope-falls"],
    ["2,50,75", "0.063,50,75", "repeated-sieve"],
    ["2,50,75", "pan,50,75", "unknown-sieve"],
    ["2,50,75", "2,50,104", "out-of-range"],
    ["source,trial walls\n", "", "missing-fact"],
  ])("envelope: %s → %s: %s", async (from, to, code) => {
    const { errors } = await read(readEnvelope, ENVELOPE.replace(from, to));
    expect(errors.map((each) => each.code)).toContain(code);
  });

  it.each([
    ["2,400", "2,950", "cumulative-falls"],
    ["pan,1000\n", "", "missing-pan"],
    ["dry mass (g),1000\n", "", "missing-fact"],
    [/20,0\n2,400\n0.063,900\n/, "", "no-sieves"],
    ["dry mass (g),1000\n", "dry mass (g),1000\nsplit 2 sieve (mm),2\n", "incomplete-split"],
    [
      "dry mass (g),1000\n",
      "dry mass (g),1000\nsplit sieve (mm),2\nsplit dry mass (g),100\nsplit 2 sieve (mm),20\nsplit 2 dry mass (g),50\n",
      "split-order",
    ],
    [
      "dry mass (g),1000\n",
      "dry mass (g),1000\nsplit sieve (mm),2\nsplit dry mass (g),100\nsplit dry mass after washing (g),110\n",
      "washed-heavier",
    ],
  ])("sieve: %s → %s: %s", async (from, to, code) => {
    const { errors } = await read(readSieve, CUMULATIVE.replace(from, to));
    expect(errors.map((each) => each.code)).toContain(code);
  });

  it("passing that rises, and passing with a split", async () => {
    const text =
      "split sieve (mm),2\nsplit dry mass (g),100\n\nsieve (mm),passing (%)\n20,100\n2,60\n0.063,70\n";
    const { errors } = await read(readSieve, text);
    expect(errors.map(({ code }) => code)).toEqual(["passing-rises", "passing-with-masses"]);
  });
});
