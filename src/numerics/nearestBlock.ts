import type { WorkingSet } from "./workingSet.js";

/** How far a step may go, and which condition stops it; -1 where none does. */
export interface Block {
  /** 0 to 1. */
  length: number;
  /** Unknown `j` on a bound as `j`, row `i` of the conditions as `unknowns + i`. */
  condition: number;
}

/** A slope this small beside the step is rounding noise. */
const NOISE = 1e-14;

/**
 * Walks from `z` along the working set's direction until a condition not held would be broken.
 *
 * @param lowestFirst Among conditions met at the same length take the lowest number (Bland's rule,
 *   which cannot cycle) rather than the one crossed most steeply.
 */
export function nearestBlock(set: WorkingSet, z: Float64Array, lowestFirst: boolean): Block {
  const { direction, bounds, held, programme } = set;
  const { unknowns, lower, upper, conditions, limits } = programme;
  const block: Block = { length: 1, condition: -1 };
  let steepest = 0;
  let longest = 0;
  for (let j = 0; j < unknowns; j++) longest = Math.max(longest, Math.abs(direction[j]));
  const meet = (condition: number, room: number, slope: number): void => {
    const length = Math.max(0, room / slope);
    if (length > block.length) return;
    if (length === block.length && (lowestFirst || slope <= steepest)) return;
    block.length = length;
    block.condition = condition;
    steepest = slope;
  };
  for (let j = 0; j < unknowns; j++) {
    const slope = direction[j];
    if (bounds[j] !== 0 || Math.abs(slope) <= NOISE * longest) continue;
    if (slope < 0 && lower[j] > -Infinity) meet(j, z[j] - lower[j], -slope);
    if (slope > 0 && upper[j] < Infinity) meet(j, upper[j] - z[j], slope);
  }
  for (let i = programme.equalities; i < limits.length; i++) {
    if (held[i]) continue;
    let slope = 0;
    let room = limits[i];
    for (let j = 0; j < unknowns; j++) {
      slope += conditions[i * unknowns + j] * direction[j];
      room -= conditions[i * unknowns + j] * z[j];
    }
    if (slope > NOISE * longest) meet(unknowns + i, room, slope);
  }
  return block;
}
