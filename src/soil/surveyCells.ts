import type { GradingPoint } from "../grading/gradingCurve.js";
import { parseHeaderCell } from "../quantities/parseHeaderCell.js";
import { parseNumber } from "../quantities/parseNumber.js";
import { parseSieve } from "../quantities/parseSieve.js";
import { say } from "../words/say.js";
import type { SurveyGrading } from "./surveyRow.js";

/** A column of a survey: a number is a sieve's opening in mm. */
export type SurveyColumn = "id" | "liquidLimitPct" | "plasticityIndexPct" | number;

/** The columns in their order, or a sentence on what is wrong with them. */
export function surveyColumns(cells: readonly string[]): SurveyColumn[] | string {
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
export function surveyCells(
  file: string,
  row: number,
  cells: readonly string[],
  columns: readonly SurveyColumn[],
): SurveyGrading | { code: string; value: string; problem: string; expected: string } {
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
