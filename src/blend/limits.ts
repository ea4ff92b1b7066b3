import { checkThat } from "../quantities/checkNumber.js";
import { say, type Text, wordFor } from "../words/message.js";
import { type BlendMaterial, blendPassing, valuesOf } from "./material.js";
import type { BlendLimit, PercentRange } from "./target.js";

/** Consistency limits are tested on what passes this sieve (ASTM D4318, from memory). */
const FINE_TEST_MM = 0.425;
const CLAY_MM = 0.002;
const SILT_MM = 0.063;

/** A code; a person reads it through `wordFor`. */
export type LimitUnit = "%" | "per t" | "kg per t";

/** One side of a limit. */
export interface LimitSide {
  readonly label: Text;
  readonly unit: LimitUnit;
  readonly side: "min" | "max";
  readonly limit: number;
}

/** The same, ready for the solver. */
export interface LimitRow extends LimitSide {
  /** Place in the list of limits. */
  readonly index: number;
  /** What each material brings to the quantity. */
  readonly values: readonly number[];
  /** Weight of each material in the mean: all 1 unless the quantity belongs to a part of the material. */
  readonly weights: readonly number[];
  /** An estimate that only a test of the blend settles. */
  readonly estimate: boolean;
}

/** The quantity of a blend: Σ share weight value / Σ share weight; 0 where nothing carries it. */
export function limitValue(row: LimitRow, shares: readonly number[]): number {
  let [sum, weight] = [0, 0];
  shares.forEach((share, j) => {
    sum += share * row.weights[j] * row.values[j];
    weight += share * row.weights[j];
  });
  return weight > 0 ? sum / weight : 0;
}

/** The row as `coefficients · shares <= 0`, with shares that sum to one. */
export function limitCoefficients(row: LimitRow): number[] {
  const sign = row.side === "max" ? 1 : -1;
  return row.values.map((value, j) => sign * row.weights[j] * (value - row.limit));
}

/**
 * The sides of the limits as rows for the solver. All are linear in the shares, also the estimates of
 * plasticity: Σ share p value / Σ share p <= U is the same as Σ share p (value − U) <= 0.
 *
 * @throws RangeError where a material lacks what a limit is about.
 */
export function limitRows(
  materials: readonly BlendMaterial[],
  limits: readonly BlendLimit[],
): LimitRow[] {
  const passing = (sizeMm: number) =>
    materials.map(({ curve }) => blendPassing(curve, sizeMm).passingPct);
  const ones = materials.map(() => 1);
  const own = (key: Parameters<typeof valuesOf>[1]) => valuesOf(materials, key, "a limit");
  const fineParts = () => passing(FINE_TEST_MM).map((pct) => pct / 100);
  return limits.flatMap((limit, index) => {
    const sides = (
      label: Text,
      unit: LimitUnit,
      values: readonly number[],
      range: { readonly min?: number; readonly max?: number },
      weights: readonly number[] = ones,
    ): LimitRow[] => {
      const row = { index, label, unit, values, weights, estimate: weights !== ones };
      return (["min", "max"] as const).flatMap((side) => {
        const bound = range[side];
        return bound === undefined ? [] : [{ ...row, side, limit: bound }];
      });
    };
    switch (limit.kind) {
      case "passing":
        return sides(say`passing ${limit.sizeMm} mm`, "%", passing(limit.sizeMm), percent(limit));
      case "top-size":
        return sides(say`passing ${limit.sizeMm} mm (top size)`, "%", passing(limit.sizeMm), {
          min: 100,
        });
      case "site-soil": {
        const whole = materials.map(({ siteSoil }) => (siteSoil ? 100 : 0));
        return sides(say`share of site soil`, "%", whole, percent(limit));
      }
      case "cost":
        return sides(say`cost`, "per t", own("costPerT"), { max: limit.maxPerT });
      case "carbon":
        return sides(say`carbon`, "kg per t", own("carbonKgPerT"), { max: limit.maxKgPerT });
      case "plasticity-index": {
        const values = own("plasticityIndexPct");
        return sides(say`plasticity index`, "%", values, percent(limit), fineParts());
      }
      case "linear-shrinkage": {
        const values = own("linearShrinkagePct");
        return sides(say`linear shrinkage`, "%", values, percent(limit), fineParts());
      }
      default: {
        const [finer, coarser] = limitSizes(limit).map(passing);
        const values = coarser ? coarser.map((value, j) => value - finer[j]) : finer;
        return sides(wordFor(limit.kind), "%", values, percent(limit));
      }
    }
  });
}

/** The sizes at which a curve is read to judge a limit. */
export function limitSizes(limit: BlendLimit): number[] {
  switch (limit.kind) {
    case "passing":
    case "top-size":
      return [limit.sizeMm];
    case "clay":
      return [limit.clayMm ?? CLAY_MM];
    case "silt":
      return [limit.clayMm ?? CLAY_MM, limit.siltMm ?? SILT_MM];
    case "fines":
      return [limit.siltMm ?? SILT_MM];
    case "plasticity-index":
    case "linear-shrinkage":
      return [FINE_TEST_MM];
    default:
      return [];
  }
}

function percent({ minPct, maxPct }: PercentRange) {
  return { min: minPct, max: maxPct };
}

/** Materials and limits as numbers; shares as parts of one, so that all conditions have one scale. */
export interface BlendProgramme {
  readonly materials: readonly BlendMaterial[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly rows: readonly LimitRow[];
}

/**
 * @throws RangeError where there is no material, a share bound lies outside 0 to 100 or the wrong way
 * round, or a limit asks for what a material does not tell.
 */
export function blendProgramme(
  materials: readonly BlendMaterial[],
  limits: readonly BlendLimit[],
): BlendProgramme {
  checkThat(materials.length > 0, { materials: "[]" }, "at least one");
  materials.forEach(({ minSharePct, maxSharePct, curve }, index) => {
    const isRange = minSharePct >= 0 && minSharePct <= maxSharePct && maxSharePct <= 100;
    if (isRange && curve.points.length > 0) return;
    // The material gets its name only where it is refused.
    const name = `materials[${index}]`;
    const range = `${minSharePct} to ${maxSharePct}`;
    checkThat(isRange, { [`${name}.sharePct`]: range }, "0 to 100, smallest first");
    checkThat(curve.points.length > 0, { [`${name}.curve`]: "no points" }, "at least one");
  });
  return {
    materials,
    lower: materials.map(({ minSharePct }) => minSharePct / 100),
    upper: materials.map(({ maxSharePct }) => maxSharePct / 100),
    rows: limitRows(materials, limits),
  };
}

/** The same with the materials outside a set held at nothing. */
export function onlyMaterials(
  programme: BlendProgramme,
  used: (index: number) => boolean,
): BlendProgramme {
  return { ...programme, upper: programme.upper.map((max, j) => (used(j) ? max : 0)) };
}

/** Whether shares (parts of one) keep the materials' bounds and all limits, but for rounding. */
export function keepsConditions(
  materials: readonly BlendMaterial[],
  rows: readonly LimitRow[],
  shares: readonly number[],
): boolean {
  for (let j = 0; j < shares.length; j += 1) {
    const sharePct = 100 * shares[j];
    const { minSharePct, maxSharePct } = materials[j];
    if (sharePct < minSharePct - 1e-9 || sharePct > maxSharePct + 1e-9) return false;
  }
  return rows.every((row) => {
    const over = limitValue(row, shares) - row.limit;
    const slight = 1e-9 * Math.max(1, Math.abs(row.limit));
    return (row.side === "max" ? over : -over) <= slight;
  });
}
