import { checkNotNegative, checkPositive } from "../quantities/checkNumber.js";

export interface VolumePart {
  readonly id: string;
  /** Loose volumes, in any one unit: buckets, shovels, litres. */
  readonly parts: number;
  /** Dry mass in a loose volume. */
  readonly looseBulkDensityKgM3: number;
  /** See `RecipeMaterial`; default 0. */
  readonly bulkingPct?: number;
}

export interface MassShares {
  readonly materials: readonly {
    readonly id: string;
    /** Of the dry mass of soil and aggregate, cement excluded. */
    readonly sharePct: number;
    /** Of the dry mass of soil, aggregate and cement. */
    readonly shareOfAllPct: number;
  }[];
  /** Of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly cementOfAllPct: number;
  /** Of all loose volumes, cement included. */
  readonly cementByVolumePct: number;
}

/**
 * Turns parts by loose volume into shares of dry mass: the way back from a site recipe.
 *
 * Formula: mass ∝ parts × bulk density / (1 + bulking/100). One part of cement to N parts of soil is
 * 100 ρ_cement / (N ρ_soil) percent by mass, so the same bucket recipe holds quite different cement
 * contents with other densities.
 *
 * @throws RangeError for a part below 0, a density not above 0, or no soil at all. Source: own
 * arithmetic.
 *
 * @example
 * const { cementPct, cementByVolumePct } = toMassShares([{ id: "soil", parts: 10, looseBulkDensityKgM3: 1300 }], { parts: 1, looseBulkDensityKgM3: 1506 });
 * [cementPct, cementByVolumePct] // => [11.58, 9.09]
 */
export function toMassShares(
  materials: readonly VolumePart[],
  cement: { readonly parts: number; readonly looseBulkDensityKgM3: number },
): MassShares {
  const weigh = (part: Omit<VolumePart, "id">, name: string) => {
    checkNotNegative(`${name}.parts`, part.parts);
    checkPositive(`${name}.looseBulkDensityKgM3`, part.looseBulkDensityKgM3);
    checkNotNegative(`${name}.bulkingPct`, part.bulkingPct ?? 0);
    return (part.parts * part.looseBulkDensityKgM3) / (1 + (part.bulkingPct ?? 0) / 100);
  };
  const masses = materials.map((part, index) => weigh(part, `materials[${index}]`));
  const cementMass = weigh(cement, "cement");
  const soil = masses.reduce((sum, mass) => sum + mass, 0);
  checkPositive("materials parts", soil);
  const volume = materials.reduce((sum, { parts }) => sum + parts, cement.parts);
  return {
    materials: materials.map(({ id }, index) => ({
      id,
      sharePct: (100 * masses[index]) / soil,
      shareOfAllPct: (100 * masses[index]) / (soil + cementMass),
    })),
    cementPct: (100 * cementMass) / soil,
    cementOfAllPct: (100 * cementMass) / (soil + cementMass),
    cementByVolumePct: (100 * cement.parts) / volume,
  };
}
