import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { STUDY_FILE } from "../findings/finding.js";

/** The folder of this package: examples and notebooks are found from here, wherever the command is called. */
export function packageFolder(): string {
  return fileURLToPath(new URL("../..", import.meta.url));
}

/**
 * The appendix's notebook in the language of a study. It is asked for before the study is read, because the
 * kernel takes seconds to start: a glance at the one line is enough, and all else is checked later.
 */
export function appendixNotebook(study: string): string {
  let text = "";
  try {
    text = readFileSync(join(study, STUDY_FILE), "utf8");
  } catch {
    // Told with all that belongs to it when the study is read.
  }
  return /^language:\s*["']?es\b/m.test(text)
    ? "permit-appendix.es.ipynb"
    : "permit-appendix.ipynb";
}
