import type { WorkingSet } from "./workingSet.js";

/**
 * Whether no other point does as well: whether the directions that leave both the matrix and every
 * condition with a multiplier above rounding untouched are none. Conditions that cost nothing are let
 * go first, since another solution may lie behind them; so `false` says *may*, `true` is sure.
 *
 * Leaves the working set changed: call it last.
 */
export function isUniqueSolution(set: WorkingSet, z: Float64Array): boolean {
  const { reduced, bounds, held, programme, boundMultipliers, rowMultipliers } = set;
  if (reduced.rank < reduced.columns) return false;
  let size = 0;
  for (const value of programme.target) size += value * value;
  let length = 0;
  for (const value of z) length += Math.abs(value);
  const nothing = 1e-12 * (Math.sqrt(size) + length);
  for (let j = 0; j < bounds.length; j++) {
    if (programme.lower[j] === programme.upper[j]) continue;
    if (Math.abs(boundMultipliers[j]) <= nothing) bounds[j] = 0;
  }
  for (let i = programme.equalities; i < held.length; i++) {
    if (Math.abs(rowMultipliers[i]) <= nothing) held[i] = 0;
  }
  set.factorise();
  return reduced.rank === reduced.columns;
}
