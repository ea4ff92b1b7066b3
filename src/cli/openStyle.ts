import { formatFindings } from "../lab/formatFindings.js";
import { type OpenedStyle, openReportStyle } from "../report/style/openReportStyle.js";
import type { StudyResult } from "../study/studyResult.js";
import { CommandError } from "./commandError.js";
import { EXIT } from "./exitCodes.js";

/**
 * Opens what the study's `report` entry names.
 *
 * @throws CommandError that lists the findings, where one of them is an error.
 */
export async function openStyle(study: string, { config }: StudyResult): Promise<OpenedStyle> {
  const opened = await openReportStyle(study, config.report);
  if (opened.findings.every(({ severity }) => severity !== "error")) return opened;
  throw new CommandError(
    EXIT.badInput,
    `${formatFindings(opened.findings)}\n\nNothing was written.`,
  );
}
