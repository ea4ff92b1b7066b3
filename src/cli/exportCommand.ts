import { readdir } from "node:fs/promises";
import { basename, resolve } from "node:path";
import { countFindings } from "../findings/format.js";
import { restateParameter } from "../notebook/parameters.js";
import { filesAlreadyIn, writeFilesWhole } from "../notebook/wholeFolder.js";
import { EXPORTED, exportFiles } from "../report/export/exportFiles.js";
import { notebookToDocument } from "../report/notebookToDocument.js";
import { openStudy } from "../study/openStudy.js";
import { studyTitle } from "../study/study.js";
import { render } from "../words/render.js";
import { runAppendixNotebook } from "./appendixNotebook.js";
import { EXIT, parseCall } from "./call.js";
import { outFolder, progressLine, writtenAt } from "./output.js";
import { reportMeta } from "./reportChoices.js";
import { runError, TIMEOUT_OPTIONS, timeoutsOf } from "./runCommand.js";

const OPTIONS = { texts: ["out", ...TIMEOUT_OPTIONS], flags: ["replace"] };

/** `loambook export`: tables, figures and the result of a study for other programs. */
export async function exportCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("export", words, OPTIONS, 1);
  const timeouts = timeoutsOf(call);
  const study = call.place;
  const folder = outFolder(call, "export");
  const progress = progressLine();
  progress.show("reading and computing the study");
  const result = await openStudy(study);
  const run = await runAppendixNotebook(study, result, "all", progress.show, timeouts);
  if (run.status !== "done") {
    progress.clear();
    throw runError(run);
  }
  progress.show("writing tables and figures");
  const { nodes } = notebookToDocument(
    restateParameter(run.notebook, "studyFolder", basename(resolve(study))),
    reportMeta(result),
  );
  const files = {
    ...exportFiles(nodes, studyTitle(result.config), result.config.language),
    "result.json": `${JSON.stringify(result, undefined, 2)}\n`,
  };
  const present = filesAlreadyIn(folder, call.flag("replace"));
  const writing = present.then((names) => writeFilesWhole(folder, files, names));
  await writtenAt(folder, writing).finally(progress.clear);
  const count = (pattern: RegExp) => Object.keys(files).filter((name) => pattern.test(name)).length;
  process.stdout.write(
    `${count(/^(table|list)-/)} tables (CSV, and all in tables.xlsx), ${count(/\.svg$/)} figures (SVG, PNG), result.json: ${folder}\n` +
      `contents.csv says what is in which file. The study has ${render(countFindings(result.findings))}.\n`,
  );
  const old = (await readdir(folder)).filter((name) => EXPORTED.test(name) && !(name in files));
  if (old.length > 0) {
    process.stdout.write(
      `\nFrom an earlier export, and not part of this one:\n${old.map((name) => `  ${name}\n`).join("")}`,
    );
  }
  return EXIT.ok;
}
