import { say, type Text } from "../../words/message.js";
import type { GradingCurve } from "../curve.js";
import { fitGrading, type GradingFit } from "./fit.js";
import type { GradingModelName } from "./gradingModel.js";
import { GRADING_MODELS } from "./gradingModels.js";

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
  readonly leftOut: readonly { readonly model: GradingModelName; readonly reason: Text }[];
}

/** Below this difference the data do not tell two models apart (Burnham and Anderson 2002, from memory). */
const TIE = 2;

/**
 * Fits every grading model that the points can carry and ranks them by AICc.
 *
 * @param names default: all models.
 * @param sdPct error of the passing at a size, as in `fitGrading`.
 *
 * @example
 * const curve = { points: [0.063, 0.125, 0.25, 0.5, 1, 2, 4, 8, 16].map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 16) ** 0.3, origin: "sieve" })) };
 * chooseModel(curve).ties // => ["power"]
 */
export function chooseModel(
  curve: GradingCurve,
  names: readonly GradingModelName[] = Object.keys(GRADING_MODELS) as GradingModelName[],
  sdPct?: (sizeMm: number) => number,
): ChosenModel {
  const fits: GradingFit[] = [];
  const leftOut: { model: GradingModelName; reason: Text }[] = [];
  for (const model of names) {
    const minPoints = GRADING_MODELS[model].parameters.length + 3;
    const told = curve.points.filter(({ passingPct }) => passingPct > 0 && passingPct < 100).length;
    if (told < minPoints - 2) {
      leftOut.push({ model, reason: tooFew(told, minPoints) });
      continue;
    }
    const fit = fitGrading(curve, model, undefined, sdPct);
    if (!fit.converged) leftOut.push({ model, reason: fit.message });
    else if (fit.aicc === undefined) leftOut.push({ model, reason: tooFew(fit.points, minPoints) });
    else fits.push(fit);
  }
  fits.sort((a, b) => a.aicc! - b.aicc!);
  const ranking = fits.map((fit) => ({ fit, deltaAicc: fit.aicc! - fits[0].aicc! }));
  return {
    ranking,
    ties: ranking.filter(({ deltaAicc }) => deltaAicc < TIE).map(({ fit }) => fit.model),
    leftOut,
  };
}

function tooFew(points: number, minPoints: number): Text {
  return say`${points} points; at least ${minPoints} are needed to judge it.`;
}
