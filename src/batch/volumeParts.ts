import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { bestWholeParts } from "./bestWholeParts.js";
import type { Recipe, RecipeLine } from "./recipeResult.js";

export interface VolumePartLine {
  readonly id: string;
  readonly name: string;
  readonly parts: number;
  /** Of the dry mass of soil and aggregate (for cement: the cement content) with these parts. */
  readonly sharePct: number;
  /** Against the recipe, percentage points. */
  readonly changePct: number;
}

export interface VolumeParts {
  /** `no-volumes`: a bulk density is missing; `none`: no ratio within the total keeps the cement. */
  readonly status: "ok" | "no-volumes" | "none";
  readonly message: string;
  readonly materials: readonly VolumePartLine[];
  /** Null without cement in the recipe. */
  readonly cement: VolumePartLine | null;
  /** Sum of all parts, cement included. */
  readonly total: number | null;
  /** Largest change of any share of the whole dry mass, cement included, percentage points. */
  readonly largestChangePct: number | null;
}

/**
 * Finds the whole-number parts by loose volume that keep nearest to the recipe's dry-mass shares.
 *
 * Every whole-number ratio up to the total is tried; the best has the smallest largest change of any
 * share of the whole dry mass, and among equals the fewest parts. Cement is never rounded down unless
 * allowed; what rounding does to each share and to the cement content stands beside it.
 *
 * @param options.largestTotal default 20 parts in all. @param options.allowLessCement default false.
 * @throws RangeError where `largestTotal` is not a whole number from 2, or the ratios to try are more
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
  options: { readonly largestTotal?: number; readonly allowLessCement?: boolean } = {},
): VolumeParts {
  const { largestTotal = 20, allowLessCement = false } = options;
  if (!(Number.isInteger(largestTotal) && largestTotal >= 2)) {
    throw new RangeError(
      `invalid \`largestTotal\`: ${largestTotal}; expected a whole number, at least 2`,
    );
  }
  const none = { materials: [], cement: null, total: null, largestChangePct: null };
  if (recipe.looseVolumeL === null) {
    return {
      status: "no-volumes",
      message: say`A loose bulk density is missing, so there are no parts by volume.`,
      ...none,
    };
  }
  const lines = [...recipe.materials, recipe.cement].filter(({ dryMassKg }) => dryMassKg > 0);
  const kgPerL = (line: RecipeLine) => line.dryMassKg / line.looseVolumeL!;
  const best = bestWholeParts({
    densities: lines.map(kgPerL),
    shares: lines.map(({ dryMassKg }) => dryMassKg / recipe.dryMassWithCementKg),
    largestTotal,
    neverLess: recipe.cementPct > 0 && !allowLessCement ? lines.length - 1 : null,
  });
  if (best === null) {
    return {
      status: "none",
      message: say`No ratio of whole parts up to ${largestTotal} in all keeps the cement content. Allow more parts, or weigh the cement.`,
      ...none,
    };
  }
  const mass = (line: RecipeLine) => {
    const index = lines.indexOf(line);
    return index < 0 ? 0 : best.parts[index] * kgPerL(line);
  };
  const soil = recipe.materials.reduce((sum, line) => sum + mass(line), 0);
  const partLine = (line: RecipeLine): VolumePartLine => {
    const sharePct = (100 * mass(line)) / soil;
    const parts = best.parts[lines.indexOf(line)] ?? 0;
    const { id, name } = line;
    return { id, name, parts, sharePct, changePct: sharePct - line.sharePct };
  };
  const cement = recipe.cementPct > 0 ? partLine(recipe.cement) : null;
  return {
    status: "ok",
    message: cement
      ? say`These parts hold ${formatFixed(cement.sharePct, 1)} % cement by dry mass of soil and aggregate; the recipe asks for ${recipe.cementPct} %.`
      : say`Parts without cement.`,
    materials: recipe.materials.map(partLine),
    cement,
    total: best.parts.reduce((sum, parts) => sum + parts, 0),
    largestChangePct: 100 * best.largestChange,
  };
}
