import type { ActiveSetProgramme } from "./activeSetProgramme.js";
import { nearestBlock } from "./nearestBlock.js";
import { WorkingSet } from "./workingSet.js";

/**
 * Improves a point that meets the conditions until none of them, let go, would allow better.
 *
 * Primal active set: step to the minimum over the held conditions; where another condition stops the
 * step, hold it; at the minimum let go the condition with the most wrong multiplier. After steps of no
 * length, lowest numbers go first (Bland), so that it cannot circle. Source: Nocedal and Wright,
 * *Numerical Optimization*, ch. 16 (from memory).
 *
 * @param z A point that meets the conditions; overwritten with the solution.
 */
export function activeSetSolve(
  programme: ActiveSetProgramme,
  z: Float64Array,
): { set: WorkingSet; converged: boolean; iterations: number } {
  const { unknowns, lower, upper, limits } = programme;
  const set = new WorkingSet(programme);
  const most = 100 + 20 * (unknowns + limits.length);
  /** Conditions that, let go, came straight back: their multipliers are noise until z moves. */
  const barred = new Uint8Array(unknowns + limits.length);
  let released = -1;
  let stalled = 0;
  for (let iterations = 1; iterations <= most; iterations++) {
    if (set.factorise() > 0) {
      set.findDirection(z);
      const block = nearestBlock(set, z, stalled > unknowns);
      for (let j = 0; j < unknowns; j++) z[j] += block.length * set.direction[j];
      clamp(set, z);
      const at = block.condition;
      if (at >= 0) {
        if (at < unknowns) {
          set.bounds[at] = set.direction[at] < 0 ? -1 : 1;
          z[at] = set.direction[at] < 0 ? lower[at] : upper[at];
        } else set.held[at - unknowns] = 1;
        if (block.length > 0) barred.fill(0);
        if (block.length === 0 && at === released) barred[at] = 1;
        stalled = block.length > 0 ? 0 : stalled + 1;
        released = -1;
        continue;
      }
      stalled = 0;
    }
    set.findMultipliers(z);
    released = worstCondition(set, z, barred, stalled > unknowns);
    if (released < 0) return { set, converged: true, iterations };
    if (released < unknowns) set.bounds[released] = 0;
    else set.held[released - unknowns] = 0;
  }
  set.factorise();
  set.findMultipliers(z);
  return { set, converged: false, iterations: most };
}

/** Rounding must not carry a free unknown past its bound. */
function clamp(set: WorkingSet, z: Float64Array): void {
  const { lower, upper } = set.programme;
  for (let j = 0; j < z.length; j++) z[j] = Math.min(upper[j], Math.max(lower[j], z[j]));
}

/** The held condition whose multiplier has the wrong sign beyond rounding, or -1. */
function worstCondition(
  set: WorkingSet,
  z: Float64Array,
  barred: Uint8Array,
  lowestFirst: boolean,
): number {
  const { programme, bounds, held, boundMultipliers, rowMultipliers } = set;
  const { unknowns, lower, upper, limits, equalities, target } = programme;
  let size = 0;
  for (const value of target) size += value * value;
  let length = 0;
  for (const value of z) length += Math.abs(value);
  let worst = 16 * Number.EPSILON * (Math.sqrt(size) + length);
  let found = -1;
  for (let c = 0; c < unknowns + limits.length; c++) {
    let wrong: number;
    if (c < unknowns) {
      if (bounds[c] === 0 || lower[c] === upper[c] || barred[c]) continue;
      wrong = boundMultipliers[c] * bounds[c];
    } else {
      const row = c - unknowns;
      if (row < equalities || !held[row] || barred[c]) continue;
      wrong = rowMultipliers[row];
    }
    if (wrong > worst) {
      found = c;
      if (lowestFirst) return found;
      worst = wrong;
    }
  }
  return found;
}
