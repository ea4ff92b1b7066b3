import type { FixedOrRange } from "../blend/blendTarget.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import type { StudyConfig, TargetConfig } from "../study/studyConfig.js";
import { phrase, say, sayOf } from "../words/say.js";
import { plain } from "./cell.js";
import { elementText } from "./elementText.js";
import type { KeyValuesBlock } from "./reportBlock.js";
import { statisticName } from "./statisticName.js";

/** What the study is about and what it has to meet, as the user entered it. */
export function projectTable(config: StudyConfig): KeyValuesBlock {
  const { units, element, strength, target } = config;
  const { requirement } = strength;
  return {
    kind: "keyValues",
    caption: say`The study`,
    items: [
      { label: say`Place`, value: config.place },
      {
        label: say`Element`,
        value: say`${element.name}: ${elementText(element, units)}`,
      },
      {
        label: say`Required strength`,
        value: say`${formatQuantity(requirement.strengthMpa, "stress", units)} at ${requirement.ageDays} days, to be met by ${statisticName(requirement.statistic, requirement.confidence)}`,
      },
      { label: say`Basis of the requirement (as entered)`, value: requirement.basis },
      {
        label: say`Target grading (as entered)`,
        value: targetWords(target),
      },
      { label: say`Cement`, value: config.cement.name },
      { label: say`Date of the study`, value: config.date },
      {
        label: say`Data`,
        value: config.invented
          ? say`Invented for demonstration. Not to be built from.`
          : say`As given by the user.`,
      },
    ],
  };
}

const SEEK = {
  "most-site-soil": phrase`the most site soil`,
  "least-cost": phrase`the least cost`,
  "nearest-middle": phrase`the middle of the band`,
};

function targetWords(target: TargetConfig): string {
  if (target.kind === "band") {
    return say`inside the band of the guidance; among such blends, ${sayOf(SEEK[target.aim])}`;
  }
  const words = (value: FixedOrRange) =>
    typeof value === "number"
      ? plain(value)
      : say`the best from ${plain(value.min)} to ${plain(value.max)}`;
  return say`power curve, exponent ${words(target.exponent)}, top size ${words(target.topSizeMm)} mm`;
}
