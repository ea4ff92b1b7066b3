import type { ActiveSetProgramme } from "./activeSetProgramme.js";

/**
 * The largest breach of a condition or bound at `z`, relative to the sizes of the terms in its row
 * (`Σ|C_ij z_j| + |d_i|`), with a trace of the largest unknown so that rows of zeros stay calm.
 *
 * @param size Size of the unknowns where the search began: rounding of that size is no breach.
 */
export function relativeBreach(
  programme: ActiveSetProgramme,
  z: Float64Array,
  size: number,
): number {
  const { unknowns, conditions, limits, equalities, lower, upper } = programme;
  let largest = 1e-3 * size;
  for (const value of z) largest = Math.max(largest, Math.abs(value));
  let worst = 0;
  for (let j = 0; j < unknowns; j++) {
    const breach = Math.max(lower[j] - z[j], z[j] - upper[j], 0);
    if (breach > 0) worst = Math.max(worst, breach / (Math.abs(z[j]) + breach));
  }
  for (let i = 0; i < limits.length; i++) {
    let value = -limits[i];
    let terms = Math.abs(limits[i]);
    for (let j = 0; j < unknowns; j++) {
      const term = conditions[i * unknowns + j] * z[j];
      value += term;
      terms += Math.abs(term) + 1e-6 * Math.abs(conditions[i * unknowns + j]) * largest;
    }
    const breach = i < equalities ? Math.abs(value) : Math.max(value, 0);
    if (breach > 0) worst = Math.max(worst, breach / terms);
  }
  return worst;
}
