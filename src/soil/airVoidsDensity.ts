import { zeroAirVoidsDensity } from "./zeroAirVoidsDensity.js";

/**
 * Dry density in kg/m³ of a soil with a share of air: the lines of 5 and 10 % air beside that without.
 *
 * Formula: (1 − A / 100) times the density without air at the same water content (Scott, as reproduced
 * by winterbloomer.com, read: γd = (1 − A) Gs γw / (Gs w + 1)).
 *
 * @param airVoidsPct percent of the volume.
 * @throws RangeError where the air is not 0 to below 100, the water negative or the density not positive.
 *
 * @example
 * airVoidsDensity(10, 2700, 5) // => 2019.685
 */
export function airVoidsDensity(
  waterContentPct: number,
  particleDensityKgM3: number,
  airVoidsPct: number,
): number {
  if (!(airVoidsPct >= 0 && airVoidsPct < 100)) {
    throw new RangeError(`invalid \`airVoidsPct\`: ${airVoidsPct}; expected 0 to below 100`);
  }
  return (1 - airVoidsPct / 100) * zeroAirVoidsDensity(waterContentPct, particleDensityKgM3);
}
