import { elementsQuantities } from "../batch/element.js";
import {
  type MeasuredForm,
  type MixRecord,
  type MixTolerances,
  mixRecord,
} from "../batch/mixRecord.js";
import { type Recipe, type RecipeInput, recipe } from "../batch/recipe.js";
import { type SupplyTerms, suppliedAmounts, type Truck } from "../batch/supply.js";
import { type BuildableConfig, isBuildable } from "../entries/buildable.js";
import type { SiteConfig, StudyConfig } from "../entries/studyConfig.js";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { formatPlain, type UnitSystem } from "../quantities/format.js";
import { convertFromBase } from "../quantities/units.js";
import type { CompactionAnalysis } from "../soil/compaction/compactionTest.js";
import { say, type Text } from "../words/message.js";
import { type MixWater, mixWater } from "./mixWater.js";
import { orderedDensity, specifiedMix } from "./specifiedMix.js";
import type { CompactedDensity, StrengthStudy, StudyResult } from "./studyResult.js";

/** What was designed and tested, before anybody measures anything out. */
export interface DesignedMix {
  /** In the order of the materials, percent of the dry mass of soil and aggregate. */
  readonly sharesPct: readonly number[];
  readonly cementPct: number;
  readonly moisturePct: number;
  readonly density: CompactedDensity;
  readonly reasons: readonly Text[];
  /** See `mixDoubts`. */
  readonly doubts: readonly Text[];
}

/** What of a bag of cement goes into the mix: the rest is lost before. */
export function bagInMixKg({ bagMassKg, lossPct = 0 }: BuildableConfig["cement"]): number {
  return bagMassKg / (1 + lossPct / 100);
}

/** The usual bucket where US units are spoken. */
const FIVE_GALLONS_L = 5 / convertFromBase(1000, "gal", "volume");

/** The bucket that was entered, else the usual one. */
export function bucketLitres({ units }: StudyConfig, { bucketL }: SiteConfig): number {
  return bucketL ?? (units === "SI" ? 10 : FIVE_GALLONS_L);
}

/** Litres or US gallons, which are written alike in every language. */
export const LIQUID_UNIT: Readonly<Record<UnitSystem, string>> = { SI: "L", US: "gal" };

/** The volume of a bucket, without zeros that say nothing. */
export function bucketSize(litres: number, units: UnitSystem): Text {
  const amount =
    units === "SI"
      ? formatPlain(litres)
      : formatPlain(convertFromBase(1000 * litres, "gal", "volume"), 3);
  return say`${amount} ${LIQUID_UNIT[units]}`;
}

/** Buckets that a crew could find elsewhere: whole litres, or half gallons. */
function otherBucketsL({ units }: StudyConfig): number[] {
  const gallonL = FIVE_GALLONS_L / 5;
  return units === "SI"
    ? Array.from({ length: 17 }, (_, index) => 4 + index)
    : Array.from({ length: 11 }, (_, index) => (1 + index / 2) * gallonL);
}

/** How each material comes to the site, by id, the cement under `cement`. */
export function supplyTerms(
  { materials, cement, site }: BuildableConfig,
  truck: Truck | undefined = site.truck,
): Record<string, SupplyTerms> {
  const terms = Object.fromEntries(materials.map(({ id, lossPct }) => [id, { lossPct, truck }]));
  const { lossPct, bagMassKg } = cement;
  return { ...terms, cement: { lossPct, truck, bagMassKg } };
}

/**
 * The one record of a tested mix, with the buckets, mixer and tolerances of a site.
 *
 * @throws RangeError for options out of range. Source: `mixRecord`, `specifiedMix`.
 */
export function studyRecord(
  config: BuildableConfig,
  design: DesignedMix,
  tests: { readonly compaction?: CompactionAnalysis; readonly strength?: StrengthStudy },
  site: SiteConfig = config.site,
): { readonly record: MixRecord; readonly water: MixWater } {
  const { elements, cement, materials } = config;
  const bagMassKg = bagInMixKg(cement);
  const input = {
    materials: materials.map((material, index) => ({
      ...material,
      sharePct: design.sharesPct[index],
    })),
    cementPct: design.cementPct,
    cementBulkDensityKgM3: cement.looseBulkDensityKgM3,
    targetMoisturePct: design.moisturePct,
  };
  const plain = recipe({ ...input, batchDryMassKg: config.batchDryMassKg });
  const plainWater = waterOf(plain);
  const { low: driestPct, high: wettestPct } = plainWater.window.moisturePct;
  const specified = specifiedMix({
    config,
    mix: { recipe: plain, water: plainWater, density: design.density },
    compaction: tests.compaction,
    strength: tests.strength,
  });
  const {
    valueKgM3: best,
    lowKgM3: low,
    highKgM3: high,
  } = orderedDensity(design.density, specified);
  const density = { best, low, high };
  const record = mixRecord({
    ...input,
    ...batchSize(),
    state: "tested",
    reasons: design.reasons,
    doubts: design.doubts,
    water: { driestPct, wettestPct },
    tolerances: mixTolerances(),
    buckets: {
      bucketL: bucketLitres(config, site),
      step: site.bucketStep ?? 0.5,
      cementBy: site.cementBy,
      otherL: otherBucketsL(config),
    },
    scaleStepKg: site.scaleStepKg,
    elements: { shapes: elements, density, bagMassKg },
    supply: supplyTerms(config, site.truck),
  });
  return { record, water: waterOf(record.batch) };

  function waterOf(batch: Recipe): MixWater {
    return mixWater(batch, tests.compaction, config.tolerances, site.tolerancePct);
  }

  /** The mixer before the lift, and that before the batch of the study. */
  function batchSize(): Pick<RecipeInput, "batchDryMassKg" | "mixerVolumeL"> {
    const { mixerVolumeL, batchFills } = site;
    const volumes = plain.looseVolumeL !== null;
    if (mixerVolumeL !== undefined && volumes) return { mixerVolumeL };
    if (mixerVolumeL !== undefined || !batchFills) return { batchDryMassKg: plain.dryMassKg };
    const { each } = elementsQuantities(elements, { recipe: plain, density, bagMassKg });
    // The smallest lift, so that a batch never overfills one.
    const perLift = each.map(({ amounts }) => amounts.batchesPerLift);
    return { batchDryMassKg: plain.dryMassKg * (perLift.length > 0 ? Math.min(...perLift) : 1) };
  }

  function mixTolerances(): MixTolerances {
    const bounded = specified.flatMap(({ kind, id = "", low, high }) =>
      low === undefined || high === undefined ? [] : [{ kind, id, bounds: { low, high } }],
    );
    const shares = bounded.filter(({ kind }) => kind === "share");
    return {
      shares: Object.fromEntries(shares.map(({ id, bounds }) => [id, bounds])),
      cement: bounded.find(({ kind }) => kind === "cement")?.bounds,
    };
  }
}

/** What changes the batch of a site; nothing else of its options does. */
const BATCH_KEYS = [
  ...(["bucketL", "bucketStep", "mixerVolumeL", "batchFills"] as const),
  ...(["cementBy", "scaleStepKg", "tolerancePct"] as const),
];

/** A record with the entries that it was made from. */
export interface FoundRecord {
  readonly config: BuildableConfig;
  readonly record: MixRecord;
  readonly water: MixWater;
}

/** The record of the study, or that for a site which measures otherwise; undefined without a mix. */
export function recordOf(
  { config, mix, compaction, strength }: StudyResult,
  site: SiteConfig = config.site,
): FoundRecord | undefined {
  if (!mix || !isBuildable(config)) return undefined;
  const { record, water, density } = mix;
  if (BATCH_KEYS.every((key) => site[key] === config.site[key])) {
    const { total } = record;
    if (site.truck === config.site.truck || !total) return { config, record, water };
    const order = suppliedAmounts(total.mix, supplyTerms(config, site.truck));
    return { config, record: { ...record, order }, water };
  }
  const shareOf = new Map(record.shares.map(({ id, sharePct }) => [id, sharePct]));
  const design: DesignedMix = {
    sharesPct: config.materials.map(({ id }) => shareOf.get(id) ?? 0),
    cementPct: record.cementPct,
    moisturePct: record.batch.targetMoisturePct,
    density,
    reasons: record.reasons,
    doubts: record.doubts,
  };
  return { config, ...studyRecord(config, design, { compaction, strength }, site) };
}

/** Says where parts, or buckets that were entered, make another mix than the study's. */
export function recordFindings({ site, units }: StudyConfig, record: MixRecord): Finding[] {
  const { buckets, parts, scale, workingBucketL } = record;
  const expected = say`shares, cement and water within the tolerances of the study`;
  const weigh = say`Let the crew weigh; the cards say so.`;
  const forms: readonly (readonly [MeasuredForm | null, string, string, Text])[] = [
    [
      site.bucketL === undefined ? null : buckets,
      "site.bucket",
      "buckets-outside-tolerances",
      workingBucketL === null
        ? weigh
        : say`Let the crew weigh, or enter a bucket of ${bucketSize(workingBucketL, units)}, which would do.`,
    ],
    [scale, "site.scale", "scale-outside-tolerances", say`Take a finer scale, or a larger batch.`],
    [parts, "materials", "parts-outside-tolerances", weigh],
  ];
  return [
    ...record.findings,
    ...forms.flatMap(([form, column, code, remedy]) => {
      if (!form || form.withinTolerance) return [];
      const words = { message: form.message, expected, remedy };
      return [finding({ file: STUDY_FILE, column }, "warning", code, words)];
    }),
  ];
}
