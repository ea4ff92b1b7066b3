import { createRandom } from "../../numerics/random.js";
import type { ConsistencyResult } from "./limits.js";

/** Half of a 95 % interval in standard errors of a normal distribution. */
const HALF_95 = 1.96;

/** Standard errors of the limits; 0 where nothing is known of them. */
export interface LimitErrors {
  readonly liquidLimitErrorPct: number;
  readonly plasticityIndexErrorPct: number;
}

/** The standard errors that the intervals of measured limits stand for. */
export function limitErrors({
  liquidLimitInterval95: liquid,
  plasticityIndexInterval95: index,
}: Pick<ConsistencyResult, "liquidLimitInterval95" | "plasticityIndexInterval95">): LimitErrors {
  const error = (interval: readonly [number, number] | undefined) =>
    interval ? (interval[1] - interval[0]) / 2 / HALF_95 : 0;
  return { liquidLimitErrorPct: error(liquid), plasticityIndexErrorPct: error(index) };
}

/**
 * Consistency limits as they could have come out: normal errors about the measured ones, none below 0. A limit
 * without an error stays where it was measured.
 *
 * The index is the liquid limit less the plastic one: what moves the first moves the second too, and the rest of
 * its error is that of the plastic limit.
 */
export function drawLimits<
  Limits extends Pick<
    ConsistencyResult,
    "liquidLimitPct" | "plasticLimitPct" | "plasticityIndexPct"
  >,
>(
  limits: Limits,
  { liquidLimitErrorPct, plasticityIndexErrorPct }: LimitErrors,
  count: number,
  seed: number,
): Limits[] {
  const random = createRandom(seed);
  const ofPlastic = Math.sqrt(Math.max(0, plasticityIndexErrorPct ** 2 - liquidLimitErrorPct ** 2));
  const moved = (value: number | undefined, by: number) =>
    value === undefined ? undefined : Math.max(0, value + by);
  return Array.from({ length: count }, () => {
    const liquid = liquidLimitErrorPct * random.normal();
    const plastic = -ofPlastic * random.normal();
    return {
      ...limits,
      liquidLimitPct: moved(limits.liquidLimitPct, liquid),
      plasticLimitPct: moved(limits.plasticLimitPct, plastic),
      plasticityIndexPct: moved(
        limits.plasticityIndexPct,
        plasticityIndexErrorPct > 0 ? liquid - plastic : 0,
      ),
    };
  });
}
