import { formatQuantity } from "../quantities/displayUnits.js";
import type { SiteConfig } from "../study/siteConfig.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { fixed, plain } from "./cell.js";
import { noMix } from "./noMix.js";
import type { ReportBlock } from "./reportBlock.js";
import { siteCautions } from "./siteCautions.js";
import { type SiteMix, siteMix } from "./siteMix.js";
import { siteOptionsOf } from "./siteOptionsOf.js";
import type { SiteOptions, SiteSheet } from "./siteSheet.js";

/** Where the element's lifts are not known. */
const LIFT_ROWS = 14;
/** Where no days of damp curing were entered. */
const DAY_ROWS = 14;
const MOST_DAYS = 90;

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
  if (!(Number.isInteger(dampDays) && dampDays >= 1 && dampDays <= MOST_DAYS)) {
    throw new RangeError(
      `invalid \`dampDays\`: ${dampDays}; expected a whole number from 1 to ${MOST_DAYS}`,
    );
  }
  const mix = siteMix(result, options);
  const blocks: ReportBlock[] = mix ? logBlocks(result, site, mix) : [noMix()];
  return { name: "making-and-curing-log", title: say`Making and curing log`, blocks };
}

function logBlocks(
  { config }: StudyResult,
  { strippingHours, dampDays }: SiteConfig,
  { batch, water: { window }, element }: SiteMix,
): ReportBlock[] {
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", config.units, 2);
  return [
    {
      kind: "keyValues",
      caption: config.element.name,
      items: [
        {
          label: say`Mix`,
          value: say`cement ${plain(batch.cementPct, 3)} %, water ${fixed(window.moisturePct.low, 1)} to ${fixed(window.moisturePct.high, 1)} %, best ${fixed(window.targetMoisturePct, 1)} %`,
        },
        ...(element
          ? [
              {
                label: say`A lift`,
                value: say`${element.looseLiftM === null ? "" : say`spread about ${depth(element.looseLiftM)}, `}ram to ${depth(element.compactedLiftM)}; ${element.lifts} lifts, about ${fixed(element.batchesPerLift, 1)} batches each`,
              },
            ]
          : []),
        {
          label: say`Forms off after`,
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
      rows: Array.from({ length: element?.lifts ?? LIFT_ROWS }, (_, lift) => [
        `${lift + 1}`,
        ...Array.from({ length: 8 }, () => ""),
      ]),
    },
    siteCautions(["working-time", "lifting", "working-height"]),
    { kind: "pageBreak" },
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
        "",
        "",
        "",
        "",
        "",
        "",
      ]),
    },
    siteCautions(["cured-strength", "water-and-frost"]),
  ];
}
