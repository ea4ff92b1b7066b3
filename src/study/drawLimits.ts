import type { MeasuredConsistency } from "../guidance/guidanceCheck.js";
import { createRandom } from "../numerics/random.js";
import type { ConsistencyResult } from "../soil/consistencyResult.js";

/** Half of a 95 % interval in standard errors of a normal distribution. */
const HALF_95 = 1.96;

/**
 * Consistency limits as they could have come out: normal errors about the measured ones, as wide as
 * their own 95 % intervals. A limit without an interval stays where it was measured.
 */
export function drawLimits(
  limits: ConsistencyResult,
  count: number,
  seed: number,
): MeasuredConsistency[] {
  const random = createRandom(seed);
  const error = (interval: readonly [number, number] | undefined) =>
    interval ? (interval[1] - interval[0]) / 2 / HALF_95 : 0;
  const ofLiquid = error(limits.liquidLimitInterval95);
  const ofIndex = error(limits.plasticityIndexInterval95);
  // The index is the liquid limit less the plastic one: what moves the first moves the second too.
  const ofPlastic = Math.sqrt(Math.max(0, ofIndex ** 2 - ofLiquid ** 2));
  const moved = (value: number | undefined, by: number) =>
    value === undefined ? undefined : Math.max(0, value + by);
  return Array.from({ length: count }, () => {
    const liquid = ofLiquid * random.normal();
    const plastic = ofPlastic * random.normal();
    return {
      ...limits,
      liquidLimitPct: moved(limits.liquidLimitPct, liquid),
      plasticLimitPct: moved(limits.plasticLimitPct, plastic),
      plasticityIndexPct: moved(limits.plasticityIndexPct, ofIndex > 0 ? liquid - plastic : 0),
    };
  });
}
