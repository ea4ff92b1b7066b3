import { formatFixed } from "../quantities/formatNumber.js";
import { say, sayOf } from "../words/say.js";
import { checkFraction, checkPositive } from "./checkOption.js";
import { type PlannedBlock, planBlocks } from "./planBlocks.js";
import { differencePower, meanHalfWidth, type ProgrammeAim } from "./programmeSize.js";
import { STRENGTH_FORMS, type StrengthForm } from "./strengthForm.js";

export interface TestProgramme {
  readonly status: "ok" | "too-many-blocks" | "too-few-contents" | "outside-contents";
  readonly message: string;
  readonly contentsPct: readonly number[];
  readonly blocksAContent: number | null;
  readonly batchesAContent: number;
  /** Reached with that number, by calculation; null where it is not the aim. */
  readonly power: number | null;
  readonly halfWidthMpa: number | null;
  /** In the order of making. */
  readonly blocks: readonly PlannedBlock[];
}

export interface TestProgrammeOptions {
  readonly aim: ProgrammeAim;
  readonly contentsPct: readonly number[];
  /** Expected standard deviation of blocks of one content: from earlier work, or a cautious guess. */
  readonly sdMpa: number;
  readonly ageDays: number;
  /** Default `linear`; the power form is not planned for, its scatter being on ln f. */
  readonly form?: Exclude<StrengthForm, "power">;
  /** Mixed on different days; default 2. */
  readonly batchesAContent?: number;
  /** Default 1. */
  readonly seed?: number;
}

/** More than this many a content nobody crushes. */
const MOST = 60;

/**
 * Plans how many blocks to make at which contents, and in which order to make and crush them.
 *
 * The fewest blocks a content, in whole batches, that reach the aim: the power of a t test between two
 * contents (s pooled over all), or the half width of the mean's band at a content. Both as `sdMpa` and
 * independent blocks would have it: where batches differ, count batches and not blocks. The order is
 * random by `seed`, so that a drift of moisture or weather is not taken for cement.
 *
 * @throws RangeError for numbers not above 0, or a power outside 0 to 1.
 * Source: noncentral t, e.g. Montgomery, Design and Analysis of Experiments (from memory); proved beside
 * SciPy in `tests/strength`.
 *
 * @example
 * const plan = testProgramme({ aim: { kind: "difference", differenceMpa: 0.3 }, contentsPct: [4, 6, 8, 10], sdMpa: 0.2, ageDays: 28 });
 * [plan.blocksAContent, plan.power] // => [10, 0.9038]
 */
export function testProgramme(options: TestProgrammeOptions): TestProgramme {
  const { aim, sdMpa, ageDays, form = "linear", batchesAContent = 2, seed = 1 } = options;
  checkPositive("sdMpa", sdMpa);
  checkPositive("ageDays", ageDays);
  options.contentsPct.forEach((content, index) => {
    if (!(Number.isFinite(content) && content >= 0)) {
      throw new RangeError(`invalid \`contentsPct[${index}]\`: ${content}; expected 0 or above`);
    }
  });
  if (!(Number.isInteger(batchesAContent) && batchesAContent > 0)) {
    throw new RangeError(
      `invalid \`batchesAContent\`: ${batchesAContent}; expected a whole number above 0`,
    );
  }
  const wantedPower = aim.kind === "difference" ? (aim.power ?? 0.9) : null;
  if (aim.kind === "difference") {
    checkPositive("aim.differenceMpa", aim.differenceMpa);
    checkFraction("aim.power", wantedPower!);
  } else checkPositive("aim.halfWidthMpa", aim.halfWidthMpa);
  const contentsPct = [...new Set(options.contentsPct)].sort((a, b) => a - b);
  const without = (status: TestProgramme["status"], message: string): TestProgramme => ({
    ...{ status, message, contentsPct, blocksAContent: null, batchesAContent },
    ...{ power: null, halfWidthMpa: null, blocks: [] },
  });
  const least = STRENGTH_FORMS[form].coefficientNames.length + 1;
  if (contentsPct.length < least) {
    return without(
      "too-few-contents",
      say`Plan at least ${least} contents for the ${sayOf(form)} form, so that its shape can be tested; there are ${contentsPct.length}.`,
    );
  }
  const [first, last] = [contentsPct[0], contentsPct[contentsPct.length - 1]];
  if (aim.kind === "width" && !(aim.atPct >= first && aim.atPct <= last)) {
    return without(
      "outside-contents",
      say`${aim.atPct} % lies outside the planned contents, ${first} to ${last} %, and nothing is extrapolated.`,
    );
  }
  for (let blocks = batchesAContent; blocks <= MOST; blocks += batchesAContent) {
    const reached =
      aim.kind === "difference"
        ? differencePower({
            contents: contentsPct.length,
            blocks,
            sdMpa,
            differenceMpa: aim.differenceMpa,
          })
        : meanHalfWidth({ contentsPct, form, blocks, sd: sdMpa, atPct: aim.atPct });
    if (aim.kind === "difference" ? reached < wantedPower! : reached > aim.halfWidthMpa) continue;
    const result =
      aim.kind === "difference"
        ? say`a difference of ${aim.differenceMpa} MPa is seen with a chance of ${formatFixed(100 * reached, 0)} %`
        : say`the mean at ${aim.atPct} % is known to ±${formatFixed(reached, 2)} MPa`;
    return {
      status: "ok",
      message: say`${blocks} blocks at each of ${contentsPct.length} contents, from ${batchesAContent} batches each: ${result}, if blocks of one content scatter by ${sdMpa} MPa and batches do not differ.`,
      ...{ contentsPct, blocksAContent: blocks, batchesAContent },
      power: aim.kind === "difference" ? reached : null,
      halfWidthMpa: aim.kind === "width" ? reached : null,
      blocks: planBlocks({ contentsPct, blocks, batches: batchesAContent, ageDays, seed }),
    };
  }
  return without(
    "too-many-blocks",
    say`More than ${MOST} blocks a content would be needed. Ask for less, or bring the scatter down first: mixing, moisture, compaction, capping.`,
  );
}
