import type { GradingPoint } from "../grading/gradingCurve.js";
import type { GradingModelName } from "../grading/models/gradingModel.js";
import type { Finding } from "../lab/finding.js";

/** One grading of a survey, as read from a row of its file. */
export interface SurveyGrading {
  readonly file: string;
  readonly row: number;
  readonly id: string;
  /** Increasing size. */
  readonly points: readonly GradingPoint[];
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
}

export type SurveyModel = Extract<GradingModelName, "weibull" | "lognormal" | "power">;

/** One row of a survey's result. */
export interface SurveyRow {
  readonly row: number;
  readonly id: string;
  /** `left out`: `finding` says why, and nothing else is known. */
  readonly status: "fitted" | "not converged" | "left out";
  readonly finding?: Finding;
  readonly model: SurveyModel;
  /** In the order of the model's parameters; empty where left out. */
  readonly values: readonly number[];
  /** √(Σ residual² / degrees of freedom), percentage points. */
  readonly residualSdPct?: number;
  readonly d10?: number;
  readonly d30?: number;
  readonly d60?: number;
  readonly cu?: number;
  readonly cc?: number;
  /** ISO 14688-1 boundaries. */
  readonly clayPct?: number;
  readonly finesPct?: number;
  readonly sandPct?: number;
  readonly gravelPct?: number;
  /** Symbol of ASTM D2487; absent where limits or sizes that decide are missing. */
  readonly uscs?: string;
  /** Texture of the part under 2 mm. */
  readonly usda?: string;
}
