import { basename, resolve } from "node:path";
import { annexKeys } from "../entries/report.js";
import { countFindings } from "../findings/format.js";
import { notebookText } from "../notebook/notebookFile.js";
import { restateParameter } from "../notebook/parameters.js";
import { studyTitle } from "../study/study.js";
import type { StudyResult } from "../study/studyResult.js";
import { render } from "../words/render.js";
import { runAppendixNotebook } from "./appendixNotebook.js";
import { EXIT, parseCall } from "./call.js";
import { findingsFirst, outFolder, progressLine, writtenAt } from "./output.js";
import { REPORT_OPTIONS, reportChoices } from "./reportChoices.js";
import { runError, TIMEOUT_OPTIONS, timeoutsOf } from "./runCommand.js";

const OPTIONS = {
  texts: ["out", ...REPORT_OPTIONS.texts, ...TIMEOUT_OPTIONS],
  flags: ["replace", ...REPORT_OPTIONS.flags],
};

/** `loambook appendix`: the technical appendix of a study as HTML and PDF. */
export async function makeAppendix(words: readonly string[]): Promise<number> {
  const call = parseCall("appendix", words, OPTIONS, 1);
  const { template, standard, attach, annexes } = reportChoices(call);
  const timeouts = timeoutsOf(call);
  const study = call.place;
  const folder = outFolder(call, "appendix");
  const progress = progressLine();
  progress.show("reading and computing the study");
  const { openStudy } = await import("../study/openStudy.js");
  const { openStyle } = await import("./reportCommand.js");
  const result = await openStudy(study).finally(progress.clear);
  const opened = await openStyle(study, result);
  process.stdout.write(`${firstWords(result)}\n`);
  const run = await runAppendixNotebook(study, result, annexes, progress.show, timeouts);
  if (run.status !== "done") {
    progress.clear();
    throw runError(run);
  }
  progress.show("setting the pages");
  // A permit document names no folder of the machine, and moving the study changes no byte of it.
  // Rendered as it is written, so that the file gives the same pages again.
  const notebookFile = notebookText(
    restateParameter(run.notebook, "studyFolder", basename(resolve(study))),
  );
  const { studyAttachments } = await import("../report/attachments.js");
  const { reportMeta } = await import("./reportChoices.js");
  const { writeReport } = await import("../report/writeReport.js");
  const writing = writeReport({
    notebook: JSON.parse(notebookFile),
    meta: {
      ...reportMeta(result),
      layout: template ?? result.config.report?.template ?? "permit",
      style: opened.style,
      code: annexKeys(result.config, annexes).includes("code"),
    },
    name: "appendix",
    companions: {
      "appendix.ipynb": notebookFile,
      "result.json": `${JSON.stringify(result, undefined, 2)}\n`,
    },
    outFolder: folder,
    replace: call.flag("replace"),
    standard,
    attachments: attach ? await studyAttachments(study, result) : undefined,
  });
  const { htmlPath, pdfPath, findings } = await writtenAt(folder, writing);
  progress.clear();
  const shown = findingsFirst([...opened.findings, ...findings], result.config.language);
  process.stdout.write(`${shown}HTML  ${htmlPath}\nPDF   ${pdfPath}\n`);
  return EXIT.ok;
}

/** What is known once the study is computed, seconds before its pages are there. */
export function firstWords({ config, testing, findings }: StudyResult): string {
  const state = testing === undefined ? "" : `${render(testing.message, config.language)}\n`;
  return `${studyTitle(config)}\n${state}The study has ${render(countFindings(findings))}; they stand in the appendix.\n`;
}
