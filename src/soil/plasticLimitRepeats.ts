import { tQuantile } from "../numerics/tQuantile.js";

/** Percentage points between two threads beyond which the plastic limit is doubtful; common practice, no source. */
const WIDEST_RANGE_PCT = 2;

export interface PlasticLimitRepeats {
  readonly plasticLimitPct: number;
  /** Count of threads. */
  readonly threads: number;
  /** Largest less smallest. */
  readonly rangePct: number;
  /** Of the mean; absent for one thread. */
  readonly standardErrorPct?: number;
  /** 95 % limits of the mean by Student's t; absent for one thread. */
  readonly interval95?: readonly [number, number];
  /** The threads lie further apart than rolling explains. */
  readonly apart: boolean;
}

/**
 * Plastic limit as the mean of repeated threads, with what their scatter says about it.
 *
 * @returns `undefined` without a thread.
 * @throws RangeError where a water content is negative.
 *
 * @example
 * const { plasticLimitPct, rangePct, standardErrorPct } = plasticLimitRepeats([18.6, 18.8, 19.3]);
 * [plasticLimitPct, rangePct, standardErrorPct] // => [18.9, 0.7, 0.208]
 */
export function plasticLimitRepeats(
  waterContentsPct: readonly number[],
): PlasticLimitRepeats | undefined {
  waterContentsPct.forEach((value, index) => {
    if (!(value >= 0)) {
      throw new RangeError(`invalid \`waterContentsPct[${index}]\`: ${value}; expected 0 or more`);
    }
  });
  const n = waterContentsPct.length;
  if (n === 0) return undefined;
  const mean = waterContentsPct.reduce((sum, value) => sum + value, 0) / n;
  const rangePct = Math.max(...waterContentsPct) - Math.min(...waterContentsPct);
  const known = {
    plasticLimitPct: mean,
    threads: n,
    rangePct,
    apart: rangePct > WIDEST_RANGE_PCT,
  };
  if (n === 1) return known;
  const square = waterContentsPct.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const standardErrorPct = Math.sqrt(square / (n - 1) / n);
  const half = tQuantile(0.975, n - 1) * standardErrorPct;
  return { ...known, standardErrorPct, interval95: [mean - half, mean + half] };
}
