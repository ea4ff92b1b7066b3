import type { Between } from "./cementComparison.js";
import type { MixCarbon } from "./mixCarbon.js";
import { rangeDifference } from "./rangeDifference.js";

/**
 * Gives what a mix saves in carbon against another one of the same element, at the same factors.
 *
 * A factor that both mixes use errs alike in both, so the range is not the difference of two ranges.
 * Formula: Σ over materials of factor × (amount in other − amount in this), kg CO2e; below zero where
 * this mix emits more.
 *
 * @returns null where a factor is missing in either: a part of a saving says nothing. Source: own
 * arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const factors = { soil: MATERIAL_CARBON_FACTORS[0], cement: CEMENT_CARBON_FACTORS[0] };
 * const at = (cementPct) => mixCarbon(recipe({ materials, cementPct, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 }), { factors });
 * carbonSaving(at(6), at(8)) // => { low: 16.92, high: 18.44 }
 */
export function carbonSaving(mix: MixCarbon, other: MixCarbon): Between | null {
  if (mix.status !== "ok" || other.status !== "ok") return null;
  const account = ({ lines }: MixCarbon) =>
    lines.map(({ id, making, haul }) => ({ id, parts: [making, haul] }));
  return rangeDifference(account(mix), account(other));
}
