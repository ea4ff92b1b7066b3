import type { GradingCurve } from "../grading/gradingCurve.js";
import { say } from "../words/say.js";
import { checkGuidance } from "./checkGuidance.js";
import type { GuidanceCheck, MeasuredConsistency } from "./guidanceCheck.js";
import type { GuidanceEntry } from "./guidanceEntry.js";

export interface GuidanceSureness {
  readonly verdict: GuidanceCheck["verdict"];
  /** Share of the resampled curves with the same verdict, 0 to 1. */
  readonly sameVerdict: number;
  /** In the order of the check's criteria. */
  readonly criteria: readonly {
    readonly what: string;
    readonly verdict: string;
    /** Share of the resampled curves for which the criterion has this verdict. */
    readonly sure: number;
  }[];
  /** One plain sentence. */
  readonly text: string;
}

/** From here on a verdict is called sure, given the stated errors; common practice, no source. */
const SURE = 0.95;

/**
 * How sure a verdict on a recommendation is, given how the curve could have come out.
 *
 * The curves are those of `resampleReadings`; consistency is held at its measured values. The sureness
 * is about the readings alone: a sure "inside" is no proof that a soil is suitable.
 *
 * @throws RangeError without curves.
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
): GuidanceSureness {
  if (curves.length === 0) throw new RangeError("invalid `curves`: 0; expected at least 1");
  const check = checkGuidance(curve, entry, measured);
  const drawn = curves.map((each) => checkGuidance(each, entry, measured));
  const share = (count: number) => count / curves.length;
  const sameVerdict = share(drawn.filter(({ verdict }) => verdict === check.verdict).length);
  const criteria = check.criteria.map(({ what, verdict }, index) => ({
    what,
    verdict,
    sure: share(drawn.filter((each) => each.criteria[index].verdict === verdict).length),
  }));
  const open = criteria.filter(({ sure }) => sure < SURE).map(({ what }) => what);
  const pct = Math.round(100 * sameVerdict);
  return {
    verdict: check.verdict,
    sameVerdict,
    criteria,
    text:
      open.length === 0
        ? say`The reading errors do not change this verdict (${pct} % of ${curves.length} resampled curves).`
        : say`Within the reading errors ${open.join(", ")} could come out otherwise: ${pct} % of ${curves.length} resampled curves have this verdict.`,
  };
}
