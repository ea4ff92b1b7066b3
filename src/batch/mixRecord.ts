import { MIN_SHARE_PCT } from "../blend/design.js";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { checkPositive, wholeCount } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import { joinTexts, say, type Text } from "../words/message.js";
import {
  type BuiltAmounts,
  type ElementOptions,
  type ElementsQuantities,
  elementsQuantities,
  type NamedElement,
} from "./element.js";
import {
  type Recipe,
  type RecipeInput,
  type RecipeLine,
  type RecipeMaterial,
  recipe,
  usedLines,
} from "./recipe.js";
import { type SuppliedAmount, type SupplyTerms, suppliedAmounts } from "./supply.js";
import { allowedMoisture, type MoistureLimits, type WaterWindow, waterWindow } from "./water.js";
import { bestWholeParts, searchableTotal } from "./wholeParts.js";

/**
 * How far a mix has been proved. `proposed`: the blend is computed, nothing was made of it; `trial`: for
 * test blocks only; `tested`: compaction and blocks were made of it, and its cement rests on them.
 */
export type MixState = "proposed" | "trial" | "tested";

/** How far the work may stand from the mix, percent of the dry mass of soil and aggregate. */
export interface MixTolerances {
  /** By material id; a material that is not here may have any share. */
  readonly shares: Readonly<Record<string, Interval | undefined>>;
  /** Both sides. Left out: any cement. */
  readonly cement?: Interval;
}

export interface MixRecordInput extends Omit<RecipeInput, "wettestMoisturePct"> {
  readonly state: MixState;
  /** What the state rests on, or what is missing to the next one. */
  readonly reasons: readonly Text[];
  /** What speaks against building from it, for the head of every sheet; default none. */
  readonly doubts?: readonly Text[];
  readonly water: MoistureLimits;
  readonly tolerances: MixTolerances;
  /** How the crew measures by volume; left out, there are no buckets. */
  readonly buckets?: BucketMeasure;
  /** What a scale shows at the least; left out, masses are not rounded. */
  readonly scaleStepKg?: number;
  /** What is to be rammed; left out, there is no number of batches and no order. */
  readonly elements?: Pick<ElementOptions, "density" | "bagMassKg"> & {
    readonly shapes: readonly NamedElement[];
  };
  /** How the materials come, by id, the cement under `cement`. */
  readonly supply?: Readonly<Record<string, SupplyTerms | undefined>>;
}

export interface BucketMeasure {
  /** Struck level: measure it with water. */
  readonly bucketL: number;
  /** Default 1; half buckets are tried too where whole ones leave the tolerances. */
  readonly step?: 1 | 0.5;
  /** Default `scale`. */
  readonly cementBy?: "scale" | "bucket";
  /** Other buckets that a crew could find, litres: tried where this one leaves the tolerances. */
  readonly otherL?: readonly number[];
}

/** One material in a form of the batch: what is measured out, and what that is beside the record. */
export interface MeasuredLine {
  readonly id: string;
  readonly name: Text;
  /** Buckets, parts or kilograms as shovelled; null for cement by scale beside them: its mass is exact. */
  readonly measure: number | null;
  readonly dryMassKg: number;
  readonly moistMassKg: number;
  /** Dry mass in this form less dry mass in the record's batch. */
  readonly changeKg: number;
  /** Of the dry soil and aggregate in this form; for cement the cement content. */
  readonly sharePct: number;
  /** Null where any share will do. */
  readonly tolerance: Interval | null;
  readonly withinTolerance: boolean;
}

/** The batch of the record measured out in some way. */
export interface MeasuredForm {
  readonly by: "buckets" | "parts" | "scale";
  /** Litres of a bucket or part, kilograms of the scale's step. */
  readonly size: number;
  /** Smallest part of the size that is used. */
  readonly step: number;
  readonly materials: readonly MeasuredLine[];
  /** Null without cement in the mix. */
  readonly cement: MeasuredLine | null;
  /** Of the form with the record's water to add, on the base of the recipe. */
  readonly moisturePct: number;
  /** Every share, the cement and the moisture. */
  readonly withinTolerance: boolean;
  /** For the crew: that it may be used, or what is wrong and what to do. */
  readonly message: Text;
}

/** One mix as everybody gets it: what cards, lists, tables and pages say of it is read from here. */
export interface MixRecord {
  readonly state: MixState;
  readonly reasons: readonly Text[];
  /** What speaks against building from it: every card and sheet prints it at its head. */
  readonly doubts: readonly Text[];
  /** Those with a share, of the dry mass of soil and aggregate. */
  readonly shares: readonly {
    readonly id: string;
    readonly name: Text;
    readonly sharePct: number;
    readonly tolerance: Interval | null;
  }[];
  /** Materials of the study that are not in the mix. */
  readonly notUsed: readonly { readonly id: string; readonly name: Text }[];
  readonly cementPct: number;
  readonly cementTolerance: Interval | null;
  /** One batch: dry and moist masses, cement, water. The only batch that anything speaks of. */
  readonly batch: Recipe;
  /** Dry mass of soil and aggregate that was asked for; whole buckets may make it a little less. */
  readonly askedDryMassKg: number;
  /** Water for one batch, from the driest to the wettest mix. */
  readonly water: WaterWindow;
  /** The same batch in buckets; null where none are wanted or none will do: see `messages`. */
  readonly buckets: MeasuredForm | null;
  /** Of the other buckets that were asked about, the one nearest in size that keeps the tolerances; else null. */
  readonly workingBucketL: number | null;
  /** The same batch in whole parts of one size; null without bulk densities or parts that will do. */
  readonly parts: MeasuredForm | null;
  /** The same batch rounded to the scale; null without a scale. */
  readonly scale: MeasuredForm | null;
  /** What each element takes of the mix. */
  readonly elements: ElementsQuantities["each"];
  /** All of them together; null without an element. */
  readonly total: BuiltAmounts | null;
  /** Whole batches for all of them, the last perhaps not full; null without an element. */
  readonly batches: number | null;
  /** What to bring to the site; null without an element. */
  readonly order: readonly SuppliedAmount[] | null;
  readonly tolerances: MixTolerances;
  /** Whether every form keeps to the tolerances. */
  readonly withinTolerance: boolean;
  /** What a crew has to be told: forms that are missing, or that leave the tolerances. */
  readonly messages: readonly Text[];
  readonly findings: readonly Finding[];
}

/**
 * Makes the one record that recipe, buckets, whole parts, water, number of batches and order list are read
 * from, so that two pages cannot speak of two batches.
 *
 * The shares and the cement content are the mix; the batch is its size. Where the crew counts buckets, the
 * batch is made just as large as the soil and aggregate in them, so that a batch by buckets and one by mass
 * are one batch: the same dry mass, the same cement, the same water, the same number of them. Buckets and
 * parts are searched in all whole ratios: first at the step and total that were asked for, then in half
 * buckets and up to sixty parts, until one keeps to the tolerances; the nearest is given otherwise, and
 * the record says what is wrong with it.
 *
 * A part is as large as makes one batch: size = dry mass of soil and aggregate / Σ (parts × loose density).
 * Where no ratio of so few parts with the cement among them keeps to the tolerances, cement is weighed.
 *
 * @returns findings where a material has a share above 0 that cannot be weighed (it is left out), and those
 * of the recipe and the element.
 * @throws RangeError as `recipe`, `waterWindow` and `elementQuantities`. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 70, looseBulkDensityKgM3: 1200, moisturePct: 6 }, { id: "sand", name: "Sand", sharePct: 30, looseBulkDensityKgM3: 1500, moisturePct: 4 }, { id: "gravel", name: "Gravel", sharePct: 0, moisturePct: 1 }];
 * const tolerances = { shares: { soil: { low: 66.5, high: 73.5 }, sand: { low: 28.5, high: 31.5 } }, cement: { low: 7.6, high: 8.4 } };
 * const record = mixRecord({ state: "proposed", reasons: [], materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 100, water: { tolerancePct: 1 }, tolerances, buckets: { bucketL: 10 } });
 * record.notUsed.map(({ id }) => id) // => ["gravel"]
 * record.buckets.materials.map(({ measure }) => measure) // => [5.5, 2]
 * [record.batch.dryMassKg, record.batch.cement.dryMassKg] // => [96, 7.68]
 * [...record.parts.materials.map(({ measure }) => measure), record.parts.cement.measure] // => [9, 3, 1]
 * record.parts.size // => 6.2745
 */
export function mixRecord(input: MixRecordInput): MixRecord {
  const { state, reasons, doubts = [], tolerances, elements: built } = input;
  const { used, notUsed, tooSmall } = sortedMaterials(input.materials);
  const wettestMoisturePct = allowedMoisture(input.targetMoisturePct, input.water).high;
  const mix = { ...input, materials: used, wettestMoisturePct };
  const asked = recipe(mix);
  const counted = input.buckets && countBuckets(asked, input.buckets, tolerances);
  // Buckets that nobody may count size no batch.
  const batchDryMassKg = counted?.keeps ? counted.soilKg : asked.dryMassKg;
  const batch = recipe({ ...mix, batchDryMassKg, mixerVolumeL: undefined });
  const water = waterWindow(batch, input.water);
  const context: FormContext = { batch, water, tolerances };
  const buckets = counted ? countedForm("buckets", counted, context) : null;
  const workingBucketL =
    input.buckets && !buckets?.withinTolerance
      ? workingBucket(asked, input.buckets, tolerances)
      : null;
  const parts = partsForm(context);
  const scale = input.scaleStepKg === undefined ? null : scaleForm(input.scaleStepKg, context);
  const quantities = built && elementsQuantities(built.shapes, { ...built, recipe: batch });
  const total = quantities?.total ?? null;
  const forms = [buckets, parts, scale].filter((form) => form !== null);
  return {
    state,
    reasons,
    doubts,
    shares: batch.materials.map(({ id, name, sharePct }) => {
      return { id, name, sharePct, tolerance: bandOf(id, tolerances) };
    }),
    notUsed: notUsed.map(({ id, name }) => ({ id, name })),
    cementPct: batch.cementPct,
    cementTolerance: bandOf("cement", tolerances),
    batch,
    askedDryMassKg: asked.dryMassKg,
    water,
    buckets,
    workingBucketL,
    parts,
    scale,
    elements: quantities?.each ?? [],
    total,
    batches: total && wholeCount(total.batches),
    order: total && suppliedAmounts(total.mix, input.supply ?? {}),
    tolerances,
    withinTolerance: forms.every((form) => form.withinTolerance),
    messages: [
      ...missingForms(input, batch, { buckets, parts }),
      ...forms.filter((form) => !form.withinTolerance).map(({ message }) => message),
    ],
    findings: [
      ...tooSmall.map(tooSmallFinding),
      ...batch.findings,
      ...(quantities?.findings ?? []),
    ],
  };
}

/** A form that may be printed for a crew: one that makes another mix is not, for whoever reads it may count it. */
export function usableForm(form: MeasuredForm | null): MeasuredForm | null {
  return form?.withinTolerance ? form : null;
}

/** Rounding error is no breach of a tolerance. */
const SLACK = 1e-9;

/** A share is there or is none; what lies between is noise that no scale shows. */
function sortedMaterials(materials: readonly RecipeMaterial[]) {
  const isNone = ({ sharePct }: RecipeMaterial) =>
    sharePct >= 0 && sharePct < MIN_SHARE_PCT * (1 - SLACK);
  const notUsed = materials.filter(isNone);
  const tooSmall = notUsed.filter(({ sharePct }) => sharePct > 0);
  const rest = materials.filter((material) => !isNone(material));
  // What was too small goes to the others.
  const total = rest.reduce((sum, { sharePct }) => sum + sharePct, 0);
  const used =
    tooSmall.length === 0
      ? rest
      : rest.map((material) => ({ ...material, sharePct: (100 * material.sharePct) / total }));
  return { used, notUsed, tooSmall };
}

function tooSmallFinding({ id, name, sharePct }: RecipeMaterial): Finding {
  const place = { file: STUDY_FILE, column: `materials.${id}`, value: `${sharePct} %` };
  return finding(place, "error", "share-too-small", {
    message: say`${name}: a share this small cannot be weighed, so the mix was made without it.`,
    expected: say`none, or at least ${MIN_SHARE_PCT} % of the dry soil and aggregate`,
    remedy: say`Leave the material out, or give it a smallest share.`,
  });
}

interface FormContext {
  readonly batch: Recipe;
  readonly water: WaterWindow;
  readonly tolerances: MixTolerances;
}

/** Of a material, or of the cement; null where any share will do. */
function bandOf(id: string, { shares, cement }: MixTolerances): Interval | null {
  return (id === "cement" ? cement : shares[id]) ?? null;
}

function isWithin(value: number, band: Interval | null): boolean {
  return band === null || (value >= band.low - SLACK && value <= band.high + SLACK);
}

/** Litres of loose material hold so many kilograms of it dry. */
function kgPerL({ dryMassKg, looseVolumeL }: RecipeLine): number {
  return dryMassKg / looseVolumeL!;
}

/** Whether mass shares of what is counted, the cement last if it is counted too, keep to the tolerances. */
function keepsTolerances(
  { materials }: Recipe,
  shares: readonly number[],
  tolerances: MixTolerances,
): boolean {
  // It runs a hundred thousand times.
  let soil = 0;
  for (let index = 0; index < materials.length; index += 1) soil += shares[index];
  for (let index = 0; index < shares.length; index += 1) {
    const id = index < materials.length ? materials[index].id : "cement";
    if (!isWithin((100 * shares[index]) / soil, bandOf(id, tolerances))) return false;
  }
  return true;
}

interface Counted {
  readonly sizeL: number;
  readonly step: number;
  /** Buckets or parts of each material, the cement last where it is counted. */
  readonly counts: readonly number[];
  /** Dry mass of soil and aggregate in them. */
  readonly soilKg: number;
  /** They were searched within the tolerances. */
  readonly keeps: boolean;
}

/** A batch this full is full; less is taken only where nothing fuller keeps to the tolerances. */
const FULL_PCT = 90;

/** Counts buckets into the room that the asked batch takes; null where not every material gets one. */
function countBuckets(
  asked: Recipe,
  measure: BucketMeasure,
  tolerances: MixTolerances,
): Counted | null {
  checkPositive("buckets.bucketL", measure.bucketL);
  // Where nothing keeps to the tolerances the finest comes nearest.
  return bucketsWithin(asked, measure, tolerances) ?? firstCount(asked, measure, [0.5], null);
}

/** Buckets that keep to the tolerances: whole before half. */
function bucketsWithin(
  asked: Recipe,
  measure: BucketMeasure,
  tolerances: MixTolerances,
): Counted | null {
  return firstCount(asked, measure, measure.step === 0.5 ? [0.5] : [1, 0.5], tolerances);
}

/** The first count that there is: a full batch before a small one, then one step after the other. */
function firstCount(
  asked: Recipe,
  { bucketL, cementBy = "scale" }: BucketMeasure,
  steps: readonly number[],
  tolerances: MixTolerances | null,
): Counted | null {
  if (asked.looseVolumeL === null) return null;
  const lines = cementBy === "scale" ? asked.materials : usedLines(asked);
  const roomL = lines.reduce((sum, { looseVolumeL }) => sum + looseVolumeL!, 0);
  const tries = [FULL_PCT, 0].flatMap((fillPct) => steps.map((step) => ({ fillPct, step })));
  for (const { fillPct, step } of tries) {
    const most = Math.floor(roomL / (bucketL * step) + SLACK);
    const maxTotal = searchableTotal(lines.length, most);
    const fills = (total: number) => total * Math.floor(most / total) >= (most * fillPct) / 100;
    const ratio = wholeRatio(asked, lines, maxTotal, tolerances, fills);
    if (ratio === null) continue;
    const times = Math.floor(most / ratio.reduce((sum, count) => sum + count, 0));
    const counts = ratio.map((count) => count * times * step);
    const soilKg = soilIn(asked, counts, bucketL);
    return { sizeL: bucketL, step, counts, soilKg, keeps: tolerances !== null };
  }
  return null;
}

/** Among other buckets the one nearest in size that keeps to the tolerances; null where none does. */
function workingBucket(
  asked: Recipe,
  measure: BucketMeasure,
  tolerances: MixTolerances,
): number | null {
  const away = (sizeL: number) => Math.abs(Math.log(sizeL / measure.bucketL));
  const sizes = [...(measure.otherL ?? [])].sort((a, b) => away(a) - away(b));
  const works = (bucketL: number) =>
    bucketsWithin(asked, { ...measure, bucketL }, tolerances) !== null;
  return sizes.find(works) ?? null;
}

/** Sums of parts that are tried one after the other: few are easier to count. */
const PART_TOTALS = [20, 30, 40, 60];

/** The batch in whole parts by loose volume, as few as keep to the tolerances. */
function partsForm(context: FormContext): MeasuredForm | null {
  const { batch, tolerances } = context;
  if (batch.looseVolumeL === null) return null;
  const all = usedLines(batch);
  // Cement among the parts, else weighed beside them; one material alone is no ratio.
  const withCement = all.length > batch.materials.length;
  const countings = withCement && batch.materials.length > 1 ? [all, batch.materials] : [all];
  const tries = PART_TOTALS.flatMap((most) =>
    countings.map((lines) => ({ lines, most, bands: tolerances })),
  );
  const nearest = { lines: all, most: Math.max(...PART_TOTALS), bands: null };
  for (const { lines, most, bands } of [...tries, nearest]) {
    const counts = wholeRatio(batch, lines, searchableTotal(lines.length, most), bands);
    if (counts === null) continue;
    const sizeL = batch.dryMassKg / soilIn(batch, counts, 1);
    return countedForm("parts", { sizeL, step: 1, counts }, context);
  }
  return null;
}

function soilIn({ materials }: Recipe, counts: readonly number[], sizeL: number): number {
  return materials.reduce((sum, line, index) => sum + counts[index] * sizeL * kgPerL(line), 0);
}

/** The whole-number ratio nearest to the recipe; with no tolerances, cement is at least never less. */
function wholeRatio(
  from: Recipe,
  lines: readonly RecipeLine[],
  maxTotal: number,
  tolerances: MixTolerances | null,
  accepts: (total: number) => boolean = () => true,
): readonly number[] | null {
  const mass = lines.reduce((sum, { dryMassKg }) => sum + dryMassKg, 0);
  const cementCounted = lines.length > from.materials.length;
  const found = bestWholeParts({
    densities: lines.map(kgPerL),
    shares: lines.map(({ dryMassKg }) => dryMassKg / mass),
    maxTotal,
    cementIndex: cementCounted && !tolerances?.cement ? lines.length - 1 : null,
    accepts: (total, shares) =>
      accepts(total) && (tolerances === null || keepsTolerances(from, shares, tolerances)),
  });
  return found?.parts ?? null;
}

/** What is counted, set beside the batch of the record; what is not counted is weighed as it is. */
function countedForm(
  by: "buckets" | "parts",
  { sizeL, step, counts }: Pick<Counted, "sizeL" | "step" | "counts">,
  context: FormContext,
): MeasuredForm {
  return formOf({ by, size: sizeL, step }, context, (line, index) => {
    const measure = counts[index] ?? null;
    const dryMassKg = measure === null ? line.dryMassKg : measure * sizeL * kgPerL(line);
    return { measure, dryMassKg };
  });
}

/** What a scale of some step shows. */
function scaleForm(stepKg: number, context: FormContext): MeasuredForm {
  checkPositive("scaleStepKg", stepKg);
  const form = { by: "scale", size: stepKg, step: 1 } as const;
  return formOf(form, context, ({ dryMassKg, moistMassKg }) => {
    const measure = Math.round(moistMassKg / stepKg) * stepKg;
    return { measure, dryMassKg: measure * (dryMassKg / moistMassKg) };
  });
}

function formOf(
  form: Pick<MeasuredForm, "by" | "size" | "step">,
  { batch, water, tolerances }: FormContext,
  measured: (line: RecipeLine, index: number) => Pick<MeasuredLine, "measure" | "dryMassKg">,
): MeasuredForm {
  const count = batch.materials.length;
  const asked = usedLines(batch);
  const found = asked.map(measured);
  const soilKg = found.slice(0, count).reduce((sum, { dryMassKg }) => sum + dryMassKg, 0);
  const all = asked.map((line, index): MeasuredLine => {
    const { id, name } = line;
    const { measure, dryMassKg } = found[index];
    const sharePct = (100 * dryMassKg) / soilKg;
    const tolerance = bandOf(id, tolerances);
    return {
      id,
      name,
      measure,
      dryMassKg,
      moistMassKg: dryMassKg * (line.moistMassKg / line.dryMassKg),
      changeKg: dryMassKg - line.dryMassKg,
      sharePct,
      tolerance,
      withinTolerance: dryMassKg > 0 && isWithin(sharePct, tolerance),
    };
  });
  const cement = all[count] ?? null;
  const dryKg = batch.moistureOf === "all-solids" ? soilKg + (cement?.dryMassKg ?? 0) : soilKg;
  const wetKg = all.reduce((sum, line) => sum + line.moistMassKg - line.dryMassKg, 0);
  const moisturePct = (100 * (wetKg + batch.water.toAddKg)) / dryKg;
  const outside = all.filter((line) => !line.withinTolerance);
  // Heaps that are too wet are told by the water, not by how they are measured out.
  const moist = batch.status === "too-wet" || isWithin(moisturePct, water.moisturePct);
  return {
    ...form,
    materials: all.slice(0, count),
    cement,
    moisturePct,
    withinTolerance: outside.length === 0 && moist,
    message: formWords(form.by, outside, moist ? null : moisturePct),
  };
}

function formWords(
  by: MeasuredForm["by"],
  outside: readonly MeasuredLine[],
  moisturePct: number | null,
): Text {
  if (outside.length === 0 && moisturePct === null) {
    if (by === "buckets") return say`The mix may be made by these buckets.`;
    if (by === "parts") return say`The mix may be made by these parts.`;
    return say`The mix may be weighed on this scale.`;
  }
  const wrong = joinTexts(
    [
      ...outside.map(outsideWords),
      moisturePct === null ? undefined : say`water ${formatFixed(moisturePct, 1)} %`,
    ],
    "; ",
  );
  if (by === "buckets") {
    return say`Do not use these buckets: they give a different mix (${wrong}). Weigh every material.`;
  }
  if (by === "parts") {
    return say`Do not use these parts: they make another mix (${wrong}). Weigh every material.`;
  }
  return say`Do not use this scale: it makes another mix (${wrong}). Take a finer scale, or a larger batch.`;
}

function outsideWords({ name, sharePct, tolerance }: MeasuredLine): Text {
  const is = formatFixed(sharePct, 2);
  return tolerance === null
    ? say`${name} ${is} %`
    : say`${name} ${is} %, where ${formatFixed(tolerance.low, 2)} to ${formatFixed(tolerance.high, 2)} % are allowed`;
}

function missingForms(
  { buckets: measure }: MixRecordInput,
  batch: Recipe,
  forms: Pick<MixRecord, "buckets" | "parts">,
): Text[] {
  if (batch.looseVolumeL === null) {
    return [say`A loose bulk density is missing: weigh every material.`];
  }
  const missing: Text[] = [];
  if (measure && forms.buckets === null) {
    missing.push(
      say`These buckets are too large for this batch: weigh every material, or take a smaller bucket.`,
    );
  }
  if (forms.parts === null) {
    missing.push(say`No whole parts make this mix: weigh every material.`);
  }
  return missing;
}
