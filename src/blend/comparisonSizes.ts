import type { GradingCurve } from "../grading/gradingCurve.js";

/** Sieves of the ISO 565 series, nearly evenly spaced on the logarithm of size (common practice, no source). */
const COMPARISON_SIZES_MM = [0.063, 0.125, 0.25, 0.5, 1, 2, 4, 8, 16, 31.5, 63];

/**
 * The sizes at which a blend is held against its target: a standard set, limited to what every
 * material was measured at. The finest is the coarsest of the materials' finest sizes (a sand without
 * a hydrometer says nothing below its last sieve); the coarsest is below the target's top size.
 * Where the finest measured size is no standard one (0.075 mm), it replaces the standard size next to it.
 *
 * @example
 * const points = [{ sizeMm: 0.075, passingPct: 5, origin: "sieve" }, { sizeMm: 4.75, passingPct: 100, origin: "sieve" }];
 * comparisonSizes([{ points }], 10) // => [0.075, 0.125, 0.25, 0.5, 1, 2, 4, 8]
 */
export function comparisonSizes(curves: readonly GradingCurve[], topSizeMm: number): number[] {
  const finest = Math.max(...curves.map(({ points }) => points[0].sizeMm));
  const standard = COMPARISON_SIZES_MM.filter((size) => size >= finest && size < topSizeMm);
  // A size closer to the finest than a quarter of a decade would count the same grains twice.
  const spaced = standard.filter((size) => size === finest || size / finest > 10 ** 0.2);
  return spaced[0] === finest ? spaced : [finest, ...spaced];
}
