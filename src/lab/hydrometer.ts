import type { Finding } from "../findings/finding.js";
import { joinTexts, say } from "../words/message.js";
import { PRETREATMENT_FACTS, type Pretreatment, readPretreatment } from "./pretreatment.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { CellRule, SheetLayout, SheetValues } from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

/** 152H reads g/L; 151H reads specific gravity; BS reads 0.001 above 1.000 (24.0 is 1.0240). */
export type HydrometerType = "151H" | "152H" | "BS";

/** Corrections measured one by one, in place of readings in a control cylinder. */
export interface HydrometerCorrections {
  /** What the dispersant adds to a reading, in the units of the record. */
  readonly dispersant: number;
  /** At which the scale is right; 20 °C where the sheet does not say. */
  readonly calibrationC?: number;
}

/** A hydrometer analysis as read from its sheet: g/L for 152H, specific gravity for 151H and BS. */
export interface HydrometerRecord {
  readonly file: string;
  readonly hydrometer: HydrometerType;
  /** Oven-dry mass dispersed in the cylinder. */
  readonly dryMassG: number;
  /** Sieve that the dispersed material had passed; its share of the whole sample scales the result. */
  readonly separatingSizeMm: number;
  /** Added to the raw reading to get the true reading at the stem, in the units of the record. */
  readonly meniscusCorrection: number;
  /** In place of the readings' `control`. */
  readonly corrections?: HydrometerCorrections;
  /** Of this instrument; without it the standard one is taken (a BS hydrometer must have it). */
  readonly calibration?: HydrometerCalibration;
  readonly pretreatment?: Pretreatment;
  /** Increasing times. */
  readonly readings: readonly HydrometerReading[];
}

export interface HydrometerReading {
  readonly timeMin: number;
  /** Raw reading at the top of the meniscus: g/L for 152H, else specific gravity. */
  readonly reading: number;
  /** Reading in the control cylinder (water and dispersant) at the same temperature, same units; absent with `corrections`. */
  readonly control?: number;
  readonly temperatureC: number;
  readonly row: number;
}

/** The bulb and its cylinder as measured: the effective depth is computed from them. */
export interface BulbCalibration {
  /** Two marks of the scale and their distance to the neck of the bulb, cm. */
  readonly marks: readonly [
    { readonly reading: number; readonly toNeckCm: number },
    { readonly reading: number; readonly toNeckCm: number },
  ];
  /** Length of the bulb from neck to tip, cm. */
  readonly bulbLengthCm: number;
  readonly bulbVolumeCm3: number;
  /** Inner cross-section of the cylinder. */
  readonly cylinderAreaCm2: number;
}

/** Effective depths as the instrument's calibration gives them. */
export interface DepthCalibration {
  /** Two pairs or more, rising readings; the depth falls as the reading rises. */
  readonly depths: readonly { readonly reading: number; readonly depthCm: number }[];
}

/** What is known of a hydrometer's own depths; readings are corrected for the meniscus. */
export type HydrometerCalibration = BulbCalibration | DepthCalibration;

const TYPES: readonly string[] = ["151H", "152H", "BS"] satisfies readonly HydrometerType[];

/**
 * Reads a hydrometer sheet: `hydrometer` (151H, 152H or BS), `dry mass (g)`, `separating sieve (mm)` and
 * `meniscus correction` above a table of `time (min)`, `reading`, `control` and `temperature (C)`.
 * Readings stand in the instrument's own units (152H: g/L; 151H: specific gravity; BS: 0.001 above
 * 1.000, so that 24.0 is 1.0240, kept in the record as specific gravity).
 *
 * In place of the column `control` the sheet may have the line `dispersant correction` and, where the
 * scale is not right at 20 °C, `calibration temperature (C)`. The instrument's own depths are pairs
 * `calibration 1 reading`, `calibration 1 depth (mm)` and so on to 6, or two marks `calibration 1 to neck
 * (mm)` with `bulb length (mm)`, `bulb volume (cm3)` and `cylinder inner diameter (mm)`; a BS hydrometer
 * has no depths without them. `pretreatment` and `pretreatment loss (%)` say what was done before.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readHydrometer(grid: SheetGrid, findings: Finding[]): HydrometerRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, HYDROMETER_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const hydrometer = String(facts.hydrometer ?? "").toUpperCase();
  if (facts.hydrometer !== undefined && !TYPES.includes(hydrometer)) {
    findings.push({
      severity: "error",
      code: "unknown-hydrometer",
      file,
      row: sheet.factRows.hydrometer,
      value: String(facts.hydrometer),
      message: say`This hydrometer is not known.`,
      expected: say`151H, 152H or BS`,
      remedy: say`Read the type off the stem of the instrument.`,
    });
  }
  // A BS scale counts thousandths above 1: kept as specific gravity, so that one formula serves.
  const thousandths = hydrometer === "BS";
  const toUnits = (reading: number) => (thousandths ? 1 + reading / 1000 : reading);
  const difference = (correction: number) => (thousandths ? correction / 1000 : correction);
  const kind = hydrometerControl(sheet, findings);
  const calibration = hydrometerMarks(sheet, toUnits, findings);
  const pretreatment = readPretreatment(sheet, findings);
  const marked = Object.keys(sheet.factRows).some((key) => key.startsWith("mark"));
  if (thousandths && !calibration && !marked) {
    findings.push({
      severity: "error",
      code: "missing-calibration",
      file,
      row: sheet.factRows.hydrometer,
      value: String(facts.hydrometer),
      message: say`A hydrometer of this kind has no depths that hold for each instrument.`,
      expected: say`“calibration 1 reading” and “calibration 1 depth (mm)”, and so on, above the table`,
      remedy: say`Copy two marks or more from the instrument's calibration sheet.`,
    });
  }
  const readings: HydrometerReading[] = [];
  for (const { row, values, written } of sheet.rows) {
    const { timeMin, reading, control, temperatureC } = values;
    if (
      typeof timeMin !== "number" ||
      typeof reading !== "number" ||
      (kind === "control" && typeof control !== "number") ||
      typeof temperatureC !== "number"
    ) {
      continue;
    }
    const above = readings.at(-1);
    if (above && timeMin <= above.timeMin) {
      findings.push({
        severity: "error",
        code: "time-order",
        file,
        row,
        column: sheet.headers.timeMin,
        value: written.timeMin,
        message: say`This reading is not later than the one above it.`,
        expected: say`more than ${above.timeMin} min`,
        remedy: say`Write the time since the start of sedimentation, in order.`,
      });
    }
    readings.push({
      timeMin,
      reading: toUnits(reading),
      ...(kind === "control" && typeof control === "number" ? { control: toUnits(control) } : {}),
      temperatureC,
      row,
    });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    hydrometer: hydrometer as HydrometerType,
    dryMassG: facts.dryMassG as number,
    separatingSizeMm: facts.separatingSizeMm as number,
    meniscusCorrection: difference(facts.meniscusCorrection as number),
    ...(kind === "corrections"
      ? {
          corrections: {
            dispersant: difference(facts.dispersant as number),
            ...(typeof facts.calibrationC === "number" ? { calibrationC: facts.calibrationC } : {}),
          },
        }
      : {}),
    ...(calibration ? { calibration } : {}),
    ...(pretreatment ? { pretreatment } : {}),
    readings,
  };
}

/** Most lines of a calibration: a straight scale needs two. */
const MOST_MARKS = 6;

const length = (key: string, name: string): CellRule => ({
  ...{ key, names: [name], kind: "number", dimension: "length", positive: true },
});

const MARKS = Array.from({ length: MOST_MARKS }, (_, index): CellRule[] => [
  { key: `mark${index}Reading`, names: [`calibration ${index + 1} reading`], kind: "number" },
  length(`mark${index}DepthMm`, `calibration ${index + 1} depth`),
  length(`mark${index}ToNeckMm`, `calibration ${index + 1} to neck`),
]).flat();

/** What a hydrometer sheet may hold. */
export const HYDROMETER_LAYOUT: SheetLayout = {
  title: say`hydrometer sheet`,
  facts: [
    { key: "hydrometer", names: ["hydrometer"], kind: "text", required: true },
    {
      ...{ key: "dryMassG", names: ["dry mass"], kind: "number", dimension: "mass" },
      ...{ required: true, positive: true },
    },
    { key: "separatingSizeMm", names: ["separating sieve"], kind: "sieve", required: true },
    {
      ...{ key: "meniscusCorrection", names: ["meniscus correction"], kind: "number" },
      ...{ required: true, min: 0 },
    },
    { key: "dispersant", names: ["dispersant correction"], kind: "number", min: 0 },
    {
      ...{ key: "calibrationC", names: ["calibration temperature"], kind: "number" },
      ...{ dimension: "temperature", min: 10, max: 30 },
    },
    ...PRETREATMENT_FACTS,
    ...MARKS,
    length("bulbLengthMm", "bulb length"),
    {
      ...{ key: "bulbVolumeCm3", names: ["bulb volume"], kind: "number" },
      ...{ dimension: "volume", positive: true },
    },
    length("cylinderDiameterMm", "cylinder inner diameter"),
  ],
  columns: [
    {
      ...{ key: "timeMin", names: ["time"], kind: "number", dimension: "duration" },
      ...{ required: true, positive: true },
    },
    { key: "reading", names: ["reading"], kind: "number", required: true, min: 0 },
    { key: "control", names: ["control"], kind: "number" },
    {
      ...{ key: "temperatureC", names: ["temperature"], kind: "number" },
      ...{ dimension: "temperature", required: true, min: 5, max: 40 },
    },
  ],
};

/** Whether a hydrometer sheet gives control readings or separate corrections; findings where both or none. */
function hydrometerControl(
  { file, headers, factRows, rows }: SheetValues,
  findings: Finding[],
): "control" | "corrections" {
  const push = (finding: Omit<Finding, "file">) => findings.push({ file, ...finding });
  const corrected = "dispersant" in factRows;
  if (corrected && headers.control) {
    push({
      severity: "error",
      code: "control-twice",
      row: factRows.dispersant,
      column: headers.control,
      message: say`The sheet gives control readings and a dispersant correction.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      remedy: say`Keep the control readings where there are any: they hold all corrections in one.`,
    });
  }
  if (corrected) return "corrections";
  if (!headers.control) {
    push({
      severity: "error",
      code: "missing-control",
      column: "control",
      message: say`The sheet says neither what a control cylinder read nor what the dispersant adds.`,
      expected: say`a column “control”, or the line “dispersant correction” above the table`,
      remedy: say`Read a second cylinder of water and dispersant with each reading, or add the line.`,
    });
    return "control";
  }
  if ("calibrationC" in factRows) {
    push({
      severity: "note",
      code: "unused-fact",
      row: factRows.calibrationC,
      column: "calibration temperature",
      message: say`The calibration temperature is not used: the control readings hold the temperature's share.`,
      expected: say`the line only beside a dispersant correction`,
      remedy: say`Nothing to do.`,
    });
  }
  for (const { row, written } of rows) {
    if (written.control !== "") continue;
    push({
      severity: "error",
      code: "missing-value",
      row,
      column: headers.control,
      value: "",
      message: say`This cell is empty.`,
      expected: say`a reading`,
      remedy: say`Fill in the reading, or start the row with # to leave it out.`,
    });
  }
  return "control";
}

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
function hydrometerMarks(
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
        remedy: say`Add the missing line, or take the other one out.`,
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
      remedy: say`Keep the depths, or keep the marks to the neck with bulb and cylinder.`,
    });
  }
  const lacking = Object.entries(BULB).filter(([key]) => !bulb.includes(key));
  if (depths.length === 0 && (necks.length > 0 || bulb.length > 0) && lacking.length > 0) {
    refuse("incomplete-calibration", necks[0]?.row ?? factRows[bulb[0]], {
      message: say`The dimensions of bulb and cylinder are given only in part.`,
      expected: joinTexts(lacking.map(([, name]) => name)),
      remedy: say`Add the missing lines, or give measured depths in their place.`,
    });
  }
  const marks = depths.length > 0 ? depths : necks;
  const wrong = findings.length > before;
  if (!wrong && (marks.length < 2 || (marks === necks && marks.length > 2))) {
    refuse("incomplete-calibration", firstRow ?? factRows[bulb[0]], {
      value: String(marks.length),
      message: say`The calibration has ${marks.length} marks.`,
      expected: marks === depths ? say`two marks or more` : say`two marks of the scale`,
      remedy: say`Measure at the lowest and the highest mark that is read.`,
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
      remedy: say`Check which distance belongs to which mark.`,
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
