import type { ScaledProgramme } from "./scaledProgramme.js";
import type { WorkingSet } from "./workingSet.js";

/**
 * How far a point and its multipliers are from the Karush–Kuhn–Tucker conditions: the largest entry
 * of `Aᵀ(A z - b) - Cᵀ λ - μ` and the largest multiplier of the wrong sign, relative to
 * `‖ |A| |z| ‖ + ‖b‖`, the terms of the residual (the columns of A have about unit length). Uses the whole matrix, not its triangle, so
 * that it checks the reduction as well.
 */
export function kktResidual(scaled: ScaledProgramme, set: WorkingSet, z: Float64Array): number {
  const { matrix, target, programme } = scaled;
  const { unknowns, conditions, limits, equalities, lower, upper } = programme;
  const rows = target.length;
  const residual = new Float64Array(rows);
  let size = 0;
  let targetSize = 0;
  for (let i = 0; i < rows; i++) {
    let value = 0;
    let terms = 0;
    for (let j = 0; j < unknowns; j++) {
      const term = matrix[j * rows + i] * z[j];
      value += term;
      terms += Math.abs(term);
    }
    residual[i] = value - target[i];
    size += terms * terms;
    targetSize += target[i] * target[i];
  }
  let worst = 0;
  for (let j = 0; j < unknowns; j++) {
    const multiplier = set.boundMultipliers[j];
    let value = -multiplier;
    for (let i = 0; i < rows; i++) value += matrix[j * rows + i] * residual[i];
    for (let c = 0; c < limits.length; c++) {
      value -= conditions[c * unknowns + j] * set.rowMultipliers[c];
    }
    const wrong = lower[j] === upper[j] ? 0 : multiplier * set.bounds[j];
    worst = Math.max(worst, Math.abs(value), wrong);
  }
  for (let c = equalities; c < limits.length; c++) worst = Math.max(worst, set.rowMultipliers[c]);
  const scale = Math.sqrt(size) + Math.sqrt(targetSize);
  return scale > 0 ? worst / scale : worst;
}
