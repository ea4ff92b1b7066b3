import { bimodalLognormal, fredlundBimodal } from "./bimodal.js";
import type { GradingModel, GradingModelName } from "./gradingModel.js";
import { fredlund, haverkampParlange, lognormal, power, skaggs, weibull } from "./unimodal.js";

/**
 * The grading models by name.
 *
 * @example
 * GRADING_MODELS.power.evaluate(1, [16, 0.25]) // => 50
 */
export const GRADING_MODELS: Readonly<Record<GradingModelName, GradingModel>> = {
  power,
  lognormal,
  weibull,
  "haverkamp-parlange": haverkampParlange,
  fredlund,
  skaggs,
  "bimodal-lognormal": bimodalLognormal,
  "fredlund-bimodal": fredlundBimodal,
};
