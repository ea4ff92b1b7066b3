import { describe, expect, it } from "vitest";
import type { GradingCurve } from "../../src/grading/curve.js";
import {
  CLOSE_PASSING_POINTS,
  CLOSE_SHARE_POINTS,
  compareBlends,
  remoteness,
  testedBlendFindings,
} from "../../src/study/testedBlend.js";
import { renderAll } from "../../src/words/render.js";

const curve = (finesPct: number): GradingCurve => ({
  points: [
    { sizeMm: 0.063, passingPct: finesPct, origin: "sieve" },
    { sizeMm: 2, passingPct: 100, origin: "sieve" },
  ],
});
const gravel: GradingCurve = {
  points: [
    { sizeMm: 4, passingPct: 0, origin: "sieve" },
    { sizeMm: 16, passingPct: 100, origin: "sieve" },
  ],
};
const materials = [
  { id: "soil", name: "Soil", curve: curve(60) },
  { id: "sand", name: "Sand", curve: curve(0) },
  { id: "gravel", name: "Gravel", curve: gravel },
];

describe("compareBlends", () => {
  it("gives each share and each size of both curves, by hand", () => {
    const found = compareBlends(materials, [60, 20, 20], [50, 20, 30]);
    expect(found.shares.map(({ differencePoints }) => differencePoints)).toEqual([10, 0, -10]);
    expect(found.passing.map(({ sizeMm }) => sizeMm)).toEqual([0.063, 2, 4, 16]);
    // 0.6 × 60 − 0.5 × 60; soil and sand pass 2 mm whole, the gravel not at all.
    [6, 10, 10, 0].forEach((points, index) => {
      expect(found.passing[index].differencePoints).toBeCloseTo(points, 9);
    });
    expect(found.close).toBe(false);
  });

  it("is close up to its limits and not beyond, share and passing each", () => {
    const by = (points: number) =>
      compareBlends(materials, [50 + points, 20, 30 - points], [50, 20, 30]);
    expect(by(CLOSE_SHARE_POINTS).close).toBe(true);
    expect(by(-CLOSE_SHARE_POINTS).close).toBe(true);
    expect(by(CLOSE_SHARE_POINTS + 0.01).close).toBe(false);
    // Two soils of very unlike fines: shares within 2 points each, the passing beyond 3.
    const unlike = [
      { id: "a", name: "A", curve: curve(95) },
      { id: "b", name: "B", curve: curve(95) },
      { id: "c", name: "C", curve: curve(0) },
      { id: "d", name: "D", curve: curve(0) },
    ];
    const moved = compareBlends(unlike, [27, 27, 23, 23], [25, 25, 25, 25]);
    expect(Math.abs(moved.maxShare.differencePoints)).toBeCloseTo(2, 9);
    expect(moved.maxPassing.differencePoints).toBeCloseTo(3.8, 9);
    expect(CLOSE_PASSING_POINTS).toBeLessThan(3.8);
    expect(moved.close).toBe(false);
    expect(remoteness(moved)).toBeCloseTo(3.8 / 3, 9);
  });

  it("sees a material that only one of the blends has", () => {
    expect(compareBlends(materials, [100, 0, 0], [90, 10, 0]).maxShare.id).toBe("soil");
    expect(compareBlends(materials, [97, 3, 0], [97, 0, 3]).close).toBe(false);
  });

  it("refuses blends of nothing", () => {
    expect(() => compareBlends(materials, [0, 0, 0], [0, 0, 0])).toThrow(RangeError);
  });
});

describe("testedBlendFindings", () => {
  const trial = (id: string, tested: readonly number[]) => ({
    id,
    name: id,
    key: `trials.${id}`,
    difference: compareBlends(materials, [60, 20, 20], tested),
  });

  it("is silent where one of the trials is close", () => {
    expect(testedBlendFindings([trial("far", [30, 40, 30]), trial("near", [61, 19, 20])])).toEqual(
      [],
    );
  });

  it("names the nearest trial, what differs, and both ways on", () => {
    const found = testedBlendFindings([trial("far", [30, 40, 30]), trial("nearer", [50, 25, 25])]);
    const [{ code, severity, column, message, remedy }] = renderAll(found);
    expect([code, severity, column]).toEqual([
      "blend-not-tested",
      "warning",
      "trials.nearer.shares",
    ]);
    expect(message).toContain("Soil 60.0 % where 50.0 % were tested (10.0 points)");
    expect(remedy).toContain("mix-from: nearer");
    expect(remedy).toContain("loambook site");
  });

  it("says so where the study does not tell what was tested", () => {
    const [{ code, column }] = testedBlendFindings([{ id: "tested", name: "x", key: "tested" }]);
    expect([code, column]).toEqual(["blend-not-tested", "tested.shares"]);
  });
});
