import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastSquares } from "../../src/numerics/leastSquares.js";
import nist from "../reference/nistLinear.json" with { type: "json" };
import { digits } from "../support/digits.js";

type Row = readonly number[];

/** Designs of the NIST models, and the certified digits we hold ourselves to. */
const SETS: Record<
  string,
  { row: (x: Row) => number[]; coefficient: number; error: number; sd: number }
> = {
  "strd-norris": { row: ([x]) => [1, x], coefficient: 13, error: 13, sd: 13 },
  "strd-noint1": { row: ([x]) => [x], coefficient: 14, error: 14, sd: 14 },
  "strd-longley": { row: (x) => [1, ...x], coefficient: 13, error: 12, sd: 14 },
  // The tenth powers reach us already rounded to doubles; with nearly parallel columns that
  // rounding alone moves the exact solution in the eighth digit, however it is solved.
  "strd-filip": {
    row: ([x]) => Array.from({ length: 11 }, (_, k) => x ** k),
    coefficient: 7,
    error: 7,
    sd: 8,
  },
  "strd-pontius": { row: ([x]) => [1, x, x * x], coefficient: 13, error: 13, sd: 13 },
};

interface Published {
  b0?: number;
  b1?: number;
  b?: number[];
  se?: number[] | number;
  se_b0?: number;
  se_b1?: number;
  s: number;
  r2?: number;
  r2_uncentred?: number;
}

describe("leastSquares on the NIST Statistical Reference Datasets", () => {
  for (const set of nist) {
    it(`matches ${set.source}`, () => {
      const wanted = SETS[set.id];
      const published = set.published as Published;
      const coefficients =
        published.b ?? [published.b0, published.b1].filter((b) => b !== undefined);
      const errors = [published.se ?? [published.se_b0!, published.se_b1!]].flat();
      const fit = leastSquares(
        set.input.rows.map(([, ...x]) => wanted.row(x)),
        set.input.rows.map(([y]) => y),
      );
      expect(fit.status).toBe("ok");
      expect(fit.coefficients).toHaveLength(coefficients.length);
      const reached = Math.min(...coefficients.map((b, j) => digits(fit.coefficients[j], b!)));
      expect(reached).toBeGreaterThanOrEqual(wanted.coefficient);
      const reachedErrors = Math.min(...errors.map((se, j) => digits(fit.standardErrors[j], se)));
      expect(reachedErrors).toBeGreaterThanOrEqual(wanted.error);
      expect(digits(fit.residualSd, published.s)).toBeGreaterThanOrEqual(wanted.sd);
      const r2 = published.r2 ?? published.r2_uncentred;
      if (r2 !== undefined) expect(digits(fit.rSquared, r2)).toBeGreaterThanOrEqual(13);
      expect(fit.rSquaredKind).toBe(set.id === "strd-noint1" ? "uncentred" : "centred");
    });
  }
});

describe("Filip's data in a basis that doubles hold well", () => {
  it("reaches the certified residual standard deviation in Chebyshev polynomials", () => {
    const filip = nist.find((set) => set.id === "strd-filip")!;
    const [low, high] = [-8.8, -3.1];
    const fit = leastSquares(
      filip.input.rows.map(([, x]) => {
        const angle = Math.acos((2 * x - low - high) / (high - low));
        return Array.from({ length: 11 }, (_, k) => Math.cos(k * angle));
      }),
      filip.input.rows.map(([y]) => y),
    );
    expect(digits(fit.residualSd, (filip.published as Published).s)).toBeGreaterThanOrEqual(13);
  });
});

describe("leastSquares", () => {
  const xs = [1, 2, 4, 5, 8, 9, 11];
  const ys = [2.1, 2.9, 5.2, 6.1, 8.7, 10.3, 11.8];
  const line = xs.map((x) => [1, x]);

  it("gives leverages that sum to the rank and residuals square to the columns", () => {
    const fit = leastSquares(line, ys);
    const sum = fit.leverages.reduce((total, h) => total + h, 0);
    expect(sum).toBeCloseTo(2, 12);
    const mean = xs.reduce((a, b) => a + b) / xs.length;
    const sxx = xs.reduce((a, x) => a + (x - mean) ** 2, 0);
    for (const [i, x] of xs.entries()) {
      expect(fit.leverages[i]).toBeCloseTo(1 / xs.length + (x - mean) ** 2 / sxx, 12);
    }
    expect(fit.residuals.reduce((a, r) => a + r, 0)).toBeCloseTo(0, 12);
  });

  it("treats a whole weight as a repeated row, and 0 as a row left out", () => {
    const weights = [2, 1, 1, 3, 1, 0, 1];
    const repeated = weights.flatMap((w, i) => new Array<number>(w).fill(i));
    const weighted = leastSquares(line, ys, { weights });
    const plain = leastSquares(
      repeated.map((i) => line[i]),
      repeated.map((i) => ys[i]),
    );
    expect(weighted.coefficients[0]).toBeCloseTo(plain.coefficients[0], 12);
    expect(weighted.coefficients[1]).toBeCloseTo(plain.coefficients[1], 12);
    expect(weighted.residualSumOfSquares).toBeCloseTo(plain.residualSumOfSquares, 12);
    expect(weighted.rSquared).toBeCloseTo(plain.rSquared, 12);
    expect(weighted.degreesOfFreedom).toBe(4);
    expect(weighted.leverages[5]).toBe(0);
    expect(weighted.unscaledCovariance[1][0]).toBeCloseTo(plain.unscaledCovariance[1][0], 12);
  });

  it("names equal columns as rank-deficient in any units, still with the right fitted values", () => {
    for (const factor of [1, 1e-6, 1e6]) {
      const fit = leastSquares(
        xs.map((x) => [1, x * factor, x]),
        ys,
      );
      expect(fit.status).toBe("rank-deficient");
      expect(fit.rank).toBe(2);
      expect(fit.condition).toBe(Infinity);
      expect(fit.standardErrors).toEqual([NaN, NaN, NaN]);
      leastSquares(line, ys).fitted.forEach((value, i) => {
        expect(fit.fitted[i]).toBeCloseTo(value, 10);
      });
    }
  });

  it("says so when there are fewer points than coefficients, or just as many", () => {
    const few = leastSquares([[1, 2]], [3]);
    expect(few.status).toBe("too-few-points");
    expect(few.coefficients).toEqual([NaN, NaN]);
    const zeros = leastSquares(line, ys, { weights: [1, 0, 0, 0, 0, 0, 0] });
    expect(zeros.status).toBe("too-few-points");
    const exact = leastSquares(line.slice(0, 2), ys.slice(0, 2));
    expect(exact.status).toBe("ok");
    expect(exact.residualSd).toBeNaN();
    expect(exact.message).toContain("no standard errors");
  });

  it("does not depend on the units of columns or response", () => {
    const number = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number, number), { minLength: 6, maxLength: 12 }),
        fc.constantFrom(1e-6, 1e6, 3e-150, 7e120),
        (points, factor) => {
          const x = points.map(([a], i) => a + 20 * i);
          const y = points.map(([, b], i) => b + i);
          const base = leastSquares(
            x.map((v) => [1, v]),
            y,
          );
          const moved = leastSquares(
            x.map((v) => [1, v * factor]),
            y,
          );
          expect(moved.status).toBe(base.status);
          expect(Math.abs(moved.coefficients[1] * factor - base.coefficients[1])).toBeLessThan(
            1e-11 * (Math.abs(base.coefficients[1]) + base.standardErrors[1]) + 1e-14,
          );
          expect(Math.abs(moved.condition / base.condition - 1)).toBeLessThan(3);
        },
      ),
    );
  });

  it("refuses misuse by name and value", () => {
    expect(() => leastSquares([], [])).toThrow("invalid `design`: 0 rows");
    expect(() => leastSquares([[1], [1, 2]], [1, 2])).toThrow(
      new TypeError("invalid `design[1]`: 2 values; expected 1"),
    );
    expect(() => leastSquares([[1], [NaN]], [1, 2])).toThrow(
      new RangeError("invalid `design[1][0]`: NaN; expected a finite number"),
    );
    expect(() => leastSquares([[1], [1]], [1, 2], { weights: [1, -1] })).toThrow(
      "invalid `weights[1]`: -1; expected a finite number, at least 0",
    );
  });
});
