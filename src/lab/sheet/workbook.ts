import type { CellObject, WorkBook, WorkSheet } from "@e965/xlsx";
import { type Finding, findingIf } from "../../findings/finding.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { stored, unzip } from "./zip.js";

/** Rows of text cells with what was noticed on the way, or a sentence that says why there are none. */
export type Rows =
  | {
      readonly rows: readonly (readonly string[])[];
      readonly findings: readonly Finding[];
      readonly problem?: undefined;
    }
  | { readonly rows?: undefined; readonly problem: Text };

/** Far more than a lab sheet has; a cell typed by mistake in the last row of all makes no table. */
export const MAX_ROWS = 5000;
export const MAX_COLUMNS = 500;

/** More cells than this no test has, and reading them would take seconds. */
const MAX_CELLS = 100_000;

/** What a table needs of a workbook: pictures, drawings and macros stay packed. */
const PARTS =
  /^(\[Content_Types\]\.xml|_rels\/.*|xl\/([^/]*\.xml|_rels\/[^/]*|worksheets\/([^/]*\.xml|_rels\/[^/]*)))$/i;

/** Reads the first sheet of an XLSX workbook that is not hidden as text cells; row 1 is row 1 of the sheet. */
export async function readWorkbook(file: string, bytes: Uint8Array): Promise<Rows> {
  // Old workbooks, and new ones behind a password, are compound documents.
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) {
    return { problem: say`The workbook is protected by a password, or is of the old kind (.xls).` };
  }
  // The reader would take any text for a table: a workbook is a ZIP archive, which starts with PK.
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) {
    return { problem: say`The file is not an Excel workbook.` };
  }
  // Unpacked here, within limits: the reader's own unpacking loops on damaged files and checks no sums.
  const archive = await unzip(bytes, (name) => PARTS.test(name));
  if (!archive.files) return { problem: archive.problem };
  const crowded = [...archive.files].some(
    ([name, content]) => /worksheets/i.test(name) && countCells(content) > MAX_CELLS,
  );
  if (crowded) return { problem: say`A sheet of the workbook has more than ${MAX_CELLS} cells.` };
  // Loaded only here: most studies have CSV sheets, and the reader costs 60 ms.
  const { read, SSF, utils } = await import("@e965/xlsx");
  let workbook: WorkBook;
  try {
    workbook = read(stored(archive.files), {
      type: "array",
      cellFormula: false,
      cellHTML: false,
      cellNF: true,
      // Tells of hidden rows.
      cellStyles: true,
      // A workbook may declare less than it holds.
      nodim: true,
    });
  } catch {
    return { problem: say`The file is an archive, but no workbook that can be read.` };
  }
  const hidden = workbook.Workbook?.Sheets?.map(({ Hidden }) => Boolean(Hidden)) ?? [];
  const name = workbook.SheetNames.find((_, index) => !hidden[index]) ?? workbook.SheetNames[0];
  const sheet = workbook.Sheets[name];
  if (!sheet) return { problem: say`The workbook has no sheet.` };

  const texts = Object.entries(sheet)
    .filter(([address]) => !address.startsWith("!"))
    .map(([address, cell]) => ({
      address,
      text: cellText(cell as CellObject, SSF),
      place: utils.decode_cell(address),
    }))
    .filter(({ text }) => text !== "");
  const far = texts.find(({ place }) => place.r >= MAX_ROWS || place.c >= MAX_COLUMNS);
  if (far) {
    return {
      problem: say`Cell ${far.address} stands beyond ${MAX_ROWS} rows or ${MAX_COLUMNS} columns.`,
    };
  }
  // Every row is as wide as the sheet, gaps are empty cells.
  const height = texts.reduce((max, { place }) => Math.max(max, place.r + 1), 0);
  const width = texts.reduce((max, { place }) => Math.max(max, place.c + 1), 0);
  const table = Array.from({ length: height }, () => new Array<string>(width).fill(""));
  for (const { text, place } of texts) table[place.r][place.c] = text;
  const others = workbook.SheetNames.filter((other) => other !== name);
  const filled = others.filter((other) => !isEmpty(workbook.Sheets[other]));
  return {
    rows: table,
    findings: [...furtherSheets(file, name, filled), ...hiddenRows(file, sheet, table)],
  };
}

/** The text of a cell: numbers at full precision, not as the workbook displays them. */
function cellText(
  { t: type, v: value, w: shown, z: format }: CellObject,
  formats: typeof import("@e965/xlsx")["SSF"],
): string {
  if (type === "e") return shown ?? "#N/A";
  if (type !== "n" || typeof value !== "number") return String(value ?? "").trim();
  const written = String(format ?? "");
  if (formats.is_date(written)) {
    return /[yd]/i.test(written) ? formats.format("yyyy-mm-dd", value) : (shown ?? "");
  }
  // What shows as 6 % is stored as 0.06; fifteen digits are what a workbook holds.
  if (written.includes("%")) return `${Number((100 * value).toPrecision(15))} %`;
  return String(value);
}

/** Cells of a sheet, by the letters that begin them: `<c` and a space or an end. */
function countCells(xml: Uint8Array): number {
  let count = 0;
  for (let at = xml.indexOf(0x3c); at >= 0; at = xml.indexOf(0x3c, at + 1)) {
    if (xml[at + 1] === 0x63 && [0x20, 0x2f, 0x3e].includes(xml[at + 2])) count += 1;
  }
  return count;
}

function isEmpty(sheet: WorkSheet): boolean {
  return Object.keys(sheet).every((address) => address.startsWith("!"));
}

function furtherSheets(file: string, name: string, others: readonly string[]): Finding[] {
  const place = { file, value: joinTexts(others) };
  return findingIf(others.length > 0, place, "note", "further-sheets", {
    message: say`Only the sheet “${name}” of this workbook is read.`,
    expected: say`one test a file`,
    remedy: say`Nothing to do, unless the readings stand in another sheet: save that one as a file of its own.`,
  });
}

function hiddenRows(
  file: string,
  sheet: WorkSheet,
  rows: readonly (readonly string[])[],
): Finding[] {
  const hidden = rows.flatMap((cells, index) =>
    sheet["!rows"]?.[index]?.hidden && cells.some((cell) => cell !== "") ? [index + 1] : [],
  );
  return findingIf(hidden.length > 0, { file, row: hidden[0] }, "warning", "hidden-rows", {
    message: say`The workbook hides rows that are read: ${joinTexts(hidden.map(String))}.`,
    expected: say`all rows in sight`,
    remedy: say`Show them; begin a row that is to be left out with # and a space.`,
  });
}
