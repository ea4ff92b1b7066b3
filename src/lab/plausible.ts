import { type Finding, type FindingPlace, findingIf } from "../findings/finding.js";
import { measured } from "../quantities/format.js";
import { say } from "../words/message.js";

/**
 * Dry density of rammed earth and of compacted soil, kg/m³: below it lies loose soil, above it the density
 * of the grains themselves. Rammed earth has 1,700 to 2,200 (common practice, no source).
 */
export const EARTH_DENSITY = { min: 1200, max: 2600 };

/** Sieves, mm: the finest that soil is washed on, and a hand's width; common practice, no source. */
export const SIEVE_SIZE = { min: 0.02, max: 200 };

/** A side of a test block, mm: from mortar prisms to small walls; common practice, no source. */
export const BLOCK_SIDE = { min: 20, max: 1500 };

/**
 * Mould of a compaction test, cm³: from the miniature mould of 62 cm³ to those for coarse gravel; common
 * practice, no source.
 */
export const MOULD_VOLUME = { min: 50, max: 20_000 };

/**
 * Soil in a sedimentation cylinder of a litre, g: 50 g of clay to 100 g of sand are usual; common practice, no
 * source.
 */
export const DISPERSED_MASS = { min: 5, max: 250 };

/**
 * Time of a sedimentation reading, min: nobody reads within six seconds, or after a fortnight; common practice,
 * no source.
 */
export const SETTLING_TIME = { min: 0.1, max: 20_160 };

/** Whether a density worked out from readings is none that earth can have; told at the reading. */
export function densityFindings(place: FindingPlace, dryDensityKgM3: number): Finding[] {
  const { min, max } = EARTH_DENSITY;
  const isImpossible = dryDensityKgM3 < min || dryDensityKgM3 > max;
  return findingIf(isImpossible, place, "error", "density-impossible", {
    message: say`These readings give a dry density of ${measured(dryDensityKgM3, "density", 0)}. No compacted earth has such a density.`,
    expected: say`${measured(min, "density")} to ${measured(max, "density")} (common practice, no source)`,
    remedy: say`Check the masses, the volume or the sides, and the units in the headers.`,
  });
}
