import type { SpecimenRecord } from "../../lab/specimens.js";
import { formatFixed } from "../../quantities/format.js";
import { joinTexts, say, type Text, wordFor } from "../../words/message.js";
import type { StrengthFit } from "./curve.js";
import { type FitStrengthOptions, fitStrength } from "./fit.js";
import { lackOfFit } from "./lackOfFit.js";
import { STRENGTH_MODELS, type StrengthModel } from "./model.js";

/** Forms whose AICc differ by less than this are not told apart: common practice, no source. */
const TIE = 2;

export interface ModelComparison {
  readonly model: StrengthModel;
  readonly fit: StrengthFit;
  /** Null where the model has no curve, too few blocks, or no scatter. */
  readonly aicc: number | null;
  /** Above the smallest AICc. */
  readonly aiccDifference: number | null;
  /** 1 is best; tied models share a rank. Null without AICc. */
  readonly rank: number | null;
  readonly leaveOneOutErrorMpa: number | null;
  readonly lackOfFitPValue: number | null;
}

export interface ModelsCompared {
  /** Smallest AICc first, models without one last. */
  readonly models: readonly ModelComparison[];
  readonly used: StrengthModel;
  /** Why that model is used, and what the comparison says of it. */
  readonly message: Text;
}

/**
 * Fits all four curve shapes to the same blocks and ranks them by AICc.
 *
 * The model used stays the caller's; without one it is the straight line. It is not switched to the best
 * AICc by itself: over the narrow range of contents that is usually tested the shapes differ less than
 * the scatter of the blocks, and a shape chosen by the same blocks makes the bands look narrower than
 * they are. AICc differences below 2 count as ties (common practice, no source).
 *
 * @param options as for `fitStrength`; the model default `linear`. Proportional spread is not asked of the
 * power model, which has it.
 * @throws RangeError as `fitStrength`. Source: as `fitStrength`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.5), block("B", 5, 2.0), block("C", 6, 2.4), block("D", 7, 2.7), block("E", 8, 3.0), block("F", 9, 3.2), block("G", 10, 3.4)];
 * const { models, used } = compareModels(blocks, { ageDays: 28 });
 * [models[0].model, used] // => ["logarithmic", "linear"]
 */
export function compareModels(
  specimens: readonly SpecimenRecord[],
  options: Omit<FitStrengthOptions, "model"> & { readonly model?: StrengthModel },
): ModelsCompared {
  const { model: used = "linear" } = options;
  const fits = (Object.keys(STRENGTH_MODELS) as StrengthModel[]).map((model) => {
    // On ln f the scatter is proportional already.
    const variance = model === "power" ? "even" : options.variance;
    const fit = fitStrength(specimens, { ...options, model, variance });
    return {
      model,
      fit,
      aicc: fit.status === "ok" ? fit.aicc : null,
      leaveOneOutErrorMpa: fit.status === "ok" ? fit.leaveOneOutErrorMpa : null,
      lackOfFitPValue: fit.status === "ok" ? lackOfFit(fit).pValue : null,
    };
  });
  // Two models without AICc make NaN, which keeps their order.
  fits.sort((a, b) => (a.aicc ?? Infinity) - (b.aicc ?? Infinity) || 0);
  const best = fits[0].aicc;
  let rank = 0;
  let leader = -Infinity;
  const models = fits.map((entry, index): ModelComparison => {
    if (entry.aicc === null || best === null) return { ...entry, aiccDifference: null, rank: null };
    // A tie is counted from the first model of its rank, so that ties do not chain.
    if (entry.aicc - leader >= TIE) {
      rank = index + 1;
      leader = entry.aicc;
    }
    return { ...entry, aiccDifference: entry.aicc - best, rank };
  });
  return { models, used, message: explain(models, used, options.model === undefined) };
}

function explain(
  models: readonly ModelComparison[],
  used: StrengthModel,
  byDefault: boolean,
): Text {
  const why = byDefault
    ? say`The straight line is used, as no model was chosen.`
    : say`The ${wordFor(used)} model is used, as chosen.`;
  const own = models.find(({ model }) => model === used)!;
  if (own.fit.status !== "ok") return say`${why} It could not be fitted: ${own.fit.message}`;
  if (own.aiccDifference === null || own.rank === null) {
    return say`${why} The blocks are too few, or lie too exactly on the curve, to compare the models.`;
  }
  if (own.rank === 1) return say`${why} No other model fits these blocks clearly better.`;
  const better = models.filter(({ rank }) => rank !== null && rank < own.rank!);
  return say`${why} Better by AICc: ${joinTexts(better.map(({ model }) => wordFor(model)))} (difference ${formatFixed(own.aiccDifference, 1)} to the best). Look at the residuals and say in the report why the ${wordFor(used)} model was kept.`;
}
