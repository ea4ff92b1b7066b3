import type { Finding } from "../lab/finding.js";
import { formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { EarthElement, PierElement } from "./earthElement.js";
import { elementPlan } from "./elementPlan.js";

type Measure = readonly [column: string, value: number];

function measuresOf(element: EarthElement): Measure[] {
  const shared: Measure[] = [
    ["height", element.heightM],
    ["compacted-lift", element.compactedLiftM],
  ];
  if (element.kind === "pier") {
    const { section } = element;
    return section.shape === "round"
      ? [["diameter", section.diameterM], ...shared]
      : [["width", section.widthM], ["depth", section.depthM], ...shared];
  }
  const thick: Measure = ["thickness", element.thicknessM];
  if (element.kind === "ring") {
    const { plan } = element;
    return plan.shape === "round"
      ? [["diameter", plan.diameterM], thick, ...shared]
      : [["length", plan.lengthM], ["width", plan.widthM], thick, ...shared];
  }
  return [["length", element.lengthM], thick, ...shared];
}

/** An opening lies in one straight wall, or within the circle. */
function widestOpeningM(element: Exclude<EarthElement, PierElement>): number {
  if (element.kind !== "ring") return element.lengthM;
  const { plan } = element;
  return plan.shape === "round" ? plan.diameterM : Math.max(plan.lengthM, plan.widthM);
}

/** What is impossible in an element's measures, each by its key path. */
export function elementFindings(element: EarthElement, file: string): Finding[] {
  const findings: Finding[] = [];
  const wrong = (column: string, value: number, message: string, expected: string) =>
    findings.push({
      ...{ severity: "error", code: "element-geometry", file, column: `element.${column}` },
      ...{
        value: String(value),
        message,
        expected,
        wayOut: say`Correct the measure in the study.`,
      },
    });
  for (const [column, value] of measuresOf(element)) {
    if (!(Number.isFinite(value) && value > 0)) {
      wrong(column, value, say`This measure is not above zero: ${column}.`, say`above 0 m`);
    }
  }
  if (!(Number.isFinite(element.wastePct) && element.wastePct >= 0)) {
    wrong("waste", element.wastePct, say`The waste is below zero.`, say`0 % or above`);
  }
  if (element.kind === "pier") {
    const { count = 1 } = element;
    if (!(Number.isInteger(count) && count > 0)) {
      wrong(
        "count",
        count,
        say`The count of piers is not a whole number above zero.`,
        say`1 or more`,
      );
    }
  }
  if (findings.length > 0) return findings;
  if (element.compactedLiftM > element.heightM) {
    const message = say`A lift is deeper than the element is high.`;
    wrong(
      "compacted-lift",
      element.compactedLiftM,
      message,
      say`at most ${formatPlain(element.heightM)} m`,
    );
  }
  if (element.kind === "ring") {
    const { plan } = element;
    const least = plan.shape === "round" ? plan.diameterM : Math.min(plan.lengthM, plan.widthM);
    if (2 * element.thicknessM >= least) {
      const message = say`The ring's walls meet in the middle: nothing is left inside.`;
      wrong("thickness", element.thicknessM, message, say`below ${formatPlain(least / 2)} m`);
      return findings;
    }
  }
  const { centreLengthM } = elementPlan(element);
  if (element.kind === "pier" || centreLengthM === null) return findings;
  const faceM2 = centreLengthM * element.heightM;
  const widestM = widestOpeningM(element);
  let openM2 = 0;
  (element.openings ?? []).forEach(({ widthM, heightM, count = 1 }, index) => {
    const place = `openings[${index}]`;
    if (!(widthM > 0 && heightM > 0 && Number.isInteger(count) && count > 0)) {
      wrong(place, widthM, say`An opening has a measure or count not above zero.`, say`above 0`);
    } else if (widthM > widestM || heightM > element.heightM) {
      const message = say`An opening of ${formatPlain(widthM)} m by ${formatPlain(heightM)} m does not fit the element.`;
      wrong(
        place,
        widthM,
        message,
        say`at most ${formatPlain(widestM)} m by ${formatPlain(element.heightM)} m`,
      );
    } else {
      openM2 += widthM * heightM * count;
    }
  });
  if (findings.length === 0 && openM2 >= faceM2) {
    const message = say`The openings together are as large as the face or larger.`;
    wrong("openings", openM2, message, say`below ${formatPlain(faceM2)} m²`);
  }
  return findings;
}
