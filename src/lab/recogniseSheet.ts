import { type Finding, type FindingWords, finding } from "../findings/finding.js";
import { joinTexts, say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import { type CellRule, headerExample, parseHeaderCell, type SheetLayout } from "./sheet/layout.js";
import { findHeaderRow, isBlankOrRemark } from "./sheet/readSheet.js";
import { SHEET_KINDS } from "./sheetKinds.js";

export type SheetKindName = keyof typeof SHEET_KINDS;

/** What kind of sheet a grid is, and by what that was told. */
export interface SheetRecognition {
  /** Absent where no kind fits, or two fit as well. */
  readonly kind?: SheetKindName;
  /** Row of the table's header, from 1; absent where there is none. */
  readonly row?: number;
  /** Header cells, or first cells of lines, that told the kind, as written. */
  readonly by: readonly string[];
  /** Why no kind was found, and what was looked for. */
  readonly findings: readonly Finding[];
}

/**
 * Names the kind of a sheet from its header: the kind whose needed columns are all there and that knows the
 * most of its header cells. A sheet of lines alone is known by its lines.
 *
 * It only names the kind: whether the readings can be used is for the reader of that kind to say.
 *
 * @example
 * recogniseSheet({ file: "s.csv", rows: [["dry mass (g)", "812"], ["sieve (mm)", "retained (g)"], ["2", "40"]] }).kind // => "sieve"
 * recogniseSheet({ file: "b.csv", rows: [["block", "cement (%)", "age (d)", "strength (MPa)"]] }).by // => ["block", "cement (%)", "age (d)", "strength (MPa)"]
 * recogniseSheet({ file: "x.csv", rows: [["name", "price"]] }).findings[0].code // => "unknown-sheet"
 */
export function recogniseSheet(grid: SheetGrid): SheetRecognition {
  const kinds = Object.keys(SHEET_KINDS) as SheetKindName[];
  const candidates = kinds.map((kind) => bestOf(kind, grid));
  const whole = candidates.filter(({ missing }) => missing.length === 0);
  const max = Math.max(0, ...whole.map(({ by }) => by.length));
  const [first, second] = whole.filter(({ by }) => by.length === max);
  if (first && !second) {
    const { kind, row, by } = first;
    return { kind, row, by, findings: [] };
  }
  const { code, row, by, ...words } = second ? twoKinds(first, second) : noKind(candidates);
  const value = by.length > 0 ? by.join(", ") : undefined;
  return { row, by, findings: [finding({ file: grid.file, row, value }, "error", code, words)] };
}

interface Candidate {
  readonly kind: SheetKindName;
  readonly layout: SheetLayout;
  readonly row?: number;
  readonly by: readonly string[];
  /** Columns that the kind needs and the sheet lacks. */
  readonly missing: readonly CellRule[];
}

/** The layout of a kind that fits best. */
function bestOf(kind: SheetKindName, grid: SheetGrid): Candidate {
  const matches = SHEET_KINDS[kind].layouts().map((layout) => matchOf(kind, layout, grid));
  const [best] = matches.sort(
    (a, b) => a.missing.length - b.missing.length || b.by.length - a.by.length,
  );
  return best;
}

function matchOf(kind: SheetKindName, layout: SheetLayout, grid: SheetGrid): Candidate {
  const needed = layout.columns.filter(({ required }) => required);
  const index = findHeaderRow(grid, layout);
  if (index >= 0) {
    const header = grid.rows[index];
    const by = header.filter((cell) => layout.columns.some((rule) => names(rule, cell)));
    const missing = needed.filter((rule) => !header.some((cell) => names(rule, cell)));
    return { kind, layout, row: index + 1, by, missing };
  }
  const lines = grid.rows.filter((cells) => !isBlankOrRemark(cells)).map(([first]) => first);
  const by = lines.filter((cell) => layout.facts.some((rule) => names(rule, cell)));
  const alone = layout.tableOptional && lines.length > 0 && by.length === lines.length;
  return { kind, layout, by: alone ? by : [], missing: alone ? [] : needed };
}

function names(rule: CellRule, cell: string): boolean {
  return rule.names.includes(parseHeaderCell(cell).name);
}

interface Refusal extends FindingWords {
  readonly code: string;
  readonly row?: number;
  readonly by: readonly string[];
}

function twoKinds(first: Candidate, second: Candidate): Refusal {
  return {
    code: "two-kinds-of-sheet",
    row: first.row,
    by: [...new Set([...first.by, ...second.by])],
    message: say`This may be a ${first.layout.title} or a ${second.layout.title}.`,
    expected: say`the columns of one test`,
    remedy: say`Give each test a sheet of its own, or name the sheet in study.yaml under the test that it is.`,
  };
}

/** A sheet with some of a kind's columns is told what it lacks, any other what was looked for. */
function noKind(candidates: readonly Candidate[]): Refusal {
  const near = candidates
    .filter(({ by }) => by.length > 0)
    .sort((a, b) => b.by.length - a.by.length)[0];
  if (near) {
    return {
      code: "wrong-header",
      row: near.row,
      by: near.by,
      message: say`This looks like a ${near.layout.title}, but it lacks ${joinTexts(near.missing.map(headerExample))}.`,
      expected: say`a header row with ${joinTexts(neededColumns(near.layout))}`,
      remedy: say`Add the column, or rename the one that holds it.`,
    };
  }
  const looked = candidates.map(
    ({ layout }) => say`${layout.title}: ${joinTexts(neededColumns(layout))}`,
  );
  return {
    code: "unknown-sheet",
    by: [],
    message: say`No row of this sheet holds the columns of a test.`,
    expected: joinTexts(looked, "; "),
    remedy: say`Name the columns so, or name the sheet in study.yaml with “columns” that say which of yours is which.`,
  };
}

function neededColumns({ columns }: SheetLayout): string[] {
  const needed = columns.filter(({ required }) => required);
  return (needed.length > 1 ? needed : columns.slice(0, 2)).map(headerExample);
}
