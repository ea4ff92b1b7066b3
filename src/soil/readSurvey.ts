import { Readable } from "node:stream";
import { type Options, parse } from "csv-parse";
import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import { type SurveyColumn, surveyCells, surveyColumns } from "./surveyCells.js";
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
 * or by designation) and, where known, `liquid limit (%)` and `plasticity index (%)`; one grading a row,
 * percent passing under each sieve, empty where it was not used.
 */
export async function* readSurvey(
  file: string,
  chunks: AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>,
): AsyncGenerator<SurveyReading> {
  const refuse = (row: number, code: string, value: string, message: string, expected: string) => ({
    row,
    finding: {
      severity: "error" as const,
      code,
      file,
      row,
      value,
      message,
      expected,
      wayOut: say`Correct this row of the file.`,
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
