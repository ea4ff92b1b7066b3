import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import type { EarthElement } from "./earthElement.js";
import { elementPlan } from "./elementPlan.js";

type Measure = readonly [column: string, name: string, value: number];

function measuresOf(element: EarthElement): Measure[] {
  const shared: Measure[] = [
    ["height", "height", element.heightM],
    ["compacted-lift", "lift", element.compactedLiftM],
  ];
  if (element.kind === "pier") {
    const { section } = element;
    return section.shape === "round"
      ? [["diameter", "diameter", section.diameterM], ...shared]
      : [["width", "width", section.widthM], ["depth", "depth", section.depthM], ...shared];
  }
  const thick: Measure = ["thickness", "thickness", element.thicknessM];
  if (element.kind === "ring") {
    const { plan } = element;
    return plan.shape === "round"
      ? [["diameter", "diameter", plan.diameterM], thick, ...shared]
      : [["length", "length", plan.lengthM], ["width", "width", plan.widthM], thick, ...shared];
  }
  return [["length", "length", element.lengthM], thick, ...shared];
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
  for (const [column, name, value] of measuresOf(element)) {
    if (!(Number.isFinite(value) && value > 0)) {
      wrong(column, value, say`The ${element.kind}'s ${name} is not above zero.`, say`above 0 m`);
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
    const message = say`A lift is deeper than the ${element.kind} is high.`;
    wrong("compacted-lift", element.compactedLiftM, message, say`at most ${element.heightM} m`);
  }
  if (element.kind === "ring") {
    const { plan } = element;
    const least = plan.shape === "round" ? plan.diameterM : Math.min(plan.lengthM, plan.widthM);
    if (2 * element.thicknessM >= least) {
      const message = say`The ring's walls meet in the middle: nothing is left inside.`;
      wrong("thickness", element.thicknessM, message, say`below ${least / 2} m`);
      return findings;
    }
  }
  const { centreLengthM } = elementPlan(element);
  if (element.kind === "pier" || centreLengthM === null) return findings;
  const faceM2 = centreLengthM * element.heightM;
  let openM2 = 0;
  (element.openings ?? []).forEach(({ widthM, heightM, count = 1 }, index) => {
    const place = `openings[${index}]`;
    if (!(widthM > 0 && heightM > 0 && Number.isInteger(count) && count > 0)) {
      wrong(place, widthM, say`An opening has a measure or count not above zero.`, say`above 0`);
    } else if (widthM > centreLengthM || heightM > element.heightM) {
      const message = say`An opening of ${widthM} m by ${heightM} m does not fit the ${element.kind}.`;
      wrong(place, widthM, message, say`at most ${centreLengthM} m by ${element.heightM} m`);
    } else {
      openM2 += widthM * heightM * count;
    }
  });
  if (findings.length === 0 && openM2 >= faceM2) {
    const message = say`The openings together are as large as the face or larger.`;
    wrong("openings", openM2, message, say`below ${faceM2} m²`);
  }
  return findings;
}
