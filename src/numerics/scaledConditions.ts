import type { ConstrainedProblem } from "./constrainedFit.js";

/**
 * The rows of equalities, then inequalities, in scaled unknowns, each multiplied by a power of two so
 * that its largest entry is near one.
 */
export function scaledConditions(
  problem: ConstrainedProblem,
  columnScale: Float64Array,
): { conditions: Float64Array; limits: Float64Array; rowScale: Float64Array } {
  const unknowns = columnScale.length;
  const rows = [...(problem.equalities?.matrix ?? []), ...(problem.inequalities?.matrix ?? [])];
  const given = [...(problem.equalities?.target ?? []), ...(problem.inequalities?.limit ?? [])];
  const conditions = new Float64Array(rows.length * unknowns);
  const rowScale = new Float64Array(rows.length);
  rows.forEach((row, i) => {
    let largest = 0;
    for (let j = 0; j < unknowns; j++) {
      largest = Math.max(largest, Math.abs(row[j] * columnScale[j]));
    }
    rowScale[i] = largest === 0 ? 1 : 2 ** -Math.round(Math.log2(largest));
    for (let j = 0; j < unknowns; j++) {
      conditions[i * unknowns + j] = row[j] * columnScale[j] * rowScale[i];
    }
  });
  return { conditions, limits: Float64Array.from(given, (v, i) => v * rowScale[i]), rowScale };
}
