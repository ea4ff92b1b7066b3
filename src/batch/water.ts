import { checkNotNegative } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import { say, type Text } from "../words/message.js";
import type { Recipe } from "./recipe.js";

export interface WaterWindow {
  /** `dry-first`: the materials are wetter than the window; `ok` otherwise. */
  readonly status: "ok" | "dry-first";
  readonly message: Text;
  /** Moisture of the mix, percent of the mass that the recipe's `moistureOf` names. */
  readonly moisturePct: Interval;
  readonly targetMoisturePct: number;
  /** Of the damp materials alone, on the same base. */
  readonly presentMoisturePct: number;
  /** To pour in for the dry end, the target and the wet end; a kilogram is a litre. Never below 0. */
  readonly toAddKg: { readonly low: number; readonly target: number; readonly high: number };
}

/** How dry and how wet a mix may be rammed: both ends, or points to each side of the target. */
export type MoistureLimits =
  | { readonly driestPct: number; readonly wettestPct: number }
  | { readonly tolerancePct: number };

/** From the driest to the wettest mix, the target given. */
export function allowedMoisture(targetPct: number, limits: MoistureLimits): Interval {
  if (!("tolerancePct" in limits)) return { low: limits.driestPct, high: limits.wettestPct };
  const { tolerancePct } = limits;
  return { low: Math.max(0, targetPct - tolerancePct), high: targetPct + tolerancePct };
}

/**
 * Gives the water to pour into a batch for the driest, the wanted and the wettest mix that may be rammed.
 *
 * Formula: water to add = solids × moisture/100 − water in the materials, the solids with or without
 * cement as the recipe has it.
 *
 * @param window `driestPct` and `wettestPct`, for example from `moistureWindow`, or a tolerance on both
 * sides of the optimum in `tolerancePct`.
 * @throws RangeError where the target does not lie in the window, or a moisture is below 0. Source: own
 * arithmetic; how wide the window may be is the designer's choice.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * waterWindow(batch, { tolerancePct: 1 }).toAddKg // => { low: 3.72, target: 4.8, high: 5.88 }
 */
export function waterWindow(recipe: Recipe, window: MoistureLimits): WaterWindow {
  const { targetMoisturePct, water } = recipe;
  if ("tolerancePct" in window) checkNotNegative("tolerancePct", window.tolerancePct);
  const moisturePct = allowedMoisture(targetMoisturePct, window);
  checkNotNegative("driestPct", moisturePct.low);
  checkNotNegative("wettestPct", moisturePct.high);
  if (!(moisturePct.low <= targetMoisturePct && targetMoisturePct <= moisturePct.high)) {
    throw new RangeError(
      `invalid window: ${moisturePct.low} to ${moisturePct.high}; expected to hold the target ${targetMoisturePct}`,
    );
  }
  const solidsKg =
    recipe.moistureOf === "all-solids" ? recipe.dryMassWithCementKg : recipe.dryMassKg;
  const toAdd = (pct: number) => Math.max(0, (solidsKg * pct) / 100 - water.inMaterialsKg);
  const presentMoisturePct = (100 * water.inMaterialsKg) / solidsKg;
  // A billionth over the wet end is rounding, not wet soil.
  const wet = presentMoisturePct > moisturePct.high + 1e-9;
  return {
    status: wet ? "dry-first" : "ok",
    message: wet
      ? say`The materials alone make the mix ${formatFixed(presentMoisturePct, 1)} % wet, above the window: dry them first.`
      : say`Ram between ${formatFixed(moisturePct.low, 1)} and ${formatFixed(moisturePct.high, 1)} %, best at ${formatFixed(targetMoisturePct, 1)} %.`,
    moisturePct,
    targetMoisturePct,
    presentMoisturePct,
    toAddKg: {
      low: toAdd(moisturePct.low),
      target: toAdd(targetMoisturePct),
      high: toAdd(moisturePct.high),
    },
  };
}

export interface WaterByMoisture {
  /** Of soil and aggregate together, percent of their dry mass. */
  readonly heapMoisturePct: number;
  /** To pour in; 0 where the heap brings enough. */
  readonly toAddKg: number;
  /** More than the wettest mix may have; dry the heap where it is above 0. */
  readonly surplusKg: number;
}

/**
 * Gives the water to pour into a batch if the soil and aggregate turn out wetter or drier than planned.
 *
 * Formula: water to add = target water − dry mass of soil and aggregate × heap moisture / 100. The dry mass in
 * the batch is taken as planned: true by weight of dry mass; by bucket only as long as the heap bulks alike.
 *
 * @param wettestPct how wet the mix may be rammed, on the base of the recipe; default its target.
 * @throws RangeError for a moisture below 0. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * waterByMoisture(batch, [4, 6, 12]).map(({ toAddKg }) => toAddKg) // => [6.8, 4.8, 0]
 */
export function waterByMoisture(
  recipe: Recipe,
  heapMoisturesPct: readonly number[],
  wettestPct: number = recipe.targetMoisturePct,
): WaterByMoisture[] {
  const { dryMassKg, dryMassWithCementKg, moistureOf, water } = recipe;
  const solidsKg = moistureOf === "all-solids" ? dryMassWithCementKg : dryMassKg;
  return heapMoisturesPct.map((heapMoisturePct, index) => {
    checkNotNegative(`heapMoisturesPct[${index}]`, heapMoisturePct);
    const inHeapKg = (dryMassKg * heapMoisturePct) / 100;
    return {
      heapMoisturePct,
      toAddKg: Math.max(0, water.targetKg - inHeapKg),
      surplusKg: Math.max(0, inHeapKg - (solidsKg * wettestPct) / 100),
    };
  });
}
