import type { Finding } from "../findings/finding.js";
import { formatFixed } from "../quantities/format.js";
import type { Dimension } from "../quantities/units.js";
import { joinTexts, say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { CellRule, SheetLayout, SheetRow, SheetValues } from "./sheet/layout.js";
import { findHeaderRow, readSheet } from "./sheet/readSheet.js";

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

/**
 * Reads a block sheet: `block`, `cement (%)` of the dry mass of soil and aggregate (or `cement parts` and
 * `soil parts` by loose volume, with the lines `cement loose density (kg/m3)`, `soil loose density (kg/m3)`
 * and, where that soil was moist, `soil moisture (%)` above the table), `age (d)`, and either
 * `strength (MPa)` or `load (kN)` with `length (mm)` and `width (mm)` or `diameter (mm)` of the loaded face.
 * A text in `excluded` keeps the block out of the regression and is shown in every report.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readSpecimens(grid: SheetGrid, findings: Finding[]): SpecimenSheet | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, SPECIMEN_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file } = sheet;
  const hasCement = checkCementColumns(sheet, findHeaderRow(grid, SPECIMEN_LAYOUT) + 1, findings);
  const specimens: SpecimenRecord[] = [];
  const rowOfId = new Map<string, number>();
  for (const entry of sheet.rows) {
    const { row, values, written } = entry;
    const { strengthMpa, shape, dryDensityKgM3 } = specimenStress(sheet, entry, findings);
    const cementPct = hasCement ? specimenCement(sheet, entry, findings) : undefined;
    const earlier = rowOfId.get(written.id);
    if (earlier !== undefined) {
      findings.push({
        severity: "error",
        code: "repeated-block",
        file,
        row,
        column: sheet.headers.id,
        value: written.id,
        message: say`This block's name stands already in row ${earlier}.`,
        expected: say`each block once`,
        remedy: say`Correct the name, or take the copy out.`,
      });
    }
    rowOfId.set(written.id, row);
    if (
      strengthMpa === undefined ||
      cementPct === undefined ||
      typeof values.ageDays !== "number"
    ) {
      continue;
    }
    specimens.push({
      ...(values as Partial<SpecimenRecord>),
      id: written.id,
      cementPct,
      ageDays: values.ageDays,
      strengthMpa,
      shape,
      dryDensityKgM3,
      row,
    });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return { file, specimens };
}

const measured = (key: string, name: string, dimension: Dimension): CellRule => ({
  key,
  names: [name],
  kind: "number",
  dimension,
  positive: true,
});
const moisture = (key: string, ...names: string[]): CellRule => ({
  ...{ key, names, kind: "number", dimension: "ratio", min: 0, max: 60 },
});
const looseDensity = (key: string, ...names: string[]): CellRule => ({
  ...{ key, names, kind: "number", dimension: "density", min: 300, max: 3000 },
});
const text = (key: string, ...names: string[]): CellRule => ({ key, names, kind: "text" });

/** Facts and columns of a block sheet. */
export const SPECIMEN_LAYOUT: SheetLayout = {
  title: say`block sheet`,
  facts: [
    looseDensity("cementLooseDensityKgM3", "cement loose density"),
    looseDensity("soilLooseDensityKgM3", "soil loose density"),
    moisture("soilMoisturePct", "soil moisture"),
  ],
  columns: [
    { key: "id", names: ["block", "specimen"], kind: "text", required: true },
    text("batch", "batch"),
    {
      ...{ key: "cementPct", names: ["cement"], kind: "number", dimension: "ratio" },
      ...{ min: 0, max: 30 },
    },
    measured("cementParts", "cement parts", "number"),
    measured("soilParts", "soil parts", "number"),
    { ...measured("ageDays", "age", "age"), required: true },
    text("shape", "shape"),
    measured("lengthMm", "length", "length"),
    measured("widthMm", "width", "length"),
    measured("diameterMm", "diameter", "length"),
    measured("heightMm", "height", "length"),
    measured("loadKn", "load", "force"),
    measured("strengthMpa", "strength", "stress"),
    measured("massG", "mass", "mass"),
    measured("dryDensityKgM3", "dry density", "density"),
    moisture("moisturePct", "moisture"),
    moisture("makingMoisturePct", "moisture at making"),
    moisture("testMoisturePct", "moisture at test"),
    measured("crushingOrder", "crushing order", "number"),
    text("excluded", "excluded"),
    text("remark", "remark", "remarks"),
  ],
};

/**
 * The cement content of a row: as entered, or from its parts by loose volume with the densities above
 * the table. Pushes a finding and gives undefined where there is none to be had.
 */
function specimenCement(
  sheet: SheetValues,
  { row, values, written }: SheetRow,
  findings: Finding[],
): number | undefined {
  const { file, headers, facts } = sheet;
  const { cementPct, cementParts, soilParts } = values;
  const refuse = (
    code: string,
    column: string | undefined,
    rest: Omit<Finding, "severity" | "code" | "file">,
  ) => {
    findings.push({ severity: "error", code, file, row, column, ...rest });
    return undefined;
  };
  const parts = Boolean(written.cementParts || written.soilParts);
  if (written.cementPct && parts) {
    return refuse("cement-twice", headers.cementPct, {
      value: `${written.cementPct}; ${written.cementParts} : ${written.soilParts}`,
      message: say`This block has its cement in percent and in parts.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      remedy: say`Leave the cells of one of them empty.`,
    });
  }
  if (!parts) {
    if (written.cementPct) return cementPct as number | undefined;
    return refuse("missing-value", headers.cementPct ?? headers.cementParts, {
      value: "",
      message: say`This block has no cement content.`,
      expected: say`cement in percent of the dry mass, or cement parts and soil parts by loose volume`,
      remedy: say`Fill it in (0 for none), or start the row with # to leave it out.`,
    });
  }
  if (!(written.cementParts && written.soilParts)) {
    return refuse("missing-value", headers.cementParts ?? headers.soilParts, {
      value: `${written.cementParts ?? ""} : ${written.soilParts ?? ""}`,
      message: say`Parts by volume need both numbers.`,
      expected: say`cement parts and soil parts`,
      remedy: say`Fill in the missing one.`,
    });
  }
  const { cementLooseDensityKgM3, soilLooseDensityKgM3, soilMoisturePct } = facts;
  if (
    typeof cementParts !== "number" ||
    typeof soilParts !== "number" ||
    typeof cementLooseDensityKgM3 !== "number" ||
    typeof soilLooseDensityKgM3 !== "number"
  ) {
    // A density that is missing is told once for the sheet, one that cannot be read at its cell.
    return undefined;
  }
  return cementFromParts({
    cementParts,
    soilParts,
    cementLooseDensityKgM3,
    soilLooseDensityKgM3,
    soilMoisturePct: soilMoisturePct as number | undefined,
  });
}

/** Names a sheet that has no cement column at all, or parts by volume without the loose densities. */
function checkCementColumns(sheet: SheetValues, headerRow: number, findings: Finding[]): boolean {
  const { file, headers, factRows, rows } = sheet;
  if (!headers.cementPct && !headers.cementParts) {
    findings.push({
      severity: "error",
      code: "wrong-header",
      file,
      row: headerRow,
      value: Object.values(headers).join(", "),
      message: say`The column “cement” is missing.`,
      expected: say`“cement (%)”, or “cement parts” and “soil parts”`,
      remedy: say`Add the column, or rename the one that holds it.`,
    });
    return false;
  }
  const lacking = [
    ...("cementLooseDensityKgM3" in factRows ? [] : ["“cement loose density (kg/m3)”"]),
    ...("soilLooseDensityKgM3" in factRows ? [] : ["“soil loose density (kg/m3)”"]),
  ];
  const first = rows.find(({ written }) => written.cementParts || written.soilParts);
  if (first && lacking.length > 0) {
    findings.push({
      severity: "error",
      code: "parts-without-densities",
      file,
      row: first.row,
      column: headers.cementParts,
      value: `${first.written.cementParts ?? ""} : ${first.written.soilParts ?? ""}`,
      message: say`The cement is in parts by volume, but the sheet does not say what a loose volume weighs.`,
      expected: say`${joinTexts(lacking)} above the table`,
      remedy: say`Fill a measure of known volume as on site, weigh it, and add the lines.`,
    });
  }
  return true;
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
  for (const [name, value] of Object.entries(above)) {
    if (!(Number.isFinite(value) && value > 0)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected a number above 0`);
    }
  }
  if (!(Number.isFinite(soilMoisturePct) && soilMoisturePct >= 0)) {
    throw new RangeError(`invalid \`soilMoisturePct\`: ${soilMoisturePct}; expected 0 or above`);
  }
  const drySoil = (soilParts * soilLooseDensityKgM3) / (1 + soilMoisturePct / 100);
  return (100 * cementParts * cementLooseDensityKgM3) / drySoil;
}

/** Strength and load over area may differ by their roundings, not by more. */
const ROUNDING = 0.03;

const number = (value: unknown) => (typeof value === "number" ? value : undefined);

/** The shape of a row, strength, loaded area and dry density; findings for what does not go together. */
function specimenStress(
  { file, headers }: SheetValues,
  { row, values, written }: SheetRow,
  findings: Finding[],
): { shape?: SpecimenShape; strengthMpa?: number; dryDensityKgM3?: number } {
  const push = (
    code: string,
    column: string | undefined,
    rest: Pick<Finding, "value" | "message" | "expected" | "remedy">,
  ) => findings.push({ severity: "error", code, file, row, column, ...rest });
  const shape = written.shape ? written.shape.toLowerCase() : undefined;
  if (shape !== undefined && !["cube", "prism", "cylinder"].includes(shape)) {
    push("unknown-shape", headers.shape, {
      value: written.shape,
      message: say`This shape is not known here.`,
      expected: say`cube, prism or cylinder`,
      remedy: say`Write the nearest of them, and what it is in the remark.`,
    });
    return {};
  }
  const [length, width, diameter] = ["lengthMm", "widthMm", "diameterMm"].map((key) =>
    number(values[key]),
  );
  const round = shape === "cylinder" || (shape === undefined && diameter !== undefined);
  if (written.lengthMm && written.diameterMm) {
    push("two-shapes", headers.diameterMm, {
      value: `${written.lengthMm}; ${written.diameterMm}`,
      message: say`This block has a length and a diameter.`,
      expected: say`length and width of a rectangular face, or the diameter of a round one`,
      remedy: say`Leave the cells of the other shape empty.`,
    });
  }
  const area = round
    ? diameter && (Math.PI / 4) * diameter ** 2
    : length && width && length * width;
  const load = number(values.loadKn);
  const stress = load !== undefined && area ? (load * 1000) / area : undefined;
  const entered = number(values.strengthMpa);
  if (entered !== undefined && stress !== undefined && Math.abs(entered / stress - 1) > ROUNDING) {
    push("strength-and-load-differ", headers.strengthMpa, {
      value: `${written.strengthMpa}; ${written.loadKn}`,
      message: say`The strength entered, ${formatFixed(entered, 3)} MPa, is not the load over the loaded face, ${formatFixed(stress, 3)} MPa.`,
      expected: say`the same strength within 3 %`,
      remedy: say`Check the units in the header of both, and that the strength is not yet corrected for shape.`,
    });
  }
  const needed = round ? written.diameterMm : written.lengthMm && written.widthMm;
  if (
    entered === undefined &&
    stress === undefined &&
    !written.strengthMpa &&
    !(written.loadKn && needed)
  ) {
    push("missing-value", undefined, {
      value: "",
      message: say`This block has no strength.`,
      expected: say`a strength, or a load with the length and width (or the diameter) of the loaded face`,
      remedy: say`Fill in the readings, or start the row with # to leave it out.`,
    });
  }
  const [mass, height, moisture] = ["massG", "heightMm", "testMoisturePct"].map((key) =>
    number(values[key]),
  );
  // g over mm³ is 10⁶ kg/m³.
  const dry =
    mass && area && height && moisture !== undefined
      ? (1e6 * mass) / (area * height) / (1 + moisture / 100)
      : undefined;
  return {
    shape: shape as SpecimenShape | undefined,
    strengthMpa: entered ?? stress,
    dryDensityKgM3: number(values.dryDensityKgM3) ?? dry,
  };
}
