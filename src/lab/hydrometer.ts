import { type Finding, type FindingPlace, finding, findingIf } from "../findings/finding.js";
import { joinTexts, say } from "../words/message.js";
import { DISPERSED_MASS, SETTLING_TIME } from "./plausible.js";
import { PRETREATMENT_FACTS, type Pretreatment, readPretreatment } from "./pretreatment.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  type CellValue,
  cellPlace,
  emptyCell,
  METHOD_FACT,
  numberRule,
  numbersAmong,
  type SheetLayout,
  type SheetValues,
  sieveRule,
  textRule,
  timeFindings,
} from "./sheet/layout.js";
import { readRecord, type SheetReading } from "./sheet/readSheet.js";

/**
 * 152H reads g/L; 151H reads specific gravity; BS reads 0.001 above 1.000 (24.0 is 1.0240); g/mL is the density
 * hydrometer of ISO 17892-4 (1.0240; from memory).
 */
export type HydrometerType = "151H" | "152H" | "BS" | "g/mL";

/** Corrections in place of readings in a control cylinder: measured one by one, or the equation of ASTM D7928. */
export type HydrometerCorrections =
  | {
      /** What the dispersant adds to a reading, in the units of the record. */
      readonly dispersant: number;
      /** At which the scale is right; 20 °C where the sheet does not say. */
      readonly calibrationC?: number;
    }
  | {
      /** The constant of the temperature–density equation, in the units of the record. */
      readonly temperatureDensity: number;
    };

/** A hydrometer analysis as read from its sheet: g/L for 152H, else specific gravity or g/mL. */
export interface HydrometerRecord {
  readonly file: string;
  readonly hydrometer: HydrometerType;
  /** Form of the test as the laboratory names it, such as ASTM D422: it decides whose viscosity of water is taken. */
  readonly method?: string;
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
  /** Length of the bulb from neck to tip, cm; 0 where the marks are measured to the middle of the bulb. */
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

/** Keys of the lines of each mark of a calibration: a straight scale needs two, and nobody gives more than six. */
const MARKS = Array.from({ length: 6 }, (_, index) => ({
  name: `calibration ${index + 1}`,
  reading: `mark${index}Reading`,
  depth: `mark${index}DepthMm`,
  neck: `mark${index}ToNeckMm`,
  centre: `mark${index}ToCentreMm`,
}));

const above0 = { positive: true };

/** What a hydrometer sheet may hold. */
export const HYDROMETER_LAYOUT: SheetLayout = {
  title: say`hydrometer sheet`,
  facts: [
    textRule("hydrometer", "hydrometer", { required: true }),
    METHOD_FACT,
    numberRule("dryMassG", "dry mass", "mass", { required: true, ...DISPERSED_MASS }),
    sieveRule("separatingSizeMm", "separating sieve", { required: true }),
    numberRule("meniscusCorrection", "meniscus correction", "number", { required: true, min: 0 }),
    numberRule("dispersant", "dispersant correction", "number", { min: 0, filled: true }),
    numberRule("calibrationC", "calibration temperature", "temperature", { min: 10, max: 30 }),
    numberRule("temperatureDensity", "temperature-density constant", "number", {
      positive: true,
      filled: true,
    }),
    ...PRETREATMENT_FACTS,
    ...MARKS.flatMap(({ name, reading, depth, neck, centre }) => [
      numberRule(reading, `${name} reading`, "number"),
      numberRule(depth, `${name} depth`, "length", above0),
      numberRule(neck, `${name} to neck`, "length", above0),
      numberRule(centre, [`${name} to bulb centre`, `${name} to bulb center`], "length", above0),
    ]),
    numberRule("bulbLengthMm", "bulb length", "length", above0),
    numberRule("bulbVolumeCm3", "bulb volume", "volume", above0),
    numberRule("cylinderDiameterMm", "cylinder inner diameter", "length", above0),
  ],
  columns: [
    numberRule("timeMin", "time", "duration", { required: true, ...SETTLING_TIME }),
    numberRule("reading", "reading", "number", { required: true, min: 0 }),
    numberRule("control", "control", "number"),
    numberRule("temperatureC", "temperature", "temperature", { required: true, min: 5, max: 40 }),
  ],
};

/**
 * Reads a hydrometer sheet: `hydrometer` (151H, 152H, BS or g/mL), `dry mass (g)`, `separating sieve (mm)` and
 * `meniscus correction` above a table of `time (min)`, `reading`, `control` and `temperature (C)`.
 * Readings stand in the instrument's own units (152H: g/L; 151H: specific gravity; BS: 0.001 above
 * 1.000, so that 24.0 is 1.0240, kept in the record as specific gravity; g/mL: the density, 1.0240).
 *
 * In place of the column `control` the sheet may have the line `dispersant correction` and, where the
 * scale is not right at 20 °C, `calibration temperature (C)`, or in the form of ASTM D7928 the line
 * `temperature-density constant` in the instrument's units. The instrument's own depths are pairs
 * `calibration 1 reading`, `calibration 1 depth (mm)` and so on to 6, or two marks `calibration 1 to neck
 * (mm)` with `bulb length (mm)`, `bulb volume (cm3)` and `cylinder inner diameter (mm)`, or two marks
 * `calibration 1 to bulb centre (mm)` with the volume and the diameter; BS and g/mL hydrometers have no depths
 * without them. `pretreatment` and `pretreatment loss (%)` say what was done before, `method`
 * names the form of the test.
 */
export function readHydrometer(grid: SheetGrid): SheetReading<HydrometerRecord> {
  return readRecord(grid, HYDROMETER_LAYOUT, (sheet) => {
    const { file, facts } = sheet;
    const { hydrometer, findings: unknown } = hydrometerType(sheet);
    // A BS scale counts thousandths above 1: kept as specific gravity, so that one formula serves.
    const thousandths = hydrometer === "BS";
    const toUnits = (reading: number) => (thousandths ? 1 + reading / 1000 : reading);
    const difference = (correction: number) => (thousandths ? correction / 1000 : correction);
    const correction = correctionKind(sheet);
    const { calibration, findings: marks } = readCalibration(sheet, toUnits);
    const { pretreatment, findings: treated } = readPretreatment(sheet);
    const marked = Object.keys(sheet.factRows).some((key) => key.startsWith("mark"));
    const readings = readReadings(sheet, hydrometer, correction.kind === "control", toUnits);
    const record: HydrometerRecord = {
      file,
      hydrometer,
      method: facts.method as string | undefined,
      dryMassG: facts.dryMassG as number,
      separatingSizeMm: facts.separatingSizeMm as number,
      meniscusCorrection: difference(facts.meniscusCorrection as number),
      ...corrections(correction.kind, facts, difference),
      calibration,
      pretreatment,
      readings: readings.readings,
    };
    const findings = [
      ...unknown,
      ...correction.findings,
      ...marks,
      ...treated,
      ...(correction.kind === "equation" ? equationFindings(sheet, hydrometer) : []),
      ...(NO_STANDARD_DEPTHS.has(hydrometer) && !calibration && !marked
        ? [missingCalibration(sheet)]
        : []),
      ...readings.findings,
    ];
    return { record, findings };
  });
}

/** What stands in place of control readings, in the units of the record. */
function corrections(
  kind: "control" | "corrections" | "equation",
  facts: SheetValues["facts"],
  difference: (correction: number) => number,
): Pick<HydrometerRecord, "corrections"> {
  if (kind === "equation") {
    return { corrections: { temperatureDensity: facts.temperatureDensity as number } };
  }
  if (kind === "control") return {};
  const dispersant = difference(facts.dispersant as number);
  return { corrections: { dispersant, ...numbersAmong(facts, "calibrationC") } };
}

/** Instruments that each have a scale of their own. */
const NO_STANDARD_DEPTHS = new Set<HydrometerType>(["BS", "g/mL"]);

function hydrometerType({ file, facts, factRows }: SheetValues): {
  readonly hydrometer: HydrometerType;
  readonly findings: readonly Finding[];
} {
  const value = String(facts.hydrometer ?? "");
  const plain = value.trim().toLowerCase();
  const types = Object.keys(SCALES) as HydrometerType[];
  const hydrometer = types.find((type) => type.toLowerCase() === plain);
  // An empty cell was told as such.
  if (hydrometer || value === "") return { hydrometer: hydrometer ?? "152H", findings: [] };
  const found = finding({ file, row: factRows.hydrometer, value }, "error", "unknown-hydrometer", {
    message: say`This hydrometer is not known.`,
    expected: say`151H, 152H, BS, or g/mL for a density hydrometer`,
    remedy: say`Read the type off the stem of the instrument.`,
  });
  return { hydrometer: "152H", findings: [found] };
}

function missingCalibration({ file, facts, factRows }: SheetValues): Finding {
  const place = { file, row: factRows.hydrometer, value: String(facts.hydrometer) };
  return finding(place, "error", "missing-calibration", {
    message: say`A hydrometer of this kind has no depths that hold for each instrument.`,
    expected: say`“calibration 1 reading” and “calibration 1 depth (mm)”, and so on, above the table`,
    remedy: say`Copy two marks or more from the instrument's calibration sheet.`,
  });
}

/** The rows of the table, in the units of the record. */
function readReadings(
  sheet: SheetValues,
  hydrometer: HydrometerType,
  controlled: boolean,
  toUnits: (reading: number) => number,
): { readonly readings: readonly HydrometerReading[]; readonly findings: readonly Finding[] } {
  const readings: HydrometerReading[] = [];
  const findings: Finding[] = [];
  for (const entry of sheet.rows) {
    const { control } = entry.values;
    const read = allNumbers(entry.values, "timeMin", "reading", "temperatureC");
    if (!read || (controlled && typeof control !== "number")) continue;
    const { timeMin, reading, temperatureC } = read;
    const place = cellPlace(sheet, entry, "timeMin");
    findings.push(...timeFindings(place, timeMin, readings.at(-1)));
    for (const key of ["reading", "control"] as const) {
      findings.push(...offScale(cellPlace(sheet, entry, key), hydrometer, entry.values[key]));
    }
    readings.push({
      timeMin,
      reading: toUnits(reading),
      ...(controlled && typeof control === "number" ? { control: toUnits(control) } : {}),
      temperatureC,
      row: entry.row,
    });
  }
  return { readings, findings };
}

/** What the scale of an instrument shows, in its own units, with a little beyond both ends. */
const SCALES: Readonly<Record<HydrometerType, { readonly min: number; readonly max: number }>> = {
  "151H": { min: 0.98, max: 1.06 },
  "152H": { min: -10, max: 70 },
  BS: { min: -10, max: 50 },
  "g/mL": { min: 0.98, max: 1.06 },
};

/** A reading that this hydrometer cannot show: the instrument is another, or the columns are exchanged. */
function offScale(place: FindingPlace, hydrometer: HydrometerType, value: CellValue): Finding[] {
  const { min, max } = SCALES[hydrometer];
  const isOff = typeof value === "number" && (value < min || value > max);
  return findingIf(isOff, place, "error", "off-scale", {
    message: say`A hydrometer ${hydrometer} does not show this reading.`,
    expected: say`${min} to ${max}`,
    remedy: say`Read the type off the stem of the instrument, and check which column is which.`,
  });
}

/** Whether a hydrometer sheet gives control readings or separate corrections; findings where both or none. */
function correctionKind(sheet: SheetValues): {
  readonly kind: "control" | "corrections" | "equation";
  readonly findings: readonly Finding[];
} {
  const { file, headers, factRows, rows } = sheet;
  const column = headers.control;
  const given = ["dispersant", "temperatureDensity"].filter((key) => key in factRows);
  if (given.length > 0) {
    const kind = given[0] === "dispersant" ? "corrections" : "equation";
    if (!column && given.length === 1) return { kind, findings: [] };
    const found = finding({ file, row: factRows[given[0]], column }, "error", "control-twice", {
      message: say`The sheet gives the correction of the readings in two ways.`,
      expected: say`control readings, a dispersant correction or a temperature-density constant, so that they cannot contradict each other`,
      remedy: say`Keep the control readings where there are any: they hold all corrections in one.`,
    });
    return { kind, findings: [found] };
  }
  if (!column) {
    const found = finding({ file, column: "control" }, "error", "missing-control", {
      message: say`The sheet says neither what a control cylinder read nor what the dispersant adds.`,
      expected: say`a column “control”, or the line “dispersant correction” above the table`,
      remedy: say`Read a second cylinder of water and dispersant with each reading, or add the line.`,
    });
    return { kind: "control", findings: [found] };
  }
  const empty = rows.filter(({ written }) => written.control === "");
  const place = { file, row: factRows.calibrationC, column: "calibration temperature" };
  const unused = findingIf("calibrationC" in factRows, place, "note", "unused-fact", {
    message: say`The calibration temperature is not used: the control readings hold the temperature's share.`,
    expected: say`the line only beside a dispersant correction`,
    remedy: say`Nothing to do.`,
  });
  const missing = empty.map((entry) => emptyCell(cellPlace(sheet, entry, "control")));
  return { kind: "control", findings: [...unused, ...missing] };
}

/** The equation of ASTM D7928 is that of two instruments. */
function equationFindings({ file, factRows }: SheetValues, hydrometer: HydrometerType): Finding[] {
  const place = { file, row: factRows.temperatureDensity, value: hydrometer };
  return findingIf(NO_STANDARD_DEPTHS.has(hydrometer), place, "error", "no-equation", {
    message: say`The temperature-density equation holds for the hydrometers 151H and 152H.`,
    expected: say`a column “control”, or the line “dispersant correction”`,
    remedy: say`Give what was measured with this instrument.`,
  });
}

const BULB = {
  bulbLengthMm: "“bulb length (mm)”",
  bulbVolumeCm3: "“bulb volume (cm3)”",
  cylinderDiameterMm: "“cylinder inner diameter (mm)”",
};
const BULB_KEYS = Object.keys(BULB) as (keyof typeof BULB)[];

/** A mark of the scale with its depth, or its distance to the neck or to the middle of the bulb. */
interface Mark {
  readonly to: "depth" | "neck" | "centre";
  readonly reading: number;
  readonly mm: number;
  readonly row: number;
}

/**
 * The hydrometer's own calibration from the lines above the table: pairs of reading and depth, or two
 * marks with their distance to the neck and the dimensions of bulb and cylinder.
 *
 * @param toUnits brings a reading to the units of the record.
 * @returns no calibration where the sheet gives none or a wrong one (with findings).
 */
function readCalibration(
  sheet: SheetValues,
  toUnits: (reading: number) => number,
): { readonly calibration?: HydrometerCalibration; readonly findings: readonly Finding[] } {
  const { file, facts, factRows } = sheet;
  const given = readMarks(sheet, toUnits);
  const bulb = BULB_KEYS.filter((key) => key in factRows);
  const row = given.firstRow ?? factRows[bulb[0]];
  if (row === undefined) return { findings: [] };
  const depths = given.marks.filter(({ to }) => to === "depth");
  const necks = given.marks.filter(({ to }) => to !== "depth");
  const marks = depths.length > 0 ? depths : necks;
  // Marks to the middle of the bulb need no length of it.
  const toCentre = necks.some(({ to }) => to === "centre");
  const needed = BULB_KEYS.filter((key) => !toCentre || key !== "bulbLengthMm");
  const lacking = needed.filter((key) => !bulb.includes(key));
  const ofBulb = necks.length > 0 || bulb.length > 0;
  const isBoth = depths.length > 0 && ofBulb;
  const isPart = depths.length === 0 && ofBulb && lacking.length > 0;
  const isMixed = toCentre && necks.some(({ to }) => to === "neck");
  const atBulb = { file, row: necks[0]?.row ?? factRows[bulb[0]] };
  const apart = [
    ...given.findings,
    ...findingIf(isMixed, { file, row }, "error", "two-calibrations", {
      message: say`Some marks are measured to the neck and some to the middle of the bulb.`,
      expected: say`all marks to the same place`,
      remedy: say`Give both marks to the neck, or both to the middle of the bulb.`,
    }),
    ...findingIf(isBoth, atBulb, "error", "two-calibrations", {
      message: say`The sheet gives measured depths and the dimensions of the bulb.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      remedy: say`Keep the depths, or keep the marks to the neck with bulb and cylinder.`,
    }),
    ...findingIf(isPart, atBulb, "error", "incomplete-calibration", {
      message: say`The dimensions of bulb and cylinder are given only in part.`,
      expected: joinTexts(lacking.map((key) => BULB[key])),
      remedy: say`Add the missing lines, or give measured depths in their place.`,
    }),
  ];
  // The count means something only where nothing else is wrong with the marks.
  const count = apart.length > 0 ? [] : countFindings({ file, row }, marks);
  const findings = [...apart, ...count, ...orderFindings(file, marks)];
  if (findings.length > 0) return { findings };
  if (depths.length > 0) {
    const own = depths.map(({ reading, mm }) => ({ reading, depthCm: mm / 10 }));
    return { calibration: { depths: own }, findings };
  }
  const bulbLengthMm = toCentre ? 0 : facts.bulbLengthMm;
  const dimensions = allNumbers({ ...facts, bulbLengthMm }, ...BULB_KEYS);
  if (!dimensions) return { findings };
  const [low, high] = necks.map(({ reading, mm }) => ({ reading, toNeckCm: mm / 10 }));
  const calibration = {
    marks: [low, high] as const,
    bulbLengthCm: dimensions.bulbLengthMm / 10,
    bulbVolumeCm3: dimensions.bulbVolumeCm3,
    cylinderAreaCm2: (Math.PI / 4) * (dimensions.cylinderDiameterMm / 10) ** 2,
  };
  return { calibration, findings };
}

/** The marks by rising readings, and the row of the first. */
function readMarks(
  { file, facts, factRows }: SheetValues,
  toUnits: (reading: number) => number,
): {
  readonly marks: readonly Mark[];
  readonly firstRow?: number;
  readonly findings: readonly Finding[];
} {
  const marks: Mark[] = [];
  const findings: Finding[] = [];
  let firstRow: number | undefined;
  for (const { name, ...keys } of MARKS) {
    const parts = (["reading", "depth", "neck", "centre"] as const).filter(
      (part) => keys[part] in factRows,
    );
    if (parts.length === 0) continue;
    const [reading, to, more] = parts;
    const row = factRows[keys[reading]];
    firstRow ??= row;
    if (reading !== "reading" || to === undefined || to === "reading" || more) {
      const found = finding({ file, row }, "error", "incomplete-calibration", {
        message: say`This mark of the calibration needs its reading and one distance.`,
        expected: say`“${name} reading”, and one of “${name} depth (mm)”, “${name} to neck (mm)” or “${name} to bulb centre (mm)”`,
        remedy: say`Add the missing line, or take the other one out.`,
      });
      findings.push(found);
      continue;
    }
    const [value, mm] = [facts[keys.reading], facts[keys[to]]];
    if (typeof value !== "number" || typeof mm !== "number") continue;
    marks.push({ to, reading: toUnits(value), mm, row });
  }
  return { marks: marks.sort((a, b) => a.reading - b.reading), firstRow, findings };
}

/** Depths need two marks or more, a bulb just two. */
function countFindings(place: FindingPlace, marks: readonly Mark[]): Finding[] {
  const count = marks.length;
  const measured = marks[0]?.to === "depth";
  const isWrong = measured ? count < 2 : count !== 2;
  return findingIf(isWrong, { ...place, value: String(count) }, "error", "incomplete-calibration", {
    message: say`The calibration has ${count}{0, plural, one { mark} other { marks}}.`,
    expected: measured ? say`two marks or more` : say`two marks of the scale`,
    remedy: say`Measure at the lowest and the highest mark that is read.`,
  });
}

function orderFindings(file: string, marks: readonly Mark[]): Finding[] {
  return marks.slice(1).flatMap(({ reading, mm, row }, index) => {
    const lower = marks[index];
    const isWrong = reading <= lower.reading || mm >= lower.mm;
    const place = { file, row, value: say`${mm} mm` };
    return findingIf(isWrong, place, "error", "calibration-order", {
      message:
        reading === lower.reading
          ? say`Two marks of the calibration have the same reading.`
          : say`The depth does not fall as the reading rises: a hydrometer that reads more floats higher.`,
      expected: say`less than ${lower.mm} mm, at a higher reading`,
      remedy: say`Check which distance belongs to which mark.`,
    });
  });
}
