import type { GradingCurve } from "../grading/gradingCurve.js";
import { passingAtSize } from "../grading/passingAtSize.js";
import { phrase, say, sayOf } from "../words/say.js";
import { burroughsClass } from "./burroughsClass.js";
import { checkOthers } from "./checkOthers.js";
import type { CriterionCheck, GuidanceCheck, MeasuredConsistency } from "./guidanceCheck.js";
import type { FractionName, GuidanceEntry } from "./guidanceEntry.js";
import { withinLimits } from "./withinLimits.js";

const NO_PROOF = phrase`Lying inside published limits is no proof that a soil is suitable: ten soils made to meet such gradings led Ciancio, Jaquin and Walker (2013, Constr. Build. Mater. 42, abstract read) to conclude from strength, shrinkage and erosion that grading alone does not establish it. Lying outside is no proof of the opposite. Tests on the mix itself decide.`;

const CONSISTENCY_NAMES = {
  liquidLimitPct: phrase`liquid limit`,
  plasticityIndexPct: phrase`plasticity index`,
  linearShrinkagePct: phrase`linear shrinkage`,
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
    ...entry.fractions.map((limit) =>
      withinLimits(
        sayOf(WORDS[limit.fraction]),
        "fraction",
        measure(curve, entry, limit.fraction),
        limit,
      ),
    ),
    ...entry.consistency.map((limit) =>
      withinLimits(
        sayOf(CONSISTENCY_NAMES[limit.quantity]),
        "consistency",
        consistency[limit.quantity],
        limit,
      ),
    ),
    ...(entry.judgedTogether ? [together(curve, entry, consistency)] : []),
  ];
  const others = checkOthers(curve, entry, consistency);
  const verdict = [...criteria, ...others].some((each) => each.verdict === "outside")
    ? "outside"
    : // An entry that limits nothing else is judged by its other limits alone.
      (criteria.length > 0 ? criteria : others).every(({ verdict: each }) => each === "inside")
      ? "inside"
      : "incomplete";
  return {
    entry,
    verdict,
    criteria,
    ...(others.length > 0 ? { others } : {}),
    honesty: honesty(entry),
    caution: sayOf(NO_PROOF),
  };
}

const WORDS: Readonly<Record<FractionName, string>> = {
  clay: phrase`clay`,
  silt: phrase`silt`,
  fines: phrase`silt and clay`,
  sand: phrase`sand`,
  gravel: phrase`gravel`,
  sandAndGravel: phrase`sand and gravel`,
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
  const verdict =
    found === "favourable" ? "inside" : found === "unfavourable" ? "outside" : "not classified";
  return { what, kind: "class", verdict, text: `${what}: ${found}.` };
}

function honesty({ basis, confidence, derived, own }: GuidanceEntry): string {
  if (own)
    return say`An envelope that this study brought along; where it comes from was not checked.`;
  const from =
    basis === "read"
      ? say`The numbers were read in the source named`
      : say`The numbers are from memory (confidence ${sayOf(confidence)}): check them in the source before citing`;
  return derived
    ? say`${from}; the points of passing are derived by us from the fraction limits, not a published curve.`
    : `${from}.`;
}
