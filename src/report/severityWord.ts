import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";

/** How grave a finding is, as the word before it. */
export function severityWord(severity: Finding["severity"]): string {
  if (severity === "error") return say`Error`;
  return severity === "warning" ? say`Warning` : say`Note`;
}
