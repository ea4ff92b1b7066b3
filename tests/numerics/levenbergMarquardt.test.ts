import { describe, expect, it } from "vitest";
import { leastSquares } from "../../src/numerics/leastSquares.js";
import { levenbergMarquardt } from "../../src/numerics/levenbergMarquardt.js";
import nist from "../reference/nistNonlinear.json" with { type: "json" };
import { digits } from "../support/digits.js";

type Model = (b: readonly number[], x: number) => number;

const cubicRatio: Model = ([b1, b2, b3, b4, b5, b6, b7], x) =>
  (b1 + x * (b2 + x * (b3 + x * b4))) / (1 + x * (b5 + x * (b6 + x * b7)));

const MODELS: Record<string, Model> = {
  "strd-misra1a": ([b1, b2], x) => b1 * (1 - Math.exp(-b2 * x)),
  "strd-hahn1": cubicRatio,
  "strd-rat43": ([b1, b2, b3, b4], x) => b1 / (1 + Math.exp(b2 - b3 * x)) ** (1 / b4),
  "strd-thurber": cubicRatio,
};

describe("levenbergMarquardt on the NIST Statistical Reference Datasets", () => {
  for (const set of nist) {
    const published = set.published.params as Record<string, number[]>;
    const names = Object.keys(published);
    const starts = set.input.starts as Record<string, number[]>;
    for (const which of [0, 1]) {
      it(`matches ${set.source} from start ${which + 1}`, () => {
        const fit = levenbergMarquardt({
          residuals: (b) => set.input.rows.map(([y, x]) => y - MODELS[set.id](b, x)),
          start: names.map((name) => starts[name][which]),
        });
        const values = Math.min(...names.map((b, j) => digits(fit.parameters[j], published[b][0])));
        const errors = Math.min(
          ...names.map((b, j) => digits(fit.standardErrors[j], published[b][1])),
        );
        expect(fit.status).toBe("converged");
        expect(values).toBeGreaterThanOrEqual(10);
        expect(errors).toBeGreaterThanOrEqual(8);
        expect(digits(fit.residualSumOfSquares, set.published.rss)).toBeGreaterThanOrEqual(10);
        expect(digits(fit.residualSd, set.published.rsd)).toBeGreaterThanOrEqual(9);
        // The file for Rat43 prints 9 degrees of freedom; its own residual deviation needs 11.
        expect(fit.degreesOfFreedom).toBe(set.input.rows.length - names.length);
      });
    }
  }
});

describe("levenbergMarquardt", () => {
  const days = [1, 2, 3, 5, 7, 10, 14, 21, 28];
  const noise = [0.05, -0.02, 0.03, -0.06, 0.04, 0.01, -0.03, 0.02, -0.01];
  const curve = (b: readonly number[], t: number): number => b[0] * (1 - Math.exp(-b[1] * t));
  const observed = days.map((t, i) => curve([3.7, 0.2], t) + noise[i]);
  const residuals = (b: readonly number[]): number[] =>
    days.map((t, i) => curve(b, t) - observed[i]);

  it("agrees with linear least squares on a line", () => {
    const linear = leastSquares(
      days.map((t) => [1, t]),
      observed,
    );
    const fit = levenbergMarquardt({
      residuals: ([a, b]) => days.map((t, i) => a + b * t - observed[i]),
      start: [0, 0],
    });
    for (const j of [0, 1]) {
      expect(digits(fit.parameters[j], linear.coefficients[j])).toBeGreaterThanOrEqual(10);
      expect(digits(fit.standardErrors[j], linear.standardErrors[j])).toBeGreaterThanOrEqual(9);
    }
    expect(digits(fit.covariance[0][1], linear.covariance[0][1])).toBeGreaterThanOrEqual(9);
    expect(fit.correlation[0][0]).toBe(1);
    expect(fit.correlation[1][0]).toBeCloseTo(
      linear.covariance[0][1] / linear.standardErrors[0] / linear.standardErrors[1],
      9,
    );
  });

  it("returns to the parameters that made exact data", () => {
    const exact = days.map((t) => curve([3.7, 0.2], t));
    const fit = levenbergMarquardt({
      residuals: (b) => days.map((t, i) => curve(b, t) - exact[i]),
      start: [1, 1],
    });
    expect(fit.status).toBe("converged");
    expect(digits(fit.parameters[0], 3.7)).toBeGreaterThanOrEqual(12);
    expect(digits(fit.parameters[1], 0.2)).toBeGreaterThanOrEqual(12);
  });

  it("gives the same fit from a given Jacobian, with fewer calls", () => {
    const plain = levenbergMarquardt({ residuals, start: [1, 1] });
    const given = levenbergMarquardt({
      residuals,
      start: [1, 1],
      jacobian: ([a, k], into) => {
        days.forEach((t, i) => {
          into[i] = 1 - Math.exp(-k * t);
          into[days.length + i] = a * t * Math.exp(-k * t);
        });
      },
    });
    expect(given.status).toBe("converged");
    expect(digits(given.parameters[1], plain.parameters[1])).toBeGreaterThanOrEqual(11);
    expect(given.evaluations).toBeLessThan(plain.evaluations);
  });

  it("does not depend on the units of parameters or residuals", () => {
    const base = levenbergMarquardt({ residuals, start: [1, 1] });
    for (const unit of [1e-6, 1e6]) {
      const fit = levenbergMarquardt({
        residuals: ([a, k]) => residuals([a * unit, k / unit]).map((r) => r * unit),
        start: [1 / unit, unit],
      });
      expect(fit.status).toBe("converged");
      expect(digits(fit.parameters[0] * unit, base.parameters[0])).toBeGreaterThanOrEqual(10);
      expect(digits(fit.parameters[1] / unit, base.parameters[1])).toBeGreaterThanOrEqual(10);
      expect(digits(fit.standardErrors[1] / unit, base.standardErrors[1])).toBeGreaterThanOrEqual(
        8,
      );
    }
  });

  it("stops on bounds and says which, fitting the others as if that one were given", () => {
    let [least, most] = [Infinity, -Infinity];
    const fit = levenbergMarquardt({
      residuals: (b) => {
        least = Math.min(least, b[1]);
        most = Math.max(most, b[1]);
        return residuals(b);
      },
      start: [1, 0.3],
      lower: [0, 0.25],
      upper: [10, 0.4],
    });
    expect(fit.status).toBe("converged");
    expect(fit.activeBounds).toEqual([0, -1]);
    expect(fit.parameters[1]).toBe(0.25);
    expect([least, most].every((k) => k >= 0.25 && k <= 0.4)).toBe(true);
    const given = leastSquares(
      days.map((t) => [1 - Math.exp(-0.25 * t)]),
      observed,
    );
    expect(digits(fit.parameters[0], given.coefficients[0])).toBeGreaterThanOrEqual(10);
    expect(fit.standardErrors[1]).toBeNaN();
    expect(fit.standardErrors[0]).toBeGreaterThan(0);
  });

  it.each([
    ["below its upper", { upper: [1 + 1e-8, Infinity] }],
    ["above its lower", { lower: [1 - 1e-8, -Infinity] }],
  ])("knows the standard errors of a parameter just %s bound", (_, bound) => {
    // About a line of 1 + 2 t the errors are those of linear least squares.
    const off = [0.1, -0.2, 0.1, 0, 0.1, -0.2, 0.1];
    const times = [-3, -2, -1, 0, 1, 2, 3];
    const ys = times.map((t, i) => 1 + 2 * t + off[i]);
    const linear = leastSquares(
      times.map((t) => [1, t]),
      ys,
    );
    const fit = levenbergMarquardt({
      residuals: ([a, b]) => times.map((t, i) => a + b * t - ys[i]),
      start: [1, 1],
      ...bound,
    });
    expect([fit.status, fit.activeBounds]).toEqual(["converged", [0, 0]]);
    expect(linear.coefficients[0]).toBeCloseTo(1, 14);
    fit.standardErrors.forEach((error, j) => {
      expect(digits(error, linear.standardErrors[j])).toBeGreaterThanOrEqual(8);
    });
  });

  it("stops on an upper bound, and never looks beyond it", () => {
    let most = -Infinity;
    const fit = levenbergMarquardt({
      residuals: (b) => {
        most = Math.max(most, b[1]);
        return residuals(b);
      },
      start: [1, 0.1],
      lower: [0, 0.01],
      upper: [10, 0.15],
    });
    expect(fit.status).toBe("converged");
    expect(fit.activeBounds).toEqual([0, 1]);
    expect([fit.parameters[1], most]).toEqual([0.15, 0.15]);
    const given = leastSquares(
      days.map((t) => [1 - Math.exp(-0.15 * t)]),
      observed,
    );
    expect(digits(fit.parameters[0], given.coefficients[0])).toBeGreaterThanOrEqual(10);
  });

  it("leaves a bound it starts on when the data say so, and keeps a fixed parameter", () => {
    const fit = levenbergMarquardt({ residuals, start: [1, 0.05], lower: [0, 0.05] });
    const free = levenbergMarquardt({ residuals, start: [1, 1] });
    expect(fit.activeBounds).toEqual([0, 0]);
    expect(digits(fit.parameters[1], free.parameters[1])).toBeGreaterThanOrEqual(10);
    const fixed = levenbergMarquardt({
      residuals,
      start: [1, 0.2],
      lower: [0, 0.2],
      upper: [9, 0.2],
    });
    expect(fixed.parameters[1]).toBe(0.2);
    expect(fixed.status).toBe("converged");
  });

  it("marks a parameter the data say nothing about", () => {
    const fit = levenbergMarquardt({ residuals: ([a, k]) => residuals([a, k]), start: [1, 1, 5] });
    expect(fit.status).toBe("converged");
    expect(fit.unmoved).toEqual([false, false, true]);
    expect(fit.standardErrors.every(Number.isNaN)).toBe(true);
  });

  it("steps around regions where the residuals are not finite", () => {
    const fit = levenbergMarquardt({
      residuals: ([a]) => days.map((t) => Math.log(a) * t - 0.1 * t),
      start: [30],
    });
    expect(fit.status).toBe("converged");
    expect(fit.parameters[0]).toBeCloseTo(Math.exp(0.1), 10);
  });

  it("owns up to a bad start, to the limit of iterations and to no progress", () => {
    const bad = levenbergMarquardt({ residuals: ([a]) => [Math.log(a), 1], start: [-1] });
    expect(bad.status).toBe("invalid-start");
    expect(bad.message).toBe("residual 0 is NaN at the start");
    const outside = levenbergMarquardt({ residuals, start: [1, 5], upper: [9, 1] });
    expect(outside.status).toBe("invalid-start");
    const few = levenbergMarquardt({ residuals: ([a, b]) => [a + b], start: [1, 1] });
    expect(few.message).toBe("1 residuals cannot settle 2 parameters");
    const enough = levenbergMarquardt({ residuals: ([a, b]) => [a - 3, b - 4], start: [1, 1] });
    expect(enough.status).toBe("converged");
    const short = levenbergMarquardt({ residuals, start: [1, 1], maxIterations: 2 });
    expect(short.status).toBe("iteration-limit");
    expect(short.standardErrors[0]).toBeGreaterThan(0);
    // A Jacobian of the wrong sign promises falls that never come.
    const wrong = levenbergMarquardt({
      residuals,
      start: [1, 1],
      jacobian: ([a, k], into) => {
        days.forEach((t, i) => {
          into[i] = Math.exp(-k * t) - 1;
          into[days.length + i] = -a * t * Math.exp(-k * t);
        });
      },
    });
    expect(wrong.status).toBe("no-progress");
    expect(wrong.unmoved).toEqual([true, true]);
  });

  it("refuses misuse by name and value", () => {
    expect(() => levenbergMarquardt({ residuals, start: [1, 1], lower: [0] })).toThrow(
      new TypeError("invalid `lower`: 1 values; expected 2"),
    );
    expect(() =>
      levenbergMarquardt({ residuals, start: [1, 1], lower: [0, 2], upper: [5, 1] }),
    ).toThrow("invalid `lower[1]`: 2; expected at most 1");
    let calls = 0;
    expect(() =>
      levenbergMarquardt({ residuals: () => (calls++ ? [1] : [1, 2]), start: [1] }),
    ).toThrow("invalid `residuals`: 1 values; expected 2");
  });
});
