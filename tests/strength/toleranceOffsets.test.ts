import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundOffset, toleranceOffsets } from "../../src/strength/regression/bounds.js";

/** The largest error at every fourth leverage: one noncentral t each, so they are dear. */
const worst = (leverages: readonly number[], of: Parameters<typeof toleranceOffsets>[1]) => {
  const found = toleranceOffsets(leverages, of);
  return Math.max(
    ...leverages.map((leverage, index) => {
      if (index % 4 !== 1) return 0;
      const wanted = boundOffset({
        statistic: "tolerance",
        probability: 1 - of.confidence,
        coverage: of.coverage,
        leverage,
        degreesOfFreedom: of.degreesOfFreedom,
      });
      return Math.abs(found[index] - wanted) / Math.abs(wanted);
    }),
  );
};

describe("toleranceOffsets", () => {
  it("is within 1e-8 of the factors one by one, over the ranges that studies have", () => {
    for (const degreesOfFreedom of [1, 2, 5, 14, 300]) {
      for (const confidence of [0.75, 0.95, 0.99]) {
        const least = 1 / (degreesOfFreedom + 2);
        for (const stretch of [1.5, 15.9, 40]) {
          const leverages = Array.from(
            { length: 18 },
            (_, i) => least * (1 + ((stretch - 1) * i) / 17),
          );
          const of = { confidence, coverage: 0.95, degreesOfFreedom };
          expect(
            worst(leverages, of),
            `${degreesOfFreedom}, ${confidence}, ${stretch}`,
          ).toBeLessThan(1e-8);
        }
      }
    }
  }, 30_000);

  it("does not depend on the order or the company of the leverages", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 15, maxLength: 40 }),
        fc.integer({ min: 1, max: 60 }),
        (leverages, degreesOfFreedom) => {
          const of = { confidence: 0.95, coverage: 0.9, degreesOfFreedom };
          const together = toleranceOffsets(leverages, of);
          leverages.slice(0, 3).forEach((leverage, index) => {
            const [alone] = toleranceOffsets([leverage], of);
            expect(Math.abs(alone / together[index] - 1)).toBeLessThan(2e-8);
          });
        },
      ),
      { seed: 5, numRuns: 60 },
    );
  });
});
