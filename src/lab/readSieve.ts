import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import { readSheet } from "./readSheet.js";
import type { SheetGrid } from "./sheetGrid.js";
import { sieveForm, sieveLayout } from "./sieveLayout.js";
import { sieveReadings } from "./sieveReadings.js";
import type { SieveRecord } from "./sieveRecord.js";
import { sieveSplits } from "./sieveSplits.js";

/**
 * Reads a sieve sheet: `dry mass (g)` and, where they apply, `dry mass after washing (g)`,
 * `split sieve (mm)`, `split dry mass (g)` and `split dry mass after washing (g)` above a table of
 * `sieve (mm)` and `retained (g)`, coarse to fine, with a last row `pan`. Further divisions are
 * `split 2 sieve (mm)` and so on to 3.
 *
 * In place of `retained (g)` the table may have `cumulative retained (g)`, beginning anew below a split
 * and with the set's total in the pan row, or `passing (%)`, which needs neither masses nor a pan.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readSieve(grid: SheetGrid, findings: Finding[]): SieveRecord | undefined {
  const before = findings.length;
  const form = sieveForm(grid);
  const sheet = readSheet(grid, sieveLayout(form), findings);
  if (!sheet) return undefined;
  const { file, facts, factRows } = sheet;
  const note = (finding: Omit<Finding, "file">) => findings.push({ ...finding, file });

  const splits = sieveSplits(sheet, findings);
  const massesUnknown = form === "passing" && !("dryMassG" in factRows);
  const dryMassG = massesUnknown ? 100 : (facts.dryMassG as number);
  const { rows, panG } = sieveReadings(sheet, form, splits, dryMassG, findings);
  if (!sheet.rows.some(({ values }) => values.sieve !== "pan")) {
    note({
      severity: "error",
      code: "no-sieves",
      row: sheet.rows[0].row,
      column: sheet.headers.sieve,
      value: "pan",
      message: say`The sheet has a pan and no sieve.`,
      expected: say`at least one sieve above the pan`,
      wayOut: say`Fill in the sieves, or take the sheet out of study.yaml.`,
    });
  }
  if (form !== "passing" && !sheet.rows.some(({ values }) => values.sieve === "pan")) {
    note({
      severity: "error",
      code: "missing-pan",
      column: sheet.headers.sieve ?? "sieve",
      message: say`The sheet has no pan row.`,
      expected: say`a last row “pan” with the mass under the finest sieve`,
      wayOut: say`Weigh the pan, or write 0 where nothing reached it.`,
    });
  }
  if (form === "passing") {
    const extra = Object.keys(factRows).find((key) => key !== "dryMassG");
    if (extra) {
      note({
        severity: "error",
        code: "passing-with-masses",
        row: factRows[extra],
        message: say`Percentages passing are of the whole sample: a split or a washing has no place.`,
        expected: say`only “dry mass (g)” above a table of percentages`,
        wayOut: say`Take the line out, or give the masses retained.`,
      });
    }
    note({
      severity: "note",
      code: "passing-input",
      message: say`The sheet gives percentages passing: its mass balance cannot be checked.`,
      expected: say`masses retained, where the laboratory has them`,
      wayOut: say`Nothing to do, unless the masses are at hand.`,
    });
  }
  checkWashed(factRows, facts, file, findings);
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;
  return {
    file,
    dryMassG,
    washedDryMassG: facts.washedDryMassG as number | undefined,
    splits,
    rows,
    panG: panG as number,
    ...(massesUnknown ? { massesUnknown: true as const } : {}),
  };
}

function checkWashed(
  rows: Readonly<Record<string, number>>,
  facts: Readonly<Record<string, unknown>>,
  file: string,
  findings: Finding[],
): void {
  for (const [before, after] of [
    ["dryMassG", "washedDryMassG"],
    ...[0, 1, 2].map((index) => [`split${index}DryMassG`, `split${index}WashedDryMassG`]),
  ]) {
    const [dry, washed] = [facts[before], facts[after]];
    if (typeof dry !== "number" || typeof washed !== "number" || washed <= dry) continue;
    findings.push({
      severity: "error",
      code: "washed-heavier",
      file,
      row: rows[after],
      value: String(washed),
      message: say`The sample is heavier after washing than before.`,
      expected: say`at most ${dry} g`,
      wayOut: say`Check the two masses; one of them may still hold the tin.`,
    });
  }
}
