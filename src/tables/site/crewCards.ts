import { type MeasuredForm, type MixRecord, usableForm } from "../../batch/mixRecord.js";
import type { Recipe, RecipeLine } from "../../batch/recipe.js";
import { waterByMoisture } from "../../batch/water.js";
import type { WeighedBatch } from "../../batch/weighOut.js";
import type { ReportBlock, TableBlock } from "../../blocks/block.js";
import { formatFixed, type UnitSystem } from "../../quantities/format.js";
import { convertFromBase } from "../../quantities/units.js";
import type { MixWater } from "../../study/mixWater.js";
import { bucketSize } from "../../study/studyRecord.js";
import type { StudyResult } from "../../study/studyResult.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { BLANK, fixed, massText, numberColumn, plain } from "../cell.js";
import { present, tableOf, warning } from "../tableOf.js";
import { buckets, liquid, measureText, type SiteMix, siteMix, weighed } from "./crewMix.js";
import { siteBlockLabels, siteCuringLog } from "./logAndLabels.js";
import {
  blankLines,
  CAUTIONS_IN_SHORT,
  pairsTable,
  type SiteOptions,
  type SiteSheet,
  sheetOfMix,
  siteCautions,
  siteOptionsOf,
} from "./siteSheet.js";

/**
 * The four sheets of a study that a crew prints: bucket card, making and curing log, block labels,
 * moisture check.
 *
 * @throws RangeError for options out of range. Source: with each sheet.
 */
export function siteSheets(result: StudyResult, options: SiteOptions = {}): readonly SiteSheet[] {
  return [siteBucketCard, siteCuringLog, siteBlockLabels, siteMoistureCard].map((make) =>
    make(result, options),
  );
}

/**
 * One page with what goes into one batch, in buckets struck level: for the wall beside the mixer.
 *
 * Soil and aggregate by whole or half bucket, cement by scale (or bucket), water from dry to wet end of
 * the window, with what rounding to buckets does to the cement content and the grading.
 *
 * @param options see `SiteOptions`. @returns one warning where the study gives no mix.
 *
 * @throws RangeError for options out of range. Source: `mixRecord`, `waterWindow`, `gradingChange`.
 */
export function siteBucketCard(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const site = siteMix(result, options);
  const blocks = site && bucketBlocks(result, options, site);
  return sheetOfMix("bucket-card", say`Bucket card`, result, blocks);
}

function bucketBlocks(result: StudyResult, options: SiteOptions, site: SiteMix): ReportBlock[] {
  const { water } = site;
  return present([
    water.window.status !== "ok" && warning(water.window.message),
    ...bucketWarnings(result, site).map(warning),
    ...scaleWarnings(site.record).map(warning),
    batchTable(result, options, site),
    pairsTable(say`Order of work`, [
      ["1", say`Soil, sand and gravel: mix until it looks the same throughout.`],
      ["2", say`Cement: mix until it looks the same throughout again.`],
      ["3", say`Water by fine rose, bit by bit; ball test from the moisture card.`],
      ["4", say`Ram at once. Never wet a mix that stiffens: throw it away.`],
    ]),
    CAUTIONS_IN_SHORT,
  ]);
}

/** That these buckets make another mix, and which would do; or why there are none. */
function bucketWarnings({ config }: StudyResult, { record, bucketL }: SiteMix): Text[] {
  const { buckets: counted, messages, parts, scale, workingBucketL } = record;
  const others =
    workingBucketL === null
      ? undefined
      : say`Buckets of ${bucketSize(workingBucketL, config.units)} would do.`;
  // By how much is for whoever designs: the findings say it, and the card keeps to one page.
  if (counted && !counted.withinTolerance) {
    const size = bucketSize(bucketL, config.units);
    return [
      joinTexts([say`Buckets of ${size} give a different mix: weigh every material.`, others], " "),
    ];
  }
  if (counted) return [];
  const ofOthers = [parts, scale].map((form) => form && !form.withinTolerance && form.message);
  const told = messages.filter((message) => !ofOthers.includes(message));
  return others === undefined ? told : [...told, others];
}

/** That the crew's scale is too coarse for the mix. */
export function scaleWarnings({ scale }: MixRecord): Text[] {
  if (!scale || scale.withinTolerance) return [];
  return [say`The scale is too coarse for this batch and gives a different mix: use a finer one.`];
}

/** What goes in, by bucket, by scale and for the trial batch. */
function batchTable(result: StudyResult, options: SiteOptions, site: SiteMix): TableBlock {
  const { units } = result.config;
  const { record, bucketL, batch, trial, water } = site;
  const { toAddKg } = water.window;
  const counted = usableForm(record.buckets);
  const weigh = (line: RecipeLine, name = line.name) => ({
    name,
    inBuckets: measureText(counted, line.id, buckets),
    byScale: weighed(record, line, units),
    trialKg: trial?.lines.find(({ id }) => id === line.id)?.weighedKg,
  });
  const pour = (name: Text, kilograms: number, trialKg?: number) => ({
    name,
    inBuckets: liquid(kilograms, units),
    byScale: counted ? massText(kilograms, units) : liquid(kilograms, units),
    trialKg,
  });
  const size = massText(batch.dryMassKg, units);
  return tableOf(
    counted
      ? say`One batch of ${size} dry soil and aggregate. Bucket of ${bucketSize(bucketL, units)}, filled loosely, struck level`
      : say`One batch of ${size} dry soil and aggregate, by scale`,
    present([
      ...batch.materials.map((line) => weigh(line)),
      batch.cementPct > 0 && weigh(batch.cement, say`Cement`),
      pour(say`Water, start with`, toAddKg.low),
      pour(say`Water, aim for`, toAddKg.target, trial?.waterKg),
      pour(say`Water, never above`, toAddKg.high),
    ]),
    [
      [say`Put in`, ({ name }) => name],
      counted && [numberColumn(say`Buckets`), ({ inBuckets }) => inBuckets],
      [
        numberColumn(counted ? say`By scale instead, moist mass` : say`On a scale, moist mass`),
        ({ byScale }) => byScale,
      ],
      trial && [
        numberColumn(say`Trial batch`),
        ({ trialKg }) => (trialKg === undefined ? BLANK : trialMass(trialKg, units)),
      ],
    ],
    bucketNotes(result, options, site),
  );
}

/** What the card holds against what the study asks for. */
function bucketNotes(result: StudyResult, options: SiteOptions, site: SiteMix): Text[] {
  const { mix, config } = result;
  const { record, bucketL, grading, batch, trial } = site;
  const counted = usableForm(record.buckets);
  const { moisturePct } = site.water.window;
  const heapPct = (100 * batch.water.inMaterialsKg) / batch.dryMassKg;
  const bags = site.config.cement.bagMassKg / batch.cement.dryMassKg;
  const defaultBucket = siteOptionsOf(result, options).bucketL === undefined;
  return present([
    joinTexts(
      [
        say`Cement in this batch ${fixed(counted?.cement?.sharePct ?? batch.cementPct, 1)} % of the dry soil and aggregate; asked for: ${plain(mix?.recipe.cementPct)} %.`,
        Number.isFinite(bags) ? say`A bag serves ${fixed(bags, 1)} batches.` : undefined,
      ],
      " ",
    ),
    counted &&
      grading &&
      say`Rounding to buckets moves no share by more than ${fixed(mostChanged(counted, batch), 1)} points, and the grading by ${fixed(Math.abs(grading.changePct), 1)} at most, at ${plain(grading.sizeMm, 3)} mm.`,
    counted &&
      counted.step < 1 &&
      site.wholeBuckets &&
      say`Whole buckets leave the tolerances of the mix, so half buckets are counted: mark the bucket where it is half full.`,
    say`Water is for stockpiles that hold ${fixed(heapPct, 1)} % in all, as the study has it; the mix may hold ${fixed(moisturePct.low, 1)} to ${fixed(moisturePct.high, 1)} %.`,
    trial && trialText(result, trial),
    defaultBucket &&
      counted &&
      say`The bucket of ${bucketSize(bucketL, config.units)} is a default: measure yours with water, to the brim.`,
  ]);
}

/** The most that a share of soil or aggregate moves by counting, percentage points. */
function mostChanged(counted: MeasuredForm, batch: Recipe): number {
  return Math.max(
    ...counted.materials.map(({ sharePct }, index) =>
      Math.abs(sharePct - batch.materials[index].sharePct),
    ),
  );
}

/** Hundredths: what a bench scale shows. */
export function trialMass(kilograms: number, units: UnitSystem): Text {
  return units === "SI"
    ? say`${formatFixed(kilograms, 2)} kg`
    : say`${formatFixed(convertFromBase(1000 * kilograms, "lb", "mass"), 2)} lb`;
}

/** How the trial and the full batch hang together. */
function trialText({ mix, config }: StudyResult, trial: WeighedBatch): Text {
  if (!mix || !trial.batch) return say`Trial batch: ${trial.message}`;
  const mass = trialMass(trial.batch.dryMassKg, config.units);
  const times = fixed(mix.recipe.dryMassKg / trial.batch.dryMassKg, 1);
  const change = fixed(trial.cementChangePct ?? 0, 2);
  return say`Trial batch of ${mass} dry soil and aggregate; the study's batch is ${times} times that. Its scale changes the cement by ${change} points: scale the recipe, not these rounded masses.`;
}

/** Points of moisture below and above the planned heap that the table covers. */
const STEPS = [-2, -1, 0, 1, 2];

/**
 * One page to check the moisture of the mix by hand before each lift, and to correct the water.
 *
 * The ball test here is the one for the moisture of a mix. The test of the same name that drops a plastic
 * ball from two metres to judge binding is another one, and is not meant.
 *
 * @throws RangeError for options out of range. Source: steps and drop height of the ball test with the
 * field test `ball-and-drop`; the drying test is common practice, no source.
 */
export function siteMoistureCard(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const site = siteMix(result, options);
  const blocks = site && moistureBlocks(result, site);
  return sheetOfMix("moisture-check", say`Moisture check`, result, blocks);
}

function moistureBlocks(
  { config }: StudyResult,
  { batch, water: { window, basis, fromTest } }: SiteMix,
): ReportBlock[] {
  const heapPct = (100 * batch.water.inMaterialsKg) / batch.dryMassKg;
  const heaps = STEPS.map((step) => heapPct + step).filter((pct) => pct >= 0);
  const range = say`${fixed(window.moisturePct.low, 1)} to ${fixed(window.moisturePct.high, 1)} %`;
  const percent = (value: number) => say`${fixed(value, 1)} %`;
  const mass = config.units === "SI" ? "g" : "oz";
  return [
    tableOf(
      say`The mix at compaction, percent of its dry mass`,
      [window],
      [
        [numberColumn(say`Not below`), ({ moisturePct }) => percent(moisturePct.low)],
        [numberColumn(say`Best`), ({ targetMoisturePct }) => percent(targetMoisturePct)],
        [numberColumn(say`Not above`), ({ moisturePct }) => percent(moisturePct.high)],
      ],
      [windowNote(basis, fromTest)],
    ),
    pairsTable(
      say`Ball and drop, before each lift`,
      [
        [say`Squeeze`, say`A handful, hard. Water on the hand: too wet.`],
        [say`Drop`, say`From shoulder height onto a hard, clean floor.`],
        [say`A few pieces`, say`Right: ram.`],
        [say`One lump, flattened`, say`Too wet: spread it, turn it, wait, test again.`],
        [say`Crumbs, or no ball`, say`Too dry: a little water by rose, mix, test again.`],
      ],
      [
        say`No water on squeezing, and just breaking up from shoulder height: Intermediate Technology Development Group, Technical Advice Note 2 (read). What the other shapes mean is common practice without a source; other texts drop from 1.5 m (from memory). To know the moisture, dry a sample.`,
      ],
    ),
    blankLines(
      say`Dry a sample: moisture = 100 × (damp − dry) ÷ (dry − pan)`,
      [
        say`Date, batch`,
        say`Pan, ${mass}`,
        say`Pan + damp, ${mass}`,
        say`Pan + dry, ${mass}`,
        say`Moisture, %`,
      ],
      ["", "", ""],
    ),
    {
      kind: "table",
      caption: say`Water for a batch, to reach ${fixed(window.targetMoisturePct, 1)} % (range ${range})`,
      columns: [{ header: say`Heaps hold` }, ...heaps.map((pct) => numberColumn(percent(pct)))],
      rows: [
        [
          say`Pour in`,
          ...waterByMoisture(batch, heaps, window.moisturePct.high).map(({ toAddKg, surplusKg }) =>
            surplusKg > 0 ? say`dry it` : liquid(toAddKg, config.units),
          ),
        ],
      ],
      notes: [
        say`Heaps: soil, sand and gravel together, by dry mass; planned for ${fixed(heapPct, 1)} %. Damper sand also fills a bucket with less.`,
      ],
    },
    siteCautions(["cement-burns"]),
  ];
}

/** Where the moisture range comes from. */
function windowNote(basis: MixWater["basis"], fromTest: MixWater["fromTest"]): Text {
  if (fromTest) {
    const { relativePct, openDry, openWet } = fromTest;
    return openDry || openWet
      ? say`Where the compaction test keeps ${relativePct} % of its maximum dry density; the test ends there, so the range may be wider. Another rammer has another range.`
      : say`Where the compaction test keeps ${relativePct} % of its maximum dry density. Another rammer has another range.`;
  }
  return basis === "entered"
    ? say`A tolerance that was entered, not a measured range.`
    : say`The compaction test gives no range; one point to each side is common practice without a source.`;
}
