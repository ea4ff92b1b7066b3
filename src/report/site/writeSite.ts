import { join, resolve } from "node:path";
import type { Finding } from "../../lab/finding.js";
import type { StudyResult } from "../../study/studyResult.js";
import { mixCard } from "../../tables/mixCard.js";
import { siteFieldTests } from "../../tables/siteFieldTests.js";
import { siteOrderList } from "../../tables/siteOrderList.js";
import type { SiteOptions } from "../../tables/siteSheet.js";
import { siteSheets } from "../../tables/siteSheets.js";
import { folderToFill } from "../folderToFill.js";
import { writeWhole } from "../writeWhole.js";
import { renderSite } from "./renderSite.js";

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
 * The study's `site` says what the crew works with; an option given here stands before it.
 *
 * @param options.outFolder made when it is not there; `replace` lets files in it be exchanged.
 * @param options.fieldTests, @param options.orderList, @param options.card (the whole mix on one page) default false.
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
  const folder = resolve(outFolder);
  const present = await folderToFill(outFolder, replace);
  const sheets = [
    ...siteSheets(result, site),
    ...(card ? [mixCard(result)] : []),
    ...(orderList ? [siteOrderList(result, site)] : []),
    ...(fieldTests ? [siteFieldTests()] : []),
  ];
  const { files, findings } = await renderSite(sheets, result);
  await writeWhole(folder, files, present);
  return { paths: Object.keys(files).map((name) => join(folder, name)), findings };
}
