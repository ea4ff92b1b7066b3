import { photographsFigure } from "../figures/photographs.js";
import { filesAlreadyIn, writeFilesWhole } from "../notebook/wholeFolder.js";
import { compareTrials } from "../strength/trials.js";
import type { Photograph } from "../study/photographs.js";
import type { StudyResult } from "../study/studyResult.js";
import { trialDifferencesTable, trialsTable } from "../tables/trialBlocks.js";
import { say } from "../words/message.js";
import { drawnFigure } from "./drawnFigure.js";
import { renderHtml } from "./html/renderHtml.js";
import { renderPdf } from "./pdf/renderPdf.js";
import { numberNodes } from "./sections.js";
import { siteDocument, type WrittenSite } from "./writeSite.js";

/**
 * Writes what was seen on the trial blocks of a study as HTML and PDF: what was noted side by side, how far
 * the colours lie apart, and the photographs beside each other. It judges nothing.
 *
 * @param photographs of the study: see `readPhotographs`.
 * @throws RangeError when the folder holds something and `replace` is not set
 */
export async function writeLooks(
  result: StudyResult,
  photographs: readonly Photograph[],
  options: { readonly outFolder: string; readonly replace?: boolean },
): Promise<WrittenSite> {
  const present = await filesAlreadyIn(options.outFolder, options.replace);
  const looks = result.trials.flatMap((trial) => trial.looks ?? []);
  const seen = trialsTable(looks, result.config.units);
  const differences = compareTrials(looks);
  const sheet = siteDocument(
    {
      name: "trial-blocks",
      title: say`Trial blocks as they were seen`,
      blocks: differences.length > 0 ? [seen, trialDifferencesTable(differences)] : [seen],
    },
    result,
  );
  const { language } = result.config;
  const nodes = [...sheet.nodes];
  if (photographs.length > 0) {
    const figure = photographsFigure(say`Photographs of the trial blocks`, photographs);
    nodes.push(await drawnFigure(figure, "photographs-", language));
  }
  const meta = { ...sheet.meta, layout: "handout" } as const;
  const document = { ...sheet, meta, nodes: numberNodes(nodes, language) };
  const { pdf, findings } = await renderPdf(document);
  const files = { "trial-blocks.html": renderHtml(document), "trial-blocks.pdf": pdf };
  return { paths: await writeFilesWhole(options.outFolder, files, present), findings };
}
