import { checkThat } from "../../quantities/checkNumber.js";

/** Density of water in phase relations, kg/m³: the convention of the formulas cited, not a measurement. */
export const WATER_KG_M3 = 1000;

/**
 * Dry density in kg/m³ of a soil with no air left in it: no compaction can reach beyond.
 *
 * Formula: ρw ρs / (ρw + w ρs), ρw = 1000 kg/m³ (unifolks.com, read).
 *
 * @throws RangeError where the water content is negative or the density not above that of water, for
 * example where it was given in Mg/m³.
 *
 * @example
 * zeroAirVoidsDensity(10, 2700) // => 2125.98
 */
export function zeroAirVoidsDensity(waterContentPct: number, particleDensityKgM3: number): number {
  checkThat(waterContentPct >= 0, { waterContentPct }, "0 or more");
  checkThat(
    particleDensityKgM3 > WATER_KG_M3,
    { particleDensityKgM3 },
    `kg/m³, above ${WATER_KG_M3}`,
  );
  return (
    (WATER_KG_M3 * particleDensityKgM3) /
    (WATER_KG_M3 + (waterContentPct / 100) * particleDensityKgM3)
  );
}

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
  checkThat(airVoidsPct >= 0 && airVoidsPct < 100, { airVoidsPct }, "0 to below 100");
  return (1 - airVoidsPct / 100) * zeroAirVoidsDensity(waterContentPct, particleDensityKgM3);
}

/** Coarse grains that were screened off before a compaction test. */
export interface Oversize {
  /** Dry share of the whole, percent. */
  readonly oversizePct: number;
  readonly oversizeParticleDensityKgM3: number;
}

export interface OversizeInput extends Oversize {
  /** Of the part that was compacted in the mould. */
  readonly dryDensityKgM3: number;
  readonly waterContentPct: number;
}

/**
 * Dry density and water content of the whole material, where coarse grains were screened off before
 * the compaction test.
 *
 * Formula: 1 / ((1 − P) / ρd + P / ρs), w (1 − P); the coarse grains take up no water (computed form
 * that reproduces an exercise in Smith, Elements of Soil Mechanics, read).
 *
 * @throws RangeError where a density is not positive, the water negative or the share not 0 to below 100.
 *
 * @example
 * oversizeDensity({ dryDensityKgM3: 1900, waterContentPct: 12, oversizePct: 20, oversizeParticleDensityKgM3: 2650 }) // => { dryDensityKgM3: 2014.0, waterContentPct: 9.6 }
 */
export function oversizeDensity(input: OversizeInput): {
  readonly dryDensityKgM3: number;
  readonly waterContentPct: number;
} {
  const { dryDensityKgM3, waterContentPct, oversizePct, oversizeParticleDensityKgM3 } = input;
  for (const [name, value] of Object.entries({ dryDensityKgM3, oversizeParticleDensityKgM3 })) {
    checkThat(value > 0, { [name]: value }, "above 0");
  }
  checkThat(waterContentPct >= 0, { waterContentPct }, "0 or more");
  checkThat(oversizePct >= 0 && oversizePct < 100, { oversizePct }, "0 to below 100");
  const part = oversizePct / 100;
  return {
    dryDensityKgM3: 1 / ((1 - part) / dryDensityKgM3 + part / oversizeParticleDensityKgM3),
    waterContentPct: (1 - part) * waterContentPct,
  };
}
