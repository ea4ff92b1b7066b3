import { checkNotNegative, checkPositive, checkThat } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { type Recipe, type RecipeLine, usedLines } from "./recipe.js";
import { bestWholeParts } from "./wholeParts.js";

export interface VolumePartLine {
  readonly id: string;
  readonly name: Text;
  readonly parts: number;
  /** Of the dry mass of soil and aggregate (for cement: the cement content) with these parts. */
  readonly sharePct: number;
  /** Against the recipe, percentage points. */
  readonly changePct: number;
}

export interface VolumeParts {
  /** `no-volumes`: a bulk density is missing; `none`: no ratio within the total keeps the cement. */
  readonly status: "ok" | "no-volumes" | "none";
  readonly message: Text;
  readonly materials: readonly VolumePartLine[];
  /** Null without cement in the recipe. */
  readonly cement: VolumePartLine | null;
  /** Sum of all parts, cement included. */
  readonly total: number | null;
  /** Largest change of any share of the whole dry mass, cement included, percentage points. */
  readonly maxChangePct: number | null;
}

/**
 * Finds the whole-number parts by loose volume that keep nearest to the recipe's dry-mass shares.
 *
 * Every whole-number ratio up to the total is tried; the best has the smallest largest change of any
 * share of the whole dry mass, and among equals the fewest parts. Cement is never rounded down unless
 * allowed; what rounding does to each share and to the cement content stands beside it.
 *
 * @param options.maxTotal default 20 parts in all. @param options.allowLessCement default false.
 * @throws RangeError where `maxTotal` is not a whole number from 2, or the ratios to try are more
 * than two million. Source: exact enumeration, own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 70, looseBulkDensityKgM3: 1200, moisturePct: 6 }, { id: "sand", name: "Sand", sharePct: 30, looseBulkDensityKgM3: 1500, moisturePct: 4 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * const rounded = volumeParts(batch);
 * [...rounded.materials.map(({ parts }) => parts), rounded.cement.parts] // => [8, 3, 1]
 * rounded.cement.sharePct // => 8.51
 */
export function volumeParts(
  recipe: Recipe,
  options: { readonly maxTotal?: number; readonly allowLessCement?: boolean } = {},
): VolumeParts {
  const { maxTotal = 20, allowLessCement = false } = options;
  checkThat(
    Number.isInteger(maxTotal) && maxTotal >= 2,
    { maxTotal },
    "a whole number, at least 2",
  );
  const none = { materials: [], cement: null, total: null, maxChangePct: null };
  if (recipe.looseVolumeL === null) {
    return {
      status: "no-volumes",
      message: say`A loose bulk density is missing, so there are no parts by volume.`,
      ...none,
    };
  }
  const lines = usedLines(recipe);
  const kgPerL = (line: RecipeLine) => line.dryMassKg / line.looseVolumeL!;
  const hasCement = recipe.cementPct > 0;
  const best = bestWholeParts({
    densities: lines.map(kgPerL),
    shares: lines.map(({ dryMassKg }) => dryMassKg / recipe.dryMassWithCementKg),
    maxTotal,
    cementIndex: hasCement && !allowLessCement ? lines.length - 1 : null,
  });
  if (best === null) {
    return {
      status: "none",
      message: say`No ratio of whole parts up to ${maxTotal} in all keeps the cement content. Allow more parts, or weigh the cement.`,
      ...none,
    };
  }
  const masses = lines.map((line, index) => best.parts[index] * kgPerL(line));
  const soil = recipe.materials.reduce((sum, _, index) => sum + masses[index], 0);
  const counted = lines.map((line, index): VolumePartLine => {
    const { id, name } = line;
    const sharePct = (100 * masses[index]) / soil;
    return { id, name, parts: best.parts[index], sharePct, changePct: sharePct - line.sharePct };
  });
  const cement = hasCement ? counted[counted.length - 1] : null;
  return {
    status: "ok",
    message: cement
      ? say`These parts hold ${formatFixed(cement.sharePct, 1)} % cement by dry mass of soil and aggregate; the recipe asks for ${recipe.cementPct} %.`
      : say`Parts without cement.`,
    materials: counted.slice(0, recipe.materials.length),
    cement,
    total: best.parts.reduce((sum, parts) => sum + parts, 0),
    maxChangePct: 100 * best.maxChange,
  };
}

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
