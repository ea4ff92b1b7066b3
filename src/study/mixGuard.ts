import { mean } from "simple-statistics";
import type { BuildableConfig } from "../entries/buildable.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { type Finding, type FindingWords, finding, STUDY_FILE } from "../findings/finding.js";
import { formatFixed, measured } from "../quantities/format.js";
import type { CompactionAnalysis, CompactionPeak } from "../soil/compaction/compactionTest.js";
import { moistureWindow } from "../soil/compaction/moistureWindow.js";
import { zeroAirVoidsDensity } from "../soil/compaction/phaseRelations.js";
import { say, type Text } from "../words/message.js";
import { particleDensity } from "./blend.js";
import { COMMON_TOLERANCE_PCT } from "./mixWater.js";
import { leastDensity, mixDensity, percent } from "./specifiedMix.js";
import type { CompactedDensity, StrengthStudy } from "./studyResult.js";

/** Tests that a mix may rest on: none of what it takes from them is missing. */
interface WholeTests {
  readonly strength: StrengthStudy;
  readonly compaction: CompactionAnalysis;
  readonly peak: CompactionPeak;
  readonly density: CompactedDensity;
  readonly cementPct: number;
}

/**
 * The guard between tests and mix: why nothing may be batched from these tests. No finding means that the mix
 * may be stated.
 *
 * @param sharesPct of the blend, in the order of the materials. @param tests with the cement that is batched.
 */
export function refusals(
  config: BuildableConfig,
  sharesPct: readonly number[],
  { strength, compaction, peak, density, cementPct }: WholeTests,
): Finding[] {
  const impossible = impossibleOptimum(peak, particleDensity(config, sharesPct));
  return [
    ...impossible,
    ...noCementFindings(cementPct),
    ...specifiedFindings(config, strength),
    ...(impossible.length > 0 ? [] : moistureFindings(config, sharesPct, strength, compaction)),
    ...heapFindings(config, sharesPct, leastDensity(config.tolerances ?? {}, density, compaction)),
  ];
}

/** Rounding is no breach. */
const SLACK = 1e-9;

function told(column: string, code: string, words: FindingWords, value?: Text): Finding[] {
  return [finding({ file: STUDY_FILE, column, value }, "warning", code, words)];
}

/**
 * The guard of a mix that is set by hand: its cement must be at least what the blocks need to meet the
 * requirement and at most what blocks were made with. Beyond that nothing was tested, and there is no mix.
 */
function specifiedFindings(
  { specified: { cementPct } = {} }: BuildableConfig,
  { fit, leastCement }: StrengthStudy,
): Finding[] {
  if (cementPct === undefined) return [];
  const least = leastCement?.cementPct ?? null;
  if (least !== null && cementPct < least - SLACK) {
    return told("mix.cement", "mix-below-least-cement", {
      message: say`The mix is set to ${percent(cementPct)} cement; the blocks meet the requirement from ${percent(least)} on. So there is no recipe.`,
      expected: say`at least the cement that the blocks need`,
      remedy: say`Enter more cement, or leave it out: the least cement is then used.`,
    });
  }
  const most = fit.contentsPct[fit.contentsPct.length - 1];
  if (cementPct <= most + SLACK) return [];
  return told("mix.cement", "mix-beyond-tested-cement", {
    message: say`The mix is set to ${percent(cementPct)} cement, and no blocks were made with more than ${percent(most)}. So there is no recipe.`,
    expected: say`a content between those that were tested`,
    remedy: say`Make blocks with more cement, or set less.`,
  });
}

/**
 * Why nothing that was tested may be carried over to the moisture of a mix: it lies outside the window of the
 * compaction test; where an optimum alone is reported, so that there is no window, farther from it and from the
 * moisture of the blocks than the tolerance; or so wet that the density asked for cannot be reached.
 *
 * @param sharesPct of the blend, for its particle density.
 */
export function moistureFindings(
  config: StudyConfig,
  sharesPct: readonly number[],
  strength: StrengthStudy,
  compaction: CompactionAnalysis | undefined,
): Finding[] {
  if (!compaction?.peak) return [];
  const { optimumWaterPct } = compaction.peak;
  const { moisturePct = optimumWaterPct } = config.specified ?? {};
  const window = moistureWindow(compaction);
  const refuse = (code: string, words: FindingWords) => told("mix.moisture", code, words);
  const remedy = say`Enter another moisture, or leave it out: the optimum is then used.`;
  const beyond = (dry: number, wet: number) =>
    moisturePct < dry - SLACK || moisturePct > wet + SLACK;
  if (moisturePct !== optimumWaterPct && window && beyond(window.driestPct, window.wettestPct)) {
    return refuse("mix-outside-moisture-window", {
      message: say`The mix is set to ${percent(moisturePct)} moisture; the compaction test keeps ${window.relativePct} % of its greatest dry density from ${percent(window.driestPct)} to ${percent(window.wettestPct)} only. So there is no recipe.`,
      expected: say`a moisture inside the window of the compaction test`,
      remedy,
    });
  }
  const { tolerances = {} } = config;
  const { moistureBelowPct = COMMON_TOLERANCE_PCT, moistureAbovePct = COMMON_TOLERANCE_PCT } =
    tolerances;
  const tested = [optimumWaterPct, madeAtPct(strength) ?? optimumWaterPct];
  if (!window && tested.every((at) => beyond(at - moistureBelowPct, at + moistureAbovePct))) {
    return refuse("mix-beyond-reported-optimum", {
      message: say`The mix is set to ${percent(moisturePct)} moisture. The compaction sheet reports an optimum of ${percent(optimumWaterPct)} alone, without test points: what density and strength the earth has at another moisture is not known. So there is no recipe.`,
      expected: say`${percent(optimumWaterPct - moistureBelowPct)} to ${percent(optimumWaterPct + moistureAbovePct)}, the tolerance of moisture around the optimum`,
      remedy: say`Enter another moisture, or leave it out: the optimum is then used. Or enter the points of the compaction test.`,
    });
  }
  const density = mixDensity(strength, compaction);
  const particleDensityKgM3 = particleDensity(config, sharesPct);
  if (!density || particleDensityKgM3 === undefined) return [];
  const { low: leastKgM3 = 0 } = leastDensity(tolerances, density, compaction);
  const noAirKgM3 = zeroAirVoidsDensity(moisturePct, particleDensityKgM3);
  if (leastKgM3 <= noAirKgM3) return [];
  return refuse("mix-too-wet-for-density", {
    message: say`At ${percent(moisturePct)} moisture the earth has ${measured(noAirKgM3, "density", 1)} without any air, less than the ${measured(leastKgM3, "density", 1)} that the wall must have: no ramming reaches that. So there is no recipe.`,
    expected: say`a moisture at which the least density can be reached`,
    remedy: say`Enter less moisture, or check the particle densities and the density of blocks and compaction test.`,
  });
}

/** Mean moisture at which the blocks were made; undefined where no sheet tells it. */
function madeAtPct({ specimens }: Pick<StrengthStudy, "specimens">): number | undefined {
  const made = specimens.flatMap(({ excluded, makingMoisturePct }) =>
    excluded ? [] : (makingMoisturePct ?? []),
  );
  return made.length > 0 ? mean(made) : undefined;
}

/** Points of moisture from which a mix is another than the blocks were; common practice, no source. */
const OTHER_MOISTURE_PCT = 0.5;

/**
 * A mix rammed drier or wetter than its blocks has another density, and another strength. Of blocks whose
 * sheet does not say how wet they were made the optimum is taken, at which blocks are usually rammed.
 */
export function leftTested(
  moisturePct: number,
  strength: StrengthStudy,
  optimumPct: number,
): Finding[] {
  const madePct = madeAtPct(strength);
  const testedPct = madePct ?? optimumPct;
  // Left at the optimum, blocks made elsewhere are told where they leave the window of the compaction test.
  const isSet = moisturePct !== optimumPct;
  if (!isSet || Math.abs(moisturePct - testedPct) <= OTHER_MOISTURE_PCT) return [];
  const value = percent(moisturePct, 1);
  const set = say`Not as tested: the mix is set to ${value} moisture`;
  const words = {
    message:
      madePct !== undefined
        ? say`${set}, its blocks were made at ${percent(testedPct, 1)}. The strength and density given are those of the blocks; at this moisture neither was measured.`
        : say`${set}, the optimum is ${percent(testedPct, 1)}. The strength and density given are those of the optimum; at this moisture neither was measured.`,
    expected: say`within ${OTHER_MOISTURE_PCT} points of the moisture of the blocks (common practice, no source)`,
    remedy: say`Leave the moisture out, so that the optimum is taken, or make blocks at the moisture of the mix and write it in their sheet.`,
  };
  return told("mix.moisture", "mix-moisture-not-tested", words, value);
}

/** Above the density without any air by more than this part of it, not even a wrong particle density explains an optimum; common practice, no source. */
const BEYOND_ZERO_AIR = 0.02;

/** No water and no density of a mix may rest on an impossible optimum. */
function impossibleOptimum(
  { optimumWaterPct, maximumDryDensityKgM3 }: CompactionPeak,
  particleDensityKgM3: number | undefined,
): Finding[] {
  if (particleDensityKgM3 === undefined) return [];
  const maxKgM3 = zeroAirVoidsDensity(optimumWaterPct, particleDensityKgM3);
  if (maximumDryDensityKgM3 <= (1 + BEYOND_ZERO_AIR) * maxKgM3) return [];
  const max = measured(maxKgM3, "density", 0);
  return told("compaction", "no-mix", {
    message: say`No mix can be stated: the optimum of the compaction test, ${measured(maximumDryDensityKgM3, "density", 0)} at ${formatFixed(optimumWaterPct, 1)} %, is impossible. Without any air at all the earth would have ${max}.`,
    expected: say`at most ${max}, and ${100 * BEYOND_ZERO_AIR} % for an uncertain particle density (common practice, no source)`,
    remedy: say`Check water contents, mould volume, masses and units of the compaction sheet, and the particle densities.`,
  });
}

/**
 * A loose heap that is no looser than the rammed wall: volumes, buckets and loose depths would rest on it. An
 * error where its fellows are warnings: they speak of tests, and this is an entry that cannot be.
 */
function heapFindings(
  config: BuildableConfig,
  sharesPct: readonly number[],
  { low: leastKgM3 = Infinity }: { readonly low?: number },
): Finding[] {
  const blendKgM3 = particleDensity(config, sharesPct);
  return config.materials.flatMap((material, index): Finding[] => {
    const { id, name, looseBulkDensityKgM3 = 0, particleDensityKgM3 = blendKgM3 } = material;
    // A heap of heavy stone is compared by the room that its grains take.
    const heavier = blendKgM3 && particleDensityKgM3 ? particleDensityKgM3 / blendKgM3 : 1;
    const mostKgM3 = leastKgM3 * heavier;
    if (sharesPct[index] === 0 || looseBulkDensityKgM3 < mostKgM3) return [];
    const value = measured(looseBulkDensityKgM3, "density", 0);
    const place = { file: STUDY_FILE, column: `materials.${id}.loose-bulk-density`, value };
    return [
      finding(place, "error", "heap-denser-than-wall", {
        message: say`The loose heap of ${name} would be as dense as the rammed wall: ${value}, where the wall must have ${measured(leastKgM3, "density", 0)} at least.`,
        expected: say`less than ${measured(mostKgM3, "density", 0)}: the dry mass in a loosely filled bucket, divided by its volume`,
        remedy: say`Fill a bucket loosely, weigh it, take off the bucket and the water of the material, and divide by the volume. Check the unit.`,
      }),
    ];
  });
}

/** A mix of cement-stabilised earth has cement. */
function noCementFindings(cementPct: number): Finding[] {
  if (cementPct > 0) return [];
  const words = {
    message: say`The mix would hold no cement: earth without cement is no stabilised mix, and no mix is stated.`,
    expected: say`a cement content above 0 %`,
    remedy: say`Set the cement of the mix (mix.cement) at a tested content, or have a wall without cement designed by the rules for unstabilised earth.`,
  };
  return told("mix.cement", "no-cement", words, "0 %");
}

/** What is missing where a blend was tested and its tests give no mix. */
export function noMixFinding(
  compaction: CompactionAnalysis | undefined,
  trialKey = "tested",
): Finding {
  const own = compaction?.peak ? "strength" : "compaction";
  const ofTrial = compaction?.peak ? "blocks" : "compaction";
  // The sheets of the first trial stand at the top of the study.
  const column = trialKey === "tested" ? own : `${trialKey}.${ofTrial}`;
  return finding({ file: STUDY_FILE, column }, "warning", "no-mix", {
    message: say`No mix can be stated.`,
    expected: say`an optimum water content from a compaction test, and a least cement content`,
    remedy: compaction?.peak
      ? say`See the finding on the least cement content.`
      : say`Add a compaction sheet whose points show a top.`,
  });
}
