import type { Finding } from "../findings/finding.js";
import { filesAlreadyIn, writeFilesWhole } from "../notebook/wholeFolder.js";
import { studyTitle } from "../study/study.js";
import type { StudyResult } from "../study/studyResult.js";
import { siteOrderList } from "../tables/quantities.js";
import { siteSheets } from "../tables/site/crewCards.js";
import { siteFieldTests } from "../tables/site/fieldTestForms.js";
import { mixCard } from "../tables/site/mixCard.js";
import type { SiteOptions, SiteSheet } from "../tables/site/siteSheet.js";
import { trialCard, trialLooksCard } from "../tables/site/trialCard.js";
import { stateInShort } from "../tables/trials.js";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import type { ReportDocument } from "./document.js";
import { renderHtml } from "./html/renderHtml.js";
import { renderPdf } from "./pdf/renderPdf.js";
import { dayOfMaking } from "./reportMeta.js";

/** Where the sheets are and what was found while making them. */
export interface WrittenSite {
  /** Of every file, HTML and PDF. */
  readonly paths: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * Writes the sheets that a crew prints, each as HTML and PDF: bucket card, making and curing log, block
 * labels, moisture check, in the study's units and page size; and the order list and field-test forms where asked for.
 * All files are written whole or not at all.
 *
 * A blend that was not tested gets the card of its trial batch and the card to judge its blocks by, alone.
 *
 * The study's `site` says what the crew works with; an option given here stands before it.
 *
 * @param options.outFolder made when it is not there; `replace` lets files in it be exchanged.
 * @param options.fieldTests default false.
 * @param options.orderList default false.
 * @param options.card the whole mix on one page; default false.
 * @throws RangeError when the folder holds something and `replace` is not set, or for options out of range
 */
export async function writeSite(
  result: StudyResult,
  options: SiteOptions & {
    readonly outFolder: string;
    readonly replace?: boolean;
    readonly fieldTests?: boolean;
    readonly orderList?: boolean;
    readonly card?: boolean;
  },
): Promise<WrittenSite> {
  const { outFolder, replace, fieldTests = false, orderList = false, card, ...site } = options;
  const present = await filesAlreadyIn(outFolder, replace);
  const wall = [
    ...siteSheets(result, site),
    ...(card ? [mixCard(result, site)] : []),
    ...(orderList ? [siteOrderList(result, site)] : []),
  ];
  // A blend that was not tested has sheets for test blocks, and none for a wall.
  const sheets = [
    ...(result.proposal ? [trialCard(result), trialLooksCard(result)] : wall),
    ...(fieldTests ? [siteFieldTests(undefined, result.config.units)] : []),
  ];
  const { files, findings } = await renderSite(sheets, result);
  return { paths: await writeFilesWhole(outFolder, files, present), findings };
}

type SheetStudy = Pick<StudyResult, "config" | "madeWith"> &
  Partial<Pick<StudyResult, "testing" | "mix">>;

/** Renders each sheet as one HTML and one PDF file, by their names; the same sheets give the same bytes. */
export async function renderSite(
  sheets: readonly SiteSheet[],
  result: SheetStudy,
): Promise<{
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly findings: readonly Finding[];
}> {
  const files: Record<string, string | Uint8Array> = {};
  const findings: Finding[] = [];
  for (const sheet of sheets) {
    const document = siteDocument(sheet, result);
    const { pdf, printScale, findings: found } = await renderPdf(document);
    const meta = { ...document.meta, printScale };
    files[`${sheet.name}.html`] = renderHtml({ ...document, meta });
    files[`${sheet.name}.pdf`] = pdf;
    findings.push(...found);
  }
  return { files, findings };
}

/** What hangs beside the mixer: a page, whatever has to stand on it. */
const CARDS: ReadonlySet<SiteSheet["name"]> = new Set([
  "bucket-card",
  "mix-card",
  "moisture-check",
  "trial-card",
]);

/** A site sheet as a document to render: large type, no contents, nothing numbered. */
export function siteDocument(
  sheet: SiteSheet,
  { config, madeWith, testing, mix }: SheetStudy,
): ReportDocument {
  const inDoubt = mix !== undefined && mix.record.doubts.length > 0;
  const state = inDoubt
    ? say`tested mix in doubt: do not build yet`
    : testing && stateInShort(testing);
  return {
    meta: {
      title: render(sheet.title, config.language),
      subtitle: state
        ? `${studyTitle(config)} · ${render(state, config.language)}`
        : studyTitle(config),
      place: config.place,
      date: config.date ?? dayOfMaking(),
      language: config.language,
      invented: config.invented,
      page: config.page,
      layout: "sheet",
      onePage: CARDS.has(sheet.name),
      keywords: ["rammed earth", "site sheet"],
      madeWith,
    },
    nodes: sheet.blocks,
    annex: [],
    findings: [],
  };
}
