import { checkVector } from "./checkVector.js";

/**
 * A smooth curve through the points that rises and falls only where the points do.
 *
 * Cubic Hermite pieces whose slopes are held to the Fritsch–Carlson limit: `α² + β² ≤ 9` with `α` and
 * `β` the end slopes over the chord's slope, and zero at turning points. Outside the points the nearest
 * end value is kept.
 *
 * @param x Strictly increasing, at least one value.
 * @param y One value for each `x`.
 * @returns A function of `x`.
 * @throws TypeError for differing lengths; RangeError for none, or `x` not increasing, or not finite.
 *
 * Source: Fritsch and Carlson, *Monotone piecewise cubic interpolation*, SIAM J. Numer. Anal. 17
 * (1980), from memory.
 *
 * @example
 * const curve = monotoneCubic([0, 1, 2, 3], [0, 0, 1, 1]);
 * curve(0.5) // => 0
 * curve(1.5) // => 0.5
 * curve(9) // => 1
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): (x: number) => number {
  if (x.length === 0) throw new RangeError("invalid `x`: no values; expected at least one");
  checkVector("x", x, x.length);
  checkVector("y", y, x.length);
  for (let i = 1; i < x.length; i++) {
    if (!(x[i] > x[i - 1])) {
      throw new RangeError(`invalid \`x[${i}]\`: ${x[i]}; expected above ${x[i - 1]}`);
    }
  }
  const xs = Float64Array.from(x);
  const ys = Float64Array.from(y);
  const slopes = limitedSlopes(xs, ys);
  const last = xs.length - 1;
  return (at) => {
    if (Number.isNaN(at)) return NaN;
    if (at <= xs[0]) return ys[0];
    if (at >= xs[last]) return ys[last];
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (xs[middle] <= at) low = middle;
      else high = middle;
    }
    const width = xs[high] - xs[low];
    const t = (at - xs[low]) / width;
    const bend = t * t * (3 - 2 * t);
    const left = t * (1 - t) * (1 - t);
    const right = t * t * (t - 1);
    return (
      ys[low] + bend * (ys[high] - ys[low]) + width * (left * slopes[low] + right * slopes[high])
    );
  };
}

function limitedSlopes(xs: Float64Array, ys: Float64Array): Float64Array {
  const last = xs.length - 1;
  const slopes = new Float64Array(xs.length);
  const chord = (i: number): number => (ys[i + 1] - ys[i]) / (xs[i + 1] - xs[i]);
  if (last < 1) return slopes;
  slopes[0] = chord(0);
  slopes[last] = chord(last - 1);
  for (let i = 1; i < last; i++) {
    const [before, after] = [chord(i - 1), chord(i)];
    slopes[i] = before * after > 0 ? (before + after) / 2 : 0;
  }
  for (let i = 0; i < last; i++) {
    const along = chord(i);
    if (along === 0) {
      slopes[i] = 0;
      slopes[i + 1] = 0;
      continue;
    }
    const length = Math.hypot(slopes[i] / along, slopes[i + 1] / along);
    if (length > 3) {
      slopes[i] *= 3 / length;
      slopes[i + 1] *= 3 / length;
    }
  }
  return slopes;
}
