import { realpath, stat } from "node:fs/promises";
import { isAbsolute, join, relative, sep } from "node:path";
import { type Finding, type FindingWords, finding, type Severity } from "../../findings/finding.js";
import { say, type Text } from "../../words/message.js";
import type { ReportStyle } from "../reportMeta.js";

/** Largest file that is read; a logo or a style sheet is far smaller, a font of many signs is near it. */
const MAX_BYTES = 40_000_000;

function isBelow(root: string, path: string): boolean {
  const way = relative(root, path);
  return way !== "" && way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

const OUTSIDE: FindingWords = {
  message: say`This lies outside the study folder.`,
  expected: say`a path below the study folder, such as brand/logo.svg`,
  remedy: say`Copy it into the study folder and name it there.`,
};
const EXPECTED: Readonly<Record<"file" | "folder", Text>> = {
  file: say`a file in the study folder`,
  folder: say`a folder in the study folder`,
};

/**
 * Finds what `report` in `study.yaml` names. Nothing outside the study's own folder is opened, also
 * where a link points elsewhere.
 */
export async function stylePath(
  folder: string,
  file: string,
  key: string,
  kind: "file" | "folder",
): Promise<{ path: string } | { finding: Finding }> {
  const refuse = (code: string, words: FindingWords) => ({
    finding: styleFinding(key, file, "error", code, words),
  });
  const root = await realpath(folder);
  const wanted = join(root, file);
  if (isAbsolute(file) || !isBelow(root, wanted)) return refuse("outside-study", OUTSIDE);
  let path: string;
  try {
    path = await realpath(wanted);
  } catch (problem) {
    const reason = (problem as NodeJS.ErrnoException).code ?? say`unknown reason`;
    return refuse("missing-report-file", {
      message: say`This cannot be found or opened (${reason}).`,
      expected: EXPECTED[kind],
      remedy: say`Add it, or correct its name; capital letters count.`,
    });
  }
  if (!isBelow(root, path)) return refuse("outside-study", OUTSIDE);
  const found = await stat(path);
  if (kind === "file" ? !found.isFile() : !found.isDirectory()) {
    return refuse("missing-report-file", {
      message: kind === "file" ? say`This is not a file.` : say`This is not a folder.`,
      expected: EXPECTED[kind],
      remedy: say`Correct the entry in study.yaml.`,
    });
  }
  if (kind === "file" && found.size > MAX_BYTES) {
    return refuse("report-file-too-large", {
      message: say`This file is too large to stand in a report (${Math.round(found.size / 1e6)} MB).`,
      expected: say`at most ${MAX_BYTES / 1e6} MB`,
      remedy: say`Make it smaller.`,
    });
  }
  return { path };
}

/** What a report is to wear, or a part of it, and what was found while reading it. */
export interface OpenedStyle {
  readonly style: ReportStyle;
  readonly findings: readonly Finding[];
}

export function styleFinding(
  key: string,
  value: string,
  severity: Severity,
  code: string,
  words: FindingWords,
): Finding {
  return finding({ file: "study.yaml", column: `report.${key}`, value }, severity, code, words);
}
