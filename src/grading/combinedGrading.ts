import type { Finding } from "../lab/finding.js";
import type { GradingCurve, GradingPoint } from "./gradingCurve.js";

export interface CombineInput {
  readonly sieve: readonly GradingPoint[];
  readonly sedimentation?: readonly GradingPoint[];
  /** The sheet that findings about the joint speak of. */
  readonly file: string;
}

/** What both methods say at the finest sieve, where they meet. */
export interface GradingOverlap {
  readonly sizeMm: number;
  readonly sievePct: number;
  readonly sedimentationPct: number;
  /** Sedimentation less sieve, percentage points. */
  readonly differencePct: number;
}

/** A point that was moved so that the curve never falls with size. */
export interface GradingRepair {
  readonly sizeMm: number;
  readonly fromPct: number;
  readonly toPct: number;
}

export interface CombinedGrading {
  readonly curve: GradingCurve;
  /** Absent where sedimentation was not measured on both sides of the finest sieve. */
  readonly overlap?: GradingOverlap;
  readonly repairs: readonly GradingRepair[];
  readonly findings: readonly Finding[];
}
