import type { Finding } from "../findings/finding.js";
import { formatFixed } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { checkAbove } from "./checkAmount.js";
import type { Recipe } from "./recipe.js";
import { scaleRecipe } from "./scaleRecipe.js";

export interface WallOpening {
  readonly widthM: number;
  readonly heightM: number;
  /** Default 1. */
  readonly count?: number;
}

export interface WallElement {
  readonly lengthM: number;
  readonly heightM: number;
  readonly thicknessM: number;
  readonly openings: readonly WallOpening[];
  /** Depth of a lift after ramming. */
  readonly compactedLiftM: number;
  /** Spilt, trimmed and left over, percent of the net amount. */
  readonly wastePct: number;
}

/** What is impossible in the geometry, each by its key path. */
function wallFindings(element: WallElement, file: string): Finding[] {
  const findings: Finding[] = [];
  const wrong = (column: string, value: number, message: Text, expected: Text) =>
    findings.push({
      severity: "error",
      code: "wall-geometry",
      file,
      column: `element.${column}`,
      value: String(value),
      message,
      expected,
      remedy: say`Correct the measure in the study.`,
    });
  const measures = [
    ["length", element.lengthM],
    ["height", element.heightM],
    ["thickness", element.thicknessM],
    ["compacted-lift", element.compactedLiftM],
  ] as const;
  for (const [name, value] of measures) {
    if (!(Number.isFinite(value) && value > 0)) {
      wrong(name, value, say`The wall's ${name} is not above zero.`, say`above 0 m`);
    }
  }
  if (!(Number.isFinite(element.wastePct) && element.wastePct >= 0)) {
    wrong("waste", element.wastePct, say`The waste is below zero.`, say`0 % or above`);
  }
  if (element.compactedLiftM > element.heightM) {
    wrong(
      "compacted-lift",
      element.compactedLiftM,
      say`A lift is deeper than the wall is high.`,
      say`at most ${element.heightM} m`,
    );
  }
  let openAreaM2 = 0;
  element.openings.forEach(({ widthM, heightM, count = 1 }, index) => {
    const place = `openings[${index}]`;
    if (!(widthM > 0 && heightM > 0 && Number.isInteger(count) && count > 0)) {
      wrong(place, widthM, say`An opening has a measure or count not above zero.`, say`above 0`);
    } else if (widthM > element.lengthM || heightM > element.heightM) {
      wrong(
        place,
        widthM,
        say`An opening of ${widthM} m by ${heightM} m does not fit the wall.`,
        say`at most ${element.lengthM} m by ${element.heightM} m`,
      );
    } else {
      openAreaM2 += widthM * heightM * count;
    }
  });
  if (findings.length === 0 && openAreaM2 >= element.lengthM * element.heightM) {
    wrong(
      "openings",
      openAreaM2,
      say`The openings together are as large as the wall or larger.`,
      say`below ${element.lengthM * element.heightM} m²`,
    );
  }
  return findings;
}

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
  readonly message: Text;
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
