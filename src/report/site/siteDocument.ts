import type { StudyResult } from "../../study/studyResult.js";
import type { SiteSheet } from "../../tables/siteSheet.js";
import { currentLanguage } from "../../words/language.js";
import type { ReportDocument } from "../documentNode.js";

/** A site sheet as a document to render: large type, no contents, nothing numbered. */
export function siteDocument(
  sheet: SiteSheet,
  { config, madeWith }: Pick<StudyResult, "config" | "madeWith">,
): ReportDocument {
  return {
    meta: {
      title: sheet.title,
      subtitle: config.title,
      place: config.place,
      date: config.date,
      language: currentLanguage(),
      invented: config.invented,
      page: config.page,
      layout: "sheet",
      keywords: ["rammed earth", "site sheet"],
      madeWith,
    },
    nodes: sheet.blocks,
    annex: [],
    findings: [],
  };
}
