import { formatQuantity } from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { StudyConfig } from "../study/studyConfig.js";
import type { StrengthStudy } from "../study/studyResult.js";
import { say, sayOf } from "../words/say.js";

/** The strength chart in words, from the same numbers. */
export function strengthChartText(
  title: string,
  config: StudyConfig,
  { bands, specimens, fit, leastCement }: StrengthStudy,
  boundName: string,
): string {
  const { statistic, strengthMpa } = config.strength.requirement;
  const [first, last] = [bands[0], bands[bands.length - 1]];
  const strength = (mpa: number) => formatQuantity(mpa, "stress", config.units);
  const least =
    leastCement.cementPct === null
      ? say`Within the tested contents no least cement content is found.`
      : say`The bound meets the requirement from ${formatFixed(leastCement.cementPct, 2)} % cement.`;
  return [
    say`${title}. ${specimens.length} blocks.`,
    say`The fitted ${sayOf(fit.line)} at ${fit.ageDays} days goes from ${strength(first.meanMpa)} at ${first.cementPct} % to ${strength(last.meanMpa)} at ${last.cementPct} % cement;`,
    say`the ${boundName} from ${strength(first.lowerBoundMpa[statistic])} to ${strength(last.lowerBoundMpa[statistic])}.`,
    say`Required: ${strength(strengthMpa)}. ${least}`,
  ].join(" ");
}
