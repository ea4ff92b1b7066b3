import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { SheetValues } from "./sheetLayout.js";
import type { SieveForm } from "./sieveLayout.js";
import type { SieveRow, SieveSplit } from "./sieveRecord.js";

export interface SieveReadings {
  readonly rows: readonly SieveRow[];
  readonly panG?: number;
}

/**
 * Masses retained on each sieve from readings of any form. Cumulative masses begin anew below a split,
 * and a cumulative pan is the whole set; percentages passing become grams of `wholeG`.
 */
export function sieveReadings(
  sheet: SheetValues,
  form: SieveForm,
  splits: readonly SieveSplit[],
  wholeG: number,
  findings: Finding[],
): SieveReadings {
  const rows: SieveRow[] = [];
  let panG: number | undefined;
  let before = form === "passing" ? 100 : 0;
  for (const { row, values, written } of sheet.rows) {
    const { sieve, reading } = values;
    if (typeof reading !== "number") continue;
    const change = form === "passing" ? before - reading : reading - before;
    if (form !== "retained" && change < 0) {
      findings.push({
        severity: "error",
        code: form === "passing" ? "passing-rises" : "cumulative-falls",
        file: sheet.file,
        row,
        column: sheet.headers.reading,
        value: written.reading,
        message:
          form === "passing"
            ? say`More passes this sieve than the coarser one above it.`
            : say`The cumulative mass falls.`,
        expected: `${form === "passing" ? say`at most` : say`at least`} ${before}`,
        wayOut:
          form === "passing"
            ? say`Check the percentages, and whether the column holds percent retained.`
            : say`Check the masses; below a split they begin anew, and the pan holds the set's total.`,
      });
    }
    const retainedG =
      form === "retained" ? reading : form === "passing" ? (change / 100) * wholeG : change;
    if (sieve === "pan") panG ??= retainedG;
    if (typeof sieve !== "number") continue;
    const above = rows.at(-1);
    if (above && sieve >= above.sizeMm) {
      const repeated = rows.some(({ sizeMm }) => sizeMm === sieve);
      findings.push({
        severity: "error",
        code: repeated ? "repeated-sieve" : "sieve-order",
        file: sheet.file,
        row,
        column: sheet.headers.sieve,
        value: written.sieve,
        message: repeated
          ? say`This sieve stands twice in the sheet.`
          : say`This sieve is coarser than the one above it (${above.label}).`,
        expected: say`each sieve once, from the coarsest to the finest`,
        wayOut: say`Check the opening, then put the rows in order.`,
      });
    }
    rows.push({ sizeMm: sieve, retainedG, label: written.sieve, row });
    const divided = splits.some(({ sizeMm }) => sizeMm === sieve);
    before = form === "cumulative" && divided ? 0 : reading;
  }
  // What passes the finest sieve went into the pan, whether or not a row says so.
  if (form === "passing") panG ??= (before / 100) * wholeG;
  return { rows, panG };
}
