import type { GradingCurve } from "../grading/gradingCurve.js";

/** A material that may go into the blend, with the share of dry mass that it may have. */
export interface BlendMaterial {
  readonly id: string;
  readonly curve: GradingCurve;
  readonly minSharePct: number;
  readonly maxSharePct: number;
}

/** What the blend should pass at a size. */
export interface TargetPoint {
  readonly sizeMm: number;
  readonly passingPct: number;
  /**
   * Weight of the squared difference at this size. Default 1: standard sieves stand about evenly on
   * the logarithm of size, so that equal weights treat coarse and fine alike.
   */
  readonly weight?: number;
}
