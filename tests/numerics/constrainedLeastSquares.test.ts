import { describe, expect, it } from "vitest";
import {
  type ConstrainedProblem,
  constrainedLeastSquares,
} from "../../src/numerics/constrainedLeastSquares.js";
import { leastSquares } from "../../src/numerics/leastSquares.js";
import { createRandom } from "../../src/numerics/random.js";
import scipy from "../reference/constrainedLeastSquares.json" with { type: "json" };
import { bruteForceBounds } from "../support/bruteForceBounds.js";

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** Shares of `n` materials: `m` rows, sum to one, between random bounds. */
function randomShares(seed: number, m: number, n: number, spread = 1): Mutable<ConstrainedProblem> {
  const random = createRandom(seed);
  const draw = (length: number): number[] => Array.from({ length }, random.normal);
  const base = draw(m);
  return {
    matrix: draw(m).map((_, i) => draw(n).map((z) => base[i] + spread * z)),
    target: draw(m),
    equalities: { matrix: [new Array<number>(n).fill(1)], target: [1] },
    lower: Array.from({ length: n }, () => (random.uniform() * 0.6) / n),
    upper: Array.from({ length: n }, () => (1 + 2 * random.uniform()) / n),
  };
}

/** Asserts the Karush–Kuhn–Tucker conditions in the caller's own units, from the report alone. */
function expectOptimal(problem: ConstrainedProblem): void {
  const fit = constrainedLeastSquares(problem);
  expect(fit.status).toBe("ok");
  expect(fit.optimalityResidual).toBeLessThan(1e-9);
  expect(fit.infeasibility).toBeLessThan(1e-12);
  const { equalities, bounds, inequalities } = fit.multipliers;
  fit.x.forEach((value, j) => {
    let gradient = 0;
    let size = 0;
    problem.matrix.forEach((row, i) => {
      const w = problem.weights?.[i] ?? 1;
      gradient += 2 * w * row[j] * fit.residuals[i];
      size += 2 * w * Math.abs(row[j]) * (Math.abs(problem.target[i]) + Math.abs(fit.residuals[i]));
    });
    const forces =
      bounds[j] +
      equalities.reduce((sum, l, k) => sum + l * problem.equalities!.matrix[k][j], 0) -
      inequalities.reduce((sum, l, k) => sum + l * problem.inequalities!.matrix[k][j], 0);
    expect(Math.abs(gradient - forces)).toBeLessThanOrEqual(1e-9 * size);
    if (problem.lower?.[j] === problem.upper?.[j] && problem.lower) return;
    if (fit.activeBounds[j] === 0) expect(bounds[j]).toBe(0);
    expect(bounds[j] * fit.activeBounds[j]).toBeLessThanOrEqual(1e-9 * size);
    expect(value).toBeGreaterThanOrEqual(problem.lower?.[j] ?? -Infinity);
    expect(value).toBeLessThanOrEqual(problem.upper?.[j] ?? Infinity);
  });
  inequalities.forEach((l, k) => {
    expect(l).toBeGreaterThanOrEqual(-1e-9);
    if (!fit.activeInequalities[k]) expect(l).toBe(0);
  });
}

describe("constrainedLeastSquares against SciPy", () => {
  it("does as well as SciPy on each of 500 problems, and the same to 1e-8", () => {
    let same = 0;
    for (const p of scipy.problems) {
      const problem: ConstrainedProblem = {
        matrix: p.A,
        target: p.b,
        equalities: p.E && { matrix: p.E, target: p.f },
        inequalities: p.G && { matrix: p.G, limit: p.h },
        lower: p.lower,
        upper: p.upper,
      };
      const fit = constrainedLeastSquares(problem);
      expect(fit.status).toBe("ok");
      const size = p.b.reduce((sum, b) => sum + b * b, 0);
      // An answer that oversteps a condition may look better by its breach times what that costs.
      const forces = Object.values(fit.multipliers).flat();
      const bought = p.breach * forces.reduce((sum, l) => sum + Math.abs(l), 0) * 2;
      expect(fit.objective).toBeLessThanOrEqual(p.objective + 1e-13 * size + bought);
      if (Math.abs(fit.objective - p.objective) <= 1e-8 * p.objective + 1e-13 * size) same++;
    }
    expect(scipy.problems).toHaveLength(500);
    expect(same).toBe(500);
  });
});

describe("constrainedLeastSquares against every active set in turn", () => {
  for (let n = 2; n <= 6; n++) {
    it(`finds the best of all for ${n} unknowns`, () => {
      for (let seed = 0; seed < (n < 6 ? 25 : 10); seed++) {
        const p = randomShares(100 * n + seed, n + 3, n);
        const best = bruteForceBounds(p.matrix, p.target, p.lower!, p.upper!);
        const fit = constrainedLeastSquares(p);
        if (best === Infinity) {
          expect(fit.status).toBe("infeasible");
          continue;
        }
        expect(fit.status).toBe("ok");
        expect(Math.abs(fit.objective - best)).toBeLessThanOrEqual(1e-10 * best);
      }
    });
  }
});

describe("constrainedLeastSquares meets the optimality conditions", () => {
  it("on sums to one", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const p = randomShares(seed, 12, 2 + (seed % 9));
      p.upper = p.upper!.map((v) => v + 0.2);
      p.weights = p.target.map((_, i) => (i % 4) / 2);
      expectOptimal(p);
    }
  });

  it("with inequalities, fixed unknowns, open bounds and repeated equalities", () => {
    const random = createRandom(9);
    for (let round = 0; round < 200; round++) {
      const n = 2 + random.integer(7);
      const draw = (): number[] => Array.from({ length: n }, random.normal);
      const inside = draw();
      const along = (row: readonly number[]): number =>
        row.reduce((sum, v, j) => sum + v * inside[j], 0);
      const rows = Array.from({ length: 5 }, draw);
      const matrix = Array.from({ length: 3 + random.integer(10) }, draw);
      const row = draw();
      expectOptimal({
        matrix,
        target: matrix.map(() => 4 * random.normal()),
        equalities: {
          matrix: [row, row.map((v) => -2 * v)],
          target: [along(row), -2 * along(row)],
        },
        // A third of the limits pass through the inner point: degenerate corners.
        inequalities: {
          matrix: rows,
          limit: rows.map((g, i) => along(g) + (i % 3 === 0 ? 0 : random.uniform())),
        },
        lower: inside.map((v, j) => (j % 3 === 0 ? -Infinity : v - random.uniform())),
        upper: inside.map((v, j) => (j % 4 === 1 ? Infinity : v + random.uniform())),
      });
    }
  });

  it("where columns are nearly the same", () => {
    for (const spread of [1e-3, 1e-6, 1e-9]) {
      for (let seed = 1; seed <= 20; seed++) expectOptimal(randomShares(seed, 15, 5, spread));
    }
  });

  it("where the free minimum lies a thousand million times too far", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const p = randomShares(seed, 15, 5, 1e-9);
      p.upper = undefined;
      expectOptimal(p);
    }
  });

  it("at a corner where many limits meet", () => {
    const corner = Array.from({ length: 12 }, (_, k) => [Math.cos(k / 4), Math.sin(k / 4)]);
    expectOptimal({
      matrix: [
        [1, 0.1],
        [0, 1],
      ],
      target: [3, 4],
      inequalities: { matrix: corner, limit: corner.map(() => 0) },
    });
  });
});

describe("constrainedLeastSquares does not depend on units", () => {
  it("of columns, rows and limits", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const p = randomShares(seed, 10, 5);
      p.upper = p.upper!.map((v) => v + 0.2);
      const base = constrainedLeastSquares(p);
      for (const factor of [1e-6, 1e6]) {
        // Unknown j measured in units `factor` times smaller for odd j.
        const unit = p.lower!.map((_, j) => (j % 2 ? factor : 1));
        const moved = constrainedLeastSquares({
          matrix: p.matrix.map((row) => row.map((v, j) => v * unit[j] * factor)),
          target: p.target.map((v) => v * factor),
          equalities: { matrix: [unit.map((v) => v / 7)], target: [1 / 7] },
          lower: p.lower!.map((v, j) => v / unit[j]),
          upper: p.upper!.map((v, j) => v / unit[j]),
        });
        expect(moved.status).toBe("ok");
        expect(moved.activeBounds).toEqual(base.activeBounds);
        moved.x.forEach((v, j) => {
          expect(Math.abs(v * unit[j] - base.x[j])).toBeLessThan(1e-9);
        });
        expect(Math.abs(moved.objective / factor ** 2 / base.objective - 1)).toBeLessThan(1e-9);
      }
    }
  });
});

describe("constrainedLeastSquares in special cases", () => {
  it("is plain least squares without conditions", () => {
    const p = randomShares(5, 9, 4);
    const plain = leastSquares(p.matrix, p.target);
    const fit = constrainedLeastSquares({ matrix: p.matrix, target: p.target });
    fit.x.forEach((v, j) => {
      expect(v).toBeCloseTo(plain.coefficients[j], 12);
    });
    expect(fit.rank).toBe(4);
    expect(fit.unique).toBe(true);
    expect(fit.condition / plain.condition).toBeLessThan(4);
    expect(fit.condition / plain.condition).toBeGreaterThan(0.25);
  });

  it("says that equal columns may share as they like", () => {
    const p: ConstrainedProblem = {
      matrix: [
        [1, 1, 3],
        [2, 2, 1],
        [3, 3, 0],
      ],
      target: [2, 1.6, 1.4],
      equalities: { matrix: [[1, 1, 1]], target: [1] },
      lower: [0, 0, 0],
    };
    expectOptimal(p);
    const fit = constrainedLeastSquares(p);
    expect(fit.unique).toBe(false);
    expect(fit.rank).toBe(2);
    const merged = constrainedLeastSquares({
      ...p,
      matrix: p.matrix.map(([, b, c]) => [b, c]),
      equalities: { matrix: [[1, 1]], target: [1] },
      lower: [0, 0],
    });
    expect(merged.unique).toBe(true);
    expect(fit.objective).toBeCloseTo(merged.objective, 12);
    expect(fit.x[0] + fit.x[1]).toBeCloseTo(merged.x[0], 12);
  });

  it("says by -1, 0 and 1 which bound each unknown lies on", () => {
    const fit = constrainedLeastSquares({
      matrix: [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      target: [-1, 0.5, 2],
      lower: [0, 0, 0],
      upper: [1, 1, 1],
    });
    expect(fit.x).toEqual([0, 0.5, 1]);
    expect(fit.activeBounds).toEqual([-1, 0, 1]);
    expect(fit.residuals).toEqual([1, 0, -1]);
    expect(fit.objective).toBe(2);
    // Half a unit more at a bound: (1 ± e)² changes by 2 e.
    expect(fit.multipliers.bounds).toEqual([2, 0, -2]);
  });

  it("takes fewer rows than unknowns", () => {
    const p: ConstrainedProblem = {
      matrix: [[1, 2, 3, 4]],
      target: [2.5],
      equalities: { matrix: [[1, 1, 1, 1]], target: [1] },
      lower: [0, 0, 0, 0],
    };
    const fit = constrainedLeastSquares(p);
    expect(fit.objective).toBeLessThan(1e-25);
    expect(fit.unique).toBe(false);
    expectOptimal(p);
  });

  it("reports the multiplier as what a condition costs", () => {
    const p = randomShares(12, 8, 4);
    const objective = (f: number): number =>
      constrainedLeastSquares({ ...p, equalities: { matrix: [[1, 1, 1, 1]], target: [f] } })
        .objective;
    const cost = constrainedLeastSquares(p).multipliers.equalities[0];
    const slope = (objective(1 + 1e-5) - objective(1 - 1e-5)) / 2e-5;
    expect(Math.abs(slope - cost)).toBeLessThan(1e-6 * Math.abs(cost));
  });

  it("returns the point that breaks contradicting conditions least", () => {
    const fit = constrainedLeastSquares({
      matrix: [
        [1, 0],
        [0, 1],
      ],
      target: [0, 0],
      equalities: { matrix: [[1, 1]], target: [1] },
      upper: [0.2, 0.3],
    });
    expect(fit.status).toBe("infeasible");
    expect(fit.x).toEqual([0.2, 0.3]);
    expect(fit.infeasibility).toBeGreaterThan(0.2);
    expect(fit.multipliers.equalities).toEqual([NaN]);
  });

  it("counts bounds that sum to one only up to rounding as feasible", () => {
    const fit = constrainedLeastSquares({
      matrix: [[1, 2, 3]],
      target: [0],
      equalities: { matrix: [[1, 1, 1]], target: [1] },
      lower: [0.1, 0.2, 0.7],
      upper: [1, 1, 1],
    });
    expect(fit.status).toBe("ok");
    expect(fit.x[2]).toBeCloseTo(0.7, 14);
  });

  it("refuses misuse by name and value", () => {
    expect(() => constrainedLeastSquares({ matrix: [], target: [] })).toThrow("invalid `matrix`");
    const p = { matrix: [[1, 2]], target: [1] };
    expect(() => constrainedLeastSquares({ ...p, lower: [0] })).toThrow(
      new TypeError("invalid `lower`: 1 values; expected 2"),
    );
    expect(() => constrainedLeastSquares({ ...p, lower: [0, 2], upper: [1, 1] })).toThrow(
      new RangeError("invalid `lower[1]`: 2; expected at most 1"),
    );
    // The same number on both sides is no crossing: it fixes the unknown.
    expect(constrainedLeastSquares({ ...p, lower: [0, 1], upper: [9, 1] }).x[1]).toBe(1);
    expect(() => constrainedLeastSquares({ ...p, lower: [0, Infinity] })).toThrow(
      new RangeError("invalid `lower[1]`: Infinity; expected a number or -Infinity"),
    );
    expect(() => constrainedLeastSquares({ ...p, upper: [1, NaN] })).toThrow(
      "invalid `upper[1]`: NaN; expected a number or Infinity",
    );
    expect(() =>
      constrainedLeastSquares({ ...p, equalities: { matrix: [[1]], target: [1] } }),
    ).toThrow("invalid `equalities.matrix[0]`: 1 values; expected 2");
  });
});
