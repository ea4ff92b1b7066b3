import type { Finding } from "../lab/finding.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { checkAbove } from "./checkAmount.js";
import type { Recipe } from "./recipeResult.js";
import { scaleRecipe } from "./scaleRecipe.js";
import { type WallElement, wallFindings } from "./wallElement.js";

export interface WallAmounts {
  readonly wallAreaM2: number;
  readonly openingsAreaM2: number;
  /** Rammed volume that stands in the end. */
  readonly netVolumeM3: number;
  /** Rammed volume to make, waste included. */
  readonly madeVolumeM3: number;
  /** The recipe in the amount to make: masses, loose volumes, water. */
  readonly mix: Recipe;
  /** Batches of the recipe's size, not rounded. */
  readonly batches: number;
  readonly cementKg: number;
  /** Whole bags to buy. */
  readonly cementBags: number;
  /** Cement in a cubic metre of wall, without waste. */
  readonly cementKgM3: number;
  readonly lifts: number;
  /** Depth of the last lift, m. */
  readonly lastLiftM: number;
}

export interface WallQuantities {
  readonly status: "ok" | "invalid";
  readonly message: string;
  /** Null where the geometry is invalid. */
  readonly amounts: WallAmounts | null;
  readonly findings: readonly Finding[];
}

/**
 * Gives what a wall needs: volumes, masses, cement in bags, loose volumes, water, lifts.
 *
 * Formulas: net volume = (length × height − openings) × thickness; dry mass = volume × compacted dry
 * density, of soil, aggregate and cement together; cement = dry mass c/(100 + c), since c is a percentage
 * of soil and aggregate alone; amounts to make carry the waste; lifts = height / lift depth, rounded up.
 *
 * @param of.compactedDryDensityKgM3 dry mass of all solids, cement included, in the rammed volume.
 * @param of.file named in findings; default `study.yaml`.
 * @throws RangeError for a density or bag mass not above 0. Bad geometry gives findings. Source: own
 * arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 5, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * const wall = { lengthM: 5, heightM: 2, thicknessM: 0.4, openings: [{ widthM: 1, heightM: 1 }], compactedLiftM: 0.15, wastePct: 0 };
 * const { amounts } = wallQuantities(wall, { recipe: batch, compactedDryDensityKgM3: 1900, bagMassKg: 25 });
 * [amounts.netVolumeM3, amounts.cementKgM3, amounts.cementBags, amounts.lifts] // => [3.6, 90.48, 14, 14]
 */
export function wallQuantities(
  element: WallElement,
  of: {
    readonly recipe: Recipe;
    readonly compactedDryDensityKgM3: number;
    readonly bagMassKg: number;
    readonly file?: string;
  },
): WallQuantities {
  const { recipe, compactedDryDensityKgM3, bagMassKg, file = "study.yaml" } = of;
  checkAbove("compactedDryDensityKgM3", compactedDryDensityKgM3);
  checkAbove("bagMassKg", bagMassKg);
  const findings = wallFindings(element, file);
  if (findings.length > 0) {
    return {
      status: "invalid",
      message: say`The wall's measures do not hold together, so there are no quantities.`,
      amounts: null,
      findings,
    };
  }
  const { lengthM, heightM, thicknessM, compactedLiftM, wastePct } = element;
  const wallAreaM2 = lengthM * heightM;
  const openingsAreaM2 = element.openings.reduce(
    (sum, opening) => sum + opening.widthM * opening.heightM * (opening.count ?? 1),
    0,
  );
  const netVolumeM3 = (wallAreaM2 - openingsAreaM2) * thicknessM;
  const madeVolumeM3 = netVolumeM3 * (1 + wastePct / 100);
  const batches = (madeVolumeM3 * compactedDryDensityKgM3) / recipe.dryMassWithCementKg;
  const mix = scaleRecipe(recipe, batches);
  // A remainder of a billionth is rounding, not one more lift or bag.
  const wholes = (amount: number) => Math.max(0, Math.ceil(amount - 1e-9));
  const lifts = wholes(heightM / compactedLiftM);
  return {
    status: "ok",
    message: say`${formatFixed(netVolumeM3, 2)} m³ of wall, ${formatFixed(madeVolumeM3, 2)} m³ to make with ${wastePct} % waste.`,
    amounts: {
      wallAreaM2,
      openingsAreaM2,
      netVolumeM3,
      madeVolumeM3,
      mix,
      batches,
      cementKg: mix.cement.dryMassKg,
      cementBags: wholes(mix.cement.dryMassKg / bagMassKg),
      cementKgM3: mix.cement.dryMassKg / madeVolumeM3,
      lifts,
      lastLiftM: heightM - (lifts - 1) * compactedLiftM,
    },
    findings: [],
  };
}
