import { CEMENT_CARBON_FACTORS } from "../batch/carbonFactors.js";
import { type CementComparison, cementComparison } from "../batch/cementComparison.js";
import { checkAbove } from "../batch/checkAmount.js";
import { type SavingTrap, savingTrap } from "../batch/savingTrap.js";

/** A wall on paper and what a crew would measure out for it. */
export interface ClassWall {
  readonly wallVolumeM3: number;
  /** Of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  /** Rammed, cement included. */
  readonly dryDensityKgM3: number;
  /** Of the concrete element that it stands for. */
  readonly concreteVolumeM3: number;
  /** By loose volume. */
  readonly parts: { readonly soil: number; readonly sand: number; readonly cement: number };
  /** Dry mass in a loose cubic metre. */
  readonly looseDryKgM3: { readonly soil: number; readonly sand: number; readonly cement: number };
}

/**
 * The cement in a wall, beside the concrete that it stands for, cement with cement and the trap beside it.
 *
 * Formula: cement = volume × dry density × c / (100 + c). The general carbon factors are used: see
 * `CEMENT_CARBON_FACTORS`.
 *
 * @throws RangeError for a number not above 0. Source: `cementComparison`, `savingTrap`.
 *
 * @example
 * const wall = { wallVolumeM3: 3.6, cementPct: 8, dryDensityKgM3: 1890, concreteVolumeM3: 2.2, parts: { soil: 7, sand: 2, cement: 1 }, looseDryKgM3: { soil: 1130, sand: 1390, cement: 1200 } };
 * const { cementKg, trap } = wallCement(wall);
 * [cementKg, trap.falseSavingPct, trap.savingPct.low] // => [504, 90.25, 18.18]
 */
export function wallCement(wall: ClassWall): {
  readonly cementKg: number;
  readonly trap: SavingTrap;
  readonly comparison: CementComparison;
} {
  const { wallVolumeM3, cementPct, dryDensityKgM3, concreteVolumeM3 } = wall;
  for (const [name, value] of Object.entries({ wallVolumeM3, cementPct, dryDensityKgM3 })) {
    checkAbove(name, value);
  }
  const cementKg = (wallVolumeM3 * dryDensityKgM3 * cementPct) / (100 + cementPct);
  return {
    cementKg,
    trap: savingTrap({ earthCementKg: cementKg, concreteVolumeM3 }),
    comparison: cementComparison({
      earthVolumeM3: wallVolumeM3,
      earthCementKg: cementKg,
      concreteVolumeM3,
      carbonFactor: CEMENT_CARBON_FACTORS[0],
    }),
  };
}
