import { computeStudy } from "./computeStudy.js";
import { readStudy } from "./readStudy.js";
import { StudyError } from "./studyError.js";
import type { StudyResult } from "./studyResult.js";

/**
 * Reads and computes a study folder: what a notebook starts with.
 *
 * @param folder path of the study, relative to where the notebook stands.
 * @throws StudyError that lists every finding, where one of them is an error.
 */
export async function openStudy(folder: string): Promise<StudyResult> {
  const { study, findings } = await readStudy(folder);
  const computed = study ? computeStudy(study, findings) : { findings, result: undefined };
  if (computed.result) return computed.result;
  throw new StudyError(computed.findings);
}
