import { mean, sampleStandardDeviation } from "simple-statistics";
import { type Finding, finding, findingIf } from "../../findings/finding.js";
import type { LimitsRecord } from "../../lab/limits.js";
import { tQuantile } from "../../numerics/distributions.js";
import { leastSquares } from "../../numerics/leastSquares.js";
import { powerOf } from "../../numerics/powerOf.js";
import { checkNotNegative, checkPositive } from "../../quantities/checkNumber.js";
import { formatFixed } from "../../quantities/format.js";
import { say } from "../../words/message.js";
import { type LongBoxShrinkage, longBoxShrinkage } from "./longBox.js";
import { aLine, uLine } from "./plasticityChart.js";

/** The flow line of a liquid limit test, in the test's own measure. */
export interface FlowLine {
  readonly method: "cup" | "cone";
  /** Water content against log10 of blows (cup) or millimetres of penetration (cone). */
  readonly slope: number;
  readonly intercept: number;
  /** Root of the residual variance, percent water; absent for two points. */
  readonly residualSdPct?: number;
}

export interface ConsistencyResult {
  readonly nonPlastic: boolean;
  readonly liquidLimitPct?: number;
  /** 95 % confidence limits of the flow line at the limit; absent for fewer than three points. */
  readonly liquidLimitInterval95?: readonly [number, number];
  /** The liquid limit rests on a single point of the cup and a slope taken for known. */
  readonly onePoint?: true;
  /** Some of the values are the laboratory's own, without readings that could be checked. */
  readonly reported?: true;
  readonly plasticLimitPct?: number;
  /** How far the threads lie apart; absent without a thread. */
  readonly plasticLimitRangePct?: number;
  /** 95 % limits of the mean of the threads; absent for one thread. */
  readonly plasticLimitInterval95?: readonly [number, number];
  readonly plasticityIndexPct?: number;
  /** 95 % limits of the difference of both limits; absent where either has none. */
  readonly plasticityIndexInterval95?: readonly [number, number];
  /** Plasticity index at this liquid limit on the A-line. */
  readonly aLinePct?: number;
  readonly uLinePct?: number;
  /** On or above the A-line. */
  readonly aboveALine?: boolean;
  /** Of the laboratory bar. */
  readonly linearShrinkagePct?: number;
  /** Of the long field box: another number than the bar's, held against nothing that is made for the bar. */
  readonly longBox?: LongBoxShrinkage;
  readonly flowLine?: FlowLine;
  readonly findings: readonly Finding[];
}

/**
 * Liquid limit, plastic limit, plasticity index and linear shrinkage from a limits sheet.
 *
 * Formula: plastic limit: mean of the threads; PI = LL − PL (0 for a non-plastic soil is not claimed:
 * it has none); linear shrinkage = 100 (1 − dry length / wet length) of the bar (IS 2720 part 20,
 * civilblog, read; there rounded to a whole number, here not). The long field box is kept apart from it
 * ({@link longBoxShrinkage}).
 *
 * @throws RangeError where a blow count, penetration or bar length is not positive.
 *
 * @example
 * const liquidLimitPoints = [{ measure: 15, waterContentPct: 42, row: 2 }, { measure: 20, waterContentPct: 40.8, row: 3 }, { measure: 28, waterContentPct: 39.1, row: 4 }];
 * const plasticLimitPoints = [{ waterContentPct: 18.6, row: 5 }, { waterContentPct: 18.8, row: 6 }];
 * const limits = consistencyLimits({ file: "l.csv", liquidLimitMethod: "cup", liquidLimitPoints, plasticLimitPoints, nonPlastic: false, shrinkageBar: { wetLengthMm: 140, dryLengthMm: 133 } });
 * limits.plasticityIndexPct // => 20.97
 * limits.linearShrinkagePct // => 5
 */
export function consistencyLimits(record: LimitsRecord): ConsistencyResult {
  const liquid = liquidLimit(record);
  const threads = record.plasticLimitPoints.map(({ waterContentPct }) => waterContentPct);
  const plastic = record.nonPlastic ? undefined : plasticLimitRepeats(threads);
  const single = liquid ? undefined : onePoint(record);
  const given = record.nonPlastic ? {} : (record.reported ?? {});
  const liquidLimitPct = liquid?.liquidLimitPct ?? single ?? given.liquidLimitPct;
  const { plasticLimitPct, plasticityIndexPct } = plasticity(
    liquidLimitPct,
    plastic?.plasticLimitPct ?? given.plasticLimitPct,
    given.plasticityIndexPct,
  );
  const result: Omit<ConsistencyResult, "findings"> = {
    nonPlastic: record.nonPlastic,
    liquidLimitPct,
    liquidLimitInterval95: liquid?.interval95,
    onePoint: single === undefined ? undefined : true,
    plasticLimitPct,
    plasticLimitRangePct: plastic?.rangePct,
    plasticLimitInterval95: plastic?.interval95,
    plasticityIndexPct,
    plasticityIndexInterval95: indexInterval(liquid?.interval95, plastic?.interval95),
    ...onChart(liquidLimitPct, plasticityIndexPct),
    linearShrinkagePct: linearShrinkage(record) ?? record.reported?.linearShrinkagePct,
    reported: record.reported && true,
    longBox:
      record.longBox && longBoxShrinkage(record.longBox.shrinkageMm, record.longBox.lengthMm),
    flowLine: liquid?.flowLine,
  };
  return { ...result, findings: checkConsistency(record, result) };
}

/** Where the limits lie on the plasticity chart. */
function onChart(
  liquidLimitPct: number | undefined,
  plasticityIndexPct: number | undefined,
): Pick<ConsistencyResult, "aLinePct" | "uLinePct" | "aboveALine"> {
  if (liquidLimitPct === undefined) return {};
  const aLinePct = aLine(liquidLimitPct);
  const above = plasticityIndexPct === undefined ? undefined : plasticityIndexPct >= aLinePct;
  return { aLinePct, uLinePct: uLine(liquidLimitPct), aboveALine: above };
}

/** The third of liquid limit, plastic limit and plasticity index from the other two. */
function plasticity(
  liquidLimitPct: number | undefined,
  plasticLimitPct: number | undefined,
  reportedIndexPct: number | undefined,
): Pick<ConsistencyResult, "plasticLimitPct" | "plasticityIndexPct"> {
  if (liquidLimitPct === undefined) {
    return { plasticLimitPct, plasticityIndexPct: reportedIndexPct };
  }
  if (plasticLimitPct !== undefined) {
    return { plasticLimitPct, plasticityIndexPct: liquidLimitPct - plasticLimitPct };
  }
  if (reportedIndexPct === undefined) return {};
  return {
    plasticLimitPct: liquidLimitPct - reportedIndexPct,
    plasticityIndexPct: reportedIndexPct,
  };
}

function onePoint({
  liquidLimitPoints: [first, ...others],
  liquidLimitMethod = "cup",
}: LimitsRecord): number | undefined {
  // Cone: no rule for a single point was read, and none is guessed.
  if (!first || others.length > 0 || liquidLimitMethod !== "cup") return undefined;
  return onePointLiquidLimit(first.waterContentPct, first.measure);
}

/** Half widths of both limits together, as for independent errors: √(h1² + h2²). */
function indexInterval(
  liquid: readonly [number, number] | undefined,
  plastic: readonly [number, number] | undefined,
): readonly [number, number] | undefined {
  if (!liquid || !plastic) return undefined;
  const middle = (liquid[0] + liquid[1] - plastic[0] - plastic[1]) / 2;
  const half = Math.hypot(liquid[1] - liquid[0], plastic[1] - plastic[0]) / 2;
  return [middle - half, middle + half];
}

function linearShrinkage({ shrinkageBar }: LimitsRecord): number | undefined {
  if (!shrinkageBar) return undefined;
  const { wetLengthMm, dryLengthMm } = shrinkageBar;
  checkPositive("shrinkageBar.wetLengthMm", wetLengthMm);
  checkPositive("shrinkageBar.dryLengthMm", dryLengthMm);
  return 100 * (1 - dryLengthMm / wetLengthMm);
}

export interface LiquidLimit {
  readonly liquidLimitPct: number;
  readonly interval95?: readonly [number, number];
  readonly flowLine: FlowLine;
}

/**
 * Liquid limit by a least-squares flow line through all points.
 *
 * Formula: cup: w = a + b log10(N) at N = 25 blows; cone: w = a + b h at h = 20 mm (80 g, 30°).
 * The interval is that of the line's height at the limit, Student's t.
 * Source: cup, worked solution of Das problem 4.3 (read); cone, Smith, Example 1.3 (read).
 *
 * @returns `undefined` where two points with different measures are missing.
 * @throws RangeError where a measure is not positive.
 *
 * @example
 * const liquidLimitPoints = [{ measure: 15, waterContentPct: 42, row: 2 }, { measure: 20, waterContentPct: 40.8, row: 3 }, { measure: 28, waterContentPct: 39.1, row: 4 }];
 * liquidLimit({ file: "l.csv", liquidLimitMethod: "cup", liquidLimitPoints, plasticLimitPoints: [], nonPlastic: false }).liquidLimitPct // => 39.67
 */
export function liquidLimit(record: LimitsRecord): LiquidLimit | undefined {
  const { liquidLimitPoints: points, liquidLimitMethod: method = "cup" } = record;
  const along = (measure: number) => (method === "cup" ? Math.log10(measure) : measure);
  const measures = points.map(({ measure }, index) => {
    checkPositive(`liquidLimitPoints[${index}].measure`, measure);
    return along(measure);
  });
  if (new Set(measures).size < 2) return undefined;
  // Measured from the limit, so that the intercept of the fit is the limit itself.
  const limit = along(MEASURES[method].limit);
  const fit = leastSquares(
    measures.map((measure) => [1, measure - limit]),
    points.map(({ waterContentPct }) => waterContentPct),
  );
  const [liquidLimitPct, slope] = fit.coefficients;
  const free = fit.degreesOfFreedom;
  const flowLine = { method, slope, intercept: liquidLimitPct - slope * limit };
  if (free < 1) return { liquidLimitPct, flowLine };
  const half = tQuantile(0.975, free) * fit.standardErrors[0];
  return {
    liquidLimitPct,
    interval95: [liquidLimitPct - half, liquidLimitPct + half],
    flowLine: { ...flowLine, residualSdPct: fit.residualSd },
  };
}

/** Range of blows within which one point may stand for the flow line (ASTM D4318, from memory). */
const MIN_BLOWS = 20;
const MAX_BLOWS = 30;
const EXPONENT = 0.121;

/**
 * Liquid limit from a single point of the cup.
 *
 * Formula: LL = w (N / 25)^0.121 (limecalculator.com, read; Sowers 1965 has 0.12, read in the help of
 * the R package soilphysics). Between 20 and 30 blows the exponents differ by less than 0.1 % of LL.
 * It takes the slope of the flow line for known, so several points are better.
 *
 * @returns percent, or `undefined` outside 20 to 30 blows.
 * @throws RangeError where a value is not positive.
 *
 * @example
 * onePointLiquidLimit(40, 22) // => 39.39
 * onePointLiquidLimit(40, 12) // => undefined
 */
export function onePointLiquidLimit(waterContentPct: number, blows: number): number | undefined {
  checkPositive("waterContentPct", waterContentPct);
  checkPositive("blows", blows);
  if (blows < MIN_BLOWS || blows > MAX_BLOWS) return undefined;
  return waterContentPct * powerOf(blows / MEASURES.cup.limit, EXPONENT);
}

/** Percentage points between two threads beyond which the plastic limit is doubtful; common practice, no source. */
const MAX_RANGE_PCT = 2;

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
    checkNotNegative(`waterContentsPct[${index}]`, value);
  });
  const n = waterContentsPct.length;
  if (n === 0) return undefined;
  const plasticLimitPct = mean(waterContentsPct);
  const rangePct = Math.max(...waterContentsPct) - Math.min(...waterContentsPct);
  const known = { plasticLimitPct, threads: n, rangePct, apart: rangePct > MAX_RANGE_PCT };
  if (n === 1) return known;
  const standardErrorPct = sampleStandardDeviation(waterContentsPct) / Math.sqrt(n);
  const half = tQuantile(0.975, n - 1) * standardErrorPct;
  const interval95 = [plasticLimitPct - half, plasticLimitPct + half] as const;
  return { ...known, standardErrorPct, interval95 };
}

type Limits = Omit<ConsistencyResult, "findings">;

/** What is wrong or doubtful about a limits test. */
function checkConsistency(record: LimitsRecord, limits: Limits): Finding[] {
  return [
    ...checkReported(record),
    ...checkLiquidLimit(record, limits),
    ...checkPlasticLimit(record, limits),
    ...checkPlausible(record, limits),
    ...checkShrinkage(record, limits),
  ];
}

function checkReported({ file, reported }: LimitsRecord): Finding[] {
  return findingIf(reported !== undefined, { file }, "note", "limits-reported", {
    message: say`The laboratory reports limits without their readings: they cannot be checked and have no interval.`,
    expected: say`blows or penetrations, threads and lengths of the bar, where the laboratory has them`,
    remedy: say`No action needed unless the readings are available.`,
  });
}

function checkPlasticLimit(
  { file, plasticLimitPoints, nonPlastic }: LimitsRecord,
  { plasticLimitRangePct = 0 }: Limits,
): Finding[] {
  const place = { file, row: plasticLimitPoints[0]?.row };
  const isContradicted = nonPlastic && plasticLimitPoints.length > 0;
  const apart = { ...place, value: say`${formatFixed(plasticLimitRangePct, 1)} points` };
  return [
    ...findingIf(isContradicted, place, "warning", "non-plastic-with-limit", {
      message: say`The soil is reported as non-plastic, yet a plastic limit is given.`,
      expected: say`either one or the other`,
      remedy: say`Remove the wrong one; the soil was taken as non-plastic.`,
    }),
    ...findingIf(plasticLimitRangePct > MAX_RANGE_PCT, apart, "warning", "plastic-limit-apart", {
      message: say`The plastic-limit determinations differ widely.`,
      expected: say`within ${MAX_RANGE_PCT} points of water (common practice, no source)`,
      remedy: say`Make more determinations; until then the mean is used.`,
    }),
  ];
}

function checkPlausible({ file }: LimitsRecord, limits: Limits): Finding[] {
  const { plasticityIndexPct: index, uLinePct, liquidLimitPct = 0 } = limits;
  if (index === undefined || uLinePct === undefined) return [];
  const value = say`LL ${formatFixed(liquidLimitPct, 1)}, PI ${formatFixed(index, 1)}`;
  const isAbove = index >= 0 && index > uLinePct;
  return [
    ...findingIf(index < 0, { file, value }, "error", "limits-crossed", {
      message: say`The plastic limit lies above the liquid limit.`,
      expected: say`a plastic limit below the liquid limit`,
      remedy: say`Check the water contents; a soil that cannot be rolled is non-plastic.`,
    }),
    ...findingIf(isAbove, { file, value }, "warning", "above-u-line", {
      message: say`The point lies above the U-line, where natural soils are hardly ever found.`,
      expected: say`a plasticity index up to ${formatFixed(uLinePct, 1)} at this liquid limit (ASTM D2487, from memory)`,
      remedy: say`Check both limits before relying on them.`,
    }),
  ];
}

function checkShrinkage({ file }: LimitsRecord, { linearShrinkagePct = 0 }: Limits): Finding[] {
  const value = say`${formatFixed(linearShrinkagePct, 1)} %`;
  return findingIf(linearShrinkagePct < 0, { file, value }, "error", "bar-grew", {
    message: say`The shrinkage bar is longer dry than wet.`,
    expected: say`a dry length up to the wet length`,
    remedy: say`Check whether the two lengths were exchanged.`,
  });
}

/** Ranges of the liquid limit test; the cup's after ASTM D4318, the cone's after BS 1377-2, both from memory. */
const MEASURES = {
  cup: { name: say`blows`, low: 15, high: 35, limit: 25 },
  cone: { name: say`mm of penetration`, low: 15, high: 25, limit: 20 },
};

/** What is wrong or doubtful about the points of a liquid limit. */
function checkLiquidLimit(record: LimitsRecord, { flowLine, onePoint }: Limits): Finding[] {
  const { file, liquidLimitPoints: points, liquidLimitMethod: method = "cup" } = record;
  if (points.length === 0) return [];
  const { row, measure } = points[0];
  if (onePoint) {
    const place = { file, row, value: say`${measure} ${MEASURES[method].name}` };
    const found = finding(place, "warning", "one-point-liquid-limit", {
      message: say`The liquid limit rests on one point and an assumed slope of the flow line.`,
      expected: say`at least 3 points`,
      remedy: say`Take more points at other water contents; until then the limit has no interval.`,
    });
    return [found];
  }
  const count = { file, row, value: String(points.length) };
  // More water: fewer blows, deeper cone. A level line slopes by no more than rounding.
  const rightWay = flowLine && (method === "cup" ? -flowLine.slope : flowLine.slope);
  const isWrong = rightWay === undefined || rightWay <= 1e-9;
  return [
    ...farPoints(record),
    ...findingIf(points.length < 3, count, "warning", "few-liquid-limit-points", {
      message: say`The flow line has too few points to show whether it is straight.`,
      expected: say`at least 3 points`,
      remedy: say`Take more points at other water contents.`,
    }),
    ...findingIf(isWrong, { file, row }, "error", "flow-line", {
      message: flowLine
        ? say`The flow line slopes the wrong way: wetter soil should need fewer blows, or let the cone penetrate deeper.`
        : say`The points do not define a line: all have the same number of blows or the same penetration.`,
      expected: say`points at different water contents that follow one falling (cup) or rising (cone) line`,
      remedy: say`Check the points for exchanged columns or writing errors.`,
    }),
  ];
}

/** Points far from the liquid limit, each by itself and all together. */
function farPoints(record: LimitsRecord): Finding[] {
  const { file, liquidLimitPoints: points, liquidLimitMethod: method = "cup" } = record;
  const { name, low, high, limit } = MEASURES[method];
  const measures = points.map(({ measure }) => measure);
  const [min, max] = [Math.min(...measures), Math.max(...measures)];
  const all = { file, row: points[0].row, value: say`${min} to ${max} ${name}` };
  return [
    ...points.flatMap(({ measure, row }) => {
      const isFar = measure < low || measure > high;
      const place = { file, row, value: String(measure) };
      return findingIf(isFar, place, "warning", "liquid-limit-range", {
        message: say`This point lies far from the limit at ${limit} ${name}.`,
        expected: say`${low} to ${high} ${name}`,
        remedy: say`Dry or wet the soil a little and take another point nearer to the limit.`,
      });
    }),
    ...findingIf(min > limit || max < limit, all, "warning", "liquid-limit-outside", {
      message: say`All points lie on one side of the limit: it is read from the extrapolated line.`,
      expected: say`points on both sides of ${limit} ${name}`,
      remedy: say`Take a point on the other side.`,
    }),
  ];
}
