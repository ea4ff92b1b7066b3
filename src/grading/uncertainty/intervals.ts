import { quantileSorted, sampleStandardDeviation } from "simple-statistics";
import { checkThat } from "../../quantities/checkNumber.js";
import { characteristicSizes } from "../characteristics.js";
import { type CurveReading, fineToCoarse, type GradingCurve, passingAmong } from "../curve.js";
import { type BoundarySystem, fractions } from "../fractions.js";

/** What is read off a curve, with its unit. */
const UNITS = {
  d10: "mm",
  d15: "mm",
  d30: "mm",
  d50: "mm",
  d60: "mm",
  d85: "mm",
  d90: "mm",
  cu: "",
  cc: "",
  clayPct: "%",
  siltPct: "%",
  finesPct: "%",
  sandPct: "%",
  gravelPct: "%",
} as const;

export type GradingQuantity = keyof typeof UNITS;

/** What the resampled curves say of one number read off a grading curve. */
export interface QuantityInterval {
  readonly quantity: GradingQuantity;
  /** `mm` for D-sizes, `%` for fractions, none for Cu and Cc. */
  readonly unit: "mm" | "%" | "";
  readonly low: number;
  readonly median: number;
  readonly high: number;
  /** Share of the curves that reach far enough to give the number, 0 to 1. */
  readonly known: number;
}

/** Below this share of curves the known ones would be a chosen few, and their interval false comfort; common practice, no source. */
const ENOUGH_KNOWN = 0.9;

/**
 * Intervals of the numbers read off a curve, from curves as it could have come out, of
 * `resampleReadings`.
 *
 * The middle part of the resampled values (percentile interval, Efron and Tibshirani 1993, from
 * memory). A number that fewer than 90 % of the curves reach is left out.
 *
 * @param system boundaries of the fractions; default `iso14688`.
 * @param reading of the D-sizes; default `log-size`.
 * @param coverage default 0.95.
 * @throws RangeError for fewer than 2 curves or a coverage not between 0 and 1.
 *
 * @example
 * const curve = (pct) => ({ points: [{ sizeMm: 0.063, passingPct: pct, origin: "sieve" }, { sizeMm: 2, passingPct: 80, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] });
 * const found = quantityIntervals([curve(20), curve(30), curve(40)]);
 * found.find(({ quantity }) => quantity === "finesPct") // => { quantity: "finesPct", unit: "%", low: 20.5, median: 30, high: 39.5, known: 1 }
 */
export function quantityIntervals(
  curves: readonly GradingCurve[],
  {
    system,
    reading,
    coverage = 0.95,
  }: {
    readonly system?: BoundarySystem;
    readonly reading?: CurveReading;
    readonly coverage?: number;
  } = {},
): QuantityInterval[] {
  checkThat(curves.length >= 2, { curves: curves.length }, "at least 2");
  checkThat(coverage > 0 && coverage < 1, { coverage }, "between 0 and 1");
  const read = curves.map((curve) => ({
    ...characteristicSizes(curve, reading),
    ...fractions(curve, system),
  }));
  const quantities = Object.keys(UNITS) as GradingQuantity[];
  return quantities.flatMap((quantity): QuantityInterval[] => {
    const sorted = read
      .flatMap((each) => each[quantity] ?? [])
      .filter(Number.isFinite)
      .sort((a, b) => a - b);
    const known = sorted.length / curves.length;
    if (known < ENOUGH_KNOWN) return [];
    return [
      {
        quantity,
        unit: UNITS[quantity],
        low: quantileSorted(sorted, (1 - coverage) / 2),
        median: quantileSorted(sorted, 0.5),
        high: quantileSorted(sorted, (1 + coverage) / 2),
        known,
      },
    ];
  });
}

/** Percentage points that no laboratory does better than, so that no point weighs without end; common practice, no source. */
const FLOOR_PCT = 0.2;

/**
 * Standard deviation of the passing at each size among resampled curves: the weights of a fit.
 *
 * Reading errors alone would give points near 0 and 100 % next to no doubt; `floorPct` is added in
 * square for what a smooth model cannot follow.
 *
 * @param floorPct percentage points; default 0.2 (common practice, no source).
 * @throws RangeError for fewer than 2 curves or a floor not above 0.
 *
 * @example
 * const curve = (pct) => ({ points: [{ sizeMm: 0.063, passingPct: pct, origin: "sieve" }, { sizeMm: 2, passingPct: 80, origin: "sieve" }] });
 * readingSpread([curve(20), curve(23)], [0.063, 2]) // => [2.131, 0.200]
 */
export function readingSpread(
  curves: readonly GradingCurve[],
  sizesMm: readonly number[],
  floorPct: number = FLOOR_PCT,
): number[] {
  checkThat(curves.length >= 2, { curves: curves.length }, "at least 2");
  checkThat(floorPct > 0, { floorPct }, "above 0");
  const ordered = curves.map(({ points }) => fineToCoarse(points));
  return sizesMm.map((sizeMm) => {
    const values = ordered.flatMap((points) => passingAmong(points, sizeMm) ?? []);
    if (values.length < 2) return floorPct;
    return Math.hypot(floorPct, sampleStandardDeviation(values));
  });
}
