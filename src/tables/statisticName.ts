import type { RequirementStatistic } from "../study/studyConfig.js";
import { say } from "../words/say.js";

/**
 * What has to meet the required strength, in words that say how sure it is.
 *
 * @example
 * statisticName("tolerance", 0.95) // => "the bound that 95 % of blocks exceed, with 95 % confidence"
 */
export function statisticName(statistic: RequirementStatistic, confidence: number): string {
  const percent = `${Number((100 * confidence).toPrecision(4))} %`;
  return {
    mean: say`the lower bound of the mean strength, with ${percent} confidence`,
    prediction: say`the bound that one further block exceeds with ${percent} probability`,
    tolerance: say`the bound that 95 % of blocks exceed, with ${percent} confidence`,
  }[statistic];
}
