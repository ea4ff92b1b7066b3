import type { Recipe, RecipeLine } from "./recipeResult.js";

/** The same mix in another amount. */
export function scaleRecipe(recipe: Recipe, factor: number): Recipe {
  const times = (value: number | null) => (value === null ? null : value * factor);
  const line = (of: RecipeLine): RecipeLine => ({
    ...of,
    dryMassKg: of.dryMassKg * factor,
    moistMassKg: of.moistMassKg * factor,
    looseVolumeL: times(of.looseVolumeL),
  });
  return {
    ...recipe,
    materials: recipe.materials.map(line),
    cement: line(recipe.cement),
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
