import type { GradingCurve } from "../grading/curve.js";
import { checkThat } from "../quantities/checkNumber.js";
import { joinTexts, say, type Text } from "../words/message.js";
import {
  checkGuidance,
  type GuidanceCheck,
  type GuidanceVerdicts,
  guidanceVerdicts,
  type MeasuredConsistency,
} from "./check.js";
import type { GuidanceEntry, OtherQuantity } from "./entry.js";

export interface VerdictProbability {
  readonly verdict: GuidanceCheck["verdict"];
  /** Share of the resampled curves with the same verdict, 0 to 1. */
  readonly sameVerdict: number;
  /** How many curves were tried. */
  readonly draws: number;
  /** In the order of the check's criteria. */
  readonly criteria: readonly {
    readonly what: Text;
    readonly verdict: string;
    /** Share of the resampled curves for which the criterion has this verdict. */
    readonly probability: number;
  }[];
  /** Organic matter, top size and the like, in the order of the check; absent where it has none. */
  readonly others?: readonly {
    readonly quantity: OtherQuantity;
    readonly verdict: string;
    readonly probability: number;
  }[];
  /** One plain sentence. */
  readonly text: Text;
}

/**
 * How sure a verdict on a recommendation is, given how the curve could have come out.
 *
 * The share of the resampled curves (of `resampleReadings`) that get the same verdict. The probability is
 * about the readings alone: a sure "inside" is no proof that a soil is suitable.
 *
 * @param measured consistency and what else was measured.
 * @param drawn the same as it could have come out, one a curve; left out, `measured` holds for all.
 * @throws RangeError without curves, or where `drawn` is not as long as `curves`.
 *
 * @example
 * const at = (clay) => ({ points: [{ sizeMm: 0.002, passingPct: clay, origin: "sedimentation" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] });
 * const entry = GUIDANCE_ENTRIES.find(({ id }) => id === "morel-clay");
 * const { verdict, sameVerdict } = verdictProbability(at(14.5), [14, 14.4, 14.8, 15.2].map(at), entry);
 * [verdict, sameVerdict] // => ["inside", 0.75]
 */
export function verdictProbability(
  curve: GradingCurve,
  curves: readonly GradingCurve[],
  entry: GuidanceEntry,
  measured: MeasuredConsistency = {},
  drawn?: readonly MeasuredConsistency[],
): VerdictProbability {
  if (curves.length === 0) throw new RangeError("invalid `curves`: 0; expected at least 1");
  if (drawn && drawn.length !== curves.length) {
    throw new RangeError(
      `invalid \`drawn\`: ${drawn.length} of them; expected one for each of ${curves.length} curves`,
    );
  }
  const check = checkGuidance(curve, entry, measured);
  const verdictsOf = guidanceVerdicts(entry);
  const checks = curves.map((each, index) => verdictsOf(each, drawn ? drawn[index] : measured));
  const share = (same: (each: GuidanceVerdicts) => boolean) =>
    checks.filter(same).length / checks.length;
  const sameVerdict = share(({ verdict }) => verdict === check.verdict);
  const criteria = check.criteria.map(({ what, verdict }, index) => ({
    what,
    verdict,
    probability: share((each) => each.criteria[index] === verdict),
  }));
  const others = check.others?.map(({ quantity, verdict }, index) => ({
    quantity,
    verdict,
    probability: share((each) => each.others[index] === verdict),
  }));
  const open = criteria.filter(({ probability }) => probability < SURE).map(({ what }) => what);
  const percent = probabilityPercent(sameVerdict);
  return {
    verdict: check.verdict,
    sameVerdict,
    draws: curves.length,
    criteria,
    ...(others ? { others } : {}),
    text:
      open.length === 0
        ? say`The reading errors do not change this verdict (${percent} % of ${curves.length} resampled curves).`
        : say`Within the reading errors ${joinTexts(open)} could differ: ${percent} % of ${curves.length} resampled curves give this verdict.`,
  };
}

/** A criterion whose verdict fewer of the resampled curves give is named; common practice, no source. */
const SURE = 0.95;

/**
 * The confidence of a verdict in words. It is about the readings alone, and says so.
 *
 * @param share 0 to 1.
 * @throws RangeError where the share is not 0 to 1.
 *
 * @example
 * render(probabilityWords(0.82)) // => "in 82 of 100 draws of the reading errors"
 * render(probabilityWords(1)) // => "in over 99 of 100 draws of the reading errors"
 */
export function probabilityWords(share: number): Text {
  return say`in ${probabilityPercent(share)} of 100 draws of the reading errors`;
}

/** A share of draws in percent: a few hundred that all agree do not make certainty, so it ends at over 99. */
export function probabilityPercent(share: number): Text {
  checkThat(share >= 0 && share <= 1, { share }, "0 to 1");
  if (share > 0.99) return say`over 99`;
  return share < 0.01 ? say`below 1` : String(Math.round(100 * share));
}
