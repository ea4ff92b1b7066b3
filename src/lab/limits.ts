import type { Finding } from "../findings/finding.js";
import { say, type Text } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { SheetLayout, SheetRow, SheetValues } from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

/** Liquid limit, plastic limit and linear shrinkage as read from their sheet. */
export interface LimitsRecord {
  readonly file: string;
  /** `cup`: blows (closure at 25). `cone`: penetration in mm (limit at 20 mm, 80 g and 30 degrees). */
  readonly liquidLimitMethod?: "cup" | "cone";
  readonly liquidLimitPoints: readonly LiquidLimitPoint[];
  readonly plasticLimitPoints: readonly PlasticLimitPoint[];
  /** The fines roll to no thread: the lab reports the soil as non-plastic. */
  readonly nonPlastic: boolean;
  /** Bar mould: wet and dry lengths. */
  readonly shrinkageBar?: { readonly wetLengthMm: number; readonly dryLengthMm: number };
  /** Long box of field practice, 600 mm where the sheet gives no length; not comparable with the bar. */
  readonly longBox?: { readonly shrinkageMm: number; readonly lengthMm: number };
}

export interface LiquidLimitPoint {
  /** Blows for the cup, penetration in mm for the cone. */
  readonly measure: number;
  readonly waterContentPct: number;
  readonly row: number;
}

export interface PlasticLimitPoint {
  readonly waterContentPct: number;
  readonly row: number;
}

/**
 * Reads a limits sheet: rows named `liquid limit` (with `blows` or `penetration (mm)`) and
 * `plastic limit`, each with `water content (%)` or the three masses `tin (g)`, `tin + wet soil (g)`
 * and `tin + dry soil (g)`; the shrinkage bar's wet and dry length above the table, and apart from them
 * `long box shrinkage (mm)` with, where it is not 600 mm, `long box length (mm)`.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readLimits(grid: SheetGrid, findings: Finding[]): LimitsRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, LIMITS_LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const nonPlastic = /^(yes|true|np)$/i.test(String(facts.nonPlastic ?? ""));
  const liquidLimitPoints: LiquidLimitPoint[] = [];
  const plasticLimitPoints: PlasticLimitPoint[] = [];
  const methods = new Set<"cup" | "cone">();
  const refuse = (
    entry: SheetRow,
    code: string,
    value: string,
    message: Text,
    expected: Text,
    remedy: Text,
  ) =>
    findings.push({
      severity: "error",
      code,
      file,
      row: entry.row,
      value,
      message,
      expected,
      remedy,
    });

  for (const entry of sheet.rows) {
    const { row, values, written } = entry;
    const waterContentPct = waterContent(entry, refuse);
    const test = written.test.toLowerCase();
    if (test === "plastic limit") {
      if (waterContentPct !== undefined) plasticLimitPoints.push({ waterContentPct, row });
    } else if (test === "liquid limit") {
      const measure = values.blows ?? values.penetrationMm;
      if (typeof measure !== "number") {
        if (!written.blows && !written.penetrationMm) {
          refuse(
            entry,
            "missing-value",
            "",
            say`This row has neither blows nor a penetration.`,
            say`blows of the cup, or the penetration of the cone`,
            say`Fill in the reading that was taken.`,
          );
        }
        continue;
      }
      methods.add(values.blows === undefined ? "cone" : "cup");
      if (waterContentPct !== undefined) liquidLimitPoints.push({ measure, waterContentPct, row });
    } else if (test !== "") {
      refuse(
        entry,
        "unknown-test",
        written.test,
        say`This test is not known.`,
        say`liquid limit or plastic limit`,
        say`Use one of the two names, or start the row with #.`,
      );
    }
  }
  if (methods.size > 1) {
    findings.push({
      severity: "error",
      code: "mixed-methods",
      file,
      message: say`The liquid limit rows mix cup and cone.`,
      expected: say`one method a sheet`,
      remedy: say`Give each method a sheet of its own.`,
    });
  }
  const bar = [facts.wetLengthMm, facts.dryLengthMm];
  const hasBar = bar.every((length) => typeof length === "number");
  const barLines = ["wetLengthMm", "dryLengthMm"].filter((key) => key in sheet.factRows);
  if (barLines.length === 1) {
    findings.push({
      severity: "error",
      code: "incomplete-shrinkage",
      file,
      message: say`The shrinkage bar has only one of its two lengths.`,
      expected: say`the wet and the dry length`,
      remedy: say`Add the missing line above the table.`,
    });
  }
  const longBox = readLongBox(sheet, findings);
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    liquidLimitMethod: [...methods][0],
    liquidLimitPoints,
    plasticLimitPoints,
    nonPlastic,
    shrinkageBar: hasBar
      ? { wetLengthMm: bar[0] as number, dryLengthMm: bar[1] as number }
      : undefined,
    ...(longBox ? { longBox } : {}),
  };
}

/** From the sheet's own column, or from the three masses. */
function waterContent(
  entry: SheetRow,
  refuse: (
    entry: SheetRow,
    code: string,
    value: string,
    message: Text,
    expected: Text,
    remedy: Text,
  ) => void,
): number | undefined {
  const { values, written } = entry;
  if (typeof values.waterContentPct === "number") return values.waterContentPct;
  const { tinG, wetG, dryG } = values;
  if (typeof tinG !== "number" || typeof wetG !== "number" || typeof dryG !== "number") {
    if (!written.waterContentPct && (!written.tinG || !written.wetG || !written.dryG)) {
      refuse(
        entry,
        "missing-value",
        "",
        say`This row has no water content.`,
        say`a water content in percent, or the three masses of tin, wet and dry soil`,
        say`Fill in the readings.`,
      );
    }
    return undefined;
  }
  if (!(tinG < dryG && dryG <= wetG)) {
    refuse(
      entry,
      "masses-disagree",
      `${written.tinG}, ${written.wetG}, ${written.dryG}`,
      say`These masses cannot belong together.`,
      say`tin < tin + dry soil ≤ tin + wet soil`,
      say`Check which mass stands in which column.`,
    );
    return undefined;
  }
  return (100 * (wetG - dryG)) / (dryG - tinG);
}

/** What a limits sheet may hold. */
export const LIMITS_LAYOUT: SheetLayout = {
  title: say`limits sheet`,
  facts: [
    {
      key: "wetLengthMm",
      names: ["shrinkage bar wet length"],
      kind: "number",
      dimension: "length",
      positive: true,
    },
    {
      key: "dryLengthMm",
      names: ["shrinkage bar dry length"],
      kind: "number",
      dimension: "length",
      positive: true,
    },
    {
      ...{ key: "boxShrinkageMm", names: ["long box shrinkage"], kind: "number" },
      ...{ dimension: "length", min: 0 },
    },
    {
      ...{ key: "boxLengthMm", names: ["long box length"], kind: "number" },
      ...{ dimension: "length", positive: true },
    },
    { key: "nonPlastic", names: ["non-plastic"], kind: "text" },
  ],
  columns: [
    { key: "test", names: ["test"], kind: "text", required: true },
    { key: "blows", names: ["blows"], kind: "number", min: 1, max: 100 },
    {
      key: "penetrationMm",
      names: ["penetration"],
      kind: "number",
      dimension: "length",
      positive: true,
      max: 40,
    },
    {
      key: "waterContentPct",
      names: ["water content"],
      kind: "number",
      dimension: "ratio",
      min: 0,
      max: 200,
    },
    { key: "tinG", names: ["tin"], kind: "number", dimension: "mass", positive: true },
    { key: "wetG", names: ["tin + wet soil"], kind: "number", dimension: "mass", positive: true },
    { key: "dryG", names: ["tin + dry soil"], kind: "number", dimension: "mass", positive: true },
  ],
};

/** The long box of field practice where a sheet gives no other length. */
const BOX_LENGTH_MM = 600;

/** The long shrinkage box of a limits sheet; findings where its two lines do not go together. */
function readLongBox(
  { file, facts, factRows }: SheetValues,
  findings: Finding[],
): LimitsRecord["longBox"] {
  const { boxShrinkageMm: shrinkage, boxLengthMm: length = BOX_LENGTH_MM } = facts;
  if (!("boxShrinkageMm" in factRows)) {
    if ("boxLengthMm" in factRows) {
      findings.push({
        severity: "error",
        code: "incomplete-shrinkage",
        file,
        row: factRows.boxLengthMm,
        column: "long box length",
        value: String(facts.boxLengthMm ?? ""),
        message: say`The long box has a length and no shrinkage.`,
        expected: say`“long box shrinkage (mm)” beside it`,
        remedy: say`Add the line: all gaps of the dry bar pushed together, measured at one end.`,
      });
    }
    return undefined;
  }
  if (typeof shrinkage !== "number" || typeof length !== "number") return undefined;
  if (shrinkage >= length) {
    findings.push({
      severity: "error",
      code: "box-shrank-away",
      file,
      row: factRows.boxShrinkageMm,
      column: "long box shrinkage",
      value: `${shrinkage} mm`,
      message: say`The soil in the long box shrank by as much as the box is long.`,
      expected: say`less than ${length} mm`,
      remedy: say`Check whether the dry length stands there in place of the shrinkage.`,
    });
    return undefined;
  }
  return { shrinkageMm: shrinkage, lengthMm: length };
}
