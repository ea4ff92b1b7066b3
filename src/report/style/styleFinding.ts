import type { Finding } from "../../lab/finding.js";

/** Makes a finding about one entry of `report` in `study.yaml`. */
export function styleFinding(
  key: string,
  value: string,
  severity: Finding["severity"],
  code: string,
  words: readonly [message: string, expected: string, wayOut: string],
): Finding {
  const [message, expected, wayOut] = words;
  const column = `report.${key}`;
  return { severity, code, file: "study.yaml", column, value, message, expected, wayOut };
}
