import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { checkPositive, checkThat, wholeCount } from "../quantities/checkNumber.js";
import { formatPlain } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import { say, type Text } from "../words/message.js";
import { bothEnds } from "./account.js";
import type { Recipe } from "./recipe.js";
import { scaleRecipe } from "./scaleRecipe.js";

/** A window, door or gap, cut through the whole thickness. */
export interface WallOpening {
  readonly widthM: number;
  readonly heightM: number;
  /**
   * Height of its lower edge above the foot of the element: 0 for a door. Where it is not given, an opening
   * lower than the element is taken for a window: its sill is counted as form area.
   */
  readonly sillM?: number;
  /** Default 1. */
  readonly count?: number;
}

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

/** What one element, or several together, take of a mix. */
export interface BuiltAmounts {
  /** Rammed volume that stands in the end. */
  readonly netVolumeM3: number;
  readonly madeVolumeM3: number;
  /** Both faces, the ends and the reveals of openings. */
  readonly formAreaM2: number;
  /** The recipe in the amount to make, at the density given. */
  readonly mix: Recipe;
  /** Batches of the recipe's size, not rounded. */
  readonly batches: number;
  /** From the low to the high density. */
  readonly dryMassKg: Interval;
  readonly cementKg: Interval;
  /** Cement in a cubic metre of the element at the density given, without waste. */
  readonly cementKgM3: number;
  /** Whole bags for the low and the high density. */
  readonly cementBags: Interval;
}

export interface ElementAmounts extends BuiltAmounts {
  readonly planAreaM2: number;
  /** Seen from the front; 0 of piers. */
  readonly openingsAreaM2: number;
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
}

/** Something to ram, with the name that it goes by. */
export type NamedElement = EarthElement & { readonly name: string };

/** Several elements of one mix: what each takes, and all together. */
export interface ElementsQuantities {
  readonly each: readonly { readonly name: string; readonly amounts: ElementAmounts }[];
  /** Null where there is no element, or the measures of one do not hold together. */
  readonly total: BuiltAmounts | null;
  readonly findings: readonly Finding[];
}

/** An element's amounts, or what is wrong with its measures. */
export interface ElementQuantities {
  readonly amounts: ElementAmounts | null;
  readonly findings: readonly Finding[];
}

export interface ElementOptions {
  readonly recipe: Recipe;
  /** Rammed dry density of all solids, cement included; `low` and `high` default to `best`. */
  readonly density: { readonly best: number; readonly low?: number; readonly high?: number };
  readonly bagMassKg: number;
}

/**
 * Gives what a wall, bench, set of piers or closed ring needs, with the range that the density brings.
 *
 * Formulas: volume = plan area × height − openings × thickness; a ring's plan area = middle length ×
 * thickness, corners once; form area = formed length × height − 2 × openings + the reveals (thickness ×
 * the sides, head and sill of each opening that are rammed against); dry mass = volume × (1 + waste/100) × rammed dry density; loose depth of a
 * lift = compacted depth × rammed dry density × loose volume per dry mass of the recipe. The loose volume is
 * the sum of the loose volumes that go into the mixer: mixing fills gaps, so the true loose depth is
 * less; try it at the first lift. For the same reason `compactedOfLoosePct` is an estimate.
 *
 * @param key where the element stands in the study, for findings.
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
  options: ElementOptions,
  key = "element",
): ElementQuantities {
  const { recipe, density, bagMassKg } = options;
  const range = densityRange(density);
  checkPositive("bagMassKg", bagMassKg);
  const findings = elementFindings(element, key);
  if (findings.length > 0) return { amounts: null, findings };
  const shape = elementShape(element);
  const { heightM, compactedLiftM, wastePct } = element;
  const madeVolumeM3 = shape.netVolumeM3 * (1 + wastePct / 100);
  const lifts = wholeCount(heightM / compactedLiftM);
  const liftVolumeM3 = shape.planAreaM2 * compactedLiftM;
  const perBatch = recipe.dryMassWithCementKg;
  const batchesIn = (volumeM3: number) => (volumeM3 * range.best) / perBatch;
  const looseOfCompacted =
    recipe.looseVolumeL === null ? null : (range.best * recipe.looseVolumeL) / 1000 / perBatch;
  const dryMassKg = bothEnds((end) => madeVolumeM3 * range[end]);
  const cementIn = (solidsKg: number) => (solidsKg * recipe.cement.dryMassKg) / perBatch;
  const cementKg = bothEnds((end) => cementIn(dryMassKg[end]));
  return {
    amounts: {
      ...shape,
      madeVolumeM3,
      lifts,
      compactedLiftM,
      lastLiftM: heightM - (lifts - 1) * compactedLiftM,
      looseLiftM: looseOfCompacted === null ? null : compactedLiftM * looseOfCompacted,
      compactedOfLoosePct: looseOfCompacted === null ? null : 100 / looseOfCompacted,
      liftVolumeM3,
      batchesPerLift: batchesIn(liftVolumeM3),
      mix: scaleRecipe(recipe, batchesIn(madeVolumeM3)),
      batches: batchesIn(madeVolumeM3),
      dryMassKg,
      cementKg,
      cementKgM3: cementIn(range.best),
      cementBags: bothEnds((end) => wholeCount(cementKg[end] / bagMassKg)),
    },
    findings: [],
  };
}

/**
 * What several elements of one mix take, each and all together: volumes, areas and masses added up, bags
 * counted once over all of them.
 *
 * @throws RangeError as `elementQuantities`. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 5, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100 });
 * const wall = { name: "Wall", kind: "wall", lengthM: 4, thicknessM: 0.4, heightM: 2, compactedLiftM: 0.1, wastePct: 0 };
 * const bench = { name: "Bench", kind: "bench", lengthM: 2, thicknessM: 0.5, heightM: 0.5, compactedLiftM: 0.1, wastePct: 10 };
 * const { each, total } = elementsQuantities([wall, bench], { recipe: batch, density: { best: 2000 }, bagMassKg: 25 });
 * [...each.map(({ amounts }) => amounts.netVolumeM3), total.netVolumeM3, total.madeVolumeM3] // => [3.2, 0.5, 3.7, 3.75]
 * [total.cementKg.high, total.cementBags.high] // => [357.1, 15]
 */
export function elementsQuantities(
  elements: readonly NamedElement[],
  options: ElementOptions,
): ElementsQuantities {
  const each = elements.map((element, index) => ({
    name: element.name,
    ...elementQuantities(element, options, elementKey(index, elements.length)),
  }));
  const findings = each.flatMap((one) => one.findings);
  const known = each.flatMap(({ name, amounts }) => (amounts ? [{ name, amounts }] : []));
  if (known.length === 0 || known.length < elements.length) {
    return { each: known, total: null, findings };
  }
  const { recipe, bagMassKg } = options;
  const sum = (value: (amounts: ElementAmounts) => number) =>
    known.reduce((total, { amounts }) => total + value(amounts), 0);
  const batches = sum((amounts) => amounts.batches);
  const ends = (key: "dryMassKg" | "cementKg") =>
    bothEnds((end) => sum((amounts) => amounts[key][end]));
  const cementKg = ends("cementKg");
  return {
    each: known,
    total: {
      netVolumeM3: sum(({ netVolumeM3 }) => netVolumeM3),
      madeVolumeM3: sum(({ madeVolumeM3 }) => madeVolumeM3),
      formAreaM2: sum(({ formAreaM2 }) => formAreaM2),
      mix: scaleRecipe(recipe, batches),
      batches,
      dryMassKg: ends("dryMassKg"),
      cementKg,
      cementKgM3: known[0].amounts.cementKgM3,
      cementBags: bothEnds((end) => wholeCount(cementKg[end] / bagMassKg)),
    },
    findings,
  };
}

/** Where an element stands in the study: a lone one is not numbered. */
function elementKey(index: number, count: number): string {
  return count === 1 ? "element" : `element.${index}`;
}

function densityRange({ best, low = best, high = best }: ElementOptions["density"]) {
  checkPositive("density.best", best);
  checkPositive("density.low", low);
  checkThat(low <= best && best <= high, { density: `${low}, ${best}, ${high}` }, "low first");
  return { best, low, high };
}

function elementShape(element: EarthElement) {
  const { planAreaM2, formedLengthM } = elementPlan(element);
  const { heightM } = element;
  const [openings, thicknessM] =
    element.kind === "pier" ? [[], 0] : [element.openings ?? [], element.thicknessM];
  let [openingsAreaM2, revealsM2] = [0, 0];
  for (const opening of openings) {
    const { count = 1 } = opening;
    openingsAreaM2 += count * opening.widthM * opening.heightM;
    revealsM2 += count * revealLengthM(opening, heightM) * thicknessM;
  }
  return {
    planAreaM2,
    openingsAreaM2,
    netVolumeM3: planAreaM2 * heightM - openingsAreaM2 * thicknessM,
    formAreaM2: formedLengthM * heightM - 2 * openingsAreaM2 + revealsM2,
  };
}

/**
 * How much of an opening's edge has to be formed: both sides, the sill where it does not stand on the foot
 * of the element, and the head where something is rammed above it.
 */
function revealLengthM({ widthM, heightM, sillM }: WallOpening, elementHeightM: number): number {
  const fullHeight = heightM >= elementHeightM - HAIR_M;
  const sill = fullHeight || (sillM !== undefined && sillM <= HAIR_M) ? 0 : widthM;
  const head = (sillM ?? 0) + heightM >= elementHeightM - HAIR_M ? 0 : widthM;
  return 2 * heightM + sill + head;
}

/** Measures that differ by less are the same. */
const HAIR_M = 1e-6;

/** A wall, bench or ring: what has a middle line that openings are cut from. */
type WallElement = StraightElement | RingElement;

/** The element seen from above, and the length of all faces to form, both sides and the ends. */
function elementPlan(element: EarthElement) {
  if (element.kind === "pier") {
    const { section, count = 1 } = element;
    const [area, girth] =
      section.shape === "round"
        ? [(Math.PI / 4) * section.diameterM ** 2, Math.PI * section.diameterM]
        : [section.widthM * section.depthM, 2 * (section.widthM + section.depthM)];
    return { planAreaM2: count * area, formedLengthM: count * girth };
  }
  const { kind, thicknessM } = element;
  const middleM = middleLengthM(element);
  const endsM = kind === "ring" ? 0 : thicknessM;
  return { planAreaM2: middleM * thicknessM, formedLengthM: 2 * (middleM + endsM) };
}

/** Along the middle of a wall; of a ring between its outside and its inside, so that corners count once. */
function middleLengthM(element: WallElement): number {
  if (element.kind !== "ring") return element.lengthM;
  const { plan, thicknessM } = element;
  const [outsideM, shorter] =
    plan.shape === "round"
      ? [Math.PI * plan.diameterM, 2 * Math.PI]
      : [2 * (plan.lengthM + plan.widthM), 8];
  const insideM = outsideM - shorter * thicknessM;
  return (outsideM + insideM) / 2;
}

type Measure = readonly [column: string, value: number];

function measuresOf(element: EarthElement): Measure[] {
  const thick: Measure[] = element.kind === "pier" ? [] : [["thickness", element.thicknessM]];
  return [
    ...sidesOf(element),
    ...thick,
    ["height", element.heightM],
    ["compacted-lift", element.compactedLiftM],
  ];
}

/** The measures in plan, without the thickness of a wall. */
function sidesOf(element: EarthElement): Measure[] {
  if (element.kind === "pier") {
    const { section } = element;
    if (section.shape === "round") return [["diameter", section.diameterM]];
    return [
      ["width", section.widthM],
      ["depth", section.depthM],
    ];
  }
  if (element.kind !== "ring") return [["length", element.lengthM]];
  const { plan } = element;
  if (plan.shape === "round") return [["diameter", plan.diameterM]];
  return [
    ["length", plan.lengthM],
    ["width", plan.widthM],
  ];
}

/** What is impossible in an element's measures, each by its key path; `key` is where the element stands. */
function elementFindings(element: EarthElement, key: string): Finding[] {
  const single = measureFaults(element);
  const faults = single.length > 0 ? single : togetherFaults(element);
  return faults.map(([column, value, message, expected]) =>
    finding({ file: STUDY_FILE, column: `${key}.${column}`, value }, "error", "element-geometry", {
      message,
      expected,
      remedy: say`Correct the measure in the study.`,
    }),
  );
}

/** What is impossible in the measures of several elements. */
export function elementsFindings(elements: readonly EarthElement[]): Finding[] {
  return elements.flatMap((element, index) =>
    elementFindings(element, elementKey(index, elements.length)),
  );
}

type Fault = readonly [column: string, value: Text, message: Text, expected: Text];

/** Measures that are impossible by themselves. */
function measureFaults(element: EarthElement): Fault[] {
  const { wastePct } = element;
  const faults = measuresOf(element)
    .filter(([, value]) => !(Number.isFinite(value) && value > 0))
    .map(([column, value]): Fault => {
      const message = say`This measure is not above zero: ${column}.`;
      return [column, `${value}`, message, say`above 0 m`];
    });
  if (!(Number.isFinite(wastePct) && wastePct >= 0)) {
    faults.push(["waste", `${wastePct}`, say`The waste is below zero.`, say`0 % or above`]);
  }
  const count = element.kind === "pier" ? (element.count ?? 1) : 1;
  if (!isCount(count)) {
    const message = say`The count of piers is not a whole number above zero.`;
    faults.push(["count", `${count}`, message, say`1 or more`]);
  }
  return faults;
}

function isCount(value: number): boolean {
  return Number.isInteger(value) && value > 0;
}

/** Measures that are impossible beside each other. */
function togetherFaults(element: EarthElement): Fault[] {
  const { compactedLiftM, heightM } = element;
  const faults: Fault[] = [];
  if (compactedLiftM > heightM) {
    const message = say`A lift is deeper than the element is high.`;
    const expected = say`at most ${formatPlain(heightM)} m`;
    faults.push(["compacted-lift", `${compactedLiftM}`, message, expected]);
  }
  if (element.kind === "pier") return faults;
  const closed = element.kind === "ring" ? closedRingFault(element) : undefined;
  return closed ? [...faults, closed] : [...faults, ...openingFaults(element)];
}

function closedRingFault({ plan, thicknessM }: RingElement): Fault | undefined {
  const narrowestM = plan.shape === "round" ? plan.diameterM : Math.min(plan.lengthM, plan.widthM);
  if (2 * thicknessM < narrowestM) return undefined;
  const message = say`The ring's walls meet in the middle: nothing is left inside.`;
  return ["thickness", `${thicknessM}`, message, say`below ${formatPlain(narrowestM / 2)} m`];
}

function openingFaults(element: WallElement): Fault[] {
  const { openings = [], heightM, compactedLiftM } = element;
  const faults = openings.flatMap((opening, index) => {
    const fault = openingFault(element, opening, `openings[${index}]`);
    return fault ? [fault] : [];
  });
  // Only openings that are possible one by one, in an element that is, can be added up.
  if (faults.length > 0 || compactedLiftM > heightM) return faults;
  const faceM2 = middleLengthM(element) * heightM;
  const openM2 = openings.reduce((sum, { widthM, heightM: high, count = 1 }) => {
    return sum + widthM * high * count;
  }, 0);
  if (openM2 < faceM2) return [];
  const message = say`The openings together are as large as the face or larger.`;
  const expected = say`below ${formatPlain(faceM2)} m²`;
  return [["openings", say`${formatPlain(openM2)} m²`, message, expected]];
}

function openingFault(
  element: WallElement,
  { widthM, heightM, sillM = 0, count = 1 }: WallOpening,
  column: string,
): Fault | undefined {
  if (!(widthM > 0 && heightM > 0 && isCount(count))) {
    const message = say`An opening has a measure or count not above zero.`;
    return [column, `${widthM}`, message, say`above 0`];
  }
  // An opening lies in one straight wall, or within the circle.
  const widestM = Math.max(...sidesOf(element).map(([, side]) => side));
  if (widthM > widestM || heightM > element.heightM) {
    const message = say`An opening of ${formatPlain(widthM)} m by ${formatPlain(heightM)} m does not fit the element.`;
    const most = say`at most ${formatPlain(widestM)} m by ${formatPlain(element.heightM)} m`;
    return [column, `${widthM}`, message, most];
  }
  const highestSillM = element.heightM - heightM;
  if (sillM >= 0 && sillM <= highestSillM + HAIR_M) return undefined;
  const message = say`An opening with its sill at ${formatPlain(sillM)} m does not fit the element.`;
  return [column, `${sillM}`, message, say`a sill from 0 to ${formatPlain(highestSillM)} m`];
}
