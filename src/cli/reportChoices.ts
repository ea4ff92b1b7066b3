import { ANNEX_KEYS, annexKeys } from "../entries/report.js";
import {
  dayOfMaking,
  PDF_STANDARDS,
  REPORT_TEMPLATES,
  type ReportMeta,
} from "../report/reportMeta.js";
import { studyTitle } from "../study/study.js";
import type { StudyResult } from "../study/studyResult.js";
import { say, type Text } from "../words/message.js";
import { languageOf, render } from "../words/render.js";
import { type Call, misuse } from "./call.js";

export const REPORT_OPTIONS = {
  texts: ["template", "standard", "annexes"],
  flags: ["attach"],
} as const;

/**
 * Reads the options of a report: with `--attach` the standard is a-3a, without it a-2a. Where the study's own
 * entry, or the default, decides, there is no template, and the annexes are empty.
 *
 * @throws CommandError for a name that is not known, and for files attached under a standard that forbids it.
 */
export function reportChoices(call: Call) {
  const attach = call.flag("attach");
  const asked = call.text("standard") ?? (attach ? "a-3a" : "a-2a");
  const standard = PDF_STANDARDS.find((name) => name === asked);
  if (standard === undefined) {
    throw misuse(`Unknown PDF standard “${asked}”: give ${PDF_STANDARDS.join(", ")}.`);
  }
  if (attach && standard !== "a-3a") {
    throw misuse(`--attach goes with the standard a-3a only, not with ${standard}.`);
  }
  const wanted = call.text("template");
  const template = REPORT_TEMPLATES.find((name) => name === wanted);
  if (wanted !== undefined && template === undefined) {
    throw misuse(`Unknown template “${wanted}”: give ${REPORT_TEMPLATES.join(" or ")}.`);
  }
  const annexes = call.text("annexes") ?? "";
  try {
    annexKeys({}, annexes);
  } catch (problem) {
    if (!(problem instanceof RangeError)) throw problem;
    throw misuse(
      `Unknown annex in “${annexes}”: give all, none, or some of ${ANNEX_KEYS.join(", ")}.`,
    );
  }
  return { template, standard, attach, annexes };
}

/** What the title page of a study's appendix says. */
export function reportMeta({ config, madeWith }: StudyResult): ReportMeta {
  const said = (text: Text) => render(text, config.language);
  return {
    title: studyTitle(config),
    subtitle: said(say`Technical appendix: soil, blend, strength and mix`),
    place: config.place,
    date: config.date ?? dayOfMaking(),
    language: languageOf(config.language),
    invented: config.invented,
    page: config.page,
    keywords: [
      say`rammed earth`,
      say`cement-stabilised earth`,
      say`grading`,
      say`blend`,
      say`compressive strength`,
    ].map(said),
    madeWith,
  };
}
