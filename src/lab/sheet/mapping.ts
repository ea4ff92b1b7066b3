import { type Finding, type FindingWords, finding, findingIf } from "../../findings/finding.js";
import { joinTexts, say } from "../../words/message.js";
import type { SheetGrid, SheetMapping } from "./grid.js";
import { type CellRule, headerUnit, parseHeaderCell, type SheetLayout } from "./layout.js";
import { findHeaderRow, isBlankOrRemark } from "./readSheet.js";

/** Where a mapping stands, for findings. */
interface MappingPlace {
  /** The study file. */
  readonly file: string;
  /** Path of the sheet's entry, such as `materials.0.sieve`. */
  readonly key: string;
}

/**
 * Turns a sheet of the user's own layout into one of ours: header cells, lines and texts are renamed,
 * facts of the study stand beside. Rows and columns keep their places, so that what a reader finds is told with the row of the user's own sheet.
 *
 * @param layouts the forms that this kind of sheet may have.
 * @returns the grid, or none where the mapping is wrong; all of its faults together.
 */
export function mapSheet(
  { file, rows: given }: SheetGrid,
  mapping: SheetMapping,
  layouts: readonly SheetLayout[],
  place: MappingPlace,
): { readonly grid?: SheetGrid; readonly findings: readonly Finding[] } {
  const rows = given.map((cells, index) => (index < mapping.skipRows ? [""] : cells));
  const headerIndex = headerOf({ file, rows }, mapping, layouts);
  const faults = [
    ...unknownTargets(mapping, layouts, place),
    ...absentSources({ file, rows, headerIndex }, mapping, layouts, place),
  ];
  if (faults.length > 0) return { findings: faults };

  const columns = renamed(mapping.columns);
  const lines = renamed(mapping.lines);
  const cells = renamed(mapping.cells);
  const facts = Object.entries(mapping.facts).map(([name, value]) => ({ name, value }));
  const mapped = rows.map((row, index) => {
    if (isBlankOrRemark(row)) return row;
    if (headerIndex < 0 || index < headerIndex) return [lines(row[0]), ...row.slice(1)];
    return index === headerIndex ? row.map(columns) : row.map(cells);
  });
  // Where nobody says how decimals are written, the sheet's own numbers tell.
  const decimalComma = mapping.decimalComma || undefined;
  return { grid: { file, facts, decimalComma, rows: mapped }, findings: [] };
}

/** The row that holds the most of the mapped header cells; without any the one that our layout knows. */
function headerOf(grid: SheetGrid, mapping: SheetMapping, layouts: readonly SheetLayout[]): number {
  const names = Object.keys(mapping.columns).map(foldedCell);
  if (names.length === 0) {
    const found = layouts.map((layout) => findHeaderRow(grid, layout)).find((index) => index >= 0);
    return found ?? -1;
  }
  const counts = grid.rows.map((row) => {
    const folded = row.map(foldedCell);
    return names.filter((name) => folded.includes(name)).length;
  });
  const max = Math.max(0, ...counts);
  return max === 0 ? -1 : counts.indexOf(max);
}

function renamed(names: Readonly<Record<string, string>>): (cell: string) => string {
  const ours = new Map(Object.entries(names).map(([own, name]) => [foldedCell(own), name]));
  return (cell) => ours.get(foldedCell(cell)) ?? cell;
}

/** Folded for comparing: spaces and capitals do not count. */
function foldedCell(text: string): string {
  return text.trim().toLowerCase().replace(/\s+/g, " ");
}

/** The rule that a name of ours belongs to, in any of the layouts: one of its unit before any other. */
function ruleOf(rules: readonly CellRule[], ours: string): CellRule | undefined {
  const named = rules.filter(({ names }) => names.includes(parseHeaderCell(ours).name));
  const measured = named.find(
    (rule) => headerUnit(rule, { file: "", text: ours }).findings.length === 0,
  );
  return measured ?? named[0];
}

/** What is wrong with the right-hand sides of a mapping: names that we lack, missing units, two for one. */
function unknownTargets(
  mapping: SheetMapping,
  layouts: readonly SheetLayout[],
  { file, key }: MappingPlace,
): Finding[] {
  const check = (
    part: "columns" | "lines" | "header-values",
    named: readonly (readonly [own: string, ours: string])[],
    taken: Map<string, string>,
  ): Finding[] => {
    const rules = layouts.flatMap((layout) => (part === "columns" ? layout.columns : layout.facts));
    return named.flatMap(([own, ours]) => {
      const column = `${key}.${part}.${own}`;
      const place = { file, column, value: ours };
      const rule = ruleOf(rules, ours);
      if (!rule) {
        const { title } = layouts[0];
        const found = finding(place, "error", "unknown-target", {
          message:
            part === "columns"
              ? say`The layout of the ${title} has no column “${ours}”.`
              : say`The layout of the ${title} has no line “${ours}” above its table.`,
          expected: say`one of ${joinTexts([...new Set(rules.map(({ names }) => names[0]))])}`,
          remedy: say`Write the name with its unit in brackets, for example “sieve (mm)”.`,
        });
        return [found];
      }
      const units = headerUnit(rule, { file, text: ours }).findings;
      // The three forms of a sieve sheet share a key: only names can be taken.
      const earlier = taken.get(rule.names[0]);
      taken.set(rule.names[0], own);
      return [
        ...units.map((unit) => ({ ...unit, column })),
        ...findingIf(earlier !== undefined, place, "error", "mapped-twice", {
          message: say`“${ours}” is given twice: also by “${earlier ?? ""}”.`,
          expected: say`each of our names once`,
          remedy: say`Take one of the two out.`,
        }),
      ];
    });
  };
  const lines = new Map<string, string>();
  const facts = Object.keys(mapping.facts).map((name) => [name, name] as const);
  return [
    ...check("columns", Object.entries(mapping.columns), new Map()),
    ...check("lines", Object.entries(mapping.lines), lines),
    ...check("header-values", facts, lines),
  ];
}

/** A sheet with the place of its header, before it is mapped. */
interface OwnSheet extends Pick<SheetGrid, "file" | "rows"> {
  readonly headerIndex: number;
}

/** Tells what is wrong with an entry of a mapping. */
type Refuse = (
  isSo: boolean,
  code: string,
  part: string,
  own: string,
  words: FindingWords,
) => Finding[];

/** What is wrong with the left-hand sides of a mapping: texts that the sheet lacks or holds twice. */
function absentSources(
  sheet: OwnSheet,
  mapping: SheetMapping,
  layouts: readonly SheetLayout[],
  { file, key }: MappingPlace,
): Finding[] {
  const { rows, headerIndex } = sheet;
  const refuse: Refuse = (isSo, code, part, own, words) =>
    findingIf(isSo, { file, column: `${key}.${part}.${own}`, value: own }, "error", code, words);
  // A sheet without a table has lines alone.
  const lead = headerIndex < 0 ? rows : rows.slice(0, headerIndex);
  const above = lead.filter((cells) => !isBlankOrRemark(cells));
  const lines = new Set(above.map(([cell]) => foldedCell(cell)));
  const below = new Set(rows.slice(headerIndex + 1).flatMap((cells) => cells.map(foldedCell)));
  const factRules = layouts.flatMap(({ facts }) => facts);
  return [
    ...absentColumns(sheet, mapping, layouts, refuse),
    ...Object.keys(mapping.lines).flatMap((own) =>
      refuse(!lines.has(foldedCell(own)), "absent-line", "lines", own, {
        message: say`${sheet.file} has no line “${own}” above its table.`,
        expected: say`the text of a line's first cell`,
        remedy: say`Write it as it stands in the sheet, and check “skip-rows”.`,
      }),
    ),
    ...Object.keys(mapping.facts).flatMap((fact) => {
      const rule = ruleOf(factRules, fact);
      const [line] = above.find(([cell]) => rule && ruleOf([rule], cell) !== undefined) ?? [];
      return refuse(line !== undefined, "mapped-twice", "header-values", fact, {
        message: say`${sheet.file} has a line “${line ?? ""}” of its own.`,
        expected: say`the line in the sheet, or the value in study.yaml`,
        remedy: say`Take one of the two out.`,
      });
    }),
    ...Object.keys(mapping.cells).flatMap((own) =>
      refuse(!below.has(foldedCell(own)), "absent-cell", "cells", own, {
        message: say`No cell of the table of ${sheet.file} is “${own}”.`,
        expected: say`the whole text of a cell below the header`,
        remedy: say`Write it as it stands in the sheet, or take it out.`,
      }),
    ),
  ];
}

/** Columns of a mapping that the sheet lacks, holds twice, or has beside one of its own. */
function absentColumns(
  { file, rows, headerIndex }: OwnSheet,
  mapping: SheetMapping,
  layouts: readonly SheetLayout[],
  refuse: Refuse,
): Finding[] {
  const header = rows[headerIndex] ?? [];
  const shown = header.filter((cell) => cell !== "").map((cell) => `“${cell}”`);
  const mapped = new Set(Object.keys(mapping.columns).map(foldedCell));
  const rules = layouts.flatMap(({ columns }) => columns);
  return Object.entries(mapping.columns).flatMap(([own, ours]) => {
    const count = header.filter((cell) => foldedCell(cell) === foldedCell(own)).length;
    const rule = ruleOf(rules, ours);
    const other = header.find(
      (cell) => rule && !mapped.has(foldedCell(cell)) && ruleOf([rule], cell) !== undefined,
    );
    return [
      ...refuse(count === 0, "absent-column", "columns", own, {
        message: say`${file} has no column “${own}”.`,
        expected:
          headerIndex < 0
            ? say`a row that holds the header cells named under “columns”`
            : say`a header cell of row ${headerIndex + 1}: ${joinTexts(shown)}`,
        remedy: say`Write the header cell as it stands in the sheet.`,
      }),
      ...refuse(count > 1, "repeated-column", "columns", own, {
        message: say`${file} has ${count} columns “${own}”.`,
        expected: say`header cells that can be told apart`,
        remedy: say`Rename the one that is not meant.`,
      }),
      ...refuse(other !== undefined, "mapped-twice", "columns", own, {
        message: say`${file} has a column “${other ?? ""}” of its own beside the one mapped to it.`,
        expected: say`each of our columns once`,
        remedy: say`Map that column to another name, or rename it in the sheet.`,
      }),
    ];
  });
}

/**
 * A finding about a sheet that was read through a mapping, told in the user's own words: their header
 * cell in place of ours, and the entry of the study for a line that stands there.
 *
 * @param grid the sheet as given: with it values stand as they are written there.
 */
export function inUsersWords(
  found: Finding,
  mapping: SheetMapping,
  place: MappingPlace,
  grid?: SheetGrid,
): Finding {
  const { row, column } = found;
  if (row !== undefined && row <= 0) {
    const { row: _, ...rest } = found;
    const fact = Object.keys(mapping.facts)[-row];
    return { ...rest, file: place.file, column: `${place.key}.header-values.${fact}` };
  }
  const value = writtenValue(found, mapping, grid);
  const named = Object.entries({ ...mapping.lines, ...mapping.columns });
  const own =
    named.find(([, ours]) => ours === column) ??
    named.find(([, ours]) => parseHeaderCell(ours).name === column);
  return {
    ...found,
    ...(value === undefined ? {} : { value }),
    ...(own ? { column: own[0] } : {}),
  };
}

/** The cell as it stands in the user's sheet, where a text was read as something else. */
function writtenValue(
  { row, value }: Finding,
  { cells }: SheetMapping,
  grid: SheetGrid | undefined,
): string | undefined {
  const raw = grid?.rows[(row ?? 0) - 1] ?? [];
  if (typeof value !== "string" || raw.includes(value)) return undefined;
  return raw.find((cell) => cells[cell] === value);
}
