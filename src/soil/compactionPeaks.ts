import { tQuantile } from "../numerics/tQuantile.js";
import type { CompactionPeak, DensityAtWater, PeakMethod } from "./compactionAnalysis.js";
import { type PolynomialPeak, polynomialPeak } from "./polynomialPeak.js";

export interface CompactionPeakFit {
  readonly peak: CompactionPeak;
  readonly at: (waterContentPct: number) => number;
}

/**
 * The top of the compaction curve by every method that the points allow, the chosen one first.
 *
 * Cubic by least squares: six points or more, and only where its residual error is below the
 * quadratic's; quadratic by least squares: four or more; parabola through the highest point and its
 * neighbours: three. With fewer points than that a curve would follow the scatter, not the soil. The
 * choice is ours (common practice, no source); the alternatives are always given.
 */
export function compactionPeaks(points: readonly DensityAtWater[]): CompactionPeakFit[] {
  const xy = points.map(({ waterContentPct: x, dryDensityKgM3: y }) => ({ x, y }));
  const fits: CompactionPeakFit[] = [];
  const add = (method: PeakMethod, peak: PolynomialPeak | undefined, first = false) => {
    if (peak) fits[first ? "unshift" : "push"]({ peak: describe(method, peak), at: peak.at });
  };
  const quadratic = xy.length >= 4 ? polynomialPeak(xy, 2) : undefined;
  const cubic = xy.length >= 6 ? polynomialPeak(xy, 3) : undefined;
  add("quadratic", quadratic);
  add("cubic", cubic, !quadratic || (cubic?.residualSd ?? Infinity) < quadratic.residualSd);
  const highest = xy.reduce((best, { y }, index) => (y > xy[best].y ? index : best), 0);
  if (highest > 0 && highest < xy.length - 1) {
    add("three-point parabola", polynomialPeak(xy.slice(highest - 1, highest + 2), 2));
  }
  return fits;
}

function describe(method: PeakMethod, peak: PolynomialPeak): CompactionPeak {
  const found = { method, optimumWaterPct: peak.x, maximumDryDensityKgM3: peak.y };
  if (peak.degreesOfFreedom < 1) return found;
  const t = tQuantile(0.975, peak.degreesOfFreedom);
  const around = (value: number, error: number) => [value - t * error, value + t * error] as const;
  return {
    ...found,
    optimumInterval95: around(peak.x, peak.xStandardError),
    maximumInterval95: around(peak.y, peak.yStandardError),
    residualSdKgM3: peak.residualSd,
  };
}
