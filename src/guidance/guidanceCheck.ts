import type { GuidanceEntry } from "./guidanceEntry.js";

export type CriterionVerdict = "inside" | "outside" | "not measured" | "not classified";

export interface CriterionCheck {
  /** What is limited, in words: `passing 0.063 mm`, `clay`, `plasticity index`. */
  readonly what: string;
  readonly kind: "passing" | "fraction" | "consistency" | "class";
  readonly verdict: CriterionVerdict;
  readonly measuredPct?: number;
  readonly lowPct?: number;
  readonly highPct?: number;
  /** Where it is a matter of size. */
  readonly sizeMm?: number;
  /** Percentage points outside the nearest limit, or inside of it. */
  readonly byPct?: number;
  /** One plain sentence. */
  readonly text: string;
}

export interface GuidanceCheck {
  readonly entry: GuidanceEntry;
  /** `outside` as soon as one criterion is; `incomplete` where one could not be judged. */
  readonly verdict: "inside" | "outside" | "incomplete";
  readonly criteria: readonly CriterionCheck[];
  /** How far the entry itself can be trusted, in words. */
  readonly honesty: string;
  /** What a verdict of this kind does not say. */
  readonly caution: string;
}

/** Measured consistency, as far as it is known. */
export interface MeasuredConsistency {
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  readonly linearShrinkagePct?: number;
}
