import { describe, expect, it } from "vitest";
import type { StrengthByAge } from "../../src/strength/strengthByAge.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { firstMixTable } from "../../src/tables/firstMix.js";
import { blockMeansTable, strengthByAgeTable } from "../../src/tables/strength.js";
import { renderAll } from "../../src/words/render.js";
import { headsOf, notesOf, rowsOf } from "../support/blockText.js";

/** Tables that no committed example prints: their cells by value, each of another number. */
describe("tables of a study that is not whole yet", () => {
  it("blocks without a curve: content, age, count, mean, lowest, highest", () => {
    const means = [
      { cementPct: 6, ageDays: 7, blocks: 4, meanMpa: 2.068427, lowestMpa: 1.5, highestMpa: 2.75 },
    ];
    const table = (units: "SI" | "US") => blockMeansTable({ means, message: "Too few." }, units);
    expect(rowsOf(table("SI"))).toEqual([["6", "7", "4", "2.07", "1.50", "2.75"]]);
    // 6.894757 kPa in a psi.
    expect(rowsOf(table("US"))).toEqual([["6", "7", "4", "300", "218", "399"]]);
    expect(headsOf(table("SI")).slice(3)).toEqual(["Mean [MPa]", "Lowest [MPa]", "Highest [MPa]"]);
    expect(notesOf(table("SI"))[0]).toBe("Too few.");
  });

  it("strength by age: the curve and its bands beside the blocks", () => {
    const age = {
      ageDays: 28,
      meanMpa: 2.5,
      meanLowMpa: 2.25,
      meanHighMpa: 2.75,
      predictionLowMpa: 1.5,
      predictionHighMpa: 3.5,
      blocks: 5,
      blocksMeanMpa: 2.61,
    };
    const byAge = { status: "ok", message: "Two ages.", cementPct: 7.5, ages: [age] };
    const table = (more: object) =>
      strengthByAgeTable({ ...byAge, ...more } as unknown as StrengthByAge, "SI");
    expect(rowsOf(table({}))).toEqual([
      ["28", "2.50", "2.25", "2.75", "1.50", "3.50", "5", "2.61"],
    ]);
    expect(renderAll(table({}))).toMatchObject({ caption: "Strength by age at 7.5 % cement" });
    const bare = table({ ages: [{ ...age, meanLowMpa: null, blocksMeanMpa: null }] });
    expect(rowsOf(bare)[0]).toEqual(["28", "2.50", "–", "2.75", "1.50", "3.50", "5", "–"]);
    expect(renderAll(table({ status: "too-few-ages" }))).toEqual({
      kind: "note",
      tone: "warning",
      text: "Two ages.",
    });
  });

  it("a first mix: to begin with, at least, at most", () => {
    const firstMix = {
      soil: "pit",
      sand: "river",
      targetPct: 25,
      byMass: { low: 0.41, middle: 0.56, high: 0.78 },
      byVolume: { low: 0.35, middle: 0.48, high: 0.66 },
      batch: {
        soilKg: 64.1,
        sandKg: 35.9,
        soilL: { low: 51, middle: 53, high: 55 },
        sandL: { low: 21, middle: 23, high: 27 },
        finesPct: { low: 22.4, high: 28.6 },
      },
      message: "Try it.",
      basis: "The jar.",
    };
    const config = {
      units: "SI",
      materials: [
        { id: "pit", name: "Pit soil" },
        { id: "river", name: "River sand" },
      ],
    };
    const of = (more: object) =>
      firstMixTable({ config, firstMix: { ...firstMix, ...more } } as unknown as StudyResult);
    const table = of({});
    expect(renderAll(table)).toMatchObject({
      caption: "A first mix: River sand added to Pit soil",
    });
    expect(headsOf(table)).toEqual(["Quantity", "To begin with", "At least", "At most"]);
    expect(rowsOf(table).map((row) => row.slice(1))).toEqual([
      ["0.56", "0.41", "0.78"],
      ["0.48", "0.35", "0.66"],
      ["64.1 kg", "–", "–"],
      ["35.9 kg", "–", "–"],
      ["53.0 L", "51.0 L", "55.0 L"],
      ["23.0 L", "21.0 L", "27.0 L"],
      ["25 %", "22 %", "29 %"],
    ]);
    expect(notesOf(table)).toEqual(["Try it.", "The jar."]);
    expect(renderAll(of({ batch: null }))).toMatchObject({ kind: "note", text: "Try it." });
    expect(renderAll(firstMixTable({ config } as unknown as StudyResult))).toMatchObject({
      kind: "note",
      tone: "note",
    });
  });
});
