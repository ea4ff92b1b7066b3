import type { Finding } from "../lab/finding.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { RecipeInput } from "./recipeInput.js";
import { saturationMoisturePct } from "./saturationMoisturePct.js";

/** Names each material said to hold more water than its pores have room for. */
export function moistureFindings(input: RecipeInput): Finding[] {
  return input.materials.flatMap((material): Finding[] => {
    const { looseBulkDensityKgM3, particleDensityKgM3, moisturePct } = material;
    if (looseBulkDensityKgM3 === undefined || particleDensityKgM3 === undefined) return [];
    if (looseBulkDensityKgM3 >= particleDensityKgM3) {
      return [
        {
          severity: "error",
          code: "bulk-density-over-particle",
          file: input.file ?? "study.yaml",
          column: `materials.${material.id}.loose-bulk-density`,
          value: `${looseBulkDensityKgM3} kg/m³`,
          message: say`${material.name}: the loose heap is as dense as its grains or denser.`,
          expected: say`below ${particleDensityKgM3} kg/m³, the density of the grains`,
          wayOut: say`Check both densities and their units.`,
        },
      ];
    }
    const fullPct = saturationMoisturePct(looseBulkDensityKgM3, particleDensityKgM3);
    if (moisturePct <= fullPct) return [];
    return [
      {
        severity: "error",
        code: "moisture-over-saturation",
        file: input.file ?? "study.yaml",
        column: `materials.${material.id}.moisture`,
        value: `${moisturePct} %`,
        message: say`${material.name}: all pores of the loose heap are full at ${formatFixed(fullPct, 1)} % of the dry mass, so it cannot hold ${moisturePct} %.`,
        expected: say`at most ${formatFixed(fullPct, 1)} %`,
        wayOut: say`Check that the moisture is a percentage of the dry mass, and measure it again on a drained sample.`,
      },
    ];
  });
}
