import { checkPositive } from "../quantities/checkNumber.js";
import type { Recipe, RecipeLine } from "./recipe.js";

/**
 * Gives the same mix in another amount: a trial batch for a full one, or a batch for a wall.
 *
 * Nothing is rounded, so scaling by f and by 1/f comes back to the last bit or two; what a scale or a
 * bucket rounds is told by `weighOut` and `mixRecord`.
 *
 * @param factor times the amount, above 0.
 * @throws RangeError for a factor not above 0. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct: 6 }];
 * const trial = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 5 });
 * const full = scaleRecipe(trial, 24);
 * [full.dryMassKg, full.cement.dryMassKg, full.water.toAddKg] // => [120, 9.6, 5.76]
 */
export function scaleRecipe(recipe: Recipe, factor: number): Recipe {
  checkPositive("factor", factor);
  const times = (value: number | null) => (value === null ? null : value * factor);
  const scaled = (line: RecipeLine): RecipeLine => ({
    ...line,
    dryMassKg: line.dryMassKg * factor,
    moistMassKg: line.moistMassKg * factor,
    looseVolumeL: times(line.looseVolumeL),
  });
  return {
    ...recipe,
    materials: recipe.materials.map(scaled),
    cement: scaled(recipe.cement),
    water: {
      targetKg: recipe.water.targetKg * factor,
      inMaterialsKg: recipe.water.inMaterialsKg * factor,
      toAddKg: recipe.water.toAddKg * factor,
      surplusKg: recipe.water.surplusKg * factor,
    },
    dryMassKg: recipe.dryMassKg * factor,
    dryMassWithCementKg: recipe.dryMassWithCementKg * factor,
    rammedMassKg: recipe.rammedMassKg * factor,
    looseVolumeL: times(recipe.looseVolumeL),
  };
}
