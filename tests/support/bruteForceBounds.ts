import { leastSquares } from "../../src/numerics/leastSquares.js";

/**
 * The least objective of `‖A x - b‖²` over `sum x = 1, lower <= x <= upper`, by trying every choice of
 * unknowns on their bounds: slow, and shares no code with the active-set solver.
 */
export function bruteForceBounds(
  matrix: readonly (readonly number[])[],
  target: readonly number[],
  lower: readonly number[],
  upper: readonly number[],
): number {
  const n = lower.length;
  let best = Infinity;
  for (let code = 0; code < 3 ** n; code++) {
    const state = Array.from({ length: n }, (_, j) => Math.floor(code / 3 ** j) % 3);
    const x = state.map((s, j) => [0, lower[j], upper[j]][s]);
    const free = state.flatMap((s, j) => (s === 0 ? [j] : []));
    const rest = 1 - x.reduce((a, v) => a + v, 0);
    if (free.length > 0) {
      // The last free unknown takes what the sum leaves; the others are fitted.
      const last = free.pop()!;
      x[last] = rest;
      if (free.length > 0) {
        const fit = leastSquares(
          matrix.map((row) => free.map((j) => row[j] - row[last])),
          matrix.map((row, i) => target[i] - row.reduce((a, v, j) => a + v * x[j], 0)),
        );
        if (fit.status !== "ok") continue;
        free.forEach((j, k) => {
          x[j] = fit.coefficients[k];
          x[last] -= fit.coefficients[k];
        });
      }
    } else if (Math.abs(rest) > 1e-12) continue;
    if (x.some((v, j) => v < lower[j] - 1e-12 || v > upper[j] + 1e-12)) continue;
    const objective = matrix.reduce(
      (sum, row, i) => sum + (row.reduce((a, v, j) => a + v * x[j], 0) - target[i]) ** 2,
      0,
    );
    best = Math.min(best, objective);
  }
  return best;
}
