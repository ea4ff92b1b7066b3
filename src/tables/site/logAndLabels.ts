import type { ReportBlock } from "../../blocks/block.js";
import type { RequirementConfig, SiteConfig } from "../../entries/studyConfig.js";
import { checkNotNegative, checkThat } from "../../quantities/checkNumber.js";
import type { MixStudy, StudyResult } from "../../study/studyResult.js";
import { joinTexts, say } from "../../words/message.js";
import { BLANK, depthText, fixed, massText, plain } from "../cell.js";
import { elementNames, ofElement } from "../studyEntries.js";
import { type ListLine, listOf, present, warning } from "../tableOf.js";
import { type SiteMix, siteMix } from "./crewMix.js";
import {
  blankLines,
  GLOVES,
  pairsTable,
  type SiteOptions,
  type SiteSheet,
  sheetOfMix,
  siteCautions,
  siteOptionsOf,
} from "./siteSheet.js";

/** Where the element's lifts are not known. */
const LIFT_ROWS = 14;
/** Where no days of damp curing were entered. */
const DAY_ROWS = 14;
const MAX_DAYS = 90;

/** For the second page of the log, which may hang by itself. */
const IN_DOUBT: ReportBlock = warning(say`This mix is in doubt: read the warnings of page 1.`);

/**
 * What is kept beside the wall: one line a lift while making, then on a page of its own one line a day
 * while curing.
 *
 * The stripping time and the days of damp curing are the user's: where none was entered a blank stands for
 * the engineer to fill. 24 hours until stripping is common practice without a source.
 *
 * @throws RangeError for options out of range. Source: `elementQuantities` for the depths; own layout.
 */
export function siteCuringLog(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const site = siteOptionsOf(result, options);
  const { strippingHours = 0, dampDays = DAY_ROWS } = site;
  checkNotNegative("strippingHours", strippingHours);
  checkCount({ dampDays }, MAX_DAYS);
  const mix = siteMix(result, options);
  const blocks = mix && logBlocks(site, mix);
  return sheetOfMix("making-and-curing-log", say`Making and curing log`, result, blocks);
}

function checkCount(named: Readonly<Record<string, number>>, max: number): void {
  const [count] = Object.values(named);
  const isCount = Number.isInteger(count) && count >= 1 && count <= max;
  checkThat(isCount, named, `a whole number from 1 to ${max}`);
}

const numbersTo = (count: number) => Array.from({ length: count }, (_, index) => `${index + 1}`);

/** The lifts of all elements, each with its number; with the element where there are several. */
function liftNames(elements: SiteMix["record"]["elements"]): string[] {
  if (elements.length === 0) return numbersTo(LIFT_ROWS);
  return elements.flatMap(({ name, amounts }) =>
    numbersTo(amounts.lifts).map((lift) => (elements.length > 1 ? `${name} ${lift}` : lift)),
  );
}

function logBlocks(
  { strippingHours, dampDays }: SiteConfig,
  { config, batch, water: { window }, record: { elements, doubts } }: SiteMix,
): ReportBlock[] {
  const depth = (metres: number) => depthText(metres, config.units, 2);
  return present([
    listOf(elementNames(config.elements), [
      [
        say`Mix`,
        say`cement ${plain(batch.cementPct, 3)} %, water ${fixed(window.moisturePct.low, 1)} to ${fixed(window.moisturePct.high, 1)} %, best ${fixed(window.targetMoisturePct, 1)} %`,
      ],
      [
        say`One batch`,
        say`${massText(batch.dryMassKg, config.units)} dry soil and aggregate, ${massText(batch.cement.dryMassKg, config.units)} cement`,
      ],
      ...elements.map(
        ({ name, amounts }): ListLine => [
          ofElement(say`A lift`, name, elements),
          joinTexts([
            amounts.looseLiftM === null
              ? undefined
              : say`spread about ${depth(amounts.looseLiftM)}`,
            say`ram to ${depth(amounts.compactedLiftM)}; ${amounts.lifts} lifts, about ${fixed(amounts.batchesPerLift, 1)} batches each`,
          ]),
        ],
      ),
      [
        say`Strip forms after`,
        say`${strippingHours === undefined ? "________" : plain(strippingHours)} hours; local rules, engineer and curing govern`,
      ],
      [
        say`Keep damp for`,
        say`${dampDays === undefined ? "________" : plain(dampDays)} days, covered, out of sun, wind and frost`,
      ],
    ]),
    siteCautions(["form-pressure"]),
    blankLines(
      say`Making: one line a lift`,
      [
        say`Lift`,
        say`Date`,
        say`Batch`,
        say`Water in at`,
        say`Rammed at`,
        say`Ball test`,
        say`Depth`,
        say`Ties, clamps checked`,
        say`By`,
      ],
      liftNames(elements),
    ),
    siteCautions(["working-time", "lifting", "working-height"]),
    { kind: "pageBreak" },
    doubts.length > 0 && IN_DOUBT,
    GLOVES,
    blankLines(
      say`Curing: one line a day`,
      [
        say`Day`,
        say`Date`,
        say`Damp?`,
        say`Covered?`,
        say`Coldest`,
        say`Cracks, damage, rain`,
        say`By`,
      ],
      numbersTo(dampDays ?? DAY_ROWS),
    ),
    siteCautions(["cured-strength", "water-and-frost"]),
  ]);
}

const LABELS = 8;
const MAX_LABELS = 200;
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
  checkCount({ labels }, MAX_LABELS);
  const { requirement } = result.config.strength;
  const blocks = result.mix && requirement && labelBlocks(labels, result.mix, requirement);
  return sheetOfMix("block-labels", say`Labels for control blocks`, result, blocks);
}

function labelBlocks(
  labels: number,
  { record }: MixStudy,
  { ageDays }: RequirementConfig,
): ReportBlock[] {
  const { cementPct, doubts } = record;
  const label = (number: number) =>
    joinTexts(
      [
        doubts.length > 0
          ? say`Block ${number} · cement ${plain(cementPct)} % · mix in doubt`
          : say`Block ${number} · cement ${plain(cementPct)} %`,
        say`Batch ________ Lift ________`,
        say`Made on ________________`,
        say`Test at ${ageDays} days, on ________`,
        say`Cured: damp □ · as the wall □`,
      ],
      "\n",
    );
  const labelOrDash = (number: number) => (number <= labels ? label(number) : BLANK);
  const page = (first: number): ReportBlock => {
    const rows = Math.ceil(Math.min(PER_PAGE, labels - first + 1) / 2);
    return pairsTable(
      say`Cut along the lines, tie on in a clear bag; with gloves on, scratch the number into the block`,
      Array.from({ length: rows }, (_, row) => first + 2 * row).map(
        (number) => [labelOrDash(number), labelOrDash(number + 1)] as const,
      ),
    );
  };
  const blocks: ReportBlock[] = [page(1), siteCautions(["cured-strength"])];
  for (let first = PER_PAGE + 1; first <= labels; first += PER_PAGE) {
    blocks.push({ kind: "pageBreak" }, page(first));
  }
  return blocks;
}
