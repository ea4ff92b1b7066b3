import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import { readSheet } from "./readSheet.js";
import type { SheetGrid } from "./sheetGrid.js";
import { findHeaderRow } from "./sheetHeader.js";
import { checkCementColumns, specimenCement } from "./specimenCement.js";
import { SPECIMEN_LAYOUT } from "./specimenLayout.js";
import type { SpecimenRecord, SpecimenSheet } from "./specimenRecord.js";
import { specimenStress } from "./specimenStress.js";

/**
 * Reads a block sheet: `block`, `cement (%)` of the dry mass of soil and aggregate (or `cement parts` and
 * `soil parts` by loose volume, with the lines `cement loose density (kg/m3)`, `soil loose density (kg/m3)`
 * and, where that soil was moist, `soil moisture (%)` above the table), `age (d)`, and either
 * `strength (MPa)` or `load (kN)` with `length (mm)` and `width (mm)` or `diameter (mm)` of the loaded face.
 * A text in `excluded` keeps the block out of the regression and is shown in every report.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readSpecimens(grid: SheetGrid, findings: Finding[]): SpecimenSheet | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, SPECIMEN_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file } = sheet;
  const hasCement = checkCementColumns(sheet, findHeaderRow(grid, SPECIMEN_LAYOUT) + 1, findings);
  const specimens: SpecimenRecord[] = [];
  const rowOfId = new Map<string, number>();
  for (const entry of sheet.rows) {
    const { row, values, written } = entry;
    const { strengthMpa, shape, dryDensityKgM3 } = specimenStress(sheet, entry, findings);
    const cementPct = hasCement ? specimenCement(sheet, entry, findings) : undefined;
    const earlier = rowOfId.get(written.id);
    if (earlier !== undefined) {
      findings.push({
        severity: "error",
        code: "repeated-block",
        file,
        row,
        column: sheet.headers.id,
        value: written.id,
        message: say`This block's name stands already in row ${earlier}.`,
        expected: say`each block once`,
        wayOut: say`Correct the name, or take the copy out.`,
      });
    }
    rowOfId.set(written.id, row);
    if (
      strengthMpa === undefined ||
      cementPct === undefined ||
      typeof values.ageDays !== "number"
    ) {
      continue;
    }
    specimens.push({
      ...(values as Partial<SpecimenRecord>),
      id: written.id,
      cementPct,
      ageDays: values.ageDays,
      strengthMpa,
      shape,
      dryDensityKgM3,
      row,
    });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return { file, specimens };
}
