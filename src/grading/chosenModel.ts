import type { GradingFit } from "./gradingFit.js";
import type { GradingModelName } from "./models/gradingModel.js";

export interface RankedFit {
  readonly fit: GradingFit;
  /** AICc less that of the best. */
  readonly deltaAicc: number;
}

export interface ChosenModel {
  /** Best first; those without convergence or with too few points are not in it. */
  readonly ranking: readonly RankedFit[];
  /** The best and every model within 2 of it: the data do not tell these apart. */
  readonly ties: readonly GradingModelName[];
  /** Models that were left out, each with the reason. */
  readonly leftOut: readonly { readonly model: GradingModelName; readonly reason: string }[];
}
