import { basename, join, resolve } from "node:path";
import { countFindings, formatFindings } from "../findings/format.js";
import { notebookText } from "../notebook/notebookFile.js";
import { restateParameter } from "../notebook/parameters.js";
import { runNotebook } from "../notebook/runNotebook.js";
import type { OpenedStyle } from "../report/style/openReportStyle.js";
import type { StudyResult } from "../study/studyResult.js";
import { render } from "../words/render.js";
import { EXIT, parseCall } from "./call.js";
import { freshFolder, outputProblem, progressLine } from "./output.js";
import { appendixNotebook, packageFolder } from "./packageFiles.js";
import { REPORT_OPTIONS, reportChoices } from "./reportChoices.js";
import { runError, studyParameter } from "./runCommand.js";

const OPTIONS = {
  out: { type: "string" },
  replace: { type: "boolean" },
  ...REPORT_OPTIONS,
} as const;

/** `loambook appendix`: the technical appendix of a study as HTML and PDF. */
export async function makeAppendix(words: readonly string[]): Promise<number> {
  const call = parseCall("appendix", words, OPTIONS, true);
  const { template, standard, attach } = reportChoices(call);
  const study = call.place as string;
  const outFolder = freshFolder({
    wanted: call.text("out"),
    byDefault: resolve(`appendix-${basename(resolve(study))}`),
    replace: call.flag("replace"),
  });
  const progress = progressLine();
  progress.show("reading and computing the study");
  const notebookPath = join(packageFolder(), "notebooks", appendixNotebook(study));
  // The kernel takes seconds to start: meanwhile the study is checked here, and stops it if it has errors.
  const stop = new AbortController();
  const running = runNotebook({
    notebookPath,
    parameters: { studyFolder: studyParameter(notebookPath, study) },
    onProgress: ({ cell, cells }) => {
      if (cell > 0) progress.show(`notebook, cell ${cell} of ${cells}`);
    },
    signal: stop.signal,
  });
  // Awaited below; until then a rejection must not count as one that nobody looks at.
  running.catch(() => undefined);
  let result: StudyResult;
  let opened: OpenedStyle;
  try {
    const { openStudy } = await import("../study/openStudy.js");
    result = await openStudy(study);
    const { openStyle } = await import("./reportCommand.js");
    opened = await openStyle(study, result);
  } catch (problem) {
    stop.abort();
    await running.catch(() => "stopped, as asked");
    progress.clear();
    throw problem;
  }
  const { studyAttachments } = await import("../report/attachments.js");
  const { reportMeta } = await import("./reportChoices.js");
  const { writeReport } = await import("../report/writeReport.js");
  const { preloadReport } = await import("../report/writeReport.js");
  const [run] = await Promise.all([running, preloadReport()]);
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
  const { htmlPath, pdfPath, findings } = await writeReport({
    notebook: JSON.parse(notebookFile),
    meta: {
      ...reportMeta(result),
      layout: template ?? result.config.report?.template ?? "permit",
      style: opened.style,
    },
    name: "appendix",
    companions: {
      "appendix.ipynb": notebookFile,
      "result.json": `${JSON.stringify(result, undefined, 2)}\n`,
    },
    outFolder,
    replace: call.flag("replace"),
    standard,
    attachments: attach ? await studyAttachments(study, result) : undefined,
  }).catch((problem: unknown) => {
    throw outputProblem(outFolder, problem);
  });
  progress.clear();
  const all = [...opened.findings, ...findings];
  const shown = all.length > 0 ? `\n${formatFindings(all, result.config.language)}\n` : "";
  process.stdout.write(
    `${shown}The study has ${render(countFindings(result.findings))}; they stand in the appendix.\n\n` +
      `HTML  ${htmlPath}\nPDF   ${pdfPath}\n`,
  );
  return EXIT.ok;
}
