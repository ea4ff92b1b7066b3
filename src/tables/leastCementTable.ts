import { formatQuantity } from "../quantities/displayUnits.js";
import { formatFixed, formatNumber } from "../quantities/formatNumber.js";
import type { ContentInterval } from "../strength/contentInterval.js";
import type { StudyResult } from "../study/studyResult.js";
import { BLANK } from "./cell.js";
import type { KeyValuesBlock } from "./reportBlock.js";
import { statisticName } from "./statisticName.js";

/** The interval by inversion of the two-sided band, and whether it was cut at a tested content. */
function intervalWords(interval: ContentInterval | null): string {
  if (interval === null) return "none of the tested contents";
  const { lowPct, highPct, lowOpen, highOpen, confidence, method } = interval;
  const low = lowOpen ? `${formatFixed(lowPct, 2)} % or less` : `${formatFixed(lowPct, 2)} %`;
  const high = highOpen ? `${formatFixed(highPct, 2)} % or more` : `${formatFixed(highPct, 2)} %`;
  const how = method === "fieller" ? "Fieller's theorem" : "inversion of the band";
  return `${low} to ${high} (two-sided, ${formatNumber(100 * confidence, 3)} % confidence, by ${how})`;
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
    caption: "The least cement that meets the requirement",
    items: [
      {
        label: "Required",
        value: `${stress(requirement.strengthMpa)} at ${requirement.ageDays} days`,
      },
      {
        label: "To be met by",
        value: statisticName(requirement.statistic, requirement.confidence),
      },
      { label: "Basis (as entered)", value: requirement.basis },
      { label: "Tested contents", value: `${first} to ${last} %; nothing is extrapolated` },
      { label: "Outcome", value: least.message },
      { label: "Least content", value: percent(least.cementPct) },
      {
        label: `Rounded up to steps of ${least.roundUpToPct} %`,
        value: percent(least.batchablePct, 1),
      },
      { label: "Bound at that content", value: stress(least.boundAtBatchableMpa) },
      { label: `Fitted ${fit.line} at that content`, value: stress(least.lineAtBatchableMpa) },
      {
        label: `Content at which the ${fit.line} alone would meet it`,
        value:
          least.lineContentPct === null
            ? "outside the tested contents"
            : percent(least.lineContentPct),
      },
      { label: "Contents that the blocks do not rule out", value: intervalWords(least.interval) },
      { label: "Choice of the curve", value: strength.forms.message },
    ],
  };
}
