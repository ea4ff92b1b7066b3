/** Density of water in phase relations, kg/m³: the convention of the formulas cited, not a measurement. */
const WATER_KG_M3 = 1000;

/**
 * Dry density in kg/m³ of a soil with no air left in it: no compaction can reach beyond.
 *
 * Formula: ρw ρs / (ρw + w ρs), ρw = 1000 kg/m³ (unifolks.com, read).
 *
 * @throws RangeError where the water content is negative or the density not positive.
 *
 * @example
 * zeroAirVoidsDensity(10, 2700) // => 2125.98
 */
export function zeroAirVoidsDensity(waterContentPct: number, particleDensityKgM3: number): number {
  if (!(waterContentPct >= 0)) {
    throw new RangeError(`invalid \`waterContentPct\`: ${waterContentPct}; expected 0 or more`);
  }
  if (!(particleDensityKgM3 > 0)) {
    throw new RangeError(
      `invalid \`particleDensityKgM3\`: ${particleDensityKgM3}; expected above 0`,
    );
  }
  return (
    (WATER_KG_M3 * particleDensityKgM3) /
    (WATER_KG_M3 + (waterContentPct / 100) * particleDensityKgM3)
  );
}
