import type { GradingCurve } from "../grading/gradingCurve.js";
import { say } from "../words/say.js";
import { checkGuidance } from "./checkGuidance.js";
import type { GuidanceCheck, MeasuredConsistency } from "./guidanceCheck.js";
import type { GuidanceEntry, OtherQuantity } from "./guidanceEntry.js";
import { SURE, surenessPercent } from "./surenessWords.js";

export interface GuidanceSureness {
  readonly verdict: GuidanceCheck["verdict"];
  /** Share of the resampled curves with the same verdict, 0 to 1. */
  readonly sameVerdict: number;
  /** How many curves were tried. */
  readonly draws: number;
  /** In the order of the check's criteria. */
  readonly criteria: readonly {
    readonly what: string;
    readonly verdict: string;
    /** Share of the resampled curves for which the criterion has this verdict. */
    readonly sure: number;
  }[];
  /** Organic matter, top size and the like, in the order of the check; absent where it has none. */
  readonly others?: readonly {
    readonly quantity: OtherQuantity;
    readonly verdict: string;
    readonly sure: number;
  }[];
  /** One plain sentence. */
  readonly text: string;
}

/**
 * How sure a verdict on a recommendation is, given how the curve could have come out.
 *
 * The share of the resampled curves (of `resampleReadings`) that get the same verdict. The sureness is
 * about the readings alone: a sure "inside" is no proof that a soil is suitable.
 *
 * @param measured consistency and what else was measured.
 * @param drawn the same as it could have come out, one a curve; left out, `measured` holds for all.
 * @throws RangeError without curves, or where `drawn` is not as long as `curves`.
 *
 * @example
 * const at = (clay) => ({ points: [{ sizeMm: 0.002, passingPct: clay, origin: "sedimentation" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] });
 * const entry = GUIDANCE_ENTRIES.find(({ id }) => id === "morel-clay");
 * const { verdict, sameVerdict } = guidanceSureness(at(14.5), [14, 14.4, 14.8, 15.2].map(at), entry);
 * [verdict, sameVerdict] // => ["inside", 0.75]
 */
export function guidanceSureness(
  curve: GradingCurve,
  curves: readonly GradingCurve[],
  entry: GuidanceEntry,
  measured: MeasuredConsistency = {},
  drawn?: readonly MeasuredConsistency[],
): GuidanceSureness {
  if (curves.length === 0) throw new RangeError("invalid `curves`: 0; expected at least 1");
  if (drawn && drawn.length !== curves.length) {
    throw new RangeError(
      `invalid \`drawn\`: ${drawn.length} of them; expected one for each of ${curves.length} curves`,
    );
  }
  const check = checkGuidance(curve, entry, measured);
  const checks = curves.map((each, index) =>
    checkGuidance(each, entry, drawn ? drawn[index] : measured),
  );
  const share = (same: (each: GuidanceCheck) => boolean) =>
    checks.filter(same).length / checks.length;
  const sameVerdict = share(({ verdict }) => verdict === check.verdict);
  const criteria = check.criteria.map(({ what, verdict }, index) => ({
    what,
    verdict,
    sure: share((each) => each.criteria[index].verdict === verdict),
  }));
  const others = check.others?.map(({ quantity, verdict }, index) => ({
    quantity,
    verdict,
    sure: share((each) => each.others?.[index].verdict === verdict),
  }));
  const open = criteria.filter(({ sure }) => sure < SURE).map(({ what }) => what);
  const percent = surenessPercent(sameVerdict);
  return {
    verdict: check.verdict,
    sameVerdict,
    draws: curves.length,
    criteria,
    ...(others ? { others } : {}),
    text:
      open.length === 0
        ? say`The reading errors do not change this verdict (${percent} % of ${curves.length} resampled curves).`
        : say`Within the reading errors ${open.join(", ")} could come out otherwise: ${percent} % of ${curves.length} resampled curves have this verdict.`,
  };
}
