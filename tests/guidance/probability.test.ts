import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { blendCurve } from "../../src/blend/material.js";
import { type GradingCurve, passingAtSize } from "../../src/grading/curve.js";
import { resampleReadings } from "../../src/grading/uncertainty/readingErrors.js";
import { compareGuidance } from "../../src/guidance/comparison.js";
import {
  probabilityPercent,
  probabilityWords,
  verdictProbability,
} from "../../src/guidance/probability.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { computeStudy } from "../../src/study/computeStudy.js";
import { readStudy } from "../../src/study/readStudy.js";
import { READING_DRAWS, sampleBlend, sampleMaterial } from "../../src/study/sampledCurves.js";
import type { Study } from "../../src/study/study.js";
import { guidanceComparisonTable, guidanceTables } from "../../src/tables/guidance.js";
import { wordFor } from "../../src/words/message.js";
import { render, renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";
import { type FullResult, full } from "../support/exampleResult.js";
import { EXAMPLES } from "../support/studyCopy.js";

const entry = (id: string) => GUIDANCE_ENTRIES.find((each) => each.id === id)!;
const clay = (pct: number) => curveOf([0.002, pct], [2, 100]);

describe("probabilityWords", () => {
  it("gives percent of the readings alone and never claims certainty", () => {
    expect(
      [1, 0.991, 0.99, 0.5, 0.01, 0.009, 0].map((share) => render(probabilityPercent(share))),
    ).toEqual(["over 99", "over 99", "99", "50", "1", "below 1", "below 1"]);
    expect(render(probabilityWords(0.949))).toBe("in 95 of 100 draws of the reading errors");
    expect(() => probabilityPercent(1.01)).toThrow("invalid `share`: 1.01; expected 0 to 1");
  });
});

describe("verdictProbability with drawn limits", () => {
  const walker = entry("walker-2005");
  const curves = Array.from({ length: 4 }, () =>
    curveOf([0.002, 12], [0.063, 35], [2, 70], [20, 100]),
  );
  const measured = { liquidLimitPct: 44, plasticityIndexPct: 15, linearShrinkagePct: 3 };

  it("counts the draws of the limit beside those of the curve", () => {
    const drawn = [43, 44, 44.9, 46].map((liquidLimitPct) => ({ ...measured, liquidLimitPct }));
    const found = verdictProbability(curves[0], curves, walker, measured, drawn);
    const at = found.criteria.findIndex(({ what }) => render(what) === "liquid limit");
    expect(found.criteria[at]).toMatchObject({ verdict: "inside", probability: 0.75 });
    expect(found).toMatchObject({ verdict: "inside", sameVerdict: 0.75, draws: 4 });
    expect(render(found.text)).toContain("liquid limit could differ: 75 %");
    expect(verdictProbability(curves[0], curves, walker, measured).sameVerdict).toBe(1);
  });

  it("wants one draw a curve", () => {
    expect(() => verdictProbability(curves[0], curves, walker, measured, [measured])).toThrow(
      "invalid `drawn`: 1 of them; expected one for each of 4 curves",
    );
  });

  it("tells each verdict apart in a comparison", () => {
    const entries = ["walker-2005", "keable-sazs-ars"].map(entry);
    const { disagreements } = compareGuidance(
      clay(14.5),
      entries,
      {},
      [14, 14.9, 15.1, 21].map(clay),
    );
    const [{ sides }] = disagreements;
    expect(sides.map(({ verdict, probability }) => [verdict, probability])).toEqual([
      ["inside", 0.75],
      ["inside", 0.5],
    ]);
    const plain = compareGuidance(clay(14.5), entries).disagreements[0].sides;
    expect(plain.every((side) => !("probability" in side))).toBe(true);
  });
});

describe.each(["reading-room", "bus-shelter"])("the verdicts of %s", (name) => {
  let study: Study;
  let result: FullResult;
  let soil: GradingCurve[];
  beforeAll(async () => {
    study = (await readStudy(join(EXAMPLES, name))).study!;
    result = full(computeStudy(study).result!);
    const { config, sieve, hydrometer } = study.materials[0];
    const particleDensityKgM3 = config.particleDensityKgM3!;
    soil = resampleReadings(
      { sieve, hydrometer, particleDensityKgM3 },
      {
        seed: study.config.seed,
        resamples: READING_DRAWS,
        errors: study.config.readingErrors,
      },
    );
  });

  const share = (curves: readonly GradingCurve[], test: (curve: GradingCurve) => boolean) =>
    curves.filter(test).length / curves.length;
  const clayInside = (curve: GradingCurve) => {
    const pct = passingAtSize(curve, 0.002);
    return pct !== undefined && pct >= 5 && pct <= 20;
  };
  const siltInside = (curve: GradingCurve) => {
    const [fine, coarse] = [passingAtSize(curve, 0.002), passingAtSize(curve, 0.063)];
    return fine !== undefined && coarse !== undefined && coarse - fine >= 10 && coarse - fine <= 30;
  };

  it("are as sure as a direct count over the resampled soil says", () => {
    const [{ probability }] = result.guidance;
    const sure = (what: string) => probability.criteria.find((each) => render(each.what) === what)!;
    const expected = (inside: number, verdict: string) =>
      verdict === "inside" ? inside : 1 - inside;
    // Where the curve does not reach 0.002 mm nothing is measured: counted on neither side.
    expect(soil.every((curve) => passingAtSize(curve, 0.002) !== undefined)).toBe(true);
    for (const [what, test] of [
      ["clay", clayInside],
      ["silt", siltInside],
    ] as const) {
      const { probability: found, verdict } = sure(what);
      expect(found).toBeCloseTo(expected(share(soil, test), verdict), 9);
    }
    expect(probability.draws).toBe(READING_DRAWS);
  });

  it("of the blend come from blends of drawn curves at the designed shares", () => {
    const shares = result.blend.shares.map(({ sharePct }) => sharePct);
    const drawn = study.materials.map((material) => sampleMaterial(material, study.config));
    const blends = sampleBlend(drawn, shares);
    const first = blendCurve(
      drawn.map((curves, at) => ({
        curve: curves[at * Math.floor(READING_DRAWS / shares.length)],
        sharePct: shares[at],
      })),
    );
    expect(blends[0]).toEqual(first.curve);
    expect(drawn[0]).toEqual(soil);
    const { probability, check } = result.guidance.find(
      ({ name: curve }) => render(curve) === "Blend",
    )!;
    const at = check.criteria.findIndex(({ what }) => render(what) === "clay");
    const inside = share(blends, clayInside);
    expect(probability.criteria[at].probability).toBeCloseTo(
      check.criteria[at].verdict === "inside" ? inside : 1 - inside,
      9,
    );
  });

  it("stand in the tables in words and percent, beside what they do not prove", () => {
    const [table] = renderAll(guidanceTables(result.guidance));
    const sure = table.columns.length - 1;
    const measured = table.rows.filter((row) => !/^not (measured|tested)$/.test(row[sure - 1]));
    expect(measured.length).toBeGreaterThan(5);
    for (const row of measured) {
      expect(row[sure]).toMatch(/^(over 99|below 1|\d+) %$/);
    }
    expect(table.rows.some((row) => row[sure] === "–")).toBe(true);
    const notes = table.notes!.join(" ");
    expect(notes).toContain("no proof that a soil is suitable");
    expect(notes).toContain("abstract read");
    expect(notes).toContain(`Blend, all criteria together: ${render(wordFor("outside"))}.`);
    const comparison = renderAll(guidanceComparisonTable("the blend", result.guidanceComparison));
    expect(comparison.rows.every((row) => row.length === comparison.columns.length)).toBe(true);
    expect(comparison.rows.some((row) => /^(over 99|\d+) %$/.test(row[5]))).toBe(true);
  });

  it("and the textures are the same draws", () => {
    const [texture] = result.textures;
    expect(texture.resampled).toHaveLength(READING_DRAWS);
    expect(result.blendSpread.map(({ sizeMm }) => sizeMm)).toEqual(
      result.blend.curve.points.map(({ sizeMm }) => sizeMm),
    );
    expect(result.blendSpread.every(({ sdPct }) => sdPct > 0 && sdPct < 5)).toBe(true);
  });
});
