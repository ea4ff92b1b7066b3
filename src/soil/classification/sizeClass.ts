import { characteristicSizes } from "../../grading/characteristics.js";
import { type GradingCurve, passingAtSize, percentOf, scalp } from "../../grading/curve.js";
import { type BoundarySystem, fractions } from "../../grading/fractions.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { formatFixed } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";

/** Consistency of the part under 0.425 mm, as far as it is known. */
export interface CurveLimits {
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  /** Reported as non-plastic. */
  readonly nonPlastic?: boolean;
}

/**
 * What the classifications of ISO 14688-2 and BS 5930 ask for; percent of the part under 63 mm. Only BS 5930
 * asks for limits, from 5 % fines.
 */
export interface SizeClassInput extends CurveLimits {
  /** 2 to 63 mm. */
  readonly gravelPct: number;
  /** 0.063 to 2 mm. */
  readonly sandPct: number;
  /** Under 0.063 mm. */
  readonly finesPct: number;
  /** Under 0.002 mm; only ISO 14688-2 asks for it, where there are fines. */
  readonly clayPct?: number;
  /** Coefficient of uniformity; asked for where there are few fines. */
  readonly cu?: number;
  /** Coefficient of curvature. */
  readonly cc?: number;
  /** Liquid limit after oven drying below 0.75 of that before. */
  readonly organic?: boolean;
}

export interface SizeClass {
  /** Absent where a value that decides is missing. */
  readonly symbol?: string;
  /** In words. */
  readonly name?: string;
  /** The decisions in their order, in plain sentences. */
  readonly path: readonly Text[];
  readonly missing: readonly Text[];
  /** How far the rules themselves can be trusted. */
  readonly source: Text;
}

/** Percent of the part that passes the upper end of gravel. */
type SizeShares = Omit<SizeClassInput, keyof CurveLimits | "organic">;

/**
 * Gravel, sand and fines of the part finer than cobbles, taken as 100, and how it is graded: what a
 * classification by size asks for. Clay is absent where the curve does not reach it, Cu and Cc where it does
 * not reach D10.
 *
 * @returns `undefined` where the curve does not reach the boundaries of fines and sand, or the top of gravel.
 */
export function sizeShares(curve: GradingCurve, system: BoundarySystem): SizeShares | undefined {
  const { boundaries, gravelPct, sandPct, finesPct, clayPct } = fractions(curve, system);
  const whole = passingAtSize(curve, boundaries.gravelMm);
  if (gravelPct === undefined || sandPct === undefined || finesPct === undefined || !whole) {
    return undefined;
  }
  const part = (pct: number) => percentOf(whole, pct);
  const { cu, cc } = characteristicSizes(scalp(curve, boundaries.gravelMm));
  return {
    gravelPct: part(gravelPct),
    sandPct: part(sandPct),
    finesPct: part(finesPct),
    clayPct: clayPct === undefined ? undefined : part(clayPct),
    cu,
    cc,
  };
}

/** Refuses shares that are no shares, or that do not add up to 100 (within 0.5). */
export function checkSizeShares({ gravelPct, sandPct, finesPct, clayPct }: SizeShares): void {
  for (const [name, value] of Object.entries({ gravelPct, sandPct, finesPct, clayPct })) {
    checkThat(value === undefined || (value >= 0 && value <= 100), { [name]: value }, "0 to 100");
  }
  const sum = gravelPct + sandPct + finesPct;
  if (Math.abs(sum - 100) > 0.5) {
    throw new RangeError(`invalid sum of gravel, sand and fines: ${sum}; expected 100`);
  }
  const isWithin = clayPct === undefined || clayPct <= finesPct + 1e-9;
  checkThat(isWithin, { clayPct }, `at most the fines, ${finesPct}`);
}

/** What is missing where the fines decide and their limits are not known. */
export const NO_LIMITS = say`liquid limit and plasticity index`;

/** A share in a sentence of a path of decisions. */
export function pct(value: number): Text {
  return say`${formatFixed(value, 1)} %`;
}
