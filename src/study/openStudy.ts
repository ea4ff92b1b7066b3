import type { Language } from "../words/render.js";
import { computeStudy } from "./computeStudy.js";
import { readStudy } from "./readStudy.js";
import { type Study, StudyError } from "./study.js";
import type { StudyResult } from "./studyResult.js";

/**
 * Reads and computes a study: what a notebook starts with.
 *
 * @param place path of the study's folder, relative to where the notebook stands, or paths of sheets alone.
 * @param options.language that of the notebook's own words, where tables and findings are to speak it whatever
 * the study says; a study in the same language keeps its country. Default the study's.
 * @param options.change makes the study to compute of the one that was read: one thing is tried, and the files
 * stay as they are.
 * @throws StudyError that lists every finding, where one of them is an error.
 */
export async function openStudy(
  place: string | readonly string[],
  options: {
    readonly language?: Language;
    readonly change?: (study: Study) => Study;
  } = {},
): Promise<StudyResult> {
  return (await openWithSheets(place, options)).result;
}

/**
 * The same, with the study as it was read: its entries and sheets beside what was computed of them.
 *
 * @throws StudyError as `openStudy`.
 */
export async function openWithSheets(
  place: string | readonly string[],
  options: Parameters<typeof openStudy>[1] = {},
): Promise<{ readonly study: Study; readonly result: StudyResult }> {
  const { change = (study: Study) => study } = options;
  const { study: read, findings, locale } = await readStudy(place, options);
  if (!read) throw new StudyError(findings, locale);
  const study = change(read);
  const computed = computeStudy(study, findings);
  if (computed.result) return { study, result: computed.result };
  throw new StudyError(computed.findings, locale);
}
