import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";

export interface WallOpening {
  readonly widthM: number;
  readonly heightM: number;
  /** Default 1. */
  readonly count?: number;
}

export interface WallElement {
  readonly lengthM: number;
  readonly heightM: number;
  readonly thicknessM: number;
  readonly openings: readonly WallOpening[];
  /** Depth of a lift after ramming. */
  readonly compactedLiftM: number;
  /** Spilt, trimmed and left over, percent of the net amount. */
  readonly wastePct: number;
}

/** What is impossible in the geometry, each by its key path. */
export function wallFindings(element: WallElement, file: string): Finding[] {
  const findings: Finding[] = [];
  const wrong = (column: string, value: number, message: string, expected: string) =>
    findings.push({
      severity: "error",
      code: "wall-geometry",
      file,
      column: `element.${column}`,
      value: String(value),
      message,
      expected,
      wayOut: say`Correct the measure in the study.`,
    });
  const measures = [
    ["length", element.lengthM],
    ["height", element.heightM],
    ["thickness", element.thicknessM],
    ["compacted-lift", element.compactedLiftM],
  ] as const;
  for (const [name, value] of measures) {
    if (!(Number.isFinite(value) && value > 0)) {
      wrong(name, value, say`The wall's ${name} is not above zero.`, say`above 0 m`);
    }
  }
  if (!(Number.isFinite(element.wastePct) && element.wastePct >= 0)) {
    wrong("waste", element.wastePct, say`The waste is below zero.`, say`0 % or above`);
  }
  if (element.compactedLiftM > element.heightM) {
    wrong(
      "compacted-lift",
      element.compactedLiftM,
      say`A lift is deeper than the wall is high.`,
      say`at most ${element.heightM} m`,
    );
  }
  let openAreaM2 = 0;
  element.openings.forEach(({ widthM, heightM, count = 1 }, index) => {
    const place = `openings[${index}]`;
    if (!(widthM > 0 && heightM > 0 && Number.isInteger(count) && count > 0)) {
      wrong(place, widthM, say`An opening has a measure or count not above zero.`, say`above 0`);
    } else if (widthM > element.lengthM || heightM > element.heightM) {
      wrong(
        place,
        widthM,
        say`An opening of ${widthM} m by ${heightM} m does not fit the wall.`,
        say`at most ${element.lengthM} m by ${element.heightM} m`,
      );
    } else {
      openAreaM2 += widthM * heightM * count;
    }
  });
  if (findings.length === 0 && openAreaM2 >= element.lengthM * element.heightM) {
    wrong(
      "openings",
      openAreaM2,
      say`The openings together are as large as the wall or larger.`,
      say`below ${element.lengthM * element.heightM} m²`,
    );
  }
  return findings;
}
