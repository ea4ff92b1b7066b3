import type { GradingCurve } from "../grading/curve.js";
import { formatFixed } from "../quantities/format.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { render } from "../words/render.js";
import {
  type CriterionCheck,
  checkGuidance,
  type GuidanceCheck,
  type MeasuredConsistency,
  recommendedRange,
} from "./check.js";
import { type FractionName, type GuidanceEntry, shortSource } from "./entry.js";
import { verdictProbability } from "./probability.js";

export { recommendedRange } from "./check.js";

/** One thing that several sources limit, each in its own way. */
export interface GuidanceDisagreement {
  /** What they limit: `clay`, `plasticity index` … with its sizes where those matter. */
  readonly what: Text;
  readonly measuredPct?: number;
  readonly sides: readonly {
    readonly id: string;
    /** As a reader cites it: `Walker 2005`. */
    readonly source: Text;
    /** Its figures are from memory: check before citing. */
    readonly remembered?: true;
    readonly lowPct?: number;
    readonly highPct?: number;
    readonly verdict: CriterionCheck["verdict"];
    /** Share of the drawn curves with this verdict, 0 to 1; absent without them, or where nothing was measured. */
    readonly probability?: number;
  }[];
  /** Some find this soil inside and some outside. */
  readonly verdictsDiffer: boolean;
  /** No value can meet all of them. */
  readonly irreconcilable: boolean;
  /** One plain sentence. */
  readonly text: Text;
}

export interface GuidanceComparison {
  /** In the order of the entries. */
  readonly checks: readonly GuidanceCheck[];
  /** Where limits of two sources or more are not the same. */
  readonly disagreements: readonly GuidanceDisagreement[];
}

interface Side {
  readonly check: GuidanceCheck;
  readonly criterion: CriterionCheck;
  readonly probability: number | undefined;
}

/**
 * Holds a curve against several recommendations at once and says where they disagree, with one another
 * and about this soil. Nothing is averaged and none is chosen.
 *
 * Limits are set beside each other only where they mean the same sizes: silt to 0.02 mm and silt to
 * 0.063 mm are two things. Bands derived from fractions are left out, as the fractions stand for them.
 *
 * @param curves the same curve as it could have come out (of `resampleReadings`), for how sure each
 * verdict is; default none.
 * @throws RangeError without entries.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 18, origin: "sedimentation" }, { sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 80, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] };
 * const entries = ["walker-2005", "keable-sazs-ars"].map((id) => GUIDANCE_ENTRIES.find((entry) => entry.id === id));
 * const { disagreements } = compareGuidance(curve, entries);
 * render(disagreements[0].text) // => "clay (up to 0.002 mm), 18.0 % measured: Walker 2005 recommends 5 to 20 % (inside); Keable 2001 recommends 5 to 15 % (outside)."
 */
export function compareGuidance(
  curve: GradingCurve,
  entries: readonly GuidanceEntry[],
  measured: MeasuredConsistency = {},
  curves: readonly GradingCurve[] = [],
): GuidanceComparison {
  if (entries.length === 0) throw new RangeError("invalid `entries`: none; expected at least one");
  const checks = entries.map((entry) => checkGuidance(curve, entry, measured));
  const groups = new Map<string, Side[]>();
  for (const check of checks) {
    const { entry, criteria } = check;
    const sure = curves.length > 0 ? verdictProbability(curve, curves, entry, measured) : undefined;
    for (const [index, criterion] of criteria.entries()) {
      if (criterion.kind === "class" || (criterion.kind === "passing" && entry.derived)) continue;
      // The English words are the key: they hold what is limited and the sizes that it means.
      const key = render(named(criterion, entry));
      const side = { check, criterion, probability: sure?.criteria[index].probability };
      groups.set(key, [...(groups.get(key) ?? []), side]);
    }
  }
  return {
    checks,
    disagreements: [...groups.values()].flatMap((group) => disagreement(group) ?? []),
  };
}

/** What the sides of one limit say about this soil; undefined where all say the same. */
function disagreement(group: readonly Side[]): GuidanceDisagreement | undefined {
  const [{ check, criterion }] = group;
  const limits = group.map(({ criterion: { lowPct, highPct } }) => `${lowPct} ${highPct}`);
  if (new Set(limits).size < 2) return undefined;
  const sides = group.map(
    ({ check: { entry }, criterion: { lowPct, highPct, verdict }, probability }) => ({
      id: entry.id,
      source: shortSource(entry),
      ...(entry.basis === "memory" ? { remembered: true as const } : {}),
      lowPct,
      highPct,
      verdict,
      ...(probability === undefined || verdict === "not measured" ? {} : { probability }),
    }),
  );
  const verdicts = new Set(sides.map(({ verdict }) => verdict));
  const low = Math.max(...sides.map(({ lowPct = -Infinity }) => lowPct));
  const high = Math.min(...sides.map(({ highPct = Infinity }) => highPct));
  const irreconcilable = low > high;
  const { measuredPct } = criterion;
  const what = named(criterion, check.entry);
  const recommended = joinTexts(
    sides.map(
      ({ source, lowPct, highPct, verdict }) =>
        say`${source} recommends ${recommendedRange(lowPct, highPct)} (${wordFor(verdict)})`,
    ),
    "; ",
  );
  const measured =
    measuredPct === undefined ? what : say`${what}, ${formatFixed(measuredPct, 1)} % measured`;
  return {
    what,
    ...(measuredPct === undefined ? {} : { measuredPct }),
    sides,
    verdictsDiffer: verdicts.has("inside") && verdicts.has("outside"),
    irreconcilable,
    text: irreconcilable
      ? say`${measured}: ${recommended}. No soil meets all of them.`
      : say`${measured}: ${recommended}.`,
  };
}

/** With the sizes that a fraction means, so that only like is set beside like. */
function named({ what, fraction }: CriterionCheck, { boundariesMm }: GuidanceEntry): Text {
  if (fraction === undefined) return what;
  const { clay, silt, sand } = boundariesMm;
  const sizes: Readonly<Record<FractionName, Text>> = {
    clay: say`up to ${clay} mm`,
    silt: say`${clay} to ${silt} mm`,
    fines: say`up to ${silt} mm`,
    sand: say`${silt} to ${sand} mm`,
    gravel: say`above ${sand} mm`,
    sandAndGravel: say`above ${silt} mm`,
  };
  return say`${what} (${sizes[fraction]})`;
}
