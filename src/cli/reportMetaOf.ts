import type { ReportMeta } from "../report/reportMeta.js";
import type { StudyResult } from "../study/studyResult.js";

/** What the title page of a study's appendix says. */
export function reportMeta({ config, madeWith }: StudyResult): ReportMeta {
  return {
    title: config.title,
    subtitle: "Technical appendix: soil, blend, strength and mix",
    place: config.place,
    date: config.date,
    language: "en",
    invented: config.invented,
    page: config.page,
    keywords: [
      "rammed earth",
      "cement-stabilised earth",
      "grading",
      "blend",
      "compressive strength",
    ],
    madeWith,
  };
}
