import { findRoot } from "../numerics/findRoot.js";

/** Steps that the tested range is looked at in; a curve that turns twice within one would be missed. */
const STEPS = 100;

/**
 * The smallest content in a range from which a curve has reached zero: `start` where it has at the
 * lower end, null where it nowhere has.
 */
export function firstReach(
  curve: (cementPct: number) => number,
  fromPct: number,
  toPct: number,
): { readonly cementPct: number; readonly at: "start" | "inside" } | null {
  if (curve(fromPct) >= 0) return { cementPct: fromPct, at: "start" };
  let before = fromPct;
  for (let step = 1; step <= STEPS; step += 1) {
    const here = step === STEPS ? toPct : fromPct + ((toPct - fromPct) * step) / STEPS;
    if (curve(here) >= 0) return { cementPct: findRoot(curve, before, here), at: "inside" };
    before = here;
  }
  return null;
}
