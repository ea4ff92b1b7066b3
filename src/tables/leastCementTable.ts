import { formatQuantity } from "../quantities/displayUnits.js";
import { formatFixed, formatNumber } from "../quantities/formatNumber.js";
import type { ContentInterval } from "../strength/contentInterval.js";
import type { StudyResult } from "../study/studyResult.js";
import { say, sayOf } from "../words/say.js";
import { BLANK } from "./cell.js";
import type { KeyValuesBlock } from "./reportBlock.js";
import { statisticName } from "./statisticName.js";

/** The interval by inversion of the two-sided band, and whether it was cut at a tested content. */
function intervalWords(interval: ContentInterval | null): string {
  if (interval === null) return say`none of the tested contents`;
  const { lowPct, highPct, lowOpen, highOpen, confidence, method } = interval;
  const low = lowOpen ? say`${formatFixed(lowPct, 2)} % or less` : `${formatFixed(lowPct, 2)} %`;
  const high = highOpen
    ? say`${formatFixed(highPct, 2)} % or more`
    : `${formatFixed(highPct, 2)} %`;
  const how = method === "fieller" ? say`Fieller's theorem` : say`inversion of the band`;
  return say`${low} to ${high} (two-sided, ${formatNumber(100 * confidence, 3)} % confidence, by ${how})`;
}

/** The least cement content that meets the requirement, and how sure it is. */
export function leastCementTable({ config, strength }: StudyResult): KeyValuesBlock {
  const { units } = config;
  const { requirement } = config.strength;
  const { leastCement: least, fit } = strength;
  const percent = (value: number | null, decimals = 2) =>
    value === null ? BLANK : `${formatFixed(value, decimals)} %`;
  const stress = (value: number | null) =>
    value === null ? BLANK : formatQuantity(value, "stress", units);
  const [first, last] = [fit.contentsPct[0], fit.contentsPct[fit.contentsPct.length - 1]];
  return {
    kind: "keyValues",
    caption: say`The least cement that meets the requirement`,
    items: [
      {
        label: say`Required`,
        value: say`${stress(requirement.strengthMpa)} at ${requirement.ageDays} days`,
      },
      {
        label: say`To be met by`,
        value: statisticName(requirement.statistic, requirement.confidence),
      },
      { label: say`Basis (as entered)`, value: requirement.basis },
      { label: say`Tested contents`, value: say`${first} to ${last} %; nothing is extrapolated` },
      { label: say`Outcome`, value: least.message },
      { label: say`Least content`, value: percent(least.cementPct) },
      {
        label: say`Rounded up to steps of ${least.roundUpToPct} %`,
        value: percent(least.batchablePct, 1),
      },
      { label: say`Bound at that content`, value: stress(least.boundAtBatchableMpa) },
      {
        label: say`Fitted ${sayOf(fit.line)} at that content`,
        value: stress(least.lineAtBatchableMpa),
      },
      {
        label: say`Content at which the ${sayOf(fit.line)} alone would meet it`,
        value:
          least.lineContentPct === null
            ? say`outside the tested contents`
            : percent(least.lineContentPct),
      },
      {
        label: say`Contents that the blocks do not rule out`,
        value: intervalWords(least.interval),
      },
      { label: say`Choice of the curve`, value: strength.forms.message },
    ],
  };
}
