import { checkAbove } from "./checkAmount.js";

const WATER_KG_M3 = 1000;

/**
 * The moisture at which all pores of a material are full of water, percent of its dry mass.
 *
 * Formula: w = 100 ρw (1/ρd − 1/ρs), with water at 1000 kg/m³.
 *
 * @param dryDensityKgM3 dry mass in the volume, loose or rammed, below the particle density.
 * @throws RangeError for a density not above 0, or a dry density above the particle density. Source:
 * phase relation, own arithmetic.
 *
 * @example
 * saturationMoisturePct(1900, 2650) // => 14.90
 */
export function saturationMoisturePct(dryDensityKgM3: number, particleDensityKgM3: number): number {
  checkAbove("dryDensityKgM3", dryDensityKgM3);
  checkAbove("particleDensityKgM3", particleDensityKgM3);
  if (dryDensityKgM3 > particleDensityKgM3) {
    throw new RangeError(
      `invalid \`dryDensityKgM3\`: ${dryDensityKgM3}; expected at most the particle density ${particleDensityKgM3}`,
    );
  }
  return 100 * WATER_KG_M3 * (1 / dryDensityKgM3 - 1 / particleDensityKgM3);
}
