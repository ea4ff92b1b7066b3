import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { HydrometerCalibration } from "./hydrometerCalibration.js";
import { MOST_MARKS } from "./hydrometerLayout.js";
import type { SheetValues } from "./sheetLayout.js";

const BULB = {
  bulbLengthMm: "“bulb length (mm)”",
  bulbVolumeCm3: "“bulb volume (cm3)”",
  cylinderDiameterMm: "“cylinder inner diameter (mm)”",
} as const;

type Mark = { readonly reading: number; readonly mm: number; readonly row?: number };

/**
 * The hydrometer's own calibration from the lines above the table: pairs of reading and depth, or two
 * marks with their distance to the neck and the dimensions of bulb and cylinder.
 *
 * @param toUnits brings a reading to the units of the record.
 * @returns the calibration, or `undefined` where the sheet gives none or a wrong one (with findings).
 */
export function hydrometerMarks(
  { file, facts, factRows }: SheetValues,
  toUnits: (reading: number) => number,
  findings: Finding[],
): HydrometerCalibration | undefined {
  const before = findings.length;
  const refuse = (code: string, row: number | undefined, rest: Partial<Finding>) =>
    findings.push({ severity: "error", code, file, row, ...rest } as Finding);
  const depths: Mark[] = [];
  const necks: Mark[] = [];
  let firstRow: number | undefined;
  for (let index = 0; index < MOST_MARKS; index++) {
    const [reading, depth, neck] = ["Reading", "DepthMm", "ToNeckMm"].map(
      (part) => `mark${index}${part}`,
    );
    const given = [reading, depth, neck].filter((key) => key in factRows);
    if (given.length === 0) continue;
    const row = factRows[given[0]];
    firstRow ??= row;
    if (given.length !== 2 || given[0] !== reading) {
      const name = `calibration ${index + 1}`;
      refuse("incomplete-calibration", row, {
        message: say`This mark of the calibration needs its reading and one distance.`,
        expected: say`“${name} reading”, and either “${name} depth (mm)” or “${name} to neck (mm)”`,
        wayOut: say`Add the missing line, or take the other one out.`,
      });
      continue;
    }
    const [value, mm] = given.map((key) => facts[key]);
    if (typeof value !== "number" || typeof mm !== "number") continue;
    (given[1] === depth ? depths : necks).push({ reading: toUnits(value), mm, row });
  }
  const bulb = Object.keys(BULB).filter((key) => key in factRows);
  if (firstRow === undefined && bulb.length === 0) return undefined;
  if (depths.length > 0 && (necks.length > 0 || bulb.length > 0)) {
    refuse("two-calibrations", necks[0]?.row ?? factRows[bulb[0]], {
      message: say`The sheet gives measured depths and the dimensions of the bulb.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      wayOut: say`Keep the depths, or keep the marks to the neck with bulb and cylinder.`,
    });
  }
  const lacking = Object.entries(BULB).filter(([key]) => !bulb.includes(key));
  if (depths.length === 0 && (necks.length > 0 || bulb.length > 0) && lacking.length > 0) {
    refuse("incomplete-calibration", necks[0]?.row ?? factRows[bulb[0]], {
      message: say`The dimensions of bulb and cylinder are given only in part.`,
      expected: lacking.map(([, name]) => name).join(say` and `),
      wayOut: say`Add the missing lines, or give measured depths in their place.`,
    });
  }
  const marks = depths.length > 0 ? depths : necks;
  const wrong = findings.length > before;
  if (!wrong && (marks.length < 2 || (marks === necks && marks.length > 2))) {
    refuse("incomplete-calibration", firstRow ?? factRows[bulb[0]], {
      value: String(marks.length),
      message: say`The calibration has ${marks.length} marks.`,
      expected: marks === depths ? say`two marks or more` : say`two marks of the scale`,
      wayOut: say`Measure at the lowest and the highest mark that is read.`,
    });
  }
  marks.sort((a, b) => a.reading - b.reading);
  marks.slice(1).forEach(({ reading, mm, row }, index) => {
    const lower = marks[index];
    if (reading > lower.reading && mm < lower.mm) return;
    refuse("calibration-order", row, {
      value: `${mm} mm`,
      message:
        reading === lower.reading
          ? say`Two marks of the calibration have the same reading.`
          : say`The depth does not fall as the reading rises: a hydrometer that reads more floats higher.`,
      expected: say`less than ${lower.mm} mm, at a higher reading`,
      wayOut: say`Check which distance belongs to which mark.`,
    });
  });
  const { bulbLengthMm, bulbVolumeCm3, cylinderDiameterMm } = facts;
  if (findings.length > before || marks.length < 2) return undefined;
  if (marks === depths) {
    return { depths: depths.map(({ reading, mm }) => ({ reading, depthCm: mm / 10 })) };
  }
  if (
    typeof bulbLengthMm !== "number" ||
    typeof bulbVolumeCm3 !== "number" ||
    typeof cylinderDiameterMm !== "number"
  ) {
    return undefined;
  }
  const [a, b] = necks.map(({ reading, mm }) => ({ reading, toNeckCm: mm / 10 }));
  return {
    marks: [a, b],
    bulbLengthCm: bulbLengthMm / 10,
    bulbVolumeCm3,
    cylinderAreaCm2: (Math.PI / 4) * (cylinderDiameterMm / 10) ** 2,
  };
}
