import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import { foldedCell, type MappingPlace, ruleOf } from "./mappedTargets.js";
import { isBlankOrRemark } from "./sheetHeader.js";
import type { SheetLayout } from "./sheetLayout.js";
import type { SheetMapping } from "./sheetMapping.js";

type Rows = readonly (readonly string[])[];

/** What is wrong with the left-hand sides of a mapping: texts that the sheet lacks or holds twice. */
export function mappedSources(
  sheet: { readonly file: string; readonly rows: Rows; readonly headerIndex: number },
  mapping: SheetMapping,
  layouts: readonly SheetLayout[],
  { file, key }: MappingPlace,
): Finding[] {
  const { rows, headerIndex } = sheet;
  const findings: Finding[] = [];
  const refuse = (code: string, part: string, own: string, rest: Partial<Finding>) => {
    const column = `${key}.${part}.${own}`;
    findings.push({ severity: "error", code, file, column, value: own, ...rest } as Finding);
  };
  const header = rows[headerIndex] ?? [];
  const shown = header.filter((cell) => cell !== "").map((cell) => `“${cell}”`);
  const mapped = new Set(Object.keys(mapping.columns).map(foldedCell));
  for (const [own, ours] of Object.entries(mapping.columns)) {
    const count = header.filter((cell) => foldedCell(cell) === foldedCell(own)).length;
    if (count === 0) {
      refuse("absent-column", "columns", own, {
        message: say`${sheet.file} has no column “${own}”.`,
        expected:
          headerIndex < 0
            ? say`a row that holds the header cells named under “columns”`
            : say`a header cell of row ${headerIndex + 1}: ${shown.join(", ")}`,
        wayOut: say`Write the header cell as it stands in the sheet.`,
      });
    } else if (count > 1) {
      refuse("repeated-column", "columns", own, {
        message: say`${sheet.file} has ${count} columns “${own}”.`,
        expected: say`header cells that can be told apart`,
        wayOut: say`Rename the one that is not meant.`,
      });
    }
    const rule = ruleOf(
      layouts.flatMap(({ columns }) => columns),
      ours,
    );
    const other = header.find(
      (cell) => rule && !mapped.has(foldedCell(cell)) && ruleOf([rule], cell) !== undefined,
    );
    if (other !== undefined) {
      refuse("mapped-twice", "columns", own, {
        message: say`${sheet.file} has a column “${other}” of its own beside the one mapped to it.`,
        expected: say`each of our columns once`,
        wayOut: say`Map that column to another name, or rename it in the sheet.`,
      });
    }
  }
  const above = rows.slice(0, Math.max(0, headerIndex)).filter((cells) => !isBlankOrRemark(cells));
  for (const own of Object.keys(mapping.lines)) {
    if (above.some(([cell]) => foldedCell(cell) === foldedCell(own))) continue;
    refuse("absent-line", "lines", own, {
      message: say`${sheet.file} has no line “${own}” above its table.`,
      expected: say`the text of a line's first cell`,
      wayOut: say`Write it as it stands in the sheet, and check “skip-rows”.`,
    });
  }
  for (const fact of Object.keys(mapping.facts)) {
    const rule = ruleOf(
      layouts.flatMap(({ facts }) => facts),
      fact,
    );
    const line = above.find(([cell]) => rule && ruleOf([rule], cell) !== undefined);
    if (!line) continue;
    refuse("mapped-twice", "facts", fact, {
      message: say`${sheet.file} has a line “${line[0]}” of its own.`,
      expected: say`the line in the sheet, or the fact in study.yaml`,
      wayOut: say`Take one of the two out.`,
    });
  }
  const below = rows
    .slice(headerIndex + 1)
    .flat()
    .map(foldedCell);
  for (const own of Object.keys(mapping.cells)) {
    if (below.includes(foldedCell(own))) continue;
    refuse("absent-cell", "cells", own, {
      message: say`No cell of the table of ${sheet.file} is “${own}”.`,
      expected: say`the whole text of a cell below the header`,
      wayOut: say`Write it as it stands in the sheet, or take it out.`,
    });
  }
  return findings;
}
