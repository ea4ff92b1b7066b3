import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import type { RecipeInput } from "./recipeInput.js";

/** Names each bulk density that is missing, or is a general value and not a measured one. */
export function densityFindings(input: RecipeInput): Finding[] {
  const file = input.file ?? "study.yaml";
  const entries = [
    ...input.materials.map((material) => ({
      column: `materials.${material.id}.loose-bulk-density`,
      name: material.name,
      densityKgM3: material.looseBulkDensityKgM3,
      basis: material.densityBasis,
      used: material.sharePct > 0,
    })),
    {
      column: "cement.loose-bulk-density",
      name: say`The cement`,
      densityKgM3: input.cementBulkDensityKgM3,
      basis: input.cementDensityBasis,
      used: input.cementPct > 0,
    },
  ];
  return entries
    .filter(({ used }) => used)
    .flatMap(({ column, name, densityKgM3, basis }): Finding[] => {
      const place = { file, column, expected: say`a loose bulk density measured on this material` };
      const wayOut = say`Fill a bucket of known volume loosely, weigh it, and take off the water.`;
      if (densityKgM3 === undefined) {
        return [
          {
            severity: "error",
            code: "bulk-density-missing",
            ...place,
            message: say`${name} has no loose bulk density, so its volume is not known.`,
            wayOut,
          },
        ];
      }
      if (basis !== "default") return [];
      return [
        {
          severity: "warning",
          code: "bulk-density-default",
          ...place,
          value: `${densityKgM3} kg/m³`,
          message: say`${name}: the loose bulk density is a general value; volumes may be off by a fifth or more.`,
          wayOut,
        },
      ];
    });
}
