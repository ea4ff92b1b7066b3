import type { GuidanceEntry, OtherQuantity } from "./guidanceEntry.js";

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

/** A limit of organic matter, salts, top size or density. */
export interface OtherCheck {
  readonly quantity: OtherQuantity;
  readonly unit: "%" | "mm" | "kg/m³";
  readonly measured?: number;
  readonly min?: number;
  readonly max?: number;
  readonly verdict: "inside" | "outside" | "not measured";
  /** One plain sentence. */
  readonly text: string;
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
  readonly honesty: string;
  /** What a verdict of this kind does not say. */
  readonly caution: string;
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
