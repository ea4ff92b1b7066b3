import { type Finding, finding, findingIf } from "../../findings/finding.js";
import type { CompactionPoint, CompactionRecord } from "../../lab/compaction.js";
import { tQuantile } from "../../numerics/distributions.js";
import { leastSquares } from "../../numerics/leastSquares.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { formatFixed, measured } from "../../quantities/format.js";
import { say, type Text, wordFor } from "../../words/message.js";
import { type Oversize, oversizeDensity, zeroAirVoidsDensity } from "./phaseRelations.js";

export type PeakMethod = "cubic" | "quadratic" | "three-point parabola" | "reported";

export interface CompactionAnalysisPoint {
  readonly row: number;
  readonly waterContentPct: number;
  readonly bulkDensityKgM3: number;
  readonly dryDensityKgM3: number;
  /** Percent of the volume; absent without a particle density. */
  readonly airVoidsPct?: number;
  /** Denser than without any air, and on the caller's wish left out of the fitted curve. */
  readonly rejected?: true;
}

export interface CompactionPeak {
  readonly method: PeakMethod;
  readonly optimumWaterPct: number;
  readonly maximumDryDensityKgM3: number;
  /** 95 % limits by the delta method and Student's t; absent without a degree of freedom. */
  readonly optimumInterval95?: readonly [number, number];
  readonly maximumInterval95?: readonly [number, number];
  readonly residualSdKgM3?: number;
}

export interface DensityAtWater {
  readonly waterContentPct: number;
  readonly dryDensityKgM3: number;
}

export interface CompactionAnalysis {
  /** How the sheet says that the soil was compacted, in the user's words. */
  readonly method?: string;
  /** In the order of water content. */
  readonly points: readonly CompactionAnalysisPoint[];
  /** Absent where the points show no peak. */
  readonly peak?: CompactionPeak;
  /** What the other methods give on the same points. */
  readonly alternatives: readonly CompactionPeak[];
  readonly highestPoint: DensityAtWater;
  /** Fitted curve over the measured range, for drawing; empty without a peak. */
  readonly curve: readonly DensityAtWater[];
  /** Dry density without any air left, over the measured range; empty without a particle density. */
  readonly zeroAirVoids: readonly DensityAtWater[];
  readonly findings: readonly Finding[];
}

/** Points of a drawn curve. */
const STEPS = 40;

/**
 * Works out a compaction test: dry densities, optimum water content, maximum dry density, and the line
 * without air. Of a top that the laboratory reports without points there is only that.
 *
 * Formula: dry density = moist mass / volume / (1 + w / 100); air voids A = 100 (1 − ρd (1 / ρs + w / (100 ρw))).
 * Top: by the method of {@link PEAK_RULE}; what the others give stands in `alternatives`, with a
 * finding where the choice moves the peak by more than one operator repeats.
 *
 * @throws RangeError where there is no point, or a mass, volume or density is not positive.
 *
 * @example
 * const points = [[6.5, 1872], [8.7, 1966], [10.6, 2043], [12.2, 2068], [14.4, 1996]].map(([waterContentPct, moistMassG], index) => ({ waterContentPct, moistMassG, row: index + 5 }));
 * const { peak, points: dry } = analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points });
 * dry[2].dryDensityKgM3 // => 1847.2
 * peak.method // => "three-point parabola"
 */
export function analyseCompaction(
  record: CompactionRecord,
  options: {
    readonly particleDensityKgM3?: number;
    /** Leaves points denser than without any air out of the fit; default false: they are told either way. */
    readonly rejectAboveZeroAir?: boolean;
    /** Coarse grains that were screened out of the soil in the mould, which all values are corrected for. */
    readonly oversize?: Oversize;
  } = {},
): CompactionAnalysis {
  const { particleDensityKgM3, rejectAboveZeroAir = false, oversize } = options;
  if (record.points.length === 0) {
    const { optimumWaterPct, maximumDryDensityKgM3 } = record.reported ?? {};
    if (optimumWaterPct !== undefined && maximumDryDensityKgM3 !== undefined) {
      const top = { waterContentPct: optimumWaterPct, dryDensityKgM3: maximumDryDensityKgM3 };
      return reportedTop(record, ofWhole(top, oversize), particleDensityKgM3);
    }
    throw new RangeError("invalid `points`: []; expected at least one");
  }
  const points = record.points
    .map((point, index): CompactionAnalysisPoint => {
      const { row } = point;
      const inMould = { ...point, dryDensityKgM3: dryDensityOf(record, point, index) };
      const { waterContentPct, dryDensityKgM3 } = ofWhole(inMould, oversize);
      const bulkDensityKgM3 = dryDensityKgM3 * (1 + waterContentPct / 100);
      const airVoidsPct =
        particleDensityKgM3 === undefined
          ? undefined
          : 100 * (1 - dryDensityKgM3 / zeroAirVoidsDensity(waterContentPct, particleDensityKgM3));
      const beyond = rejectAboveZeroAir && airVoidsPct !== undefined && airVoidsPct < 0;
      return {
        row,
        waterContentPct,
        bulkDensityKgM3,
        dryDensityKgM3,
        ...(airVoidsPct === undefined ? {} : { airVoidsPct }),
        ...(beyond ? { rejected: true as const } : {}),
      };
    })
    .sort((a, b) => a.waterContentPct - b.waterContentPct);
  const [chosen, ...others] = compactionPeaks(points.filter(({ rejected }) => !rejected));
  const grid = waterSteps(points);
  const highest = points.reduce((best, point) =>
    point.dryDensityKgM3 > best.dryDensityKgM3 ? point : best,
  );
  const analysis: Omit<CompactionAnalysis, "findings"> = {
    method: record.method,
    points,
    peak: chosen?.peak,
    alternatives: others.map(({ peak }) => peak),
    highestPoint: {
      waterContentPct: highest.waterContentPct,
      dryDensityKgM3: highest.dryDensityKgM3,
    },
    curve: chosen ? along(grid, chosen.at) : [],
    zeroAirVoids:
      particleDensityKgM3 === undefined
        ? []
        : along(grid, (water) => zeroAirVoidsDensity(water, particleDensityKgM3)),
  };
  const { file } = record;
  return {
    ...analysis,
    findings: [
      ...aboveZeroAir(file, analysis, particleDensityKgM3),
      ...checkShape(file, analysis),
      ...methodsApart(file, analysis),
      ...offReading(file, analysis),
      ...(oversize ? [] : againstReported(record, analysis.peak)),
    ],
  };
}

/** Two readers of the same points differ by less than that, points of water and part of the density; common practice, no source. */
const READ_APART = { waterPct: 2, density: 0.03 };

/** A reported top that the points of the same sheet cannot have given. */
function againstReported(
  { file, reported = {} }: CompactionRecord,
  peak: CompactionPeak | undefined,
): Finding[] {
  if (!peak) return [];
  const { optimumWaterPct: waterPct = NaN, maximumDryDensityKgM3: density = NaN } = reported;
  const read = { waterPct: peak.optimumWaterPct, density: peak.maximumDryDensityKgM3 };
  const contradiction = (isSo: boolean, told: Text, points: Text, expected: Text) =>
    findingIf(isSo, { file, value: told }, "error", "reported-against-points", {
      message: say`The sheet reports ${told} for the peak, but its points give ${points}.`,
      expected,
      remedy: say`Check the line and the points; take the line out where it is of another test, or was corrected for stones.`,
    });
  const percent = (value: number) => say`${formatFixed(value, 1)} %`;
  const shown = (value: number) => say`${measured(value, "density", 0)}`;
  return [
    ...contradiction(
      Math.abs(waterPct - read.waterPct) > READ_APART.waterPct,
      percent(waterPct),
      percent(read.waterPct),
      say`an optimum within ${READ_APART.waterPct} points of it (common practice, no source)`,
    ),
    ...contradiction(
      Math.abs(density / read.density - 1) > READ_APART.density,
      shown(density),
      shown(read.density),
      say`a density within ${100 * READ_APART.density} % of it (common practice, no source)`,
    ),
  ];
}

/** What was compacted, with the coarse grains that were screened out of it before. */
function ofWhole(inMould: DensityAtWater, oversize: Oversize | undefined): DensityAtWater {
  return oversize ? oversizeDensity({ ...inMould, ...oversize }) : inMould;
}

/** From the mass in the mould, or as a laboratory made it of that. */
function dryDensityOf(
  { mouldVolumeCm3 }: CompactionRecord,
  { waterContentPct, moistMassG, dryDensityKgM3 }: CompactionPoint,
  index: number,
): number {
  if (moistMassG === undefined && dryDensityKgM3 !== undefined) {
    checkThat(
      dryDensityKgM3 > 100,
      { [`points[${index}].dryDensityKgM3`]: dryDensityKgM3 },
      "kg/m³, above 100",
    );
    return dryDensityKgM3;
  }
  checkThat(mouldVolumeCm3 !== undefined && mouldVolumeCm3 > 0, { mouldVolumeCm3 }, "above 0");
  if (!(waterContentPct >= 0 && moistMassG !== undefined && moistMassG > 0)) {
    throw new RangeError(
      `invalid \`points[${index}]\`: ${waterContentPct} %, ${moistMassG} g; expected water 0 or more and mass above 0`,
    );
  }
  return (1000 * moistMassG) / mouldVolumeCm3 / (1 + waterContentPct / 100);
}

/** The top alone, as reported: no points, no curve, no interval. */
function reportedTop(
  record: CompactionRecord,
  top: DensityAtWater,
  particleDensityKgM3: number | undefined,
): CompactionAnalysis {
  const { file } = record;
  const { waterContentPct: optimumWaterPct, dryDensityKgM3: maximumDryDensityKgM3 } = top;
  return {
    method: record.method,
    points: [],
    peak: { method: "reported", optimumWaterPct, maximumDryDensityKgM3 },
    alternatives: [],
    highestPoint: top,
    curve: [],
    zeroAirVoids: [],
    findings: [
      finding({ file }, "note", "compaction-reported", {
        message: say`The laboratory reports the optimum without the test points: neither the optimum nor the compaction moisture range can be checked.`,
        expected: say`the points of the test`,
        remedy: say`Ask the laboratory for its points; until then the optimum is used as reported.`,
      }),
      ...(particleDensityKgM3 === undefined ? [] : topTooDense(file, top, particleDensityKgM3)),
    ],
  };
}

function waterSteps(points: readonly CompactionAnalysisPoint[]): number[] {
  const low = points[0].waterContentPct;
  const high = points[points.length - 1].waterContentPct;
  return Array.from({ length: STEPS + 1 }, (_, step) => low + ((high - low) * step) / STEPS);
}

function along(grid: readonly number[], at: (water: number) => number): DensityAtWater[] {
  return grid.map((waterContentPct) => ({ waterContentPct, dryDensityKgM3: at(waterContentPct) }));
}

interface CompactionPeakFit {
  readonly peak: CompactionPeak;
  readonly at: (waterContentPct: number) => number;
}

/** Residual error beyond which a least-squares curve does not follow the points, part of its maximum; common practice, no source. */
const MAX_RESIDUAL = 0.005;

/**
 * How the method for the peak is chosen, as a sentence under a table.
 *
 * @example
 * render(PEAK_RULE).startsWith("Rule for the method") // => true
 */
export const PEAK_RULE = say`Rule for the method: a cubic from six points if it fits more closely than a quadratic, a quadratic from four points, either only if its residual error is within ${100 * MAX_RESIDUAL} % of the maximum; otherwise the parabola through the highest point and its neighbours (common practice, no source).`;

/**
 * The peak of the compaction curve by every method that the points allow, the chosen one first.
 *
 * A least-squares curve that misses the points by more than they scatter has its peak where the soil has
 * none: then the three points about the highest are better, whose parabola meets them. The rule is that
 * of `PEAK_RULE`; where the highest point is the first or the last, the closer least-squares curve is
 * taken in any case. The alternatives are always given.
 */
function compactionPeaks(points: readonly DensityAtWater[]): CompactionPeakFit[] {
  const fits = LEAST_SQUARES.filter(({ minPoints }) => points.length >= minPoints).flatMap(
    ({ method, degree }) => polynomialPeak(points, method, degree) ?? [],
  );
  const residual = ({ peak }: CompactionPeakFit) => peak.residualSdKgM3 ?? Infinity;
  fits.sort((a, b) => residual(a) - residual(b));
  const local = threePointPeak(points);
  const [closest] = fits;
  if (!local) return fits;
  const follows = closest && residual(closest) <= MAX_RESIDUAL * closest.peak.maximumDryDensityKgM3;
  return follows ? [...fits, local] : [local, ...fits];
}

const LEAST_SQUARES = [
  { method: "cubic", degree: 3, minPoints: 6 },
  { method: "quadratic", degree: 2, minPoints: 4 },
] as const;

/** Parabola through the highest point and its neighbours; beyond them straight lines between the points. */
function threePointPeak(points: readonly DensityAtWater[]): CompactionPeakFit | undefined {
  const densities = points.map(({ dryDensityKgM3 }) => dryDensityKgM3);
  const highest = densities.indexOf(Math.max(...densities));
  const last = points.length - 1;
  if (highest <= 0 || highest === last) return undefined;
  const near = points.slice(highest - 1, highest + 2);
  const fit = polynomialPeak(near, "three-point parabola", 2);
  if (!fit) return undefined;
  const at = (water: number) => {
    if (water >= near[0].waterContentPct && water <= near[2].waterContentPct) return fit.at(water);
    // The wettest step may lie beyond the last point by a rounding.
    const next = points.findIndex(
      ({ waterContentPct }, index) => index > 0 && (waterContentPct >= water || index === last),
    );
    const [dry, wet] = [points[next - 1], points[next]];
    const part = (water - dry.waterContentPct) / (wet.waterContentPct - dry.waterContentPct);
    return dry.dryDensityKgM3 + part * (wet.dryDensityKgM3 - dry.dryDensityKgM3);
  };
  return { peak: fit.peak, at };
}

/**
 * The top of a parabola (degree 2) or cubic (degree 3) laid through points by least squares.
 *
 * Standard errors by the delta method: the top moves by −p′(coefficient) / p″ for each coefficient.
 *
 * @returns `undefined` where there are too few points or no top within their range.
 */
function polynomialPeak(
  points: readonly DensityAtWater[],
  method: PeakMethod,
  degree: 2 | 3,
): CompactionPeakFit | undefined {
  const waters = points.map(({ waterContentPct }) => waterContentPct);
  const [low, high] = [Math.min(...waters), Math.max(...waters)];
  if (new Set(waters).size <= degree) return undefined;
  // Centred and scaled to −1…1, so that the powers are not nearly parallel.
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  const powers = (u: number) => [1, u, u * u, u * u * u].slice(0, degree + 1);
  const fit = leastSquares(
    waters.map((water) => powers((water - middle) / half)),
    points.map(({ dryDensityKgM3 }) => dryDensityKgM3),
  );
  if (fit.status !== "ok") return undefined;
  const [, b, c, d = 0] = fit.coefficients;
  const top = topOf(b, c, d);
  if (top === undefined || Math.abs(top) > 1) return undefined;
  const value = (u: number) =>
    powers(u).reduce((sum, power, index) => sum + power * fit.coefficients[index], 0);
  const at = (water: number) => value((water - middle) / half);
  const [optimumWaterPct, maximumDryDensityKgM3] = [middle + half * top, value(top)];
  const peak = { method, optimumWaterPct, maximumDryDensityKgM3 };
  if (fit.degreesOfFreedom < 1) return { peak, at };
  const bend = 2 * c + 6 * d * top;
  const byHeight = powers(top);
  const byPlace = byHeight.map((_, power) =>
    power === 0 ? 0 : -(power * byHeight[power - 1]) / bend,
  );
  const t = tQuantile(0.975, fit.degreesOfFreedom);
  const around = (middle: number, error: number) =>
    [middle - t * error, middle + t * error] as const;
  const optimumError = half * Math.sqrt(quadraticForm(fit.covariance, byPlace));
  const maximumError = Math.sqrt(quadraticForm(fit.covariance, byHeight));
  return {
    peak: {
      ...peak,
      optimumInterval95: around(optimumWaterPct, optimumError),
      maximumInterval95: around(maximumDryDensityKgM3, maximumError),
      residualSdKgM3: fit.residualSd,
    },
    at,
  };
}

/** Where b + 2 c u + 3 d u² is 0 and falling. */
function topOf(b: number, c: number, d: number): number | undefined {
  if (Math.abs(d) <= 1e-12 * Math.abs(c)) return c < 0 ? -b / (2 * c) : undefined;
  const inside = c * c - 3 * b * d;
  // The top is the root with p″ = −2 √(c² − 3 b d); this form does not cancel for a small d.
  if (!(inside > 0)) return undefined;
  const root = Math.sqrt(inside);
  return c < 0 ? b / (root - c) : -(c + root) / (3 * d);
}

function quadraticForm(matrix: readonly (readonly number[])[], vector: readonly number[]): number {
  return matrix.reduce(
    (sum, row, i) =>
      sum + vector[i] * row.reduce((inner, entry, j) => inner + entry * vector[j], 0),
    0,
  );
}

type Analysis = Omit<CompactionAnalysis, "findings">;

/**
 * What one operator repeats on one soil: part of the optimum water content, and kg/m³ of the maximum
 * (AASHTO T 99, precision statement, from memory: 10 % of the mean and 2.2 lb/ft³).
 */
const REPEATABILITY = { ofOptimum: 0.1, maximumKgM3: 35 };

function aboveZeroAir(
  file: string,
  { points, peak }: Analysis,
  particleDensity?: number,
): Finding[] {
  if (particleDensity === undefined) return [];
  const measured = points.flatMap((point) => {
    const what = point.rejected ? say`This point was left out of the fit: it` : say`This point`;
    return tooDense({ file, row: point.row }, point, particleDensity, {
      code: "above-zero-air-voids",
      message: say`${what} lies above the line of zero air voids.`,
    });
  });
  if (!peak) return measured;
  const { optimumWaterPct: waterContentPct, maximumDryDensityKgM3: dryDensityKgM3 } = peak;
  const top = { waterContentPct, dryDensityKgM3 };
  return [...measured, ...topTooDense(file, top, particleDensity)];
}

/** An optimum that cannot be: no water and no density of a mix may rest on it. */
function topTooDense(file: string, top: DensityAtWater, particleDensity: number): Finding[] {
  const { waterContentPct, dryDensityKgM3 } = top;
  return tooDense({ file }, top, particleDensity, {
    code: OPTIMUM_ABOVE_ZERO_AIR,
    message: say`The optimum of the compaction test, ${measured(dryDensityKgM3, "density", 0)} at ${formatFixed(waterContentPct, 1)} %, lies above the line of zero air voids: grains of this density leave no room for that much water.`,
  });
}

/** Code of the finding that the optimum of a compaction test cannot be. */
export const OPTIMUM_ABOVE_ZERO_AIR = "optimum-above-zero-air-voids";

function tooDense(
  place: { readonly file: string; readonly row?: number },
  { waterContentPct, dryDensityKgM3 }: DensityAtWater,
  particleDensity: number,
  { code, message }: { readonly code: string; readonly message: Text },
): Finding[] {
  const limit = zeroAirVoidsDensity(waterContentPct, particleDensity);
  const value = say`${measured(dryDensityKgM3, "density", 0)} at ${formatFixed(waterContentPct, 1)} %`;
  return findingIf(dryDensityKgM3 > limit, { ...place, value }, "warning", code, {
    message,
    expected: say`at most ${measured(limit, "density", 0)} for particles of ${measured(particleDensity, "density", 0)}`,
    remedy: say`Check the water content, the mould volume and the particle density.`,
  });
}

function checkShape(file: string, { points, peak }: Analysis): Finding[] {
  const [driest, wettest] = [points[0], points[points.length - 1]];
  if (!peak) {
    const place = { file, row: wettest.row, value: say`${points.length} points` };
    const found = finding(place, "error", "no-compaction-peak", {
      message: say`The points show no maximum of dry density between the driest and the wettest.`,
      expected: say`at least three points that rise and then fall`,
      remedy: say`Compact more points on the side where the density still rises.`,
    });
    return [found];
  }
  const drier = points.filter(({ waterContentPct }) => waterContentPct < peak.optimumWaterPct);
  const dry = drier.length <= points.length - drier.length;
  const count = dry ? drier.length : points.length - drier.length;
  const side = dry ? say`drier` : say`wetter`;
  const place = { file, row: dry ? driest.row : wettest.row, value: say`${count} ${side}` };
  return findingIf(count < 2, place, "warning", "compaction-one-sided", {
    message: say`Fewer than two points lie on the ${dry ? say`dry` : say`wet`} side of the optimum.`,
    expected: say`at least two points on either side (common practice, no source)`,
    remedy: say`Compact another point that is ${side}.`,
  });
}

function methodsApart(file: string, { peak, alternatives }: Analysis): Finding[] {
  if (!peak) return [];
  const { optimumWaterPct, maximumDryDensityKgM3 } = peak;
  const { ofOptimum, maximumKgM3 } = REPEATABILITY;
  return alternatives.flatMap((other) => {
    const isApart =
      Math.abs(other.optimumWaterPct - optimumWaterPct) > ofOptimum * optimumWaterPct ||
      Math.abs(other.maximumDryDensityKgM3 - maximumDryDensityKgM3) > maximumKgM3;
    const value = say`${formatFixed(other.optimumWaterPct, 1)} %, ${measured(other.maximumDryDensityKgM3, "density", 0)}`;
    return findingIf(isApart, { file, value }, "warning", "compaction-methods-differ", {
      message: say`The ${wordFor(other.method)} gives a different peak from the ${wordFor(peak.method)} (${formatFixed(optimumWaterPct, 1)} %, ${measured(maximumDryDensityKgM3, "density", 0)}).`,
      expected: say`peaks within ${100 * ofOptimum} % of the optimum and ${measured(maximumKgM3, "density")} of each other: single-operator repeatability (AASHTO T 99, from memory)`,
      remedy: say`Compact another point near the optimum; take the optimum as a range until then.`,
    });
  });
}

/** A peak far above all that was measured, or below it. */
function offReading(file: string, { peak, highestPoint }: Analysis): Finding[] {
  if (!peak) return [];
  const { maximumKgM3 } = REPEATABILITY;
  const offKgM3 = peak.maximumDryDensityKgM3 - highestPoint.dryDensityKgM3;
  const size = Math.abs(offKgM3);
  const value = say`${measured(peak.maximumDryDensityKgM3, "density", 0)}`;
  return findingIf(size > maximumKgM3, { file, value }, "warning", "compaction-peak-off-reading", {
    message:
      offKgM3 > 0
        ? say`The peak by the ${wordFor(peak.method)} lies ${measured(size, "density", 0)} above the highest point that was measured.`
        : say`The peak by the ${wordFor(peak.method)} lies ${measured(size, "density", 0)} below the highest point that was measured.`,
    expected: say`within ${measured(maximumKgM3, "density")} of it: single-operator repeatability (AASHTO T 99, from memory)`,
    remedy: say`Compact another point near the optimum before the density is specified.`,
  });
}
