import type { GradingCurve } from "../gradingCurve.js";

export type GradingModelName =
  | "power"
  | "lognormal"
  | "bimodal-lognormal"
  | "weibull"
  | "fredlund"
  | "haverkamp-parlange"
  | "skaggs"
  | "fredlund-bimodal";

export interface GradingModelParameter {
  readonly name: string;
  readonly unit: "mm" | "";
  /** How the fit steps: sizes by their logarithm, so that they stay positive. */
  readonly scale: "logarithm" | "plain";
  readonly lower: number;
  readonly upper: number;
}

/** A grading curve in closed form. */
export interface GradingModel {
  readonly name: GradingModelName;
  readonly title: string;
  readonly parameters: readonly GradingModelParameter[];
  /** Percent passing at a size in mm; `values` in the order of `parameters`. */
  evaluate(sizeMm: number, values: readonly number[]): number;
  /** Slopes of `evaluate` along each parameter: a fit with them takes a tenth of the time. */
  slopes(sizeMm: number, values: readonly number[]): number[];
  /** Sets of values from which a fit may start, made from the measured curve. */
  starts(curve: GradingCurve): readonly (readonly number[])[];
  /** Where the equation comes from, with its honesty mark. */
  readonly source: string;
}
