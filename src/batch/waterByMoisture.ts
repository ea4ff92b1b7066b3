import { checkNotBelow } from "./checkAmount.js";
import type { Recipe } from "./recipeResult.js";

export interface WaterByMoisture {
  /** Of soil and aggregate together, percent of their dry mass. */
  readonly heapMoisturePct: number;
  /** To pour in; 0 where the heap brings enough. */
  readonly toAddKg: number;
  /** More than wanted; dry the heap where it is above 0. */
  readonly surplusKg: number;
}

/**
 * Gives the water to pour into a batch if the soil and aggregate turn out wetter or drier than planned.
 *
 * Formula: water to add = target water − dry mass of soil and aggregate × heap moisture / 100. The dry mass in
 * the batch is taken as planned: true by weight of dry mass; by bucket only as long as the heap bulks alike.
 *
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
): WaterByMoisture[] {
  return heapMoisturesPct.map((heapMoisturePct, index) => {
    checkNotBelow(`heapMoisturesPct[${index}]`, heapMoisturePct);
    const toAddKg = recipe.water.targetKg - (recipe.dryMassKg * heapMoisturePct) / 100;
    return {
      heapMoisturePct,
      toAddKg: Math.max(0, toAddKg),
      surplusKg: Math.max(0, -toAddKg),
    };
  });
}
