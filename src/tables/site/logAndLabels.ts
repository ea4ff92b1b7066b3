import type { ReportBlock } from "../../blocks/block.js";
import type { SiteConfig } from "../../entries/studyConfig.js";
import type { StudyResult } from "../../study/studyResult.js";
import { joinTexts, say } from "../../words/message.js";
import { depthText, fixed, massText, plain } from "../cell.js";
import { elementNames } from "../studyEntries.js";
import { present, warning } from "../tableOf.js";
import { doubtNotes, noMix } from "../trials.js";
import { type SiteMix, siteMix } from "./crewMix.js";
import {
  GLOVES,
  type SiteOptions,
  type SiteSheet,
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
  if (!(Number.isFinite(strippingHours) && strippingHours >= 0)) {
    throw new RangeError(`invalid \`strippingHours\`: ${strippingHours}; expected 0 or above`);
  }
  if (!(Number.isInteger(dampDays) && dampDays >= 1 && dampDays <= MAX_DAYS)) {
    throw new RangeError(
      `invalid \`dampDays\`: ${dampDays}; expected a whole number from 1 to ${MAX_DAYS}`,
    );
  }
  const mix = siteMix(result, options);
  const blocks: ReportBlock[] = mix ? [...doubtNotes(result), ...logBlocks(site, mix)] : [noMix()];
  return { name: "making-and-curing-log", title: say`Making and curing log`, blocks };
}

/** The lifts of all elements, each with its number; with the element where there are several. */
function liftNames(elements: SiteMix["record"]["elements"]): string[] {
  const numbers = (lifts: number) => Array.from({ length: lifts }, (_, lift) => `${lift + 1}`);
  if (elements.length === 0) return numbers(LIFT_ROWS);
  return elements.flatMap(({ name, amounts }) =>
    numbers(amounts.lifts).map((lift) => (elements.length > 1 ? `${name} ${lift}` : lift)),
  );
}

function logBlocks(
  { strippingHours, dampDays }: SiteConfig,
  { config, batch, water: { window }, record: { elements, doubts } }: SiteMix,
): ReportBlock[] {
  const depth = (metres: number) => depthText(metres, config.units, 2);
  return present([
    {
      kind: "keyValues",
      caption: elementNames(config.elements),
      items: [
        {
          label: say`Mix`,
          value: say`cement ${plain(batch.cementPct, 3)} %, water ${fixed(window.moisturePct.low, 1)} to ${fixed(window.moisturePct.high, 1)} %, best ${fixed(window.targetMoisturePct, 1)} %`,
        },
        {
          label: say`One batch`,
          value: say`${massText(batch.dryMassKg, config.units)} dry soil and aggregate, ${massText(batch.cement.dryMassKg, config.units)} cement`,
        },
        ...elements.map(({ name, amounts }) => ({
          label: elements.length > 1 ? say`A lift, ${name}` : say`A lift`,
          value: joinTexts([
            amounts.looseLiftM === null
              ? undefined
              : say`spread about ${depth(amounts.looseLiftM)}`,
            say`ram to ${depth(amounts.compactedLiftM)}; ${amounts.lifts} lifts, about ${fixed(amounts.batchesPerLift, 1)} batches each`,
          ]),
        })),
        {
          label: say`Strip forms after`,
          value: say`${strippingHours === undefined ? "________" : plain(strippingHours)} hours; local rules, engineer and curing govern`,
        },
        {
          label: say`Keep damp for`,
          value: say`${dampDays === undefined ? "________" : plain(dampDays)} days, covered, out of sun, wind and frost`,
        },
      ],
    },
    siteCautions(["form-pressure"]),
    {
      kind: "table",
      caption: say`Making: one line a lift`,
      columns: [
        { header: say`Lift`, align: "left" },
        { header: say`Date` },
        { header: say`Batch` },
        { header: say`Water in at` },
        { header: say`Rammed at` },
        { header: say`Ball test` },
        { header: say`Depth` },
        { header: say`Ties, clamps checked` },
        { header: say`By` },
      ],
      rows: liftNames(elements).map((lift) => [lift, ...Array.from({ length: 8 }, () => "")]),
    },
    siteCautions(["working-time", "lifting", "working-height"]),
    { kind: "pageBreak" },
    doubts.length > 0 && IN_DOUBT,
    GLOVES,
    {
      kind: "table",
      caption: say`Curing: one line a day`,
      columns: [
        { header: say`Day`, align: "left" },
        { header: say`Date` },
        { header: say`Damp?` },
        { header: say`Covered?` },
        { header: say`Coldest` },
        { header: say`Cracks, damage, rain` },
        { header: say`By` },
      ],
      rows: Array.from({ length: dampDays ?? DAY_ROWS }, (_, day) => [
        `${day + 1}`,
        ...Array.from({ length: 6 }, () => ""),
      ]),
    },
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
  if (!(Number.isInteger(labels) && labels >= 1 && labels <= MAX_LABELS)) {
    throw new RangeError(
      `invalid \`labels\`: ${labels}; expected a whole number from 1 to ${MAX_LABELS}`,
    );
  }
  const title = say`Labels for control blocks`;
  const { requirement } = result.config.strength;
  if (!result.mix || !requirement) return { name: "block-labels", title, blocks: [noMix()] };
  const { cementPct, doubts } = result.mix.record;
  const { ageDays } = requirement;
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
  const page = (first: number): ReportBlock => ({
    kind: "table",
    caption: say`Cut along the lines, tie on in a clear bag; with gloves on, scratch the number into the block`,
    columns: [{ header: "" }, { header: "" }],
    rows: Array.from({ length: Math.ceil(Math.min(PER_PAGE, labels - first + 1) / 2) }, (_, row) =>
      [first + 2 * row, first + 2 * row + 1].map((number) =>
        number <= labels ? label(number) : "–",
      ),
    ),
  });
  const blocks: ReportBlock[] = [...doubtNotes(result), page(1), siteCautions(["cured-strength"])];
  for (let first = PER_PAGE + 1; first <= labels; first += PER_PAGE) {
    blocks.push({ kind: "pageBreak" }, page(first));
  }
  return { name: "block-labels", title, blocks };
}
