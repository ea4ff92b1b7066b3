import type { FixedOrRange } from "../blend/blendTarget.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import type { StudyConfig, TargetConfig } from "../study/studyConfig.js";
import { plain } from "./cell.js";
import type { KeyValuesBlock } from "./reportBlock.js";
import { statisticName } from "./statisticName.js";

/** What the study is about and what it has to meet, as the user entered it. */
export function projectTable(config: StudyConfig): KeyValuesBlock {
  const { units, element, strength, target } = config;
  const { requirement } = strength;
  const length = (metres: number) => formatQuantity(metres * 1000, "length", units);
  return {
    kind: "keyValues",
    caption: "The study",
    items: [
      { label: "Place", value: config.place },
      {
        label: "Element",
        value: `${element.name}: ${length(element.lengthM)} long, ${length(element.heightM)} high, ${formatQuantity(element.thicknessM * 1000, "depth", units)} thick, ${openings(config)}`,
      },
      {
        label: "Required strength",
        value: `${formatQuantity(requirement.strengthMpa, "stress", units)} at ${requirement.ageDays} days, to be met by ${statisticName(requirement.statistic, requirement.confidence)}`,
      },
      { label: "Basis of the requirement (as entered)", value: requirement.basis },
      {
        label: "Target grading (as entered)",
        value: targetWords(target),
      },
      { label: "Cement", value: config.cement.name },
      { label: "Date of the study", value: config.date },
      {
        label: "Data",
        value: config.invented
          ? "Invented for demonstration. Not to be built from."
          : "As given by the user.",
      },
    ],
  };
}

function openings({ element, units }: StudyConfig): string {
  if (element.openings.length === 0) return "without openings";
  const list = element.openings.map(
    ({ count, widthM, heightM }) =>
      `${count} × ${formatQuantity(widthM * 1000, "length", units)} by ${formatQuantity(heightM * 1000, "length", units)}`,
  );
  return `openings ${list.join(", ")}`;
}

const SEEK = {
  "most-site-soil": "the most site soil",
  "least-cost": "the least cost",
  "nearest-middle": "the middle of the band",
};

function targetWords(target: TargetConfig): string {
  if (target.kind === "band") {
    return `inside the band of the guidance; among such blends, ${SEEK[target.aim]}`;
  }
  const words = (value: FixedOrRange) =>
    typeof value === "number"
      ? plain(value)
      : `the best from ${plain(value.min)} to ${plain(value.max)}`;
  return `power curve, exponent ${words(target.exponent)}, top size ${words(target.topSizeMm)} mm`;
}
