import { computeStudy } from "../study/computeStudy.js";
import { readStudy } from "../study/readStudy.js";
import type { StudyResult } from "../study/studyResult.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";
import { formatFindings } from "./formatFindings.js";

/**
 * Reads and computes a study for a command that needs it whole.
 *
 * @throws CommandError with all findings where the study has errors.
 */
export async function loadStudy(folder: string): Promise<StudyResult> {
  const { study, findings } = await readStudy(folder);
  const computed = study ? computeStudy(study, findings) : { findings, result: undefined };
  if (!computed.result) {
    throw new CommandError(
      EXIT.badInput,
      `${formatFindings(computed.findings)}\n\nNothing was written.`,
    );
  }
  return computed.result;
}
