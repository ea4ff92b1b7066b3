import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { combineGrading, poolAdjacent } from "../../src/grading/combinedGrading.js";
import type { GradingPoint } from "../../src/grading/curve.js";
import { render, renderAll } from "../../src/words/render.js";
import { frozen } from "./gradingCases.js";

const sieve = (...pairs: [number, number][]): GradingPoint[] =>
  pairs.map(([sizeMm, passingPct]) => ({ sizeMm, passingPct, origin: "sieve" }));
const settled = (...pairs: [number, number][]): GradingPoint[] =>
  pairs.map(([sizeMm, passingPct]) => ({ sizeMm, passingPct, origin: "sedimentation" }));
const file = "sheets/hydrometer.csv";

describe("combineGrading", () => {
  it("keeps the sieve down to its finest, sedimentation below", () => {
    const { curve, repairs, findings, overlap } = combineGrading({
      sieve: sieve([0.063, 30], [2, 80], [20, 100]),
      sedimentation: settled([0.002, 10], [0.02, 20], [0.1, 38]),
      file,
    });
    expect(curve.points.map(({ sizeMm, origin }) => [sizeMm, origin])).toEqual([
      [0.002, "sedimentation"],
      [0.02, "sedimentation"],
      [0.063, "sieve"],
      [2, "sieve"],
      [20, "sieve"],
    ]);
    expect(overlap?.sizeMm).toBe(0.063);
    expect(overlap?.differencePct).toBeCloseTo(20 + (18 * Math.log(3.15)) / Math.log(5) - 30, 9);
    expect([repairs, findings]).toEqual([[], []]);
  });

  it("tells a gap between the methods", () => {
    const { findings } = combineGrading({
      sieve: sieve([0.063, 30], [2, 100]),
      sedimentation: settled([0.002, 10], [0.063, 24]),
      file,
    });
    expect(renderAll(findings)).toMatchObject([
      { severity: "warning", code: "grading-overlap", file, value: "6.0 points" },
    ]);
  });

  it("repairs a curve that falls, and never in silence", () => {
    const input = frozen({
      sieve: sieve([0.063, 30], [2, 100]),
      sedimentation: settled([0.01, 20], [0.05, 34]),
      file,
    });
    const { curve, repairs, findings } = combineGrading(input);
    expect(curve.points.map(({ passingPct }) => passingPct)).toEqual([20, 32, 32, 100]);
    expect(repairs).toEqual([
      { sizeMm: 0.05, fromPct: 34, toPct: 32 },
      { sizeMm: 0.063, fromPct: 30, toPct: 32 },
    ]);
    expect(findings).toMatchObject([{ severity: "warning", code: "grading-repaired" }]);
    expect(render(findings[0].message)).toContain("0.0500 mm from 34.0 to 32.0 %");
  });

  it("does not depend on the order of the points", () => {
    const points = sieve([0.063, 30], [2, 80], [20, 100]);
    const there = combineGrading({ sieve: points, file });
    const back = combineGrading({ sieve: points.toReversed(), file });
    expect(back).toEqual(there);
  });

  it("refuses impossible points", () => {
    expect(() => combineGrading({ sieve: [], file })).toThrow(RangeError);
    expect(() => combineGrading({ sieve: sieve([1, 104.2]), file })).toThrow(
      "invalid `sieve[0].passingPct`: 104.2; expected 0 to 100",
    );
    expect(() => combineGrading({ sieve: sieve([1, 10], [1, 20]), file })).toThrow("1 mm twice");
    expect(() => combineGrading({ sieve: sieve([0, 10]), file })).toThrow(RangeError);
  });
});

describe("poolAdjacent", () => {
  it("pools a pool with what stands before it, each value counting once", () => {
    const third = (3 + 4 + 1) / 3;
    expect(poolAdjacent([3, 4, 1, 9])).toEqual([third, third, third, 9]);
    const all = (5 + 6 + 2 + 3 + 1) / 5;
    poolAdjacent([5, 6, 2, 3, 1]).forEach((value) => {
      expect(value).toBeCloseTo(all, 12);
    });
  });

  it("gives the nearest non-decreasing sequence", () => {
    const values = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(values, values, (given, other) => {
        const pooled = poolAdjacent(given);
        expect(pooled).toHaveLength(given.length);
        pooled.slice(1).forEach((value, index) => {
          expect(value).toBeGreaterThanOrEqual(pooled[index] - 1e-9);
        });
        // No other non-decreasing sequence is nearer.
        const rival = given.map((_, index) => other[index % other.length]).sort((a, b) => a - b);
        const distance = (sequence: number[]) =>
          sequence.reduce((sum, value, index) => sum + (value - given[index]) ** 2, 0);
        expect(distance(pooled)).toBeLessThanOrEqual(distance(rival) + 1e-9);
      }),
    );
  });
});
