import { csvRow } from "../report/export/exportTable.js";
import { say, type Text } from "../words/message.js";
import { JAR_TIMES_MIN } from "../workshop/classSheet.js";

/** Kinds of sheets that can be typed on the page. */
export type TypedKind = "sieve" | "jar" | "hydrometer";

/** The form of a sheet that is typed: lines above a table, and its columns. */
export interface TypedForm {
  readonly kind: TypedKind;
  readonly title: Text;
  /** Header of each line as a sheet has it, with what is usual there. */
  readonly lines: readonly {
    readonly header: string;
    readonly usual: string;
    readonly label: Text;
  }[];
  readonly columns: readonly { readonly header: string; readonly label: Text }[];
  /** What stands in the table before anybody types. */
  readonly rows: readonly (readonly string[])[];
}

/** The forms; their headers are those that the readers of sheets know. */
export const TYPED_FORMS: readonly TypedForm[] = [
  {
    kind: "sieve",
    title: say`Sieve analysis`,
    lines: [
      { header: "dry mass (g)", usual: "", label: say`Dry mass of the sample, g` },
      {
        header: "dry mass after washing (g)",
        usual: "",
        label: say`Dry mass after washing, g (empty if not washed)`,
      },
    ],
    columns: [
      { header: "sieve (mm)", label: say`Sieve, mm or No.` },
      { header: "retained (g)", label: say`Retained, g` },
    ],
    rows: ["16", "8", "4", "2", "0.5", "0.25", "0.063", "pan"].map((sieve) => [sieve, ""]),
  },
  {
    kind: "jar",
    title: say`Jar test`,
    lines: [
      { header: "water depth (mm)", usual: "200", label: say`Depth of the water, mm` },
      { header: "temperature (C)", usual: "20", label: say`Temperature, °C` },
      {
        header: "passed sieve (mm)",
        usual: "",
        label: say`Sieve that the soil had passed, mm (empty if none)`,
      },
    ],
    columns: [
      { header: "layer", label: say`Layer` },
      { header: "time (min)", label: say`Time, min` },
      { header: "top (mm)", label: say`Top above the bottom, mm` },
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
      { header: "hydrometer", usual: "152H", label: say`Hydrometer (152H, 151H or BS)` },
      { header: "dry mass (g)", usual: "50", label: say`Dry mass in the cylinder, g` },
      { header: "separating sieve (mm)", usual: "2", label: say`Separating sieve, mm` },
      { header: "meniscus correction", usual: "0.5", label: say`Meniscus correction` },
    ],
    columns: [
      { header: "time (min)", label: say`Time, min` },
      { header: "reading", label: say`Reading` },
      { header: "control", label: say`Control` },
      { header: "temperature (C)", label: say`Temperature, °C` },
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
