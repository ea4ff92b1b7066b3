import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";
import type { SheetGrid } from "./sheet/grid.js";
import type { CellRule, SheetLayout } from "./sheet/layout.js";
import { readSheet } from "./sheet/readSheet.js";

/** A small hand-made sample of a mix, judged by hand and eye before any block is crushed. */
export interface WorkshopTrial {
  readonly id: string;
  /** What went in, in the user's words. */
  readonly mix: string;
  /** In the user's words: smooth, open, sandy, bony… */
  readonly texture?: string;
  /** Sharp, crumbling, broken… */
  readonly edges?: string;
  readonly thicknessMm?: number;
  /** Since it was made; colour means something only when it has dried fully. */
  readonly dryingHours?: number;
  /** The mass stood still between two weighings. */
  readonly dryToConstantMass?: boolean;
  /** Munsell notation by eye, such as `7.5YR 6/4`. Kept as written: it is not turned into a number. */
  readonly munsell?: string;
  /** CIE L*a*b*, D50, from a photograph with a grey card or from an instrument. */
  readonly lab?: { readonly l: number; readonly a: number; readonly b: number };
  readonly remark?: string;
  readonly row: number;
}

const text = (key: string, ...names: string[]): CellRule => ({ key, names, kind: "text" });
const number = (key: string, name: string): CellRule => ({
  ...{ key, names: [name], kind: "number", dimension: "number" },
});

const LAYOUT: SheetLayout = {
  title: say`trial sheet`,
  facts: [],
  columns: [
    { key: "id", names: ["trial"], kind: "text", required: true },
    { key: "mix", names: ["mix"], kind: "text", required: true },
    text("texture", "texture"),
    text("edges", "edges"),
    {
      ...{ key: "thicknessMm", names: ["thickness"], kind: "number", dimension: "length" },
      positive: true,
    },
    { ...number("dryingHours", "drying hours"), min: 0 },
    text("dry", "dry"),
    text("munsell", "munsell"),
    number("l", "l*"),
    number("a", "a*"),
    number("b", "b*"),
    text("remark", "remark", "remarks"),
  ],
};

/**
 * Reads a sheet of workshop trials: `trial`, `mix`, and where they were taken `texture`, `edges`,
 * `thickness (mm)`, `drying hours`, `dry` (yes once the mass stands still), `munsell`, and `L*`, `a*`, `b*`.
 *
 * @returns the trials, or `undefined` where the sheet cannot be read. Source: own layout.
 */
export function readTrials(grid: SheetGrid, findings: Finding[]): WorkshopTrial[] | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, headers } = sheet;
  const trials = sheet.rows.map(({ row, values, written }): WorkshopTrial => {
    const lab = ["l", "a", "b"].map((key) => values[key]);
    const given = ["l", "a", "b"].filter((key) => written[key]);
    if (given.length > 0 && given.length < 3) {
      findings.push({
        ...{ severity: "error", code: "missing-value", file, row, column: headers[given[0]] },
        value: given.map((key) => written[key]).join(", "),
        message: say`A colour needs all three of L*, a* and b*.`,
        expected: say`three numbers, or none`,
        remedy: say`Fill in the missing ones, or leave all three empty.`,
      });
    }
    const dry = (written.dry ?? "").toLowerCase();
    if (!["", "yes", "no"].includes(dry)) {
      findings.push({
        ...{ severity: "error", code: "not-yes-or-no", file, row, column: headers.dry },
        value: written.dry,
        message: say`This cell says whether the mass stood still.`,
        expected: say`yes, no, or empty`,
        remedy: say`Write yes or no; put the rest in the remark.`,
      });
    }
    const words = (key: "texture" | "edges" | "munsell" | "remark") =>
      written[key] ? { [key]: written[key] } : {};
    return {
      ...{ id: written.id, mix: written.mix, row },
      ...{ ...words("texture"), ...words("edges"), ...words("munsell"), ...words("remark") },
      ...(typeof values.thicknessMm === "number" ? { thicknessMm: values.thicknessMm } : {}),
      ...(typeof values.dryingHours === "number" ? { dryingHours: values.dryingHours } : {}),
      ...(dry ? { dryToConstantMass: dry === "yes" } : {}),
      ...(lab.every((value): value is number => typeof value === "number")
        ? { lab: { l: lab[0], a: lab[1], b: lab[2] } }
        : {}),
    };
  });
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return trials;
}
