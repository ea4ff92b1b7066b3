import { readFile } from "node:fs/promises";
import { basename, extname, resolve } from "node:path";
import { annexKeys } from "../entries/report.js";
import { hasErrors } from "../findings/finding.js";
import { formatFindings } from "../findings/format.js";
import { studyAttachments } from "../report/attachments.js";
import { notebookTitle } from "../report/notebookToDocument.js";
import type { ReportMeta } from "../report/reportMeta.js";
import { openReportStyle } from "../report/style/openReportStyle.js";
import type { OpenedStyle } from "../report/style/styleFile.js";
import { writeReport } from "../report/writeReport.js";
import { openStudy } from "../study/openStudy.js";
import type { StudyResult } from "../study/studyResult.js";
import { CommandError, EXIT, misuse, oneOf, parseCall } from "./call.js";
import { findingsFirst, outFolder, writtenAt } from "./output.js";
import { REPORT_OPTIONS, reportChoices, reportMeta } from "./reportChoices.js";

const OPTIONS = {
  texts: ["study", "title", "date", "page", "language", "out", ...REPORT_OPTIONS.texts],
  flags: ["replace", ...REPORT_OPTIONS.flags],
};

async function readNotebookFile(path: string): Promise<object> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (problem) {
    throw new CommandError(EXIT.badInput, `${path} cannot be read: ${(problem as Error).message}`);
  }
  try {
    const notebook: unknown = JSON.parse(text);
    // throws for what is no notebook
    notebookTitle(notebook);
    return notebook as object;
  } catch (problem) {
    throw new CommandError(EXIT.badInput, `${path} is no notebook: ${(problem as Error).message}`);
  }
}

/** Whether the study's files are attached; a report without a date, or with files of no study, is a wrong call. */
function checkedAttach(attach: boolean, study?: string, date?: string): boolean {
  if (study !== undefined) return attach;
  if (date === undefined) {
    throw misuse(
      "A report carries a date: give --date year-month-day, or the --study it belongs to.",
    );
  }
  if (attach) throw misuse("--attach needs the --study whose files are to be attached.");
  return false;
}

const isWrongDate = (problem: unknown): problem is RangeError =>
  problem instanceof RangeError && /`meta\.date`/.test(problem.message);

/** `loambook report`: an executed notebook as HTML and PDF. */
export async function reportCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("report", words, OPTIONS, 1);
  const choices = reportChoices(call);
  const asked = {
    page: oneOf(call, "page", ["A4", "us-letter"]),
    language: oneOf(call, "language", ["en", "es"]),
  };
  const path = resolve(call.place);
  const notebook = await readNotebookFile(path);
  const study = call.text("study");
  const date = call.text("date");
  const attach = checkedAttach(choices.attach, study, date);
  const result = study === undefined ? undefined : await openStudy(study);
  const opened = study && result ? await openStyle(study, result) : undefined;
  const name = basename(path, extname(path));
  const ofStudy = result && reportMeta(result);
  const meta: ReportMeta = {
    language: asked.language ?? ofStudy?.language ?? "en",
    page: asked.page ?? ofStudy?.page ?? "A4",
    title: call.text("title") ?? notebookTitle(notebook) ?? ofStudy?.title ?? name,
    subtitle: ofStudy?.title,
    date: date ?? (ofStudy?.date as string),
    layout: choices.template ?? result?.config.report?.template ?? "permit",
    style: opened?.style,
    code: annexKeys(result?.config, choices.annexes).includes("code"),
  };
  const folder = outFolder(call, "report", name);
  const writing = writeReport({
    notebook,
    meta,
    name,
    outFolder: folder,
    replace: call.flag("replace"),
    standard: choices.standard,
    attachments: attach && study && result ? await studyAttachments(study, result) : undefined,
  }).catch((problem: unknown) => {
    throw isWrongDate(problem) ? misuse(problem.message) : problem;
  });
  const { htmlPath, pdfPath, findings } = await writtenAt(folder, writing);
  const all = [...(opened?.findings ?? []), ...findings];
  const shown = findingsFirst(all, result?.config.language ?? asked.language);
  process.stdout.write(`${shown}HTML  ${htmlPath}\nPDF   ${pdfPath}\n`);
  // The report is there and tells of a failed cell; a script must hear of it too.
  return hasErrors(all) ? EXIT.failedCell : EXIT.ok;
}

/**
 * Opens what the study's `report` entry names.
 *
 * @throws CommandError that lists the findings, where one of them is an error.
 */
export async function openStyle(study: string, { config }: StudyResult): Promise<OpenedStyle> {
  const opened = await openReportStyle(study, config.report, config.language);
  if (!hasErrors(opened.findings)) return opened;
  throw new CommandError(
    EXIT.badInput,
    `${formatFindings(opened.findings, config.language)}\n\nNothing was written.`,
  );
}
