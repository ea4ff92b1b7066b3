import { formatQuantity } from "../quantities/displayUnits.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { BLANK, fixed, plain } from "./cell.js";
import { noMix } from "./noMix.js";
import type { ReportBlock, TableBlock } from "./reportBlock.js";
import { siteCautions } from "./siteCautions.js";
import { type SiteMix, siteMix } from "./siteMix.js";
import { siteOptionsOf } from "./siteOptionsOf.js";
import type { SiteOptions, SiteSheet } from "./siteSheet.js";
import { trialMass, trialText } from "./siteTrial.js";
import { bucketSize, buckets, liquid } from "./siteUnits.js";

/** A share that moves by more than this is worth a smaller bucket. */
const LARGE_CHANGE_PCT = 2;

/**
 * One page with what goes into one batch, in buckets struck level: for the wall beside the mixer.
 *
 * Soil and aggregate by whole or half bucket, cement by scale (or bucket), water from dry to wet end of
 * the window, with what rounding to buckets does to the cement content and the grading.
 *
 * @param options see `SiteOptions`. @returns one warning where the study gives no mix.
 *
 * @throws RangeError for options out of range. Source: `wholeBuckets`, `waterWindow`, `gradingChange`.
 */
export function siteBucketCard(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const site = siteMix(result, options);
  const blocks: ReportBlock[] = site ? cardBlocks(result, options, site) : [noMix()];
  return { name: "bucket-card", title: say`Bucket card`, blocks };
}

function cardBlocks(result: StudyResult, options: SiteOptions, site: SiteMix): ReportBlock[] {
  const { units } = result.config;
  const { counted, batch, trial } = site;
  const { window } = site.water;
  const mass = (kilograms: number) => formatQuantity(1000 * kilograms, "mass", units, 3);
  const byBucket = counted.batch !== null;
  const bucket = bucketSize(counted.bucketL, units);
  const countOf = new Map(counted.materials.map((line) => [line.id, buckets(line.buckets)]));
  const cementCount =
    counted.cement === null
      ? "–"
      : counted.cementBy === "bucket"
        ? buckets(counted.cement.buckets)
        : say`weigh`;
  const { toAddKg } = window;
  const none = trial ? [BLANK] : [];
  const water = trial ? [trialMass(trial.waterKg, units)] : [];
  const tried = (id: string) =>
    trial
      ? trial.lines
          .filter((line) => line.id === id)
          .map(({ weighedKg }) => trialMass(weighedKg, units))
      : [];
  const table: TableBlock = {
    kind: "table",
    caption: byBucket
      ? say`One batch. Bucket of ${bucket}, filled loosely, struck level`
      : say`One batch, by scale`,
    columns: [
      { header: say`Put in` },
      { header: byBucket ? say`Buckets` : "", align: "right" },
      { header: say`On a scale, as shovelled`, align: "right" },
      ...(trial ? [{ header: say`Trial batch`, align: "right" as const }] : []),
    ],
    rows: [
      ...batch.materials
        .filter(({ dryMassKg }) => dryMassKg > 0)
        .map(({ id, name, moistMassKg }) => [
          name,
          countOf.get(id) ?? "–",
          mass(moistMassKg),
          ...tried(id),
        ]),
      ...(batch.cementPct > 0
        ? [
            [
              say`Cement`,
              byBucket ? cementCount : "–",
              mass(batch.cement.dryMassKg),
              ...tried("cement"),
            ],
          ]
        : []),
      [say`Water, start with`, liquid(toAddKg.low, units), mass(toAddKg.low), ...none],
      [say`Water, aim for`, liquid(toAddKg.target, units), mass(toAddKg.target), ...water],
      [say`Water, never above`, liquid(toAddKg.high, units), mass(toAddKg.high), ...none],
    ],
    notes: honesty(result, options, site),
  };
  return [
    ...(window.status === "ok" ? [] : [warning(window.message)]),
    ...(byBucket ? [] : [warning(counted.message)]),
    table,
    ...(counted.largestShareChangePct !== null && counted.largestShareChangePct > LARGE_CHANGE_PCT
      ? [
          warning(
            say`Rounding moves a material's share by ${fixed(counted.largestShareChangePct, 1)} points: take a smaller bucket, or weigh.`,
          ),
        ]
      : []),
    {
      kind: "table",
      caption: say`Order of work`,
      columns: [{ header: "" }, { header: "" }],
      rows: [
        ["1", say`Soil, sand and gravel: mix until one colour.`],
        ["2", say`Cement: mix until one colour again.`],
        ["3", say`Water by fine rose, bit by bit; ball test from the moisture card.`],
        ["4", say`Ram at once. Never wet a mix that stiffens: throw it away.`],
      ],
    },
    siteCautions(["cement-burns", "silica-dust"]),
  ];
}

function warning(text: string): ReportBlock {
  return { kind: "note", tone: "warning", text };
}

/** What the card holds against what the study asks for. */
function honesty(result: StudyResult, options: SiteOptions, site: SiteMix): string[] {
  const { mix, config } = result;
  const { counted, grading, batch } = site;
  const { window } = site.water;
  const bags = config.cement.bagMassKg / batch.cement.dryMassKg;
  return [
    say`Cement in this batch ${fixed(batch.cementPct, 1)} % of the dry soil and aggregate; asked for: ${plain(mix?.recipe.cementPct)} %.${Number.isFinite(bags) ? say` A bag serves ${fixed(bags, 1)} batches.` : ""}`,
    ...(counted.largestShareChangePct === null || !grading
      ? []
      : [
          say`Rounding to buckets moves no share by more than ${fixed(counted.largestShareChangePct, 1)} points, and the grading by ${fixed(Math.abs(grading.changePct), 1)} at most, at ${plain(grading.sizeMm, 3)} mm.`,
        ]),
    say`Water is for heaps that hold ${fixed((100 * batch.water.inMaterialsKg) / batch.dryMassKg, 1)} % in all, as the study has it; the mix may hold ${fixed(window.moisturePct.low, 1)} to ${fixed(window.moisturePct.high, 1)} %.`,
    ...(site.trial ? [trialText(result, site.trial)] : []),
    ...(siteOptionsOf(result, options).bucketL === undefined && counted.batch
      ? [
          say`The bucket of ${bucketSize(counted.bucketL, config.units)} is a default: measure yours with water, to the brim.`,
        ]
      : []),
  ];
}
