import type { GradingCurve } from "../grading/gradingCurve.js";

/** A curve of a grading chart. */
export interface ChartCurve {
  readonly name: string;
  readonly curve: GradingCurve;
  /** Drawn as a smooth line without markers: a model or a target. */
  readonly smooth?: boolean;
}
