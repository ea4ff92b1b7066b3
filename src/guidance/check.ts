import { type Finding, type FindingPlace, findingIf } from "../findings/finding.js";
import {
  fineToCoarse,
  type GradingCurve,
  type GradingPoint,
  passingAmong,
  percentOf,
} from "../grading/curve.js";
import { checkThat } from "../quantities/checkNumber.js";
import { formatFixed, measured } from "../quantities/format.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import {
  type ConsistencyLimit,
  type FractionName,
  type GuidanceEntry,
  type OtherLimit,
  type OtherQuantity,
  type SelectionClass,
  type SelectionClasses,
  shortSource,
} from "./entry.js";
import { GUIDANCE_ENTRIES } from "./published/recommendations.js";

export type CriterionVerdict = "inside" | "outside" | "not measured" | "not classified";

export interface CriterionCheck {
  /** What is limited, in words: `passing 0.063 mm`, `clay`, `plasticity index`. */
  readonly what: Text;
  readonly kind: "passing" | "fraction" | "consistency" | "class";
  readonly verdict: CriterionVerdict;
  readonly measuredPct?: number;
  readonly lowPct?: number;
  readonly highPct?: number;
  /** Where it is a matter of size. */
  readonly sizeMm?: number;
  /** Which fraction, where it is one. */
  readonly fraction?: FractionName;
  /** Which measure of consistency, where it is one. */
  readonly quantity?: ConsistencyLimit["quantity"];
  /** Percentage points outside the nearest limit, or inside of it. */
  readonly byPct?: number;
  /** One plain sentence. */
  readonly text: Text;
}

/** A limit of organic matter, salts, top size or density. */
export interface OtherCheck {
  readonly quantity: OtherQuantity;
  readonly what: Text;
  readonly unit: "%" | "mm" | "kg/m³";
  readonly measured?: number;
  readonly min?: number;
  readonly max?: number;
  readonly verdict: "inside" | "outside" | "not measured";
  /** One plain sentence. */
  readonly text: Text;
}

export interface GuidanceCheck {
  readonly entry: GuidanceEntry;
  /**
   * `outside` as soon as one criterion is; `incomplete` where one could not be judged. Of the `others`
   * only those that were measured count.
   */
  readonly verdict: "inside" | "outside" | "incomplete";
  readonly criteria: readonly CriterionCheck[];
  /** Absent where the entry limits none of them. */
  readonly others?: readonly OtherCheck[];
  /** How far the entry itself can be trusted, in words. */
  readonly honesty: Text;
  /** What a verdict of this kind does not say. */
  readonly caution: Text;
}

/** Measured consistency, and what else was measured on the soil, as far as it is known. */
export interface MeasuredConsistency {
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  /** Of the laboratory bar, not of the long box. */
  readonly linearShrinkagePct?: number;
  readonly plasticLimitPct?: number;
  readonly organicPct?: number;
  /** Of dry mass, as SO₄. */
  readonly sulphatePct?: number;
  readonly saltsPct?: number;
  readonly dryDensityKgM3?: number;
}

const NO_PROOF = say`Lying inside published limits is no proof that a soil is suitable: ten soils made to meet such gradings led Ciancio, Jaquin and Walker (2013, Constr. Build. Mater. 42, abstract read) to conclude from strength, shrinkage and erosion that grading alone does not establish it. Lying outside is no proof of the opposite. Tests on the mix itself decide.`;

const CONSISTENCY_NAMES = {
  liquidLimitPct: say`liquid limit`,
  plasticityIndexPct: say`plasticity index`,
  linearShrinkagePct: say`linear shrinkage`,
};

/**
 * Holds a curve, and consistency where it was measured, against one published recommendation.
 *
 * Each criterion tells whether it is met, by how many percentage points, and at which size. Fractions
 * are read off the curve at the entry's own boundaries.
 *
 * @param consistency of the same material; what is left out is told as not measured.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 12, origin: "sedimentation" }, { sizeMm: 0.063, passingPct: 60, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] };
 * const check = checkGuidance(curve, GUIDANCE_ENTRIES.find(({ id }) => id === "walker-2005"));
 * check.verdict // => "outside"
 * check.criteria[1].byPct // => 10
 */
export function checkGuidance(
  curve: GradingCurve,
  entry: GuidanceEntry,
  consistency: MeasuredConsistency = {},
): GuidanceCheck {
  const points = fineToCoarse(curve.points);
  const criteria = [
    ...limitsOf(entry).map((limit) => toldLimit(limit, limit.measure(points, consistency))),
    ...(entry.classes ? [judgedTogether(points, entry, entry.classes, consistency)] : []),
  ];
  const others = (entry.others ?? []).map((limit) =>
    toldOther(limit, otherValue(limit, curve, consistency)),
  );
  return {
    entry,
    verdict: overall(
      criteria.map(({ verdict }) => verdict),
      others.map(({ verdict }) => verdict),
    ),
    criteria,
    ...(others.length > 0 ? { others } : {}),
    honesty: honesty(entry),
    caution: NO_PROOF,
  };
}

function overall(
  criteria: readonly CriterionVerdict[],
  others: readonly CriterionVerdict[],
): GuidanceCheck["verdict"] {
  if (criteria.includes("outside") || others.includes("outside")) return "outside";
  // An entry that limits nothing else is judged by its other limits alone.
  const judged = criteria.length > 0 ? criteria : others;
  return judged.every((verdict) => verdict === "inside") ? "inside" : "incomplete";
}

/** The verdicts of a check without its words. */
export interface GuidanceVerdicts {
  readonly verdict: GuidanceCheck["verdict"];
  /** In the order of the check's criteria. */
  readonly criteria: readonly CriterionVerdict[];
  readonly others: readonly OtherCheck["verdict"][];
}

/**
 * What `checkGuidance` would say of curves, in verdicts alone: for the hundreds of them as they could
 * have come out, of which nobody reads a sentence.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 12, origin: "sedimentation" }, { sizeMm: 0.063, passingPct: 60, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] };
 * guidanceVerdicts(GUIDANCE_ENTRIES.find(({ id }) => id === "walker-2005"))(curve).verdict // => "outside"
 */
export function guidanceVerdicts(
  entry: GuidanceEntry,
): (curve: GradingCurve, consistency?: MeasuredConsistency) => GuidanceVerdicts {
  const limits = limitsOf(entry);
  return (curve, consistency = {}) => {
    const points = fineToCoarse(curve.points);
    const criteria = limits.map((limit) => verdictOn(limit, limit.measure(points, consistency)));
    if (entry.classes) {
      criteria.push(judgedTogether(points, entry, entry.classes, consistency).verdict);
    }
    const others = (entry.others ?? []).map((limit) =>
      verdictOnOther(limit, otherValue(limit, curve, consistency)),
    );
    return { verdict: overall(criteria, others), criteria, others };
  };
}

/** A limit of an entry in percent. */
interface EntryLimit {
  readonly what: Text;
  readonly kind: CriterionCheck["kind"];
  readonly limits: Limits;
  /** Which size, fraction or measure of consistency it is about. */
  readonly about: Pick<CriterionCheck, "sizeMm" | "fraction" | "quantity">;
  /** What is held against it; undefined where it was not measured. */
  readonly measure: (
    points: readonly GradingPoint[],
    consistency: MeasuredConsistency,
  ) => number | undefined;
}

function limitsOf(entry: GuidanceEntry): EntryLimit[] {
  return [
    ...entry.points.map(
      ({ sizeMm, lowPct, highPct }): EntryLimit => ({
        what: say`passing ${sizeMm} mm`,
        kind: "passing",
        limits: { minPct: lowPct, maxPct: highPct },
        about: { sizeMm },
        measure: (points) => passingOf(points, entry, sizeMm),
      }),
    ),
    ...entry.fractions.map(
      (limits): EntryLimit => ({
        what: FRACTION_NAMES[limits.fraction],
        kind: "fraction",
        limits,
        about: { fraction: limits.fraction },
        measure: (points) => measure(points, entry, limits.fraction),
      }),
    ),
    ...entry.consistency.map(
      (limits): EntryLimit => ({
        what: CONSISTENCY_NAMES[limits.quantity],
        kind: "consistency",
        limits,
        about: { quantity: limits.quantity },
        measure: (_, consistency) => consistency[limits.quantity],
      }),
    ),
  ];
}

function verdictOn({ limits }: EntryLimit, measuredPct: number | undefined): CriterionVerdict {
  if (measuredPct === undefined) return "not measured";
  return isWithin(measuredPct, limits) ? "inside" : "outside";
}

const FRACTION_NAMES: Readonly<Record<FractionName, Text>> = {
  clay: say`clay`,
  silt: say`silt`,
  fines: say`silt and clay`,
  sand: say`sand`,
  gravel: say`gravel`,
  sandAndGravel: say`sand and gravel`,
};

/** Percent of the part that the entry speaks of. */
function passingOf(
  points: readonly GradingPoint[],
  { ofPassingMm }: GuidanceEntry,
  sizeMm: number,
): number | undefined {
  const passing = passingAmong(points, sizeMm);
  if (ofPassingMm === undefined || passing === undefined) return passing;
  const whole = passingAmong(points, ofPassingMm);
  return whole === undefined || whole === 0 ? undefined : percentOf(whole, passing);
}

function measure(
  points: readonly GradingPoint[],
  entry: GuidanceEntry,
  fraction: FractionName,
): number | undefined {
  const { clay, silt, sand } = entry.boundariesMm;
  const passing = (sizeMm: number) => passingOf(points, entry, sizeMm);
  const between = (fine: number | undefined, coarse: number | undefined) =>
    fine === undefined || coarse === undefined ? undefined : coarse - fine;
  switch (fraction) {
    case "clay":
      return passing(clay);
    case "silt":
      return between(passing(clay), passing(silt));
    case "fines":
      return passing(silt);
    case "sand":
      return between(passing(silt), passing(sand));
    // Gravel here is everything coarser than sand: none of the sources speaks of cobbles in a mix.
    case "gravel":
      return between(passing(sand), 100);
    case "sandAndGravel":
      return between(passing(silt), 100);
  }
}

function judgedTogether(
  points: readonly GradingPoint[],
  entry: GuidanceEntry,
  classes: SelectionClasses,
  { linearShrinkagePct, plasticityIndexPct }: MeasuredConsistency,
): CriterionCheck {
  const what = say`linear shrinkage, plasticity index and sand together`;
  if (linearShrinkagePct === undefined || plasticityIndexPct === undefined) {
    const text = say`${what}: not measured.`;
    return { what, kind: "class", verdict: "not measured", text };
  }
  const sand = measure(points, entry, "sand");
  const found = selectionClass(classes, linearShrinkagePct, plasticityIndexPct, sand);
  const success = classes.success[found];
  return {
    what,
    kind: "class",
    verdict: CLASS_VERDICTS[found],
    text: success
      ? say`${what}: ${wordFor(found)} (${success}).`
      : say`${what}: ${wordFor(found)}.`,
  };
}

function honesty({ basis, confidence, derived, own }: GuidanceEntry): Text {
  if (own) return say`An envelope supplied with this study; its source was not checked.`;
  const from =
    HONESTY[basis] ??
    say`The values are from memory (confidence ${wordFor(confidence)}): check them in the source before citing`;
  return derived
    ? say`${from}; the points of percent passing are derived by us from the fraction limits and are not a published curve.`
    : say`${from}.`;
}

const HONESTY: Readonly<Partial<Record<GuidanceEntry["basis"], Text>>> = {
  read: say`The values were read in the source named`,
  abstract: say`The values were read in an abstract or introduction, not in the full work`,
  cited: say`The values come from a secondary citation; the source itself was not read`,
};

type Limits = Omit<ConsistencyLimit, "quantity">;

/** A recommended range as its source states it, in percent: either end may be open. */
export function recommendedRange(low: number | undefined, high: number | undefined): Text {
  if (high === undefined) return say`from ${low ?? 0} %`;
  return low === undefined ? say`up to ${high} %` : say`${low} to ${high} %`;
}

function rangeWords({ minPct, maxPct, below }: Limits): Text {
  if (!below || maxPct === undefined) return recommendedRange(minPct, maxPct);
  return minPct === undefined ? say`below ${maxPct} %` : say`${minPct} to below ${maxPct} %`;
}

/** By how many points a percentage lies within limits; negative where it lies beyond one of them. */
function marginWithin(measuredPct: number, { minPct, maxPct }: Limits): number {
  return Math.min(measuredPct - (minPct ?? -Infinity), (maxPct ?? Infinity) - measuredPct);
}

function isWithin(measuredPct: number, limits: Limits): boolean {
  const atTop = limits.below === true && measuredPct === limits.maxPct;
  // Percentages come out of sums and interpolation: a last binary digit decides nothing.
  return marginWithin(measuredPct, limits) >= -1e-9 && !atTop;
}

/** A limit judged, with the sentence that says by how much the measured percentage lies within or beyond it. */
function toldLimit(limit: EntryLimit, measuredPct: number | undefined): CriterionCheck {
  const { what, kind, limits, about } = limit;
  const verdict = verdictOn(limit, measuredPct);
  const ends = { lowPct: limits.minPct, highPct: limits.maxPct };
  const range = rangeWords(limits);
  if (measuredPct === undefined) {
    const text = say`${what}: not measured; recommended ${range}.`;
    return { what, kind, verdict, ...ends, text, ...about };
  }
  const byPct = Math.abs(marginWithin(measuredPct, limits));
  const told = say`${what}: ${formatFixed(measuredPct, 1)} %, recommended ${range}`;
  const text =
    verdict === "inside"
      ? say`${told}: inside by ${formatFixed(byPct, 1)} points.`
      : say`${told}: outside by ${formatFixed(byPct, 1)} points.`;
  return { what, kind, verdict, measuredPct, ...ends, byPct, text, ...about };
}

/**
 * What an estimate says of a limit of consistency that was not measured on the soil itself.
 */
export function estimatedConsistency(limit: ConsistencyLimit, estimatedPct: number): Text {
  const by = formatFixed(Math.abs(marginWithin(estimatedPct, limit)), 1);
  const told = say`${CONSISTENCY_NAMES[limit.quantity]}: estimated ${formatFixed(estimatedPct, 1)} %, recommended ${rangeWords(limit)}`;
  return isWithin(estimatedPct, limit)
    ? say`${told}: inside by ${by} points; not measured on the blend.`
    : say`${told}: outside by ${by} points; not measured on the blend.`;
}

/** A class told as a verdict. */
const CLASS_VERDICTS: Readonly<Record<SelectionClass, CriterionVerdict>> = {
  favourable: "inside",
  satisfactory: "inside",
  unfavourable: "outside",
  "not classified": "not classified",
};

const QUANTITIES: Readonly<Record<OtherQuantity, readonly [Text, OtherCheck["unit"], number]>> = {
  organicPct: [say`organic matter`, "%", 1],
  sulphatePct: [say`sulphate`, "%", 2],
  saltsPct: [say`soluble salts`, "%", 2],
  topSizeMm: [say`largest grain`, "mm", 1],
  dryDensityKgM3: [say`dry density`, "kg/m³", 0],
  plasticLimitPct: [say`plastic limit`, "%", 1],
};

/** What is held against a limit of organic matter, salts, top size or density; undefined where it was not measured. */
function otherValue(
  { quantity }: OtherLimit,
  { points }: GradingCurve,
  measured: MeasuredConsistency,
): number | undefined {
  if (quantity !== "topSizeMm") return measured[quantity];
  return points.find(({ passingPct }) => passingPct >= 100)?.sizeMm;
}

function verdictOnOther(
  { min = -Infinity, max = Infinity }: OtherLimit,
  value: number | undefined,
): OtherCheck["verdict"] {
  if (value === undefined) return "not measured";
  return value >= min && value <= max ? "inside" : "outside";
}

function toldOther(limit: OtherLimit, value: number | undefined): OtherCheck {
  const { quantity, min, max } = limit;
  const verdict = verdictOnOther(limit, value);
  const [what, unit, decimals] = QUANTITIES[quantity];
  const range = otherRange({ quantity, min, max });
  const limits = { quantity, what, unit, min, max };
  if (value === undefined) {
    return { ...limits, verdict, text: say`${what}: not measured; recommended ${range}.` };
  }
  const found = say`${what}: ${shownOther(quantity, value, decimals)}, recommended ${range}`;
  const text = verdict === "inside" ? say`${found}: inside.` : say`${found}: outside.`;
  return { ...limits, measured: value, verdict, text };
}

function otherRange({ quantity, min, max }: OtherLimit): Text {
  const shown = (limit: number) => shownOther(quantity, limit);
  if (max === undefined) return say`from ${shown(min ?? 0)}`;
  return min === undefined ? say`up to ${shown(max)}` : say`${shown(min)} to ${shown(max)}`;
}

/** A value with its unit; a density is written anew where the reader has other units. */
function shownOther(quantity: OtherQuantity, value: number, decimals?: number): Text {
  if (quantity === "dryDensityKgM3") return measured(value, "density", decimals);
  const [, unit] = QUANTITIES[quantity];
  return say`${decimals === undefined ? value : formatFixed(value, decimals)} ${unit}`;
}

/**
 * Class of a soil for stabilisation, by shrinkage and plasticity together and, between the limits, by sand.
 *
 * Below both lower limits favourable, above both upper ones unfavourable, between them (ends included) as
 * the sand decides. Every other combination is not classified in what was read, and is not guessed here.
 * Source: Burroughs 2001 and 2008, in the entries `burroughs-2001` and `burroughs-2008`.
 *
 * @param classes of an entry that has them.
 * @param sandPct left out where it is not known.
 * @throws RangeError for a shrinkage or plasticity that is no number.
 *
 * @example
 * const { classes } = GUIDANCE_ENTRIES.find(({ id }) => id === "burroughs-2008");
 * selectionClass(classes, 4, 12) // => "favourable"
 * selectionClass(classes, 8, 20, 70) // => "unfavourable"
 * selectionClass(classes, 4, 20) // => "not classified"
 */
export function selectionClass(
  { favourableBelow, unfavourableAbove, sand }: SelectionClasses,
  linearShrinkagePct: number,
  plasticityIndexPct: number,
  sandPct?: number,
): SelectionClass {
  const soil = { linearShrinkagePct, plasticityIndexPct };
  const quantities = Object.keys(soil) as (keyof typeof soil)[];
  for (const name of quantities) {
    checkThat(!Number.isNaN(soil[name]), { [name]: soil[name] }, "a number");
  }
  const isBelow = quantities.map((name) => soil[name] < favourableBelow[name]);
  const isAbove = quantities.map((name) => soil[name] > unfavourableAbove[name]);
  if (isBelow.every(Boolean)) return "favourable";
  if (isAbove.every(Boolean)) return "unfavourable";
  const isBetween = ![...isBelow, ...isAbove].some(Boolean);
  if (!isBetween || sandPct === undefined) return "not classified";
  return sandPct < sand.limitPct ? sand.below : sand.fromThere;
}

/** What is never read off a curve or a limits test, and a builder may forget to have tested. */
const CHEMISTRY: readonly OtherQuantity[] = ["organicPct", "sulphatePct", "saltsPct"];

/**
 * What a reader must know of a recommendation that a study is held against: that it was written for
 * another kind of earth, and which of its limits on organic matter, sulphate and salts were not tested.
 *
 * @param measured what was measured on the soil.
 * @param place where the study names the recommendation.
 *
 * @example
 * const entry = GUIDANCE_ENTRIES.find(({ id }) => id === "walker-2005");
 * guidanceFindings(entry, { organicPct: 0.4 }, { file: "study.yaml", column: "guidance" }).map(({ code }) => code) // => ["guidance-for-other-earth", "guidance-not-tested"]
 */
export function guidanceFindings(
  entry: GuidanceEntry,
  measured: MeasuredConsistency,
  place: FindingPlace,
): Finding[] {
  const untested = (entry.others ?? []).filter(
    ({ quantity }) =>
      CHEMISTRY.includes(quantity) && measured[quantity as keyof MeasuredConsistency] === undefined,
  );
  const stabilised = new Set(GUIDANCE_ENTRIES.filter(isForStabilisedEarth).map(shortSource));
  const nameOf = ({ quantity }: OtherLimit) => QUANTITIES[quantity][0];
  const limits = untested.map((limit) => say`${nameOf(limit)} ${otherRange(limit)}`);
  return [
    ...findingIf(!isForStabilisedEarth(entry), place, "note", "guidance-for-other-earth", {
      message: say`“${entry.title}” was not written for cement-stabilised rammed earth: its limits are a guide to the soil only.`,
      expected: say`a recommendation for cement-stabilised rammed earth`,
      remedy: say`Compare it with what was written for stabilised earth: ${joinTexts([...stabilised])}. State in the report why this one was chosen.`,
    }),
    ...findingIf(untested.length > 0, place, "note", "guidance-not-tested", {
      message: say`“${entry.title}” limits quantities that were not tested here: ${joinTexts(untested.map(nameOf))}.`,
      expected: joinTexts(limits),
      remedy: say`Have the soil tested for them. Organic matter and sulphates can keep cement from setting, or break a wall years later.`,
    }),
  ];
}

/**
 * Whether a recommendation was written for rammed earth with cement; a study's own always is.
 *
 * @example
 * isForStabilisedEarth(GUIDANCE_ENTRIES.find(({ id }) => id === "walker-2005")) // => false
 */
export function isForStabilisedEarth({ material }: GuidanceEntry): boolean {
  return material === "stabilised-rammed-earth" || material === "own";
}
