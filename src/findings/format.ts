import { say, type Text, wordFor } from "../words/message.js";
import { type Locale, render } from "../words/render.js";
import type { Finding, Severity } from "./finding.js";

const SEVERITIES: readonly Severity[] = ["error", "warning", "note"];

/**
 * Findings as plain text: errors first, each with its place, what was expected and the remedy.
 *
 * @param locale default `en`.
 */
export function formatFindings(findings: readonly Finding[], locale: Locale = "en"): string {
  const blocks = SEVERITIES.flatMap((severity) =>
    findings
      .filter((finding) => finding.severity === severity)
      .map((finding) => formatFinding(finding, locale)),
  );
  return [...blocks, render(countFindings(findings), locale)].join("\n\n");
}

/**
 * How many findings of each kind there are.
 *
 * @example
 * render(countFindings([])) // => "0 errors, 0 warnings, 0 notes"
 */
export function countFindings(findings: readonly Finding[]): Text {
  const [errors, warnings, notes] = SEVERITIES.map(
    (severity) => findings.filter((finding) => finding.severity === severity).length,
  );
  return say`${errors}{0, plural, one { error} other { errors}}, ${warnings}{1, plural, one { warning} other { warnings}}, ${notes}{2, plural, one { note} other { notes}}`;
}

function formatFinding(finding: Finding, locale: Locale): string {
  const { severity, file, row, column, value, message, expected, remedy } = finding;
  const said = (text: Text) => render(text, locale);
  const place = [plain(file)];
  if (row !== undefined) place.push(said(say`row ${row}`));
  if (column !== undefined) place.push(said(say`column “${plain(column)}”`));
  const found = value === undefined ? "" : `: “${plain(said(value))}”`;
  const label = said(wordFor(severity));
  const indent = " ".repeat(Math.max(9, label.length + 1));
  return [
    `${label.padEnd(indent.length)}${place.join(", ")}${found}`,
    `${indent}${plain(said(message))}`,
    said(say`${indent}Expected: ${plain(said(expected))}`),
    said(say`${indent}Remedy: ${plain(said(remedy))}`),
  ].join("\n");
}

/** A cell's text must not steer the terminal: control characters are shown, not sent. */
export function plain(text: string): string {
  return text.replace(
    /\p{Cc}/gu,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}
