import type { ReportMeta } from "../report/reportMeta.js";
import type { StudyResult } from "../study/studyResult.js";
import { currentLanguage } from "../words/language.js";
import { say } from "../words/say.js";

/** What the title page of a study's appendix says. */
export function reportMeta({ config, madeWith }: StudyResult): ReportMeta {
  return {
    title: config.title,
    subtitle: say`Technical appendix: soil, blend, strength and mix`,
    place: config.place,
    date: config.date,
    language: currentLanguage(),
    invented: config.invented,
    page: config.page,
    keywords: [
      say`rammed earth`,
      say`cement-stabilised earth`,
      say`grading`,
      say`blend`,
      say`compressive strength`,
    ],
    madeWith,
  };
}
