import { GRADING_MODELS } from "../../grading/models/gradingModels.js";
import { say } from "../../words/message.js";
import { type Locale, render } from "../../words/render.js";
import type { SurveyModel, SurveyRow } from "./surveyRow.js";

const NUMBERS = [
  ["residualSdPct", "residual error (%)"],
  ["d10", "D10 (mm)"],
  ["d30", "D30 (mm)"],
  ["d60", "D60 (mm)"],
  ["cu", "Cu"],
  ["cc", "Cc"],
  ["clayPct", "clay (%)"],
  ["finesPct", "fines (%)"],
  ["sandPct", "sand (%)"],
  ["gravelPct", "gravel (%)"],
] as const;

/**
 * Writes the rows of a survey as CSV, line by line, header first.
 *
 * @param locale of the remarks; default `en`.
 *
 * @example
 * const lines = [];
 * for await (const line of surveyCsv(surveyGradings(["id,0.063,0.25,1,4,16\nA1,12,28,50,76,100\n"], { threads: 0 }), "weibull")) lines.push(line);
 * lines[0].split(",").slice(0, 6) // => ["row", "id", "status", "size63 (mm)", "exponent", "residual error (%)"]
 */
export async function* surveyCsv(
  rows: AsyncIterable<SurveyRow>,
  model: SurveyModel,
  locale: Locale = "en",
): AsyncGenerator<string> {
  const { parameters } = GRADING_MODELS[model];
  const names = parameters.map(({ name, unit }) => (unit ? `${name} (${unit})` : name));
  const header = ["row", "id", "status", ...names, ...NUMBERS.map(([, name]) => name)];
  yield `${[...header, "USCS", "USDA", "remark"].join(",")}\n`;
  for await (const row of rows) {
    const cells = [
      String(row.row),
      quoted(row.id),
      row.status,
      ...parameters.map((_, index) => digits(row.values[index])),
      ...NUMBERS.map(([key]) => digits(row[key])),
      row.uscs ?? "",
      row.usda ?? "",
      row.finding ? quoted(render(say`${row.finding.code}: ${row.finding.message}`, locale)) : "",
    ];
    yield `${cells.join(",")}\n`;
  }
}

function digits(value: number | undefined): string {
  return value === undefined || !Number.isFinite(value) ? "" : String(Number(value.toPrecision(5)));
}

function quoted(text: string): string {
  // A spreadsheet would run a text that begins like a formula.
  const safe = /^[=+\-@\t]/.test(text) ? `'${text}` : text;
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
