import { recipe as makeRecipe } from "./recipe.js";
import type { Recipe, RecipeLine } from "./recipeResult.js";

/**
 * The recipe with other dry masses of the same materials: densities and moistures stay, shares, cement
 * content, volumes and water follow. Materials that had no mass are left out.
 */
export function rebuildRecipe(recipe: Recipe, dryOf: (line: RecipeLine) => number): Recipe {
  const used = recipe.materials.filter(({ dryMassKg }) => dryMassKg > 0);
  const total = used.reduce((sum, line) => sum + dryOf(line), 0);
  const densityOf = (line: RecipeLine) =>
    line.looseVolumeL === null ? undefined : (1000 * line.dryMassKg) / line.looseVolumeL;
  const batch = makeRecipe({
    materials: used.map((line) => ({
      id: line.id,
      name: line.name,
      sharePct: (100 * dryOf(line)) / total,
      looseBulkDensityKgM3: densityOf(line),
      moisturePct: 100 * (line.moistMassKg / line.dryMassKg - 1),
    })),
    cementPct: (100 * dryOf(recipe.cement)) / total,
    cementBulkDensityKgM3: recipe.cement.dryMassKg > 0 ? densityOf(recipe.cement) : undefined,
    targetMoisturePct: recipe.targetMoisturePct,
    moistureOf: recipe.moistureOf,
    batchDryMassKg: total,
  });
  // What was said of the densities holds for these volumes too.
  const told = recipe.findings.filter(({ code }) => code !== "materials-too-wet");
  const tooWet = batch.findings.filter(({ code }) => code === "materials-too-wet");
  return { ...batch, findings: [...told, ...tooWet] };
}
