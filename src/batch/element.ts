import type { Finding } from "../findings/finding.js";
import { formatFixed, formatPlain } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import type { Between } from "./cementComparison.js";
import { checkAbove } from "./checkAmount.js";
import type { Recipe } from "./recipe.js";
import { scaleRecipe } from "./scaleRecipe.js";
import type { WallOpening } from "./wallQuantities.js";

interface RammedElement {
  readonly heightM: number;
  /** Depth of a lift after ramming. */
  readonly compactedLiftM: number;
  /** Spilt, trimmed and left over, percent of the net amount. */
  readonly wastePct: number;
}

/** A straight wall or a bench: `thicknessM` is its depth from front to back. */
export interface StraightElement extends RammedElement {
  readonly kind: "wall" | "bench";
  readonly lengthM: number;
  readonly thicknessM: number;
  readonly openings?: readonly WallOpening[];
}

/** Piers that are all the same: rectangular by two sides, or round by a diameter. */
export interface PierElement extends RammedElement {
  readonly kind: "pier";
  readonly section:
    | { readonly shape: "rectangle"; readonly widthM: number; readonly depthM: number }
    | { readonly shape: "round"; readonly diameterM: number };
  /** Default 1. */
  readonly count?: number;
}

/** A closed ring of wall, measured outside: four walls with corners, or a circle. */
export interface RingElement extends RammedElement {
  readonly kind: "ring";
  readonly plan:
    | { readonly shape: "rectangle"; readonly lengthM: number; readonly widthM: number }
    | { readonly shape: "round"; readonly diameterM: number };
  readonly thicknessM: number;
  readonly openings?: readonly WallOpening[];
}

/** Something to ram, in metres. */
export type EarthElement = StraightElement | PierElement | RingElement;

export interface ElementAmounts {
  readonly planAreaM2: number;
  /** Along the middle of the wall; 0 of piers. */
  readonly openingsAreaM2: number;
  /** Rammed volume that stands in the end. */
  readonly netVolumeM3: number;
  readonly madeVolumeM3: number;
  /** Both faces, the ends and the reveals of openings. */
  readonly formAreaM2: number;
  readonly lifts: number;
  readonly compactedLiftM: number;
  readonly lastLiftM: number;
  /** Depth of loose mix to spread for a lift; null without all bulk densities. */
  readonly looseLiftM: number | null;
  /** Compacted depth in percent of the loose depth. */
  readonly compactedOfLoosePct: number | null;
  /** Rammed volume of a full lift where nothing is open. */
  readonly liftVolumeM3: number;
  /** Batches of the recipe's size in such a lift, waste not counted. */
  readonly batchesPerLift: number;
  /** The recipe in the amount to make, at the density given. */
  readonly mix: Recipe;
  /** Batches of the recipe's size, not rounded. */
  readonly batches: number;
  /** From the low to the high density. */
  readonly dryMassKg: Between;
  readonly cementKg: Between;
  /** Cement in a cubic metre of the element at the density given, without waste. */
  readonly cementKgM3: number;
  /** Whole bags for the low and the high density. */
  readonly cementBags: Between;
}

/** An element's amounts, or what is wrong with its measures. */
export interface ElementQuantities {
  readonly status: "ok" | "invalid";
  readonly message: Text;
  readonly amounts: ElementAmounts | null;
  readonly findings: readonly Finding[];
}

/**
 * Gives what a wall, bench, set of piers or closed ring needs, with the range that the density brings.
 *
 * Formulas: volume = plan area × height − openings × thickness; a ring's plan area = middle length ×
 * thickness, corners once; form area = formed length × height − 2 × openings + the reveals (thickness ×
 * girth of each opening); dry mass = volume × (1 + waste/100) × rammed dry density; loose depth of a
 * lift = compacted depth × rammed dry density × loose volume per dry mass of the recipe. The loose volume is
 * the sum of the loose volumes that go into the mixer: mixing fills gaps, so the true loose depth is
 * less; try it at the first lift. For the same reason `compactedOfLoosePct` is an estimate.
 *
 * @param of.density rammed dry density of all solids, cement included; `low` and `high` default to `best`.
 * @throws RangeError for a density or bag mass not above 0 or a range out of order. Bad geometry gives
 * findings. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 5, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * const ring = { kind: "ring", plan: { shape: "rectangle", lengthM: 6, widthM: 4 }, thicknessM: 0.4, heightM: 2.5, compactedLiftM: 0.125, wastePct: 0 };
 * const { amounts } = elementQuantities(ring, { recipe: batch, density: { best: 1900, low: 1850, high: 1950 }, bagMassKg: 25 });
 * [amounts.planAreaM2, amounts.netVolumeM3, amounts.formAreaM2, amounts.lifts] // => [7.36, 18.4, 92.0, 20]
 * amounts.looseLiftM // => 0.198
 */
export function elementQuantities(
  element: EarthElement,
  of: {
    readonly recipe: Recipe;
    readonly density: { readonly best: number; readonly low?: number; readonly high?: number };
    readonly bagMassKg: number;
    readonly file?: string;
  },
): ElementQuantities {
  const { recipe, density, bagMassKg, file = "study.yaml" } = of;
  const { best, low = best, high = best } = density;
  checkAbove("density.best", best);
  checkAbove("density.low", low);
  checkAbove("bagMassKg", bagMassKg);
  if (!(low <= best && best <= high)) {
    throw new RangeError(`invalid \`density\`: ${low}, ${best}, ${high}; expected low first`);
  }
  const findings = elementFindings(element, file);
  if (findings.length > 0) {
    const message = say`The element's measures do not hold together, so there are no quantities.`;
    return { status: "invalid", message, amounts: null, findings };
  }
  const { heightM, compactedLiftM, wastePct } = element;
  const plan = elementPlan(element);
  const [openings, thicknessM] =
    element.kind === "pier" ? [[], 0] : [element.openings ?? [], element.thicknessM];
  const openingsAreaM2 = openings.reduce(
    (sum, { widthM, heightM: height, count = 1 }) => sum + widthM * height * count,
    0,
  );
  const revealsM2 = openings.reduce(
    (sum, { widthM, heightM: height, count = 1 }) =>
      sum + 2 * (widthM + height) * thicknessM * count,
    0,
  );
  const netVolumeM3 = plan.planAreaM2 * heightM - openingsAreaM2 * thicknessM;
  const madeVolumeM3 = netVolumeM3 * (1 + wastePct / 100);
  const perBatch = recipe.dryMassWithCementKg;
  const mix = scaleRecipe(recipe, (madeVolumeM3 * best) / perBatch);
  // A remainder of a billionth is rounding, not one more lift or bag.
  const wholes = (amount: number) => Math.max(0, Math.ceil(amount - 1e-9));
  const lifts = wholes(heightM / compactedLiftM);
  const looseOfCompacted =
    recipe.looseVolumeL === null ? null : (best * recipe.looseVolumeL) / 1000 / perBatch;
  const liftVolumeM3 = plan.planAreaM2 * compactedLiftM;
  const between = (amount: (densityKgM3: number) => number): Between => ({
    low: amount(low),
    high: amount(high),
  });
  const dryMass = (densityKgM3: number) => madeVolumeM3 * densityKgM3;
  const cementOf = (densityKgM3: number) =>
    (dryMass(densityKgM3) * recipe.cement.dryMassKg) / perBatch;
  return {
    status: "ok",
    message: say`${formatFixed(netVolumeM3, 2)} m³ rammed, ${formatFixed(madeVolumeM3, 2)} m³ to make with ${wastePct} % waste.`,
    amounts: {
      planAreaM2: plan.planAreaM2,
      openingsAreaM2,
      netVolumeM3,
      madeVolumeM3,
      formAreaM2: plan.formedLengthM * heightM - 2 * openingsAreaM2 + revealsM2,
      lifts,
      compactedLiftM,
      lastLiftM: heightM - (lifts - 1) * compactedLiftM,
      looseLiftM: looseOfCompacted === null ? null : compactedLiftM * looseOfCompacted,
      compactedOfLoosePct: looseOfCompacted === null ? null : 100 / looseOfCompacted,
      liftVolumeM3,
      batchesPerLift: (liftVolumeM3 * best) / perBatch,
      mix,
      batches: (madeVolumeM3 * best) / perBatch,
      dryMassKg: between(dryMass),
      cementKg: between(cementOf),
      cementKgM3: (best * recipe.cement.dryMassKg) / perBatch,
      cementBags: between((densityKgM3) => wholes(cementOf(densityKgM3) / bagMassKg)),
    },
    findings: [],
  };
}

/** The element seen from above, and what its forms have to cover, openings not yet taken off. */
interface ElementPlan {
  readonly planAreaM2: number;
  /** Length of all formed faces in plan: both sides of a wall and its ends. */
  readonly formedLengthM: number;
  /** Length along the middle of a wall or ring: openings are cut from it. Null of piers. */
  readonly centreLengthM: number | null;
}

/** Works out the plan; a ring's corners are counted once. Piers are all counted together. */
function elementPlan(element: EarthElement): ElementPlan {
  if (element.kind === "pier") {
    const { section, count = 1 } = element;
    const [area, girth] =
      section.shape === "round"
        ? [(Math.PI / 4) * section.diameterM ** 2, Math.PI * section.diameterM]
        : [section.widthM * section.depthM, 2 * (section.widthM + section.depthM)];
    return { planAreaM2: count * area, formedLengthM: count * girth, centreLengthM: null };
  }
  const { thicknessM } = element;
  if (element.kind === "ring") {
    const { plan } = element;
    const outsideM =
      plan.shape === "round" ? Math.PI * plan.diameterM : 2 * (plan.lengthM + plan.widthM);
    const insideM = outsideM - (plan.shape === "round" ? 2 * Math.PI : 8) * thicknessM;
    const centreLengthM = (outsideM + insideM) / 2;
    return {
      planAreaM2: centreLengthM * thicknessM,
      formedLengthM: outsideM + insideM,
      centreLengthM,
    };
  }
  return {
    planAreaM2: element.lengthM * thicknessM,
    formedLengthM: 2 * (element.lengthM + thicknessM),
    centreLengthM: element.lengthM,
  };
}

type Measure = readonly [column: string, value: number];

function measuresOf(element: EarthElement): Measure[] {
  const shared: Measure[] = [
    ["height", element.heightM],
    ["compacted-lift", element.compactedLiftM],
  ];
  if (element.kind === "pier") {
    const { section } = element;
    return section.shape === "round"
      ? [["diameter", section.diameterM], ...shared]
      : [["width", section.widthM], ["depth", section.depthM], ...shared];
  }
  const thick: Measure = ["thickness", element.thicknessM];
  if (element.kind === "ring") {
    const { plan } = element;
    return plan.shape === "round"
      ? [["diameter", plan.diameterM], thick, ...shared]
      : [["length", plan.lengthM], ["width", plan.widthM], thick, ...shared];
  }
  return [["length", element.lengthM], thick, ...shared];
}

/** An opening lies in one straight wall, or within the circle. */
function widestOpeningM(element: Exclude<EarthElement, PierElement>): number {
  if (element.kind !== "ring") return element.lengthM;
  const { plan } = element;
  return plan.shape === "round" ? plan.diameterM : Math.max(plan.lengthM, plan.widthM);
}

/** What is impossible in an element's measures, each by its key path. */
export function elementFindings(element: EarthElement, file: string): Finding[] {
  const findings: Finding[] = [];
  const wrong = (column: string, value: number, message: Text, expected: Text) =>
    findings.push({
      ...{ severity: "error", code: "element-geometry", file, column: `element.${column}` },
      ...{
        value: String(value),
        message,
        expected,
        remedy: say`Correct the measure in the study.`,
      },
    });
  for (const [column, value] of measuresOf(element)) {
    if (!(Number.isFinite(value) && value > 0)) {
      wrong(column, value, say`This measure is not above zero: ${column}.`, say`above 0 m`);
    }
  }
  if (!(Number.isFinite(element.wastePct) && element.wastePct >= 0)) {
    wrong("waste", element.wastePct, say`The waste is below zero.`, say`0 % or above`);
  }
  if (element.kind === "pier") {
    const { count = 1 } = element;
    if (!(Number.isInteger(count) && count > 0)) {
      wrong(
        "count",
        count,
        say`The count of piers is not a whole number above zero.`,
        say`1 or more`,
      );
    }
  }
  if (findings.length > 0) return findings;
  if (element.compactedLiftM > element.heightM) {
    const message = say`A lift is deeper than the element is high.`;
    wrong(
      "compacted-lift",
      element.compactedLiftM,
      message,
      say`at most ${formatPlain(element.heightM)} m`,
    );
  }
  if (element.kind === "ring") {
    const { plan } = element;
    const least = plan.shape === "round" ? plan.diameterM : Math.min(plan.lengthM, plan.widthM);
    if (2 * element.thicknessM >= least) {
      const message = say`The ring's walls meet in the middle: nothing is left inside.`;
      wrong("thickness", element.thicknessM, message, say`below ${formatPlain(least / 2)} m`);
      return findings;
    }
  }
  const { centreLengthM } = elementPlan(element);
  if (element.kind === "pier" || centreLengthM === null) return findings;
  const faceM2 = centreLengthM * element.heightM;
  const widestM = widestOpeningM(element);
  let openM2 = 0;
  (element.openings ?? []).forEach(({ widthM, heightM, count = 1 }, index) => {
    const place = `openings[${index}]`;
    if (!(widthM > 0 && heightM > 0 && Number.isInteger(count) && count > 0)) {
      wrong(place, widthM, say`An opening has a measure or count not above zero.`, say`above 0`);
    } else if (widthM > widestM || heightM > element.heightM) {
      const message = say`An opening of ${formatPlain(widthM)} m by ${formatPlain(heightM)} m does not fit the element.`;
      wrong(
        place,
        widthM,
        message,
        say`at most ${formatPlain(widestM)} m by ${formatPlain(element.heightM)} m`,
      );
    } else {
      openM2 += widthM * heightM * count;
    }
  });
  if (findings.length === 0 && openM2 >= faceM2) {
    const message = say`The openings together are as large as the face or larger.`;
    wrong("openings", openM2, message, say`below ${formatPlain(faceM2)} m²`);
  }
  return findings;
}
