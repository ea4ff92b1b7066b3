import { readFile, realpath, stat } from "node:fs/promises";
import { isAbsolute, join, relative, sep } from "node:path";
import type { Finding } from "../lab/finding.js";
import { say } from "../words/say.js";
import { STUDY_FILE } from "./parseStudyYaml.js";
import { similarSheets } from "./similarSheets.js";

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
      say`This file lies outside the study folder.`,
      say`a path below the study folder, such as sheets/sand.csv`,
      say`Copy the sheet into the study folder and name it there.`,
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
      say`This file is not there.`,
      say`a file in the study folder`,
      await otherSheet(root, file),
    );
  }
  if (!isBelow(root, target)) return outside();
  if (!(await stat(target)).isFile()) {
    return refuse(
      "missing-sheet",
      say`This is not a file.`,
      say`a CSV or XLSX file`,
      say`Name the sheet itself.`,
    );
  }
  if (!/\.(csv|xlsx)$/i.test(file)) {
    return refuse(
      "unknown-sheet-type",
      say`This kind of file is not read.`,
      say`a file ending in .csv or .xlsx`,
      say`Save the sheet as CSV or as an Excel workbook (.xlsx).`,
    );
  }
  return { bytes: await readFile(target) };
}

/** What to do about a sheet that is not there: the file that was meant is mostly in the folder. */
async function otherSheet(root: string, file: string): Promise<string> {
  const { nearest, all } = await similarSheets(root, file);
  if (nearest !== undefined) {
    return say`Write ${nearest} if that sheet is meant; otherwise add the sheet. Capital letters count.`;
  }
  if (all.length === 0) return say`Add the sheet; there is none in the study folder yet.`;
  const shown = [...all.slice(0, 8), ...(all.length > 8 ? ["…"] : [])].join(", ");
  return say`Add the sheet, or name one that is there: ${shown}.`;
}

function isBelow(root: string, path: string): boolean {
  const way = relative(root, path);
  return way !== "" && way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}
