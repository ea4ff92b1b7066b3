import { describe, expect, it } from "vitest";
import { cementFromParts, readSpecimens } from "../../src/lab/specimens.js";
import { render } from "../../src/words/render.js";
import { near } from "./near.js";

function read(text: string) {
  const rows = text
    .trim()
    .split("\n")
    .map((line) => line.split(",").map((cell) => cell.trim()));
  const { record: sheet, findings } = readSpecimens({ file: "blocks.csv", rows });
  for (const { message, expected, remedy, file } of findings) {
    expect([message, expected, remedy, file].every((part) => render(part).length > 0)).toBe(true);
  }
  return { sheet, codes: findings.map(({ code, row }) => [code, row]) };
}

describe("the block sheet", () => {
  it("reads shape, mass, moistures and a round face, and works out the dry density", () => {
    const { sheet, codes } = read(`
block,batch,cement (%),age (d),shape,diameter (mm),height (mm),load (kN),mass (g),moisture at making (%),moisture at test (%),crushing order,remarks
A,1,6,28,cylinder,100,200,20,3300,9,5,2,even`);
    expect(codes).toEqual([]);
    const [block] = sheet!.specimens;
    near(block.strengthMpa, 20000 / (Math.PI * 2500), { rel: 1e-12, abs: 0 }, "stress");
    near(
      block.dryDensityKgM3,
      3.3 / (Math.PI * 0.0025 * 0.2) / 1.05,
      { rel: 1e-12, abs: 0 },
      "dry",
    );
    expect(block).toMatchObject({ shape: "cylinder", makingMoisturePct: 9, testMoisturePct: 5 });
    expect(block).toMatchObject({ crushingOrder: 2, remark: "even", massG: 3300 });
  });

  it("keeps an entered dry density before one worked out", () => {
    const { sheet } = read(`
block,cement (%),age (d),strength (MPa),length (mm),width (mm),height (mm),mass (g),moisture at test (%),dry density (kg/m3)
A,6,28,2,100,100,100,2000,5,1850`);
    expect(sheet!.specimens[0].dryDensityKgM3).toBe(1850);
  });

  it("refuses a strength from load and face that no block has, as where it is entered", () => {
    const header = "block,cement (%),age (d),length (mm),width (mm),load (kN)";
    expect(read(`${header}\nA,6,28,100,100,1001\nB,6,28,100,100,0.09`).codes).toEqual([
      ["strength-impossible", 2],
      ["strength-impossible", 3],
    ]);
    expect(read(`${header}\nA,6,28,100,100,999\nB,6,28,100,100,0.11`).codes).toEqual([]);
  });

  it("refuses a mass that does not go with the dry density beside it", () => {
    const header =
      "block,cement (%),age (d),strength (MPa),length (mm),width (mm),height (mm),mass (g),dry density (kg/m3)";
    const of = (massG: number) => read(`${header}\nA,6,28,2,100,100,100,${massG},1900`).codes;
    // The block as dry as its density, a rounding below, and soaked.
    for (const massG of [1900, 1810, 2400]) expect(of(massG)).toEqual([]);
    for (const massG of [1800, 2480]) expect(of(massG)).toEqual([["mass-and-density-differ", 2]]);
  });

  it("takes no mark for a reason", () => {
    const of = (text: string) =>
      read(`block,cement (%),age (d),strength (MPa),excluded\nA,6,28,2,${text}`);
    for (const mark of ["x", "?", "1", "yes", "**"]) {
      expect(of(mark).codes, mark).toEqual([["excluded-without-reason", 2]]);
    }
    expect(of("cap broke").sheet!.specimens[0].excluded).toBe("cap broke");
    expect(of("no").sheet!.specimens[0].excluded).toBeUndefined();
  });

  it("asks about sides in units of two systems", () => {
    const header = "block,cement (%),age (d),load (lbf),diameter (cm),height (in)";
    const { sheet, codes } = read(`${header}\nA,6,28,3100,10.16,8`);
    expect(codes).toEqual([["mixed-units", 1]]);
    expect(sheet!.specimens).toHaveLength(1);
  });

  it("turns parts by volume into percent, moist soil too", () => {
    const { sheet, codes } = read(`
cement loose density (kg/m3),1506
soil loose density (kg/m3),1300
soil moisture (%),4
block,cement parts,soil parts,age (d),strength (MPa)
A,1,10,28,2.1
B,1,12,28,1.8`);
    expect(codes).toEqual([]);
    // Own arithmetic in the reference notes, dry soil: 1:10 is 11.6 %, 1:12 9.7 %, 1:20 5.8 %.
    near(sheet!.specimens[0].cementPct, 11.5846 * 1.04, { rel: 1e-5, abs: 0 }, "1:10");
    const dry = { cementLooseDensityKgM3: 1506, soilLooseDensityKgM3: 1300 };
    for (const [soilParts, wanted] of [
      [10, 11.6],
      [12, 9.7],
      [20, 5.8],
    ]) {
      const found = cementFromParts({ cementParts: 1, soilParts, ...dry });
      near(found, wanted, { rel: 0, abs: 0.051 }, `1:${soilParts}`);
    }
    expect(() => cementFromParts({ cementParts: 0, soilParts: 1, ...dry })).toThrow(
      "`cementParts`: 0",
    );
  });

  it.each([
    [
      "parts without densities",
      "cement loose density (kg/m3),1506\nblock,cement parts,soil parts,age (d),strength (MPa)\nA,1,10,28,2",
      [["parts-without-densities", 3]],
    ],
    [
      "a part that is missing",
      "cement loose density (kg/m3),1506\nsoil loose density (kg/m3),1300\nblock,cement parts,soil parts,age (d),strength (MPa)\nA,1,,28,2",
      [["missing-value", 4]],
    ],
    [
      "cement in percent and in parts",
      "cement loose density (kg/m3),1506\nsoil loose density (kg/m3),1300\nblock,cement (%),cement parts,soil parts,age (d),strength (MPa)\nA,6,1,10,28,2",
      [["cement-twice", 4]],
    ],
    ["no cement column", "block,age (d),strength (MPa)\nA,28,2", [["wrong-header", 1]]],
    [
      "no cement in a row",
      "block,cement (%),age (d),strength (MPa)\nA,,28,2",
      [["missing-value", 2]],
    ],
    [
      "a load in other units than the strength",
      "block,cement (%),age (d),length (mm),width (mm),load (N),strength (MPa)\nA,6,28,100,100,2000,2",
      [["strength-and-load-differ", 2]],
    ],
    [
      "an unknown shape",
      "block,cement (%),age (d),shape,strength (MPa)\nA,6,28,sphere,2",
      [["unknown-shape", 2]],
    ],
    [
      "two shapes",
      "block,cement (%),age (d),length (mm),width (mm),diameter (mm),load (kN)\nA,6,28,100,100,100,20",
      [["two-shapes", 2]],
    ],
    ["no strength", "block,cement (%),age (d),load (kN)\nA,6,28,20", [["missing-value", 2]]],
    [
      "a repeated name",
      "block,cement (%),age (d),strength (MPa)\nA,6,28,2\nA,6,28,2",
      [["repeated-block", 3]],
    ],
  ] as const)("finds %s", (_, text, wanted) => {
    const { sheet, codes } = read(text);
    expect(codes).toEqual(wanted);
    expect(sheet).toBeUndefined();
  });
});
