import type { Finding } from "../lab/finding.js";

/** Where a finding stands, as one phrase: `sieve.csv, row 4, column Retained, "12x"`. */
export function findingPlace(finding: Finding): string {
  const parts = [finding.file];
  if (finding.row !== undefined) parts.push(`row ${finding.row}`);
  if (finding.column !== undefined) parts.push(finding.column);
  if (finding.value !== undefined) parts.push(`“${finding.value}”`);
  return parts.filter((part) => part !== "").join(", ");
}
