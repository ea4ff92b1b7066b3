import { dirname, join, resolve } from "node:path";
import type { NotebookProgress, NotebookRun } from "../notebook/notebookRun.js";
import type { Timeouts } from "../notebook/runNotebook.js";
import type { StudyResult } from "../study/studyResult.js";
import { type Locale, languageOf } from "../words/render.js";
import { packageFolder } from "./packageFiles.js";
import { studyParameter } from "./runCommand.js";

export function appendixNotebook(locale: Locale): string {
  return languageOf(locale) === "es" ? "permit-appendix.es.ipynb" : "permit-appendix.ipynb";
}

/**
 * Runs the appendix's notebook in this process: its cells get the study's result that is there already. A
 * notebook whose cells are more than JavaScript runs in a kernel, which computes the study again.
 */
export async function runAppendixNotebook(
  study: string,
  result: StudyResult,
  annexes: string,
  tell: (progress: string) => void,
  timeouts: Timeouts,
): Promise<NotebookRun> {
  const notebookPath = join(packageFolder(), "notebooks", appendixNotebook(result.config.language));
  const given = {
    notebookPath,
    parameters: { studyFolder: studyParameter(notebookPath, study), annexes },
    timeouts,
    onProgress: ({ cell, cells }: NotebookProgress) => {
      if (cell > 0) tell(`notebook, cell ${cell} of ${cells}`);
    },
  };
  const { runNotebookHere } = await import("../notebook/runHere.js");
  const run = await runNotebookHere({
    ...given,
    async lend(name, showIn) {
      if (name !== "loambook") return import(name);
      const loam = await import("../index.js");
      const besideNotebook = (folder: string) => resolve(dirname(notebookPath), folder);
      const openPhotographs: typeof loam.openPhotographs = (folder, computed) =>
        loam.openPhotographs(besideNotebook(folder), computed);
      const openStudy: typeof loam.openStudy = async (folder, options = {}) => {
        if (typeof folder !== "string") return loam.openStudy(folder, options);
        const path = besideNotebook(folder);
        const { language = languageOf(result.config.language), change } = options;
        const same = path === resolve(study) && language === languageOf(result.config.language);
        return same && change === undefined ? result : loam.openStudy(path, options);
      };
      return { ...loam, openPhotographs, openStudy, showIn, show: showIn("en") };
    },
  });
  if (run !== undefined) return run;
  const { runNotebook } = await import("../notebook/runNotebook.js");
  return runNotebook(given);
}
