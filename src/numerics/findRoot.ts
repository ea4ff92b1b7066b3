/**
 * Finds where a continuous function crosses zero between `a` and `b`.
 *
 * Brent's method: secant and inverse quadratic steps while they shrink the bracket fast enough,
 * halving otherwise, so it always ends.
 *
 * @param f Continuous, with `f(a)` and `f(b)` of opposite sign (or zero).
 * @param options.tolerance Width of the last bracket, relative to the larger of `|a|` and `|b|`;
 *   1e-12 by default, and never less than the spacing of the doubles there.
 * @returns A root to within the tolerance.
 * @throws RangeError when the signs at the ends do not differ, or an end or a value is not a number.
 *
 * Source: Brent, *Algorithms for Minimization without Derivatives* (1973), ch. 4 (from memory).
 *
 * @example
 * findRoot((x) => x * x - 2, 0, 2) // => 1.41421356
 */
// biome-ignore lint/complexity/noExcessiveCognitiveComplexity: one iteration, read beside its source
export function findRoot(
  f: (x: number) => number,
  a: number,
  b: number,
  options: { tolerance?: number } = {},
): number {
  const relative = options.tolerance ?? 1e-12;
  const width = relative * Math.max(Math.abs(a), Math.abs(b));
  let [before, best] = [a, b];
  let [fBefore, fBest] = [f(a), f(b)];
  if (!(fBefore * fBest <= 0) && Math.sign(fBefore) * Math.sign(fBest) !== -1) {
    throw new RangeError(
      `invalid bracket ${a} to ${b}: values ${fBefore} and ${fBest}; expected opposite signs`,
    );
  }
  let [other, fOther] = [before, fBefore];
  let step = best - before;
  let lastStep = step;
  while (true) {
    if (Math.sign(fBest) === Math.sign(fOther)) {
      [other, fOther] = [before, fBefore];
      step = best - before;
      lastStep = step;
    }
    if (Math.abs(fOther) < Math.abs(fBest)) {
      [before, best, other] = [best, other, best];
      [fBefore, fBest, fOther] = [fBest, fOther, fBest];
    }
    const half = (other - best) / 2;
    const tolerance = 2 * Number.EPSILON * Math.abs(best) + width / 2 + Number.MIN_VALUE;
    if (Math.abs(half) <= tolerance || fBest === 0) return best;
    const tried =
      Math.abs(lastStep) < tolerance || Math.abs(fBefore) <= Math.abs(fBest)
        ? Number.NaN
        : interpolate(before, fBefore, best, fBest, other, fOther);
    const shrinks = isShort(tried, half, tolerance, lastStep);
    lastStep = shrinks ? step : half;
    step = shrinks ? tried : half;
    [before, fBefore] = [best, fBest];
    best += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fBest = f(best);
    if (Number.isNaN(fBest)) throw new RangeError(`invalid value at ${best}: NaN`);
  }
}

/** Whether a step goes towards the root and shrinks the bracket faster than halving it twice would. */
function isShort(tried: number, half: number, tolerance: number, lastStep: number): boolean {
  return (
    Math.sign(tried) === Math.sign(half) &&
    Math.abs(tried) < 1.5 * Math.abs(half) - tolerance / 2 &&
    Math.abs(tried) < Math.abs(lastStep) / 2
  );
}

/** Step from `best` by the secant through two points, or inverse quadratic through three. */
function interpolate(
  before: number,
  fBefore: number,
  best: number,
  fBest: number,
  other: number,
  fOther: number,
): number {
  const s = fBest / fBefore;
  if (before === other) return ((other - best) * s) / (s - 1);
  const q = fBefore / fOther;
  const r = fBest / fOther;
  const top = s * ((other - best) * q * (q - r) - (best - before) * (r - 1));
  return -top / ((q - 1) * (r - 1) * (s - 1));
}
