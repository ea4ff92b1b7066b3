import {
  type Finding,
  type FindingPlace,
  type FindingWords,
  finding,
  findingIf,
} from "../findings/finding.js";
import { checkNotNegative, checkPositive } from "../quantities/checkNumber.js";
import { measured } from "../quantities/format.js";
import { joinTexts, say } from "../words/message.js";
import { BLOCK_SIDE, densityFindings, EARTH_DENSITY } from "./plausible.js";
import type { SheetGrid } from "./sheet/grid.js";
import {
  allNumbers,
  type CellRule,
  type CellValue,
  cellPlace,
  missingColumn,
  numberRule,
  numbersAmong,
  type SheetLayout,
  type SheetRow,
  type SheetValues,
  textRule,
} from "./sheet/layout.js";
import { findHeaderRow, readRecord, type SheetReading } from "./sheet/readSheet.js";

/** What the loaded face is: a rectangle of length and width, or a disc of the diameter. */
export type SpecimenShape = "cube" | "prism" | "cylinder";

/** One crushed specimen. Strength is as measured: no aspect-ratio correction. */
export interface SpecimenRecord {
  readonly id: string;
  readonly batch?: string;
  /** Cement in percent of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly ageDays: number;
  readonly strengthMpa: number;
  /** The parts by loose volume that `cementPct` was made from; absent where the sheet has percent. */
  readonly cementParts?: number;
  readonly soilParts?: number;
  readonly shape?: SpecimenShape;
  readonly lengthMm?: number;
  readonly widthMm?: number;
  readonly diameterMm?: number;
  readonly heightMm?: number;
  readonly loadKn?: number;
  /** When crushed, its moisture with it. */
  readonly massG?: number;
  /** As entered, or from mass, size and moisture at test. */
  readonly dryDensityKgM3?: number;
  /** Where the sheet does not say when it was measured. */
  readonly moisturePct?: number;
  readonly makingMoisturePct?: number;
  readonly testMoisturePct?: number;
  /** Place in the order of crushing. */
  readonly crushingOrder?: number;
  readonly remark?: string;
  /** The reason why it takes no part in the regression. Shown in every report, never dropped. */
  readonly excluded?: string;
  readonly row: number;
}

export interface SpecimenSheet {
  readonly file: string;
  readonly specimens: readonly SpecimenRecord[];
}

const positive = { positive: true };
/** The largest presses of laboratories. */
const MAX_LOAD_KN = 10_000;
/** Ten times what stabilised earth reaches: above it the unit is another; common practice, no source. */
const MAX_STRENGTH_MPA = 100;
/** A block with sides of 100 mm under a bucket of 10 kg: below it the unit is another; common practice, no source. */
const MIN_STRENGTH_MPA = 0.01;
/**
 * Mass over volume of a block to its dry density: from a rounding below it to as much water as earth can hold;
 * common practice, no source.
 */
const MOIST_TO_DRY = { min: 0.95, max: 1.3 };
const moisture = (key: string, name: string): CellRule =>
  numberRule(key, name, "ratio", { min: 0, max: 60 });
const side = (key: string, name: string): CellRule =>
  numberRule(key, name, "length", { ...BLOCK_SIDE, balance: "side" });
const looseDensity = (key: string, name: string): CellRule =>
  numberRule(key, name, "density", { min: 300, max: 3000 });

const IDS = ["block", "specimen", "block no.", "specimen no.", "block id", "specimen id"];
const LOADS = ["load", "failure load", "maximum load", "max load", "peak load"];
const STRENGTHS = ["strength", "compressive strength", "unconfined compressive strength", "ucs"];

/** Facts and columns of a block sheet. */
export const SPECIMEN_LAYOUT: SheetLayout = {
  title: say`block sheet`,
  facts: [
    looseDensity("cementLooseDensityKgM3", "cement loose density"),
    looseDensity("soilLooseDensityKgM3", "soil loose density"),
    moisture("soilMoisturePct", "soil moisture"),
  ],
  columns: [
    textRule("id", IDS, { required: true }),
    textRule("batch", "batch"),
    numberRule("cementPct", ["cement", "cement content"], "ratio", { min: 0, max: 30 }),
    numberRule("cementParts", "cement parts", "number", positive),
    numberRule("soilParts", "soil parts", "number", positive),
    numberRule("ageDays", "age", "age", { required: true, min: 0, max: 3650 }),
    textRule("shape", "shape"),
    side("lengthMm", "length"),
    side("widthMm", "width"),
    side("diameterMm", "diameter"),
    side("heightMm", "height"),
    numberRule("loadKn", LOADS, "force", { ...positive, max: MAX_LOAD_KN }),
    numberRule("strengthMpa", STRENGTHS, "stress", { ...positive, max: MAX_STRENGTH_MPA }),
    numberRule("massG", "mass", "mass", positive),
    numberRule("dryDensityKgM3", ["dry density", "dry unit weight"], "density", EARTH_DENSITY),
    moisture("moisturePct", "moisture"),
    moisture("makingMoisturePct", "moisture at making"),
    moisture("testMoisturePct", "moisture at test"),
    numberRule("crushingOrder", "crushing order", "number", positive),
    textRule("excluded", "excluded"),
    textRule("remark", ["remark", "remarks"]),
  ],
};

/**
 * Reads a block sheet: `block`, `cement (%)` of the dry mass of soil and aggregate (or `cement parts` and
 * `soil parts` by loose volume, with the lines `cement loose density (kg/m3)`, `soil loose density (kg/m3)`
 * and, where that soil was moist, `soil moisture (%)` above the table), `age (d)`, and either
 * `strength (MPa)` or `load (kN)` with `length (mm)` and `width (mm)` or `diameter (mm)` of the loaded face.
 * A text in `excluded` keeps the block out of the regression and is shown in every report; `no` does not.
 */
export function readSpecimens(grid: SheetGrid): SheetReading<SpecimenSheet> {
  return readRecord(grid, SPECIMEN_LAYOUT, (sheet) => {
    const findings = columnFindings(sheet, findHeaderRow(grid, SPECIMEN_LAYOUT) + 1);
    const hasCement = Boolean(sheet.headers.cementPct || sheet.headers.cementParts);
    const specimens: SpecimenRecord[] = [];
    const rowOfId = new Map<string, number>();
    for (const entry of sheet.rows) {
      const { row, values, written } = entry;
      const stress = readStress(sheet, entry);
      const cement = hasCement ? readCementContent(sheet, entry) : { findings: [] };
      findings.push(...stress.findings, ...cement.findings, ...markFindings(sheet, entry));
      const earlier = rowOfId.get(written.id) ?? 0;
      const isUsed = earlier > 0;
      findings.push(
        ...findingIf(isUsed, cellPlace(sheet, entry, "id"), "error", "repeated-block", {
          message: say`This block's name is already used in row ${earlier}.`,
          expected: say`each block once`,
          remedy: say`Correct the name, or take the copy out.`,
        }),
      );
      rowOfId.set(written.id, row);
      const { shape, strengthMpa, dryDensityKgM3 } = stress;
      const { pct: cementPct } = cement;
      const { ageDays } = values;
      if (strengthMpa === undefined || cementPct === undefined || typeof ageDays !== "number") {
        continue;
      }
      specimens.push({
        ...(values as Partial<SpecimenRecord>),
        id: written.id,
        cementPct,
        ageDays,
        strengthMpa,
        shape,
        dryDensityKgM3,
        excluded: exclusion(values.excluded),
        row,
      });
    }
    return {
      record: { file: sheet.file, specimens },
      findings: [...findings, ...twinFindings(sheet, specimens)],
    };
  });
}

const MEASURED = [
  "strengthMpa",
  "lengthMm",
  "widthMm",
  "diameterMm",
  "heightMm",
  "loadKn",
  "massG",
  "dryDensityKgM3",
] as const;
/** That many readings of two blocks are not the same by chance. */
const CHANCE = 4;

/**
 * Blocks whose readings are those of another block to the last digit: copied rows make the curve look surer
 * than it is. Where every block has such a twin the sheet holds each block twice.
 */
function twinFindings(
  { file, headers }: SheetValues,
  specimens: readonly SpecimenRecord[],
): Finding[] {
  const first = new Map<string, SpecimenRecord>();
  const copies = specimens.flatMap((block) => {
    const { cementPct, ageDays } = block;
    const readings = MEASURED.map((key) => block[key]);
    const key = JSON.stringify([cementPct, ageDays, ...readings]);
    const twin = first.get(key);
    if (!twin) first.set(key, block);
    const measured = readings.filter((reading) => reading !== undefined).length;
    return twin ? [{ block, twin, measured }] : [];
  });
  const all = specimens.length >= 4 && 2 * copies.length >= specimens.length;
  return copies.flatMap(({ block, twin, measured }) => {
    const place = { file, row: block.row, column: headers.id, value: block.id };
    const isCopy = all || measured >= CHANCE;
    return findingIf(isCopy, place, all ? "error" : "warning", "same-readings", {
      message: say`This block has the same readings as block ${twin.id} in row ${twin.row}, to the last digit.`,
      expected: say`each block once, under its own name`,
      remedy: say`Take the copy out: a block that counts twice makes the curve look surer than it is.`,
    });
  });
}

/** The reason that keeps a block out; a plain no under that header gives none. */
function exclusion(value: CellValue): string | undefined {
  return typeof value === "string" && !/^(no|n|none|false|0|[-–—])$/i.test(value)
    ? value
    : undefined;
}

/** A mark keeps a block out of the curve, and nobody could read in the report why. */
function markFindings(sheet: SheetValues, entry: SheetRow): Finding[] {
  const reason = exclusion(entry.values.excluded);
  const isBare =
    reason !== undefined &&
    (!/\p{L}{3}|\p{Lo}/u.test(reason) || /^(yes|true|excluded)$/i.test(reason));
  const place = cellPlace(sheet, entry, "excluded");
  return findingIf(isBare, place, "error", "excluded-without-reason", {
    message: say`This mark leaves the block out and gives no reason.`,
    expected: say`a reason that will stand in the report`,
    remedy: say`Write what was wrong with the block, or “no” where it counts.`,
  });
}

/** A sheet without any cement, strength or load: told once, and not at each of its blocks. */
function columnFindings(sheet: SheetValues, row: number): Finding[] {
  const { file, headers } = sheet;
  const place = { file, row, value: Object.values(headers).join(", ") };
  const cement = say`“cement (%)”, or “cement parts” and “soil parts”`;
  const strength = say`“strength (MPa)”, or “load (kN)” with the sides of the loaded face`;
  return [
    ...(headers.cementPct || headers.cementParts
      ? densitiesFindings(sheet)
      : [missingColumn(place, "cement", cement)]),
    ...(headers.strengthMpa || headers.loadKn ? [] : [missingColumn(place, "strength", strength)]),
  ];
}

/** Parts by volume without the loose densities. */
function densitiesFindings(sheet: SheetValues): Finding[] {
  const { factRows, rows } = sheet;
  const lacking = [
    ["cementLooseDensityKgM3", "“cement loose density (kg/m3)”"],
    ["soilLooseDensityKgM3", "“soil loose density (kg/m3)”"],
  ].filter(([key]) => !(key in factRows));
  const first = rows.find(({ written }) => written.cementParts || written.soilParts);
  if (!first || lacking.length === 0) return [];
  const found = finding(partsPlace(sheet, first), "error", "parts-without-densities", {
    message: say`The cement is in parts by volume, but the sheet does not say what a loose volume weighs.`,
    expected: say`${joinTexts(lacking.map(([, name]) => name))} above the table`,
    remedy: say`Fill a measure of known volume as on site, weigh it, and add the lines.`,
  });
  return [found];
}

function partsPlace({ file, headers }: SheetValues, { row, written }: SheetRow) {
  const value = `${written.cementParts ?? ""} : ${written.soilParts ?? ""}`;
  return { file, row, column: headers.cementParts ?? headers.soilParts, value };
}

/**
 * The cement content of a row: as entered, or from its parts by loose volume with the densities above
 * the table; a finding where there is none to be had.
 */
function readCementContent(
  sheet: SheetValues,
  entry: SheetRow,
): { readonly pct?: number; readonly findings: readonly Finding[] } {
  const { headers, facts } = sheet;
  const { values, written } = entry;
  const { cementPct } = values;
  const parts = partsPlace(sheet, entry);
  const refuse = (
    code: string,
    column: string | undefined,
    value: string,
    words: FindingWords,
  ) => ({
    findings: [finding({ ...parts, column, value }, "error", code, words)],
  });
  if (!written.cementParts && !written.soilParts) {
    // One that is written and cannot be read was told at its cell.
    if (written.cementPct) {
      return typeof cementPct === "number" ? { pct: cementPct, findings: [] } : { findings: [] };
    }
    return refuse("missing-value", headers.cementPct ?? headers.cementParts, "", {
      message: say`This block has no cement content.`,
      expected: say`cement in percent of the dry mass, or cement parts and soil parts by loose volume`,
      remedy: say`Fill it in (0 for none), or start the row with # and a space to leave it out.`,
    });
  }
  if (written.cementPct) {
    return refuse("cement-twice", headers.cementPct, `${written.cementPct}; ${parts.value}`, {
      message: say`This block has its cement in percent and in parts.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      remedy: say`Leave the cells of one of them empty.`,
    });
  }
  if (!written.cementParts || !written.soilParts) {
    return refuse("missing-value", parts.column, parts.value, {
      message: say`Parts by volume need both numbers.`,
      expected: say`cement parts and soil parts`,
      remedy: say`Fill in the missing one.`,
    });
  }
  const volumes = allNumbers(values, "cementParts", "soilParts");
  const densities = allNumbers(facts, "cementLooseDensityKgM3", "soilLooseDensityKgM3");
  // A density that is missing is told once for the sheet, one that cannot be read at its cell.
  if (!volumes || !densities) return { findings: [] };
  const moisture = numbersAmong(facts, "soilMoisturePct");
  return { pct: cementFromParts({ ...volumes, ...densities, ...moisture }), findings: [] };
}

/** How cement and soil were measured out by loose volume. */
export interface CementParts {
  readonly cementParts: number;
  readonly soilParts: number;
  /** Loose cement as it was poured into the measure. */
  readonly cementLooseDensityKgM3: number;
  /** Loose soil as it was measured, its moisture weighed with it. */
  readonly soilLooseDensityKgM3: number;
  /** Percent of the dry mass of the soil; default 0, the soil density then being dry. */
  readonly soilMoisturePct?: number;
}

/**
 * Turns parts by loose volume into cement content, percent of the dry mass of soil and aggregate.
 *
 * Formula: c = 100 (p_c ρ_c) / (p_s ρ_s / (1 + w/100)), p parts by loose volume, ρ loose densities in
 * kg/m³ as measured out, w the soil's moisture in percent of its dry mass. Loose cement weighs anything
 * from about 830 to 1650 kg/m³, so the same parts may be one content or twice it: weigh a full measure.
 *
 * @throws RangeError for parts or densities not above 0, or a moisture below 0. Source: own arithmetic.
 *
 * @example
 * cementFromParts({ cementParts: 1, soilParts: 10, cementLooseDensityKgM3: 1506, soilLooseDensityKgM3: 1300 }) // => 11.5846
 */
export function cementFromParts(parts: CementParts): number {
  const { cementParts, soilParts, soilMoisturePct = 0 } = parts;
  const { cementLooseDensityKgM3, soilLooseDensityKgM3 } = parts;
  const above = { cementParts, soilParts, cementLooseDensityKgM3, soilLooseDensityKgM3 };
  for (const [name, value] of Object.entries(above)) checkPositive(name, value);
  checkNotNegative("soilMoisturePct", soilMoisturePct);
  const drySoil = (soilParts * soilLooseDensityKgM3) / (1 + soilMoisturePct / 100);
  return (100 * cementParts * cementLooseDensityKgM3) / drySoil;
}

const SHAPES: readonly SpecimenShape[] = ["cube", "prism", "cylinder"];

/** Strength and load over area may differ by their roundings, not by more; common practice, no source. */
const ROUNDING = 0.03;

type Measured = { readonly [Key in (typeof MEASURED)[number]]?: number };

/** The shape of a row, its strength and dry density; findings for what does not go together. */
function readStress(
  sheet: SheetValues,
  entry: SheetRow,
): Pick<Partial<SpecimenRecord>, "shape" | "strengthMpa" | "dryDensityKgM3"> & {
  readonly findings: readonly Finding[];
} {
  const { values, written } = entry;
  const shape = SHAPES.find((known) => known === written.shape?.toLowerCase());
  if (written.shape && !shape) {
    const found = finding(cellPlace(sheet, entry, "shape"), "error", "unknown-shape", {
      message: say`This shape is not known here.`,
      expected: say`cube, prism or cylinder`,
      remedy: say`Write the nearest of them, and what it is in the remark.`,
    });
    return { findings: [found] };
  }
  const read: Measured = numbersAmong(values, ...MEASURED);
  const { testMoisturePct } = numbersAmong(values, "testMoisturePct");
  const { loadKn, strengthMpa: entered, dryDensityKgM3 } = read;
  const areaMm2 = loadedArea(read, shape);
  const stress = loadKn !== undefined && areaMm2 ? (loadKn * 1000) / areaMm2 : undefined;
  const moist = moistDensity(read, areaMm2);
  const weighed =
    moist === undefined || testMoisturePct === undefined
      ? undefined
      : moist / (1 + testMoisturePct / 100);
  const place = cellPlace(sheet, entry, "massG");
  return {
    shape,
    strengthMpa: entered ?? stress,
    dryDensityKgM3: dryDensityKgM3 ?? weighed,
    findings: [
      ...stressFindings(sheet, entry, shape, entered, stress),
      ...(weighed === undefined ? [] : densityFindings(place, weighed)),
      ...massFindings(place, moist, dryDensityKgM3),
    ],
  };
}

/** A block without a named shape is round where it has a diameter. */
function loadedArea(
  { lengthMm, widthMm, diameterMm }: Measured,
  shape: SpecimenShape | undefined,
): number | undefined {
  if (shape === "cylinder" || (shape === undefined && diameterMm !== undefined)) {
    return diameterMm === undefined ? undefined : (Math.PI / 4) * diameterMm ** 2;
  }
  return lengthMm === undefined || widthMm === undefined ? undefined : lengthMm * widthMm;
}

/** Of a block as it was weighed, its moisture with it. */
function moistDensity(
  { massG, heightMm }: Measured,
  areaMm2: number | undefined,
): number | undefined {
  if (!areaMm2 || massG === undefined || heightMm === undefined) return undefined;
  // g over mm³ is 10⁶ kg/m³.
  return (1e6 * massG) / (areaMm2 * heightMm);
}

/** A mass and sides that do not go with the dry density beside them, whatever the block's moisture was. */
function massFindings(
  place: FindingPlace,
  moistKgM3: number | undefined,
  dryKgM3: number | undefined,
): Finding[] {
  if (moistKgM3 === undefined || dryKgM3 === undefined) return [];
  const { min, max } = MOIST_TO_DRY;
  const differ = moistKgM3 < min * dryKgM3 || moistKgM3 > max * dryKgM3;
  return findingIf(differ, place, "error", "mass-and-density-differ", {
    message: say`The mass of this block over its volume, ${measured(moistKgM3, "density", 0)}, does not go with its dry density, ${measured(dryKgM3, "density", 0)}.`,
    expected: say`${100 * min} to ${100 * max} % of the dry density, depending on the moisture (common practice, no source)`,
    remedy: say`Check the mass, the sides and the density, and their units in the headers.`,
  });
}

function stressFindings(
  sheet: SheetValues,
  entry: SheetRow,
  shape: SpecimenShape | undefined,
  entered = NaN,
  stress = NaN,
): Finding[] {
  const { headers, file } = sheet;
  const { row, values, written } = entry;
  const both = (column: string, ...keys: readonly string[]) => ({
    ...cellPlace(sheet, entry, column),
    value: keys.map((key) => written[key]).join("; "),
  });
  const isBoth = Boolean(written.lengthMm && written.diameterMm);
  const isOff = Math.abs(entered / stress - 1) > ROUNDING;
  // What is entered was refused at its cell.
  const isOut = stress < MIN_STRENGTH_MPA || stress > MAX_STRENGTH_MPA;
  const isImpossible = Number.isNaN(entered) && isOut;
  const load = cellPlace(sheet, entry, "loadKn");
  // What is written and cannot be read was told at its cell.
  const isRound = shape === "cylinder" || (!shape && values.diameterMm !== undefined);
  const face = isRound ? written.diameterMm : written.lengthMm && written.widthMm;
  const isWritten = written.strengthMpa || (written.loadKn && face);
  const isMissing =
    Number.isNaN(entered) &&
    Number.isNaN(stress) &&
    Boolean(headers.strengthMpa || headers.loadKn) &&
    !isWritten;
  return [
    ...findingIf(isBoth, both("diameterMm", "lengthMm", "diameterMm"), "error", "two-shapes", {
      message: say`This block has a length and a diameter.`,
      expected: say`length and width of a rectangular face, or the diameter of a round one`,
      remedy: say`Leave the cells of the other shape empty.`,
    }),
    ...findingIf(
      isOff,
      both("strengthMpa", "strengthMpa", "loadKn"),
      "error",
      "strength-and-load-differ",
      {
        message: say`The strength entered, ${measured(entered, "stress", 3)}, is not the load over the loaded face, ${measured(stress, "stress", 3)}.`,
        expected: say`the same strength within 3 %`,
        remedy: say`Check the units in the header of both, and that the strength is not yet corrected for shape.`,
      },
    ),
    ...findingIf(isImpossible, load, "error", "strength-impossible", {
      message: say`The load over the loaded face gives a strength of ${measured(stress, "stress", 4)}, which no block of earth has.`,
      expected: say`${measured(MIN_STRENGTH_MPA, "stress")} to ${measured(MAX_STRENGTH_MPA, "stress")} (common practice, no source)`,
      remedy: say`Check the load, the sides and the units in the headers.`,
    }),
    ...findingIf(isMissing, { file, row, value: "" }, "error", "missing-value", {
      message: say`This block has no strength.`,
      expected: say`a strength, or a load with the length and width (or the diameter) of the loaded face`,
      remedy: say`Fill in the readings, or start the row with # and a space to leave it out.`,
    }),
  ];
}
