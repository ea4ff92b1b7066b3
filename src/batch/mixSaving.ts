import { say } from "../words/say.js";
import type { Between } from "./cementComparison.js";
import { type CostRange, costRange } from "./costRange.js";
import type { MaterialPriceRange } from "./priceRange.js";
import { rangeDifference } from "./rangeDifference.js";
import type { Recipe } from "./recipeResult.js";

export interface MixSaving {
  readonly status: "ok" | "incomplete";
  readonly message: string;
  /** Cost of the other mix less that of this one: below zero where this one costs more. */
  readonly saved: Between | null;
  readonly savedCementKg: number;
}

/**
 * Gives what a mix saves against another one of the same element, at the same prices.
 *
 * Both mixes are bought at the same prices, so the range is not the difference of two ranges: a material
 * that both use alike adds no doubt. Formula: Σ over materials of price × (amount in other − amount in
 * this); the low end takes for each material the price that makes the saving least.
 *
 * @param of.mix, @param of.other both in the amount to make for the element, each with its own density.
 * @returns null and `incomplete` where a price is missing: a part of a saving says nothing.
 * @throws RangeError as `costRange` does. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const at = (cementPct) => recipe({ materials, cementPct, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const prices = { soil: { price: { low: 0, high: 5, per: "t" } }, cement: { price: { low: 150, high: 200, per: "t" } } };
 * mixSaving({ mix: at(6), other: at(8), prices }).saved // => { low: 3, high: 4 }
 */
export function mixSaving(of: {
  readonly mix: Recipe;
  readonly other: Recipe;
  readonly prices: Readonly<Record<string, MaterialPriceRange | undefined>>;
  /** Where the other mix comes in other counts of loads; default `prices`. */
  readonly otherPrices?: Readonly<Record<string, MaterialPriceRange | undefined>>;
  /** Named in findings; default `study.yaml`. */
  readonly file?: string;
}): MixSaving {
  const mix = costRange(of.mix, of.prices, { file: of.file });
  const other = costRange(of.other, of.otherPrices ?? of.prices, { file: of.file });
  const savedCementKg = of.other.cement.dryMassKg - of.mix.cement.dryMassKg;
  if (mix.status !== "ok" || other.status !== "ok") {
    const { message } = mix.status === "ok" ? other : mix;
    return { status: "incomplete", message, saved: null, savedCementKg };
  }
  const account = ({ lines }: CostRange) =>
    lines.map(({ id, material, haul }) => ({ id, parts: [material, haul] }));
  const saved = rangeDifference(account(mix), account(other));
  const words =
    saved.low >= 0
      ? say`This mix costs less at all prices given.`
      : saved.high <= 0
        ? say`This mix costs more at all prices given.`
        : say`Which mix costs less depends on the prices within their ranges.`;
  return { status: "ok", message: words, saved, savedCementKg };
}
