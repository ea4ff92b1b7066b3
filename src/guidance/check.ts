import { type GradingCurve, passingAtSize } from "../grading/curve.js";
import { formatFixed } from "../quantities/format.js";
import { say, type Text, wordFor } from "../words/message.js";
import type { FractionName, GuidanceEntry, OtherQuantity } from "./entry.js";

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
  /** Percentage points outside the nearest limit, or inside of it. */
  readonly byPct?: number;
  /** One plain sentence. */
  readonly text: Text;
}

/** A limit of organic matter, salts, top size or density. */
export interface OtherCheck {
  readonly quantity: OtherQuantity;
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
  const criteria: CriterionCheck[] = [
    ...entry.points.map(({ sizeMm, lowPct, highPct }) => ({
      ...withinLimits(say`passing ${sizeMm} mm`, "passing", passingAtSize(curve, sizeMm), {
        minPct: lowPct,
        maxPct: highPct,
      }),
      sizeMm,
    })),
    ...entry.fractions.map((limit) => ({
      ...withinLimits(
        FRACTION_NAMES[limit.fraction],
        "fraction",
        measure(curve, entry, limit.fraction),
        limit,
      ),
      fraction: limit.fraction,
    })),
    ...entry.consistency.map((limit) =>
      withinLimits(
        CONSISTENCY_NAMES[limit.quantity],
        "consistency",
        consistency[limit.quantity],
        limit,
      ),
    ),
    ...(entry.judgedTogether ? [together(curve, entry, consistency)] : []),
  ];
  const others = checkOthers(curve, entry, consistency);
  return {
    entry,
    verdict: overall(criteria, others),
    criteria,
    ...(others.length > 0 ? { others } : {}),
    honesty: honesty(entry),
    caution: NO_PROOF,
  };
}

function overall(
  criteria: readonly CriterionCheck[],
  others: readonly OtherCheck[],
): GuidanceCheck["verdict"] {
  if ([...criteria, ...others].some(({ verdict }) => verdict === "outside")) return "outside";
  // An entry that limits nothing else is judged by its other limits alone.
  const judged = criteria.length > 0 ? criteria : others;
  return judged.every(({ verdict }) => verdict === "inside") ? "inside" : "incomplete";
}

const FRACTION_NAMES: Readonly<Record<FractionName, Text>> = {
  clay: say`clay`,
  silt: say`silt`,
  fines: say`silt and clay`,
  sand: say`sand`,
  gravel: say`gravel`,
  sandAndGravel: say`sand and gravel`,
};

function measure(
  curve: GradingCurve,
  { boundariesMm }: GuidanceEntry,
  fraction: FractionName,
): number | undefined {
  const { clay, silt, sand } = boundariesMm;
  const passing = (sizeMm: number) => passingAtSize(curve, sizeMm);
  const between = (fine: number | undefined, coarse: number | undefined) =>
    fine === undefined || coarse === undefined ? undefined : coarse - fine;
  // Gravel here is everything coarser than sand: none of the sources speaks of cobbles in a mix.
  return {
    clay: () => passing(clay),
    silt: () => between(passing(clay), passing(silt)),
    fines: () => passing(silt),
    sand: () => between(passing(silt), passing(sand)),
    gravel: () => between(passing(sand), 100),
    sandAndGravel: () => between(passing(silt), 100),
  }[fraction]();
}

function together(
  curve: GradingCurve,
  entry: GuidanceEntry,
  { linearShrinkagePct, plasticityIndexPct }: MeasuredConsistency,
): CriterionCheck {
  const what = say`linear shrinkage, plasticity index and sand together`;
  if (linearShrinkagePct === undefined || plasticityIndexPct === undefined) {
    const text = say`${what}: not measured.`;
    return { what, kind: "class", verdict: "not measured", text };
  }
  const sand = measure(curve, entry, "sand");
  const found = burroughsClass(linearShrinkagePct, plasticityIndexPct, sand);
  return {
    what,
    kind: "class",
    verdict: CLASS_VERDICTS[found],
    text: say`${what}: ${wordFor(found)}.`,
  };
}

function honesty({ basis, confidence, derived, own }: GuidanceEntry): Text {
  if (own)
    return say`An envelope that this study brought along; where it comes from was not checked.`;
  const from =
    basis === "read"
      ? say`The numbers were read in the source named`
      : say`The numbers are from memory (confidence ${wordFor(confidence)}): check them in the source before citing`;
  return derived
    ? say`${from}; the points of passing are derived by us from the fraction limits, not a published curve.`
    : say`${from}.`;
}

interface Limits {
  readonly minPct?: number;
  readonly maxPct?: number;
  /** The largest value itself no longer counts as inside. */
  readonly below?: boolean;
}

function rangeWords({ minPct, maxPct, below }: Limits): Text {
  if (maxPct === undefined) return say`from ${minPct ?? 0} %`;
  if (minPct === undefined) return below ? say`below ${maxPct} %` : say`up to ${maxPct} %`;
  return below ? say`${minPct} to below ${maxPct} %` : say`${minPct} to ${maxPct} %`;
}

/** Holds a measured percentage against limits and says by how much it lies within or beyond them. */
function withinLimits(
  what: Text,
  kind: CriterionCheck["kind"],
  measuredPct: number | undefined,
  { minPct, maxPct, below = false }: Limits,
): CriterionCheck {
  const limits = { lowPct: minPct, highPct: maxPct };
  const range = rangeWords({ minPct, maxPct, below });
  if (measuredPct === undefined) {
    const text = say`${what}: not measured; asked for ${range}.`;
    return { what, kind, verdict: "not measured", ...limits, text };
  }
  const margin = Math.min(
    measuredPct - (minPct ?? Number.NEGATIVE_INFINITY),
    (maxPct ?? Number.POSITIVE_INFINITY) - measuredPct,
  );
  const atTop = below && measuredPct === maxPct;
  // Percentages come out of sums and interpolation: a last binary digit decides nothing.
  const inside = margin >= -1e-9 && !atTop;
  const byPct = Math.abs(margin);
  const told = say`${what}: ${formatFixed(measuredPct, 1)} %, asked for ${range}`;
  const text = inside
    ? say`${told}: inside by ${formatFixed(byPct, 1)} points.`
    : say`${told}: outside by ${formatFixed(byPct, 1)} points.`;
  return {
    what,
    kind,
    verdict: inside ? "inside" : "outside",
    measuredPct,
    ...limits,
    byPct,
    text,
  };
}

/** A class told as a verdict. */
const CLASS_VERDICTS: Readonly<Record<BurroughsClass, CriterionVerdict>> = {
  favourable: "inside",
  unfavourable: "outside",
  "not classified": "not classified",
};

const QUANTITIES: Readonly<Record<OtherQuantity, readonly [Text, OtherCheck["unit"], number]>> = {
  organicPct: [say`organic matter`, "%", 1],
  saltsPct: [say`soluble salts`, "%", 2],
  topSizeMm: [say`largest grain`, "mm", 1],
  dryDensityKgM3: [say`dry density`, "kg/m³", 0],
  plasticLimitPct: [say`plastic limit`, "%", 1],
};

/** Holds organic matter, salts, top size and density against the limits of an entry. */
function checkOthers(
  { points }: GradingCurve,
  { others = [] }: GuidanceEntry,
  measured: MeasuredConsistency,
): OtherCheck[] {
  return others.map(({ quantity, min, max }): OtherCheck => {
    const [name, unit, decimals] = QUANTITIES[quantity];
    const value =
      quantity === "topSizeMm"
        ? points.find(({ passingPct }) => passingPct >= 100)?.sizeMm
        : measured[quantity];
    const range = otherRange(min, max, unit);
    const limits = { quantity, unit, min, max };
    if (value === undefined) {
      return {
        ...limits,
        verdict: "not measured",
        text: say`${name}: not measured; asked for ${range}.`,
      };
    }
    const inside = value >= (min ?? -Infinity) && value <= (max ?? Infinity);
    const found = say`${name}: ${formatFixed(value, decimals)} ${unit}, asked for ${range}`;
    return {
      ...limits,
      measured: value,
      verdict: inside ? "inside" : "outside",
      text: inside ? say`${found}: inside.` : say`${found}: outside.`,
    };
  });
}

function otherRange(min: number | undefined, max: number | undefined, unit: string): Text {
  if (max === undefined) return say`from ${min ?? 0} ${unit}`;
  return min === undefined ? say`up to ${max} ${unit}` : say`${min} to ${max} ${unit}`;
}

export type BurroughsClass = "favourable" | "unfavourable" | "not classified";

/**
 * Class of a soil for stabilisation with cement or lime, by shrinkage and plasticity together.
 *
 * Favourable (at least 80 % of the soils reached 2 MPa): linear shrinkage below 6.0 % and PI below 15;
 * or shrinkage 6.0 to 11.0 %, PI 15 to 30 and sand below 64 %. Unfavourable (below 60 % did): the same
 * ranges with sand of 64 % or more; or shrinkage above 11.0 % and PI above 30. Every other combination
 * is not classified in what was read, and is not guessed here.
 * Source: Burroughs 2008, J. Mater. Civ. Eng. 20(3), abstract (read); 104 soils, 4 to 8 % cement and
 * lime together. The abstract does not say which sizes it calls sand.
 *
 * @param sandPct left out where it is not known.
 *
 * @example
 * burroughsClass(4, 12) // => "favourable"
 * burroughsClass(8, 20, 70) // => "unfavourable"
 * burroughsClass(4, 20) // => "not classified"
 */
export function burroughsClass(
  linearShrinkagePct: number,
  plasticityIndexPct: number,
  sandPct?: number,
): BurroughsClass {
  for (const [name, value] of Object.entries({ linearShrinkagePct, plasticityIndexPct })) {
    if (Number.isNaN(value)) throw new RangeError(`invalid \`${name}\`: NaN; expected a number`);
  }
  if (linearShrinkagePct < 6 && plasticityIndexPct < 15) return "favourable";
  if (linearShrinkagePct > 11 && plasticityIndexPct > 30) return "unfavourable";
  const middle =
    linearShrinkagePct >= 6 &&
    linearShrinkagePct <= 11 &&
    plasticityIndexPct >= 15 &&
    plasticityIndexPct <= 30;
  if (!middle || sandPct === undefined) return "not classified";
  return sandPct < 64 ? "favourable" : "unfavourable";
}

/** A verdict as a word for a person. */
export function verdictWords(verdict: CriterionVerdict | GuidanceCheck["verdict"]): Text {
  return wordFor(verdict);
}
