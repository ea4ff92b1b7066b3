import type { Finding } from "../findings/finding.js";
import { say } from "../words/message.js";

/** Where a finding stands, as one phrase: `sieve.csv, row 4, column Retained, "12x"`. */
function findingPlace(finding: Finding): string {
  const parts = [finding.file];
  if (finding.row !== undefined) parts.push(say`row ${finding.row}`);
  if (finding.column !== undefined) parts.push(finding.column);
  if (finding.value !== undefined) parts.push(`“${finding.value}”`);
  return parts.filter((part) => part !== "").join(", ");
}

/** The rest of a finding as running text: its place, what was expected, what to do. */
export function findingDetail(finding: Finding): string {
  return [
    findingPlace(finding),
    say`Expected: ${finding.expected}`,
    say`What to do: ${finding.remedy}`,
  ]
    .map((text) => (/[.!?]$/.test(text) ? text : `${text}.`))
    .join(" ");
}

/** How grave a finding is, as the word before it. */
export function severityWord(severity: Finding["severity"]): string {
  if (severity === "error") return say`Error`;
  return severity === "warning" ? say`Warning` : say`Note`;
}
