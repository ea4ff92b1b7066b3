import { type Finding, finding } from "../../findings/finding.js";
import { type CharacteristicSizes, characteristicSizes } from "../../grading/characteristics.js";
import { poolAdjacent } from "../../grading/combinedGrading.js";
import type { GradingCurve, GradingPoint } from "../../grading/curve.js";
import { type Fractions, fractions } from "../../grading/fractions.js";
import { tellingPoints } from "../../grading/models/fit.js";
import type { GradingModelName } from "../../grading/models/gradingModel.js";
import { GRADING_MODELS } from "../../grading/models/gradingModels.js";
import { ROUGH, type SizesFit, sizesFit } from "../../grading/models/sizesFit.js";
import { formatFixed } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";
import { classifyCurve } from "../classification/classifyCurve.js";
import type { CurveLimits } from "../classification/sizeClass.js";

/** One grading of a survey, as read from a row of its file. */
export interface SurveyGrading extends CurveLimits {
  readonly file: string;
  readonly row: number;
  readonly id: string;
  /** Increasing size. */
  readonly points: readonly GradingPoint[];
}

export type SurveyModel = Extract<GradingModelName, "weibull" | "lognormal" | "power">;

/** One row of a survey's result; fractions by the boundaries of ISO 14688-1. */
export interface SurveyRow
  extends Pick<CharacteristicSizes, "d10" | "d30" | "d60" | "cu" | "cc">,
    Pick<Fractions, "clayPct" | "finesPct" | "sandPct" | "gravelPct"> {
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
  /** Symbol of ASTM D2487; absent where limits or sizes that decide are missing. */
  readonly uscs?: string;
  /** Texture of the part under 2 mm. */
  readonly usda?: string;
}

/** Percentage points by which a curve may fall and still be repaired; common practice, no source. */
const MAX_REPAIR_PCT = 1;
/** Refits prepared for sets of sizes: the rows of one file share theirs. */
const MAX_KEPT = 64;

/** Works out one grading of a survey after another; keeps what the same sizes need again. */
export function surveyGradingWith(model: SurveyModel): (grading: SurveyGrading) => SurveyRow {
  const form = GRADING_MODELS[model];
  const count = form.parameters.length;
  const kept = new Map<string, SizesFit>();
  const prepared = (sizes: readonly number[]): SizesFit => {
    const key = sizes.join();
    const found = kept.get(key) ?? sizesFit(form, sizes);
    if (kept.size < MAX_KEPT) kept.set(key, found);
    return found;
  };
  return ({ file, row, id, points: raw, ...limits }) => {
    const leaveOut = (code: string, value: Text, message: Text, expected: Text): SurveyRow => {
      const remedy = say`Correct the row; the other rows are not affected.`;
      const words = { message, expected, remedy };
      const found = finding({ file, row, value }, "warning", code, words);
      return { row, id, status: "left out", finding: found, model, values: [] };
    };
    const level = poolAdjacent(raw.map(({ passingPct }) => passingPct));
    const fall = Math.max(0, ...raw.map(({ passingPct }, i) => Math.abs(passingPct - level[i])));
    if (fall > MAX_REPAIR_PCT) {
      return leaveOut(
        "grading-falls",
        say`${formatFixed(fall, 1)} points`,
        say`The percent passing decreases with increasing size.`,
        say`a rising curve`,
      );
    }
    const points = raw.map((point, i) => ({ ...point, passingPct: level[i] }));
    const telling = tellingPoints(points);
    if (telling.length <= count) {
      return leaveOut(
        "too-few-points",
        say`${telling.length} points`,
        say`The row has too few informative points for this model.`,
        say`at least ${count + 1} from the last 0 % to the first 100 %`,
      );
    }
    const curve: GradingCurve = { points };
    const sizes = telling.map(({ sizeMm }) => sizeMm);
    const passing = telling.map(({ passingPct }) => passingPct);
    const [start] = form.starts({ points: telling });
    const { solve, toValues } = prepared(sizes);
    const { status, parameters, residualSumOfSquares } = solve(passing, start, ROUGH);
    const { d10, d30, d60, cu, cc } = characteristicSizes(curve);
    const { clayPct, finesPct, sandPct, gravelPct } = fractions(curve);
    return {
      row,
      id,
      status: status === "converged" ? "fitted" : "not converged",
      model,
      values: toValues(parameters),
      residualSdPct: Math.sqrt(residualSumOfSquares / (sizes.length - count)),
      d10,
      d30,
      d60,
      cu,
      cc,
      clayPct,
      finesPct,
      sandPct,
      gravelPct,
      uscs: classifyCurve(curve, "uscs", limits).label,
      usda: classifyCurve(curve, "usda").label,
    };
  };
}
