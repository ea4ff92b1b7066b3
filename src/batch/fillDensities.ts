import { DEFAULT_BULK_DENSITIES, type DefaultBulkDensity } from "./defaultBulkDensities.js";
import type { RecipeInput } from "./recipeInput.js";

/**
 * Puts general loose bulk densities where none was measured, marked `default`, so that `recipe` tells it
 * with a finding for each. Measured ones stay.
 *
 * @param roles by material id; a material without a role stays without a density.
 *
 * @example
 * const materials = [{ id: "pit", name: "Pit sand", sharePct: 100, moisturePct: 3 }];
 * const filled = fillDensities({ materials, cementPct: 8, cementBulkDensityKgM3: 1250, targetMoisturePct: 10, batchDryMassKg: 100 }, { pit: "sand" });
 * [filled.materials[0].looseBulkDensityKgM3, filled.materials[0].densityBasis] // => [1400, "default"]
 * recipe(filled).findings.map(({ code }) => code) // => ["bulk-density-default"]
 */
export function fillDensities(
  input: RecipeInput,
  roles: Readonly<Record<string, "soil" | "sand" | "gravel" | undefined>>,
): RecipeInput {
  const densityOf = (role: DefaultBulkDensity["id"]) =>
    DEFAULT_BULK_DENSITIES.find(({ id }) => id === role)!.valueKgM3;
  return {
    ...input,
    materials: input.materials.map((material) => {
      const role = roles[material.id];
      return material.looseBulkDensityKgM3 !== undefined || role === undefined
        ? material
        : { ...material, looseBulkDensityKgM3: densityOf(role), densityBasis: "default" };
    }),
    ...(input.cementBulkDensityKgM3 === undefined
      ? { cementBulkDensityKgM3: densityOf("cement"), cementDensityBasis: "default" as const }
      : {}),
  };
}
