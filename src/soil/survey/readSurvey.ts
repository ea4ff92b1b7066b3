import { Readable } from "node:stream";
import { type Options, parse } from "csv-parse";
import type { Finding } from "../../findings/finding.js";
import type { GradingPoint } from "../../grading/curve.js";
import { parseHeaderCell } from "../../lab/sheet/layout.js";
import { parseNumber } from "../../quantities/parseQuantity.js";
import { parseSieve } from "../../quantities/sieves.js";
import { say, type Text } from "../../words/message.js";
import type { SurveyGrading } from "./surveyRow.js";

/** A row of the file: a grading, or what is wrong with it. */
type SurveyReading = SurveyGrading | { readonly row: number; readonly finding: Finding };

/** Longest row in characters: a file without line ends would fill the memory. */
const LONGEST_ROW = 100_000;

const OPTIONS: Options = {
  bom: true,
  trim: true,
  relax_column_count: true,
  skip_empty_lines: true,
  comment: "#",
  comment_no_infix: true,
  max_record_size: LONGEST_ROW,
  info: true,
};

/**
 * Reads a survey row by row, never the whole file: a header with `id`, sieves (`0.063`, `No. 200`, in mm
 * or by designation) and, where known, `liquid limit (%)` and `plasticity index (%)`; one grading a row,
 * percent passing under each sieve, empty where it was not used.
 */
export async function* readSurvey(
  file: string,
  chunks: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>,
): AsyncGenerator<SurveyReading> {
  const refuse = (row: number, code: string, value: string, message: Text, expected: Text) => ({
    row,
    finding: {
      severity: "error" as const,
      code,
      file,
      row,
      value,
      message,
      expected,
      remedy: say`Correct this row of the file.`,
    },
  });
  const source = Readable.from(chunks, { objectMode: false });
  const parser = parse(OPTIONS);
  source.on("error", (problem) => parser.destroy(problem));
  source.pipe(parser);
  let columns: readonly SurveyColumn[] | undefined;
  let row = 0;
  try {
    for await (const { record, info } of parser as AsyncIterable<{
      record: string[];
      info: { lines: number };
    }>) {
      row = info.lines;
      if (!columns) {
        const header = surveyColumns(record);
        if (typeof header === "string") {
          yield refuse(
            row,
            "wrong-header",
            record.slice(0, 6).join(", "),
            header,
            say`id, 0.002, 0.063, 2 … : an id and at least three sieves`,
          );
          return;
        }
        columns = header;
        continue;
      }
      const reading = surveyCells(file, row, record, columns);
      yield "problem" in reading
        ? refuse(row, reading.code, reading.value, reading.problem, reading.expected)
        : reading;
    }
  } catch (problem) {
    // A disk that fails is no fault of the file's rows.
    if (!/^CSV_/.test(String((problem as { code?: string }).code))) throw problem;
    yield refuse(
      row + 1,
      "not-a-csv",
      "",
      say`The rows cannot be told apart: ${(problem as Error).message}.`,
      say`CSV in UTF-8, one grading a row`,
    );
    return;
  } finally {
    source.destroy();
  }
  if (!columns) {
    yield refuse(
      1,
      "empty-sheet",
      "",
      say`The file has no rows.`,
      say`a header and one grading a row`,
    );
  }
}

/** A column of a survey: a number is a sieve's opening in mm. */
type SurveyColumn = "id" | "liquidLimitPct" | "plasticityIndexPct" | number;

/** The columns in their order, or a sentence on what is wrong with them. */
function surveyColumns(cells: readonly string[]): SurveyColumn[] | Text {
  const columns: SurveyColumn[] = [];
  for (const cell of cells) {
    const { name, unit } = parseHeaderCell(cell);
    if (name === "id") columns.push("id");
    else if (name === "liquid limit") columns.push("liquidLimitPct");
    else if (name === "plasticity index") columns.push("plasticityIndexPct");
    else {
      const sizeMm = parseSieve(unit === undefined ? cell : name, unit ?? "mm");
      if (sizeMm === undefined) return say`“${cell}” is neither a known column nor a sieve.`;
      columns.push(sizeMm);
    }
  }
  if (new Set(columns).size < columns.length) return say`A column stands twice.`;
  if (!columns.includes("id")) return say`The column “id” is missing.`;
  const sieves = columns.filter((column) => typeof column === "number");
  return sieves.length < 3 ? say`The header names fewer than three sieves.` : columns;
}

/** One row as a grading, or what is wrong with it. */
function surveyCells(
  file: string,
  row: number,
  cells: readonly string[],
  columns: readonly SurveyColumn[],
): SurveyGrading | { code: string; value: string; problem: Text; expected: Text } {
  const points: GradingPoint[] = [];
  const facts: { id: string; liquidLimitPct?: number; plasticityIndexPct?: number } = { id: "" };
  if (cells.length > columns.length) {
    return {
      code: "row-too-long",
      value: cells.slice(0, 6).join(", "),
      problem: say`This row has ${cells.length} cells, but the header has ${columns.length}.`,
      expected: say`one cell for each header cell`,
    };
  }
  for (let at = 0; at < cells.length; at++) {
    const [text, column] = [cells[at], columns[at]];
    if (column === "id") facts.id = text;
    if (column === "id" || text === "") continue;
    const number = parseNumber(text);
    if ("problem" in number) {
      return {
        code: number.problem === "comma-decimal" ? "comma-decimal" : "not-a-number",
        value: text,
        problem: say`This cell holds text where a number belongs.`,
        expected: say`a number with a decimal point`,
      };
    }
    const most = typeof column === "number" ? 100 : 200;
    if (!(number.value >= 0 && number.value <= most)) {
      return {
        code: "out-of-range",
        value: text,
        problem: say`This value is outside what can be measured.`,
        expected: say`0 to ${most}`,
      };
    }
    if (typeof column === "number") {
      points.push({ sizeMm: column, passingPct: number.value, origin: "sieve" });
    } else facts[column] = number.value;
  }
  points.sort((a, b) => a.sizeMm - b.sizeMm);
  return { file, row, ...facts, points };
}
