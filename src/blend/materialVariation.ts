import type { GradingCurve } from "../grading/gradingCurve.js";

/** How a material may differ from the sample that was tested. */
export interface MaterialVariation {
  readonly id: string;
  /** Points of fines from load to load: 19 of 20 loads lie within plus or minus this of the sample. */
  readonly finesPlusMinusPct?: number;
  /** Other curves of the same material (further samples, or resampled ones): one is drawn each time. */
  readonly curves?: readonly GradingCurve[];
  /** Error of its share when batching, percent of the share: 19 of 20 batches within plus or minus this. */
  readonly batchingPlusMinusPct?: number;
}
