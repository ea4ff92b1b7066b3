import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { plain } from "./cell.js";
import { noMix } from "./noMix.js";
import type { ReportBlock } from "./reportBlock.js";
import { siteCautions } from "./siteCautions.js";
import { siteOptionsOf } from "./siteOptionsOf.js";
import type { SiteOptions, SiteSheet } from "./siteSheet.js";

const LABELS = 8;
const MOST_LABELS = 200;
/** What fits a page of either size. */
const PER_PAGE = 8;

/**
 * Labels for the control blocks of the mix, two side by side, to cut out and tie on.
 *
 * A label keeps the block to its batch and lift, and says when it is to be tested: the age of the strength
 * that the study asks for.
 *
 * @param options.labels default 8, which is a page.
 * @throws RangeError where `labels` is not a whole number from 1 to 200. Source: own layout; how many blocks
 * to make is for the engineer and the code.
 */
export function siteBlockLabels(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const { labels = LABELS } = siteOptionsOf(result, options);
  if (!(Number.isInteger(labels) && labels >= 1 && labels <= MOST_LABELS)) {
    throw new RangeError(
      `invalid \`labels\`: ${labels}; expected a whole number from 1 to ${MOST_LABELS}`,
    );
  }
  const sheet = { name: "block-labels", title: say`Labels for control blocks` } as const;
  if (!result.mix) return { ...sheet, blocks: [noMix()] };
  const { recipe } = result.mix;
  const { ageDays } = result.config.strength.requirement;
  const label = (number: number) =>
    [
      say`Block ${number} · cement ${plain(recipe.cementPct)} %`,
      say`Batch ________ Lift ________`,
      say`Made on ________________`,
      say`Test at ${ageDays} days, on ________`,
      say`Cured: damp □ · as the wall □`,
    ].join("\n");
  const page = (first: number): ReportBlock => ({
    kind: "table",
    caption: say`Cut along the lines, tie on in a clear bag, scratch the number into the block`,
    columns: [{ header: "" }, { header: "" }],
    rows: Array.from({ length: Math.ceil(Math.min(PER_PAGE, labels - first + 1) / 2) }, (_, row) =>
      [first + 2 * row, first + 2 * row + 1].map((number) =>
        number <= labels ? label(number) : "–",
      ),
    ),
  });
  const blocks: ReportBlock[] = [page(1), siteCautions(["cured-strength"])];
  for (let first = PER_PAGE + 1; first <= labels; first += PER_PAGE) {
    blocks.push({ kind: "pageBreak" }, page(first));
  }
  return { ...sheet, blocks };
}
