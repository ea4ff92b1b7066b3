import { Readable } from "node:stream";
import { type Options, parse } from "csv-parse";
import { type Finding, finding } from "../../findings/finding.js";
import type { GradingPoint } from "../../grading/curve.js";
import { NON_PLASTIC } from "../../lab/limits.js";
import { parseHeaderCell } from "../../lab/sheet/layout.js";
import { parseNumber } from "../../quantities/parseQuantity.js";
import { parseSieve } from "../../quantities/sieves.js";
import { say, type Text } from "../../words/message.js";
import type { SurveyGrading } from "./surveyRow.js";

/** A row of the file: a grading, or what is wrong with it. */
export type SurveyReading = SurveyGrading | { readonly row: number; readonly finding: Finding };

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
 * or by designation) and, where known, `liquid limit (%)` and `plasticity index (%)`, or LL and PI, with NP for none; one grading a row,
 * percent passing under each sieve, empty where it was not used.
 */
export async function* readSurvey(
  file: string,
  chunks: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>,
): AsyncGenerator<SurveyReading> {
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
        if ("problem" in header) {
          yield refuse(file, row, header);
          return;
        }
        columns = header.columns;
        continue;
      }
      const reading = surveyCells(file, row, record, columns);
      yield "problem" in reading ? refuse(file, row, reading) : reading;
    }
  } catch (problem) {
    // A disk that fails is no fault of the file's rows.
    if (!/^CSV_/.test(String((problem as { code?: string }).code))) throw problem;
    yield refuse(file, row + 1, {
      code: "not-a-csv",
      value: "",
      problem: say`The rows cannot be separated: ${(problem as Error).message}.`,
      expected: say`CSV in UTF-8, one grading per row`,
    });
    return;
  } finally {
    source.destroy();
  }
  if (!columns) {
    yield refuse(file, 1, {
      code: "empty-sheet",
      value: "",
      problem: say`The file has no rows.`,
      expected: say`a header and one grading per row`,
    });
  }
}

/** What is wrong with a row. */
interface Refusal {
  readonly code: string;
  readonly value: string;
  readonly problem: Text;
  readonly expected: Text;
}

function refuse(file: string, row: number, { code, value, problem, expected }: Refusal) {
  const words = { message: problem, expected, remedy: say`Correct this row of the file.` };
  return { row, finding: finding({ file, row, value }, "error", code, words) };
}

/** A column of a survey: a number is a sieve's opening in mm. */
type SurveyColumn = keyof typeof NAMED_COLUMNS | number;

const NAMED_COLUMNS = {
  id: ["id"],
  liquidLimitPct: ["liquid limit", "ll"],
  plasticityIndexPct: ["plasticity index", "pi"],
} as const;

/** The columns in their order, or what is wrong with them. */
function surveyColumns(
  cells: readonly string[],
): { readonly columns: readonly SurveyColumn[] } | Refusal {
  const refusal = (problem: Text): Refusal => ({
    code: "wrong-header",
    value: cells.slice(0, 6).join(", "),
    problem,
    expected: say`id, 0.002, 0.063, 2 … : an id and at least three sieves`,
  });
  const columns: SurveyColumn[] = [];
  for (const cell of cells) {
    const column = surveyColumn(cell);
    if (column === undefined) return refusal(say`“${cell}” is neither a known column nor a sieve.`);
    columns.push(column);
  }
  if (new Set(columns).size < columns.length) return refusal(say`A column appears twice.`);
  if (!columns.includes("id")) return refusal(say`The column “id” is missing.`);
  const sieves = columns.filter((column) => typeof column === "number");
  if (sieves.length < 3) return refusal(say`The header names fewer than three sieves.`);
  return { columns };
}

function surveyColumn(cell: string): SurveyColumn | undefined {
  const { name, unit } = parseHeaderCell(cell);
  const named = Object.entries(NAMED_COLUMNS).find(([, names]) =>
    (names as readonly string[]).includes(name),
  );
  if (named) return named[0] as keyof typeof NAMED_COLUMNS;
  return parseSieve(unit === undefined ? cell : name, unit ?? "mm");
}

/** One row as a grading, or what is wrong with it. */
function surveyCells(
  file: string,
  row: number,
  cells: readonly string[],
  columns: readonly SurveyColumn[],
): SurveyGrading | Refusal {
  if (cells.length > columns.length) {
    return {
      code: "row-too-long",
      value: cells.slice(0, 6).join(", "),
      problem: say`This row has ${cells.length} cells, but the header has ${columns.length}.`,
      expected: say`one cell for each header cell`,
    };
  }
  const points: GradingPoint[] = [];
  const facts: Partial<SurveyGrading> & { id: string } = { id: "" };
  for (const [at, text] of cells.entries()) {
    const column = columns[at];
    if (column === "id") facts.id = text;
    if (column === "id" || text === "") continue;
    const read = typeof column === "number" ? surveyNumber(text, 100) : surveyLimit(column, text);
    if (typeof read === "object" && "code" in read) return read;
    if (typeof read === "number") {
      points.push({ sizeMm: column as number, passingPct: read, origin: "sieve" });
    } else Object.assign(facts, read);
  }
  points.sort((a, b) => a.sizeMm - b.sizeMm);
  return { file, row, ...facts, points };
}

/** A soil without plasticity has no limits, and keeps its row. */
function surveyLimit(
  column: "liquidLimitPct" | "plasticityIndexPct",
  text: string,
): Partial<SurveyGrading> | Refusal {
  if (NON_PLASTIC.test(text)) return { nonPlastic: true };
  const number = surveyNumber(text, 200);
  return typeof number === "number" ? { [column]: number } : number;
}

function surveyNumber(text: string, max: number): number | Refusal {
  const number = parseNumber(text);
  if ("problem" in number) {
    return {
      code: number.problem === "comma-decimal" ? "comma-decimal" : "not-a-number",
      value: text,
      problem: say`This cell holds text where a number is expected.`,
      expected: say`a number with a decimal point`,
    };
  }
  if (number.value >= 0 && number.value <= max) return number.value;
  return {
    code: "out-of-range",
    value: text,
    problem: say`This value is outside what can be measured.`,
    expected: say`0 to ${max}`,
  };
}
