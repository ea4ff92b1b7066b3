import type { GradingCurve } from "../grading/gradingCurve.js";

/** A material that may go into the blend, with the share of dry mass that it may have. */
export interface BlendMaterial {
  readonly id: string;
  readonly curve: GradingCurve;
  /** A share already on site is one whose smallest and largest value are the same. */
  readonly minSharePct: number;
  readonly maxSharePct: number;
  /** What messages call it; default the id. */
  readonly name?: string;
  /** It is soil of the site, which costs least to carry: see the aim `most-site-soil`. */
  readonly siteSoil?: boolean;
  /** Of dry mass, in the study's currency. */
  readonly costPerT?: number;
  /** kg CO₂e per tonne of dry mass. */
  readonly carbonKgPerT?: number;
  /** Of the part that passes 0.425 mm; 0 for a material that is not plastic. */
  readonly plasticityIndexPct?: number;
  /** Of the part that passes 0.425 mm; 0 for a material that does not shrink. */
  readonly linearShrinkagePct?: number;
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
