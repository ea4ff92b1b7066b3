import { bimodalLognormal } from "./bimodalLognormal.js";
import { fredlund } from "./fredlund.js";
import { fredlundBimodal } from "./fredlundBimodal.js";
import type { GradingModel, GradingModelName } from "./gradingModel.js";
import { haverkampParlange } from "./haverkampParlange.js";
import { lognormal } from "./lognormal.js";
import { power } from "./power.js";
import { skaggs } from "./skaggs.js";
import { weibull } from "./weibull.js";

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
