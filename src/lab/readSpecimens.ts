import type { Finding } from "./finding.js";
import { readSheet } from "./readSheet.js";
import type { SheetGrid } from "./sheetGrid.js";
import type { SheetLayout } from "./sheetLayout.js";
import type { SpecimenRecord, SpecimenSheet } from "./specimenRecord.js";

const LAYOUT: SheetLayout = {
  title: "block sheet",
  facts: [],
  columns: [
    { key: "id", names: ["block", "specimen"], kind: "text", required: true },
    { key: "batch", names: ["batch"], kind: "text" },
    {
      key: "cementPct",
      names: ["cement"],
      kind: "number",
      dimension: "ratio",
      required: true,
      min: 0,
      max: 30,
    },
    {
      key: "ageDays",
      names: ["age"],
      kind: "number",
      dimension: "age",
      required: true,
      positive: true,
    },
    { key: "lengthMm", names: ["length"], kind: "number", dimension: "length", positive: true },
    { key: "widthMm", names: ["width"], kind: "number", dimension: "length", positive: true },
    { key: "heightMm", names: ["height"], kind: "number", dimension: "length", positive: true },
    { key: "loadKn", names: ["load"], kind: "number", dimension: "force", positive: true },
    {
      key: "strengthMpa",
      names: ["strength"],
      kind: "number",
      dimension: "stress",
      positive: true,
    },
    {
      key: "dryDensityKgM3",
      names: ["dry density"],
      kind: "number",
      dimension: "density",
      positive: true,
    },
    {
      key: "moisturePct",
      names: ["moisture"],
      kind: "number",
      dimension: "ratio",
      min: 0,
      max: 60,
    },
    { key: "excluded", names: ["excluded"], kind: "text" },
    { key: "remark", names: ["remark"], kind: "text" },
  ],
};

/**
 * Reads a block sheet: `block`, `cement (%)` of the dry mass of soil and aggregate, `age (d)`, and
 * either `strength (MPa)` or `load (kN)` with `length (mm)` and `width (mm)` of the loaded face.
 * A text in `excluded` keeps the block out of the regression and is shown in every report.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readSpecimens(grid: SheetGrid, findings: Finding[]): SpecimenSheet | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, LAYOUT, findings);
  if (!sheet) return undefined;
  const { file } = sheet;
  const specimens: SpecimenRecord[] = [];
  const rowOfId = new Map<string, number>();
  for (const { row, values, written } of sheet.rows) {
    const { loadKn, lengthMm, widthMm } = values;
    const stressMpa =
      typeof loadKn === "number" && typeof lengthMm === "number" && typeof widthMm === "number"
        ? (loadKn * 1000) / (lengthMm * widthMm)
        : undefined;
    const strengthMpa = values.strengthMpa ?? stressMpa;
    if (
      strengthMpa === undefined &&
      !written.strengthMpa &&
      !(written.loadKn && written.lengthMm && written.widthMm)
    ) {
      findings.push({
        severity: "error",
        code: "missing-value",
        file,
        row,
        value: "",
        message: "This block has no strength.",
        expected: "a strength, or a load with the length and width of the loaded face",
        wayOut: "Fill in the readings, or start the row with # to leave it out.",
      });
    }
    const earlier = rowOfId.get(written.id);
    if (earlier !== undefined) {
      findings.push({
        severity: "error",
        code: "repeated-block",
        file,
        row,
        column: sheet.headers.id,
        value: written.id,
        message: `This block's name stands already in row ${earlier}.`,
        expected: "each block once",
        wayOut: "Correct the name, or take the copy out.",
      });
    }
    rowOfId.set(written.id, row);
    if (
      typeof strengthMpa !== "number" ||
      typeof values.cementPct !== "number" ||
      typeof values.ageDays !== "number"
    ) {
      continue;
    }
    specimens.push({
      ...(values as Partial<SpecimenRecord>),
      id: written.id,
      cementPct: values.cementPct,
      ageDays: values.ageDays,
      strengthMpa,
      row,
    });
  }
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return { file, specimens };
}
