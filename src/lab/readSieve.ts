import type { Finding } from "./finding.js";
import { readSheet } from "./readSheet.js";
import type { SheetGrid } from "./sheetGrid.js";
import type { SheetLayout } from "./sheetLayout.js";
import type { SieveRecord, SieveRow } from "./sieveRecord.js";

const LAYOUT: SheetLayout = {
  title: "sieve sheet",
  facts: [
    {
      key: "dryMassG",
      names: ["dry mass"],
      kind: "number",
      dimension: "mass",
      required: true,
      positive: true,
    },
    {
      key: "washedDryMassG",
      names: ["dry mass after washing"],
      kind: "number",
      dimension: "mass",
      positive: true,
    },
    { key: "splitSizeMm", names: ["split sieve"], kind: "sieve" },
    {
      key: "splitDryMassG",
      names: ["split dry mass"],
      kind: "number",
      dimension: "mass",
      positive: true,
    },
    {
      key: "splitWashedDryMassG",
      names: ["split dry mass after washing"],
      kind: "number",
      dimension: "mass",
      positive: true,
    },
  ],
  columns: [
    { key: "sieve", names: ["sieve"], kind: "sieve", required: true },
    {
      key: "retainedG",
      names: ["retained"],
      kind: "number",
      dimension: "mass",
      required: true,
      min: 0,
    },
  ],
};

/**
 * Reads a sieve sheet: `dry mass (g)` and, where they apply, `dry mass after washing (g)`,
 * `split sieve (mm)`, `split dry mass (g)` and `split dry mass after washing (g)` above a table of
 * `sieve (mm)` and `retained (g)`, coarse to fine, with a last row `pan`.
 *
 * @returns the record, or `undefined` where the sheet holds too little to make one.
 */
export function readSieve(grid: SheetGrid, findings: Finding[]): SieveRecord | undefined {
  const before = findings.length;
  const sheet = readSheet(grid, LAYOUT, findings);
  if (!sheet) return undefined;
  const { file, facts } = sheet;
  const sieveHeader = sheet.headers.sieve ?? "sieve";

  const pan = sheet.rows.find(({ values }) => values.sieve === "pan");
  const rows: SieveRow[] = [];
  for (const { row, values, written } of sheet.rows) {
    const { sieve, retainedG } = values;
    if (typeof sieve !== "number" || typeof retainedG !== "number") continue;
    const above = rows.at(-1);
    if (above && sieve >= above.sizeMm) {
      const repeated = rows.some(({ sizeMm }) => sizeMm === sieve);
      findings.push({
        severity: "error",
        code: repeated ? "repeated-sieve" : "sieve-order",
        file,
        row,
        column: sieveHeader,
        value: written.sieve,
        message: repeated
          ? "This sieve stands twice in the sheet."
          : `This sieve is coarser than the one above it (${above.label}).`,
        expected: "each sieve once, from the coarsest to the finest",
        wayOut: "Check the opening, then put the rows in order.",
      });
    }
    rows.push({ sizeMm: sieve, retainedG, label: written.sieve, row });
  }
  if (!pan) {
    findings.push({
      severity: "error",
      code: "missing-pan",
      file,
      column: sieveHeader,
      message: "The sheet has no pan row.",
      expected: "a last row “pan” with the mass under the finest sieve",
      wayOut: "Weigh the pan, or write 0 where nothing reached it.",
    });
  }

  const splitParts = ["splitSizeMm", "splitDryMassG"].filter((key) => key in sheet.factRows);
  if (
    splitParts.length === 1 ||
    (splitParts.length === 0 && "splitWashedDryMassG" in sheet.factRows)
  ) {
    findings.push({
      severity: "error",
      code: "incomplete-split",
      file,
      row: sheet.factRows[splitParts[0] ?? "splitWashedDryMassG"],
      message: "The split is described only in part.",
      expected: "both “split sieve (mm)” and “split dry mass (g)”",
      wayOut: "Add the missing line, or take the other one out.",
    });
  }
  const splitSizeMm = facts.splitSizeMm;
  if (
    typeof splitSizeMm === "number" &&
    !sheet.rows.some(({ values }) => values.sieve === splitSizeMm)
  ) {
    findings.push({
      severity: "error",
      code: "split-not-in-set",
      file,
      row: sheet.factRows.splitSizeMm,
      value: String(splitSizeMm),
      message: "The split sieve is not among the sieves of the table.",
      expected: "one of the table's sieves",
      wayOut: "Give the sieve at which the sample was divided.",
    });
  }
  checkWashed(sheet.factRows, facts, file, findings);
  if (findings.slice(before).some(({ severity }) => severity === "error")) return undefined;

  return {
    file,
    dryMassG: facts.dryMassG as number,
    washedDryMassG: facts.washedDryMassG as number | undefined,
    splits:
      typeof splitSizeMm === "number"
        ? [
            {
              sizeMm: splitSizeMm,
              dryMassG: facts.splitDryMassG as number,
              washedDryMassG: facts.splitWashedDryMassG as number | undefined,
            },
          ]
        : [],
    rows,
    panG: pan?.values.retainedG as number,
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
    ["splitDryMassG", "splitWashedDryMassG"],
  ]) {
    const [dry, washed] = [facts[before], facts[after]];
    if (typeof dry !== "number" || typeof washed !== "number" || washed <= dry) continue;
    findings.push({
      severity: "error",
      code: "washed-heavier",
      file,
      row: rows[after],
      value: String(washed),
      message: "The sample is heavier after washing than before.",
      expected: `at most ${dry} g`,
      wayOut: "Check the two masses; one of them may still hold the tin.",
    });
  }
}
