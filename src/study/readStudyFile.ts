import { readFile, realpath, stat } from "node:fs/promises";
import { isAbsolute, join, relative, sep } from "node:path";
import type { Finding } from "../lab/finding.js";
import { STUDY_FILE } from "./parseStudyYaml.js";

/**
 * Reads a file that `study.yaml` names. Only files inside the study's own folder are opened,
 * also where a link points elsewhere.
 */
export async function readStudyFile(
  folder: string,
  file: string,
  key: string,
): Promise<{ bytes: Uint8Array } | { finding: Finding }> {
  const refuse = (code: string, message: string, expected: string, wayOut: string) => ({
    finding: {
      severity: "error" as const,
      code,
      file: STUDY_FILE,
      column: key,
      value: file,
      message,
      expected,
      wayOut,
    },
  });
  const outside = () =>
    refuse(
      "outside-study",
      "This file lies outside the study folder.",
      "a path below the study folder, such as sheets/sand.csv",
      "Copy the sheet into the study folder and name it there.",
    );
  const root = await realpath(folder);
  const path = join(root, file);
  if (isAbsolute(file) || !isBelow(root, path)) return outside();
  let target: string;
  try {
    target = await realpath(path);
  } catch {
    return refuse(
      "missing-sheet",
      "This file is not there.",
      "a file in the study folder",
      "Add the sheet, or correct its name; capital letters count.",
    );
  }
  if (!isBelow(root, target)) return outside();
  if (!(await stat(target)).isFile()) {
    return refuse(
      "missing-sheet",
      "This is not a file.",
      "a CSV or XLSX file",
      "Name the sheet itself.",
    );
  }
  if (!/\.(csv|xlsx)$/i.test(file)) {
    return refuse(
      "unknown-sheet-type",
      "This kind of file is not read.",
      "a file ending in .csv or .xlsx",
      "Save the sheet as CSV or as an Excel workbook (.xlsx).",
    );
  }
  return { bytes: await readFile(target) };
}

function isBelow(root: string, path: string): boolean {
  const way = relative(root, path);
  return way !== "" && way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}
