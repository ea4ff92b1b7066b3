import { say, sayOf } from "../words/say.js";
import type { Finding } from "./finding.js";

const SEVERITIES = ["error", "warning", "note"] as const;

/** Findings as plain text: errors first, each with its place, what was expected and the way out. */
export function formatFindings(findings: readonly Finding[]): string {
  const blocks = SEVERITIES.flatMap((severity) =>
    findings.filter((finding) => finding.severity === severity).map(formatFinding),
  );
  return [...blocks, countFindings(findings)].join("\n\n");
}

/** One line: “2 errors, 1 warning, 0 notes”. */
export function countFindings(findings: readonly Finding[]): string {
  const count = (severity: Finding["severity"]) =>
    findings.filter((finding) => finding.severity === severity).length;
  const [errors, warnings, notes] = SEVERITIES.map(count);
  return [
    errors === 1 ? say`1 error` : say`${errors} errors`,
    warnings === 1 ? say`1 warning` : say`${warnings} warnings`,
    notes === 1 ? say`1 note` : say`${notes} notes`,
  ].join(", ");
}

function formatFinding(finding: Finding): string {
  const { severity, file, row, column, value, message, expected, wayOut } = finding;
  const place = [
    plain(file),
    row === undefined ? undefined : say`row ${row}`,
    column === undefined ? undefined : say`column “${plain(column)}”`,
  ].filter(Boolean);
  const found = value === undefined ? "" : `: “${plain(value)}”`;
  const indent = " ".repeat(Math.max(9, sayOf(severity).length + 1));
  return [
    `${sayOf(severity).padEnd(indent.length)}${place.join(", ")}${found}`,
    `${indent}${plain(message)}`,
    say`${indent}Expected: ${plain(expected)}`,
    say`${indent}Way out: ${plain(wayOut)}`,
  ].join("\n");
}

/** A cell's text must not steer the terminal: control characters are shown, not sent. */
function plain(text: string): string {
  return text.replace(
    /\p{Cc}/gu,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}
