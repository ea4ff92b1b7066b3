import { parseHeaderCell } from "../quantities/parseHeaderCell.js";
import { say } from "../words/say.js";
import type { SheetGrid } from "./sheetGrid.js";
import type { CellRule, SheetLayout } from "./sheetLayout.js";

/** How a sieve sheet writes its readings. */
export type SieveForm = "retained" | "cumulative" | "passing";

/** Most divisions of one sample: more than three nobody does. */
export const MOST_SPLITS = 3;

const mass = (key: string, name: string, required = false): CellRule => ({
  key,
  names: [name],
  kind: "number",
  dimension: "mass",
  required,
  positive: true,
});

const COLUMNS: Readonly<Record<SieveForm, CellRule>> = {
  retained: {
    key: "reading",
    names: ["retained"],
    kind: "number",
    dimension: "mass",
    required: true,
    min: 0,
  },
  cumulative: {
    key: "reading",
    names: ["cumulative retained"],
    kind: "number",
    dimension: "mass",
    required: true,
    min: 0,
  },
  passing: {
    key: "reading",
    names: ["passing"],
    kind: "number",
    dimension: "ratio",
    required: true,
    min: 0,
    max: 100,
  },
};

/** The name of a split in a sheet: `split`, `split 2`, `split 3`. */
export function splitName(index: number): string {
  return index === 0 ? "split" : `split ${index + 1}`;
}

/** The form that the sheet's header speaks of; `retained` where it speaks of none. */
export function sieveForm(grid: SheetGrid): SieveForm {
  const named = (name: string) =>
    grid.rows.some(
      (cells) =>
        parseHeaderCell(cells[0] ?? "").name === "sieve" &&
        cells.some((cell) => parseHeaderCell(cell).name === name),
    );
  if (named("retained")) return "retained";
  if (named("cumulative retained")) return "cumulative";
  return named("passing") ? "passing" : "retained";
}

/** Layout of a sieve sheet of a form. */
export function sieveLayout(form: SieveForm): SheetLayout {
  const splits = Array.from({ length: MOST_SPLITS }, (_, index): CellRule[] => [
    { key: `split${index}SizeMm`, names: [`${splitName(index)} sieve`], kind: "sieve" },
    mass(`split${index}DryMassG`, `${splitName(index)} dry mass`),
    mass(`split${index}WashedDryMassG`, `${splitName(index)} dry mass after washing`),
  ]).flat();
  return {
    title: say`sieve sheet`,
    facts: [
      mass("dryMassG", "dry mass", form !== "passing"),
      mass("washedDryMassG", "dry mass after washing"),
      ...splits,
    ],
    columns: [{ key: "sieve", names: ["sieve"], kind: "sieve", required: true }, COLUMNS[form]],
  };
}
