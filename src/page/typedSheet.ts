import { csvRow } from "../report/export/exportTable.js";
import { say, type Text } from "../words/message.js";
import { JAR_TIMES_MIN } from "../workshop/classSheet.js";

/** Kinds of sheets that can be typed on the page. */
export type TypedKind = "sieve" | "jar" | "hydrometer";

/** A line or a column, with its header as a sheet has it and what is usual there. */
interface TypedLine {
  readonly header: string;
  readonly label: Text;
  readonly usual: string;
}

function line(header: string, label: Text, usual = ""): TypedLine {
  return { header, label, usual };
}

/** The form of a sheet that is typed: lines above a table, and its columns. */
export interface TypedForm {
  readonly kind: TypedKind;
  readonly title: Text;
  readonly lines: readonly TypedLine[];
  readonly columns: readonly TypedLine[];
  /** What stands in the table before anybody types. */
  readonly rows: readonly (readonly string[])[];
}

/** The forms; their headers are those that the readers of sheets know. */
export const TYPED_FORMS: readonly TypedForm[] = [
  {
    kind: "sieve",
    title: say`Sieve analysis`,
    lines: [
      line("dry mass (g)", say`Dry mass of the sample, g`),
      line("dry mass after washing (g)", say`Dry mass after washing, g (empty if not washed)`),
    ],
    columns: [line("sieve (mm)", say`Sieve, mm or No.`), line("retained (g)", say`Retained, g`)],
    rows: ["16", "8", "4", "2", "0.5", "0.25", "0.063", "pan"].map((sieve) => [sieve, ""]),
  },
  {
    kind: "jar",
    title: say`Jar test`,
    lines: [
      line("water depth (mm)", say`Depth of the water, mm`, "200"),
      line("temperature (C)", say`Temperature, °C`, "20"),
      line("passed sieve (mm)", say`Sieve that the soil had passed, mm (empty if none)`),
    ],
    columns: [
      line("layer", say`Layer`),
      line("time (min)", say`Time, min`),
      line("top (mm)", say`Top above the bottom, mm`),
    ],
    rows: [
      ["sand and gravel", String(JAR_TIMES_MIN.sand), ""],
      ["silt", String(JAR_TIMES_MIN.silt), ""],
      ["clay", String(JAR_TIMES_MIN.clay), ""],
    ],
  },
  {
    kind: "hydrometer",
    title: say`Hydrometer test`,
    lines: [
      line("hydrometer", say`Hydrometer (152H, 151H or BS)`, "152H"),
      line("dry mass (g)", say`Dry mass in the cylinder, g`, "50"),
      line("separating sieve (mm)", say`Separating sieve, mm`, "2"),
      line("meniscus correction", say`Meniscus correction`, "0.5"),
    ],
    columns: [
      line("time (min)", say`Time, min`),
      line("reading", say`Reading`),
      line("control", say`Control`),
      line("temperature (C)", say`Temperature, °C`),
    ],
    rows: ["1", "2", "4", "8", "15", "30", "60", "240", "1440"].map((time) => [time, "", "", "20"]),
  },
];

/**
 * A typed sheet as the CSV file that somebody would have saved; rows and lines without a reading are left out.
 *
 * @param lines one value a line of the form. @param rows one text a cell.
 *
 * @example
 * const [sieve] = ["sieve (mm)", "retained (g)"];
 * csvOfTyped("jar", ["200", "20", ""], [["silt", "60", "71"], ["clay", "1440", ""]]) // => "water depth (mm),200\ntemperature (C),20\n\nlayer,time (min),top (mm)\nsilt,60,71\n"
 */
export function csvOfTyped(
  kind: TypedKind,
  lines: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  const form = TYPED_FORMS.find((each) => each.kind === kind)!;
  const head = form.lines.flatMap(({ header }, index) =>
    (lines[index] ?? "").trim() === "" ? [] : [[header, lines[index]]],
  );
  const filled = rows.filter((row) => isFilled(kind, row));
  const table = [form.columns.map(({ header }) => header), ...filled];
  return [...head.map(trimmedRow), "\n", ...table.map(trimmedRow)].join("");
}

/**
 * Row of the file, from 1, that each typed row becomes, so that a finding leads to it; undefined for a row that
 * is left out.
 *
 * @example
 * rowsOfTyped("jar", ["200", "20", ""], [["sand and gravel", "1", ""], ["silt", "60", "71"]]) // => [undefined, 5]
 */
export function rowsOfTyped(
  kind: TypedKind,
  lines: readonly string[],
  rows: readonly (readonly string[])[],
): (number | undefined)[] {
  // The lines, an empty one and the head stand above.
  let above = lines.filter((line) => line.trim() !== "").length + 2;
  return rows.map((row) => {
    if (!isFilled(kind, row)) return undefined;
    above += 1;
    return above;
  });
}

/** The first cell names the row; a row is read once another cell holds something that was typed. */
function isFilled(kind: TypedKind, row: readonly string[]): boolean {
  return row.slice(1, kind === "jar" ? 3 : 2).every((cell) => cell.trim() !== "");
}

function trimmedRow(cells: readonly string[]): string {
  return csvRow(cells.map((cell) => cell.trim()));
}
