import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { passingAtSize, sizeAtPassing } from "../../src/grading/curve.js";
import { curveOf } from "./gradingCases.js";

const CURVE = curveOf([0.063, 5], [0.25, 18], [1, 55], [4, 82], [16, 100]);

describe("the monotone cubic reading", () => {
  it("meets the points, never falls, and stays between them", () => {
    const steps = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), {
      minLength: 3,
      maxLength: 9,
    });
    fc.assert(
      fc.property(steps, (given) => {
        let passing = 0;
        const curve = curveOf(
          ...given.map((step, i): [number, number] => {
            passing = Math.min(100, passing + step);
            return [0.01 * 2 ** i, passing];
          }),
        );
        const { points } = curve;
        let before = 0;
        for (let x = 0; x <= 1; x += 0.01) {
          const size = points[0].sizeMm * (points.at(-1)!.sizeMm / points[0].sizeMm) ** x;
          const pct = passingAtSize(
            curve,
            Math.min(size, points.at(-1)!.sizeMm),
            "monotone-cubic",
          )!;
          expect(pct).toBeGreaterThanOrEqual(before - 1e-9);
          before = pct;
        }
        for (const { sizeMm, passingPct } of points) {
          expect(passingAtSize(curve, sizeMm, "monotone-cubic")).toBe(passingPct);
        }
      }),
    );
  });

  it("size and passing are each other's inverse, and differ a little from the straight reading", () => {
    for (const pct of [10, 30, 50, 60, 90]) {
      const size = sizeAtPassing(CURVE, pct, "monotone-cubic")!;
      expect(passingAtSize(CURVE, size, "monotone-cubic")).toBeCloseTo(pct, 9);
      expect(Math.abs(Math.log(size / sizeAtPassing(CURVE, pct)!))).toBeLessThan(0.2);
    }
    expect(sizeAtPassing(CURVE, 30, "monotone-cubic")).not.toBe(sizeAtPassing(CURVE, 30));
  });

  it("claims no more than the straight reading does outside the points", () => {
    expect(passingAtSize(CURVE, 0.01, "monotone-cubic")).toBeUndefined();
    expect(passingAtSize(CURVE, 60, "monotone-cubic")).toBe(100);
    expect(sizeAtPassing(CURVE, 2, "monotone-cubic")).toBeUndefined();
  });
});
