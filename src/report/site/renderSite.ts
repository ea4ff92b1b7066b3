import type { Finding } from "../../lab/finding.js";
import type { StudyResult } from "../../study/studyResult.js";
import type { SiteSheet } from "../../tables/siteSheet.js";
import { renderHtml } from "../html/renderHtml.js";
import { renderPdf } from "../pdf/renderPdf.js";
import { siteDocument } from "./siteDocument.js";

/** The sheets' files, by name. */
export interface RenderedSite {
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly findings: readonly Finding[];
}

/** Renders each sheet as one HTML and one PDF file; the same sheets give the same bytes. */
export async function renderSite(
  sheets: readonly SiteSheet[],
  result: Pick<StudyResult, "config" | "madeWith">,
): Promise<RenderedSite> {
  const files: Record<string, string | Uint8Array> = {};
  const findings: Finding[] = [];
  for (const sheet of sheets) {
    const document = siteDocument(sheet, result);
    files[`${sheet.name}.html`] = renderHtml(document);
    const { pdf, findings: found } = await renderPdf(document);
    files[`${sheet.name}.pdf`] = pdf;
    findings.push(...found);
  }
  return { files, findings };
}
