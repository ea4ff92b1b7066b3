import type { ActiveSetProgramme } from "./activeSetProgramme.js";
import { activeSetSolve } from "./activeSetSolve.js";

/**
 * Moves `z` (overwritten) to a nearby point that meets the conditions, or breaks them least.
 *
 * Least squares again: the breaches of the rows are minimised within the bounds, each inequality with
 * a slack unknown of its own, `C z + s = d, s >= 0`.
 *
 * @returns Iterations used.
 */
export function feasibleStart(programme: ActiveSetProgramme, z: Float64Array): number {
  const { unknowns, conditions, limits, equalities } = programme;
  for (let j = 0; j < unknowns; j++) {
    z[j] = Math.min(programme.upper[j], Math.max(programme.lower[j], z[j]));
  }
  const rows = limits.length;
  if (rows === 0) return 0;
  const wide = unknowns + rows - equalities;
  const matrix = new Float64Array(rows * wide);
  const start = new Float64Array(wide);
  start.set(z);
  for (let i = 0; i < rows; i++) {
    let room = limits[i];
    for (let j = 0; j < unknowns; j++) {
      matrix[i * wide + j] = conditions[i * unknowns + j];
      room -= conditions[i * unknowns + j] * z[j];
    }
    if (i < equalities) continue;
    matrix[i * wide + unknowns + i - equalities] = 1;
    start[unknowns + i - equalities] = Math.max(0, room);
  }
  const lower = new Float64Array(wide);
  const upper = new Float64Array(wide).fill(Infinity);
  lower.set(programme.lower);
  upper.set(programme.upper);
  const { iterations } = activeSetSolve(
    {
      unknowns: wide,
      rows,
      matrix,
      target: limits,
      conditions: new Float64Array(0),
      limits: new Float64Array(0),
      equalities: 0,
      lower,
      upper,
    },
    start,
  );
  z.set(start.subarray(0, unknowns));
  return iterations;
}
