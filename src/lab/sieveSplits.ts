import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { SheetValues } from "./sheetLayout.js";
import { MOST_SPLITS, splitName } from "./sieveLayout.js";
import type { SieveSplit } from "./sieveRecord.js";

/** Reads the splits of a sieve sheet, coarsest first; a finding for each that cannot be. */
export function sieveSplits(
  { file, facts, factRows, rows }: SheetValues,
  findings: Finding[],
): SieveSplit[] {
  const splits: SieveSplit[] = [];
  for (let index = 0; index < MOST_SPLITS; index++) {
    const name = splitName(index);
    const key = (part: string) => `split${index}${part}`;
    const given = ["SizeMm", "DryMassG"].filter((part) => key(part) in factRows);
    const washedRow = factRows[key("WashedDryMassG")];
    if (given.length === 0 && washedRow === undefined) continue;
    if (given.length < 2) {
      findings.push({
        severity: "error",
        code: "incomplete-split",
        file,
        row: given.length ? factRows[key(given[0])] : washedRow,
        message: say`The split is described only in part.`,
        expected: say`both “${name} sieve (mm)” and “${name} dry mass (g)”`,
        wayOut: say`Add the missing line, or take the other one out.`,
      });
      continue;
    }
    const sizeMm = facts[key("SizeMm")];
    const dryMassG = facts[key("DryMassG")];
    if (typeof sizeMm !== "number" || typeof dryMassG !== "number") continue;
    const row = factRows[key("SizeMm")];
    if (!rows.some(({ values }) => values.sieve === sizeMm)) {
      findings.push({
        severity: "error",
        code: "split-not-in-set",
        file,
        row,
        value: String(sizeMm),
        message: say`The split sieve is not among the sieves of the table.`,
        expected: say`one of the table's sieves`,
        wayOut: say`Give the sieve at which the sample was divided.`,
      });
    }
    const above = splits.at(-1);
    if (above && sizeMm >= above.sizeMm) {
      findings.push({
        severity: "error",
        code: "split-order",
        file,
        row,
        value: String(sizeMm),
        message: say`This split is not finer than the one before it (${above.sizeMm} mm).`,
        expected: say`splits from the coarsest to the finest`,
        wayOut: say`Number the splits in the order in which the sample was divided.`,
      });
    }
    const washedDryMassG = facts[key("WashedDryMassG")] as number | undefined;
    splits.push({ sizeMm, dryMassG, washedDryMassG });
  }
  return splits;
}
