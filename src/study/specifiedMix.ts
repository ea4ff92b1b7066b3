import { mean } from "simple-statistics";
import { isBuildable } from "../entries/buildable.js";
import type { StudyConfig, ToleranceConfig } from "../entries/studyConfig.js";
import { type Finding, type FindingWords, findingIf, STUDY_FILE } from "../findings/finding.js";
import { formatFixed, formatQuantity } from "../quantities/format.js";
import type { CompactionAnalysis } from "../soil/compaction/compactionTest.js";
import { moistureWindow } from "../soil/compaction/moistureWindow.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { CompactedDensity, MixStudy, StrengthStudy, StudyResult } from "./studyResult.js";

/** Where a tolerance comes from. */
export type ToleranceBasis =
  | "entered"
  | "batching variation"
  | "compaction test"
  | "lightest block"
  | "least cement"
  | "common practice";

/** One line of the specified mix: the value, and how far the work may stand from it. */
export interface SpecifiedLine {
  /** `share` and `cement` in percent of the dry soil and aggregate, `moisture` of all solids. */
  readonly kind: "share" | "cement" | "moisture" | "density" | "lift";
  /** Of the material, for shares. */
  readonly id?: string;
  /** Name of the material, for shares and cement; of a lift the elements that have it, where others have another. */
  readonly name?: Text;
  /** Percent, kg/m³ or metres. */
  readonly value: number;
  /** Absent where nothing bounds that side. */
  readonly low?: number;
  readonly high?: number;
  readonly basis: ToleranceBasis;
  /** Where the value of the density comes from; the limit has its own basis. */
  readonly valueBasis?: Text;
  /** Of the maximum of the compaction test; where the least density is a share of it. */
  readonly lowOfMaximumPct?: number;
}

/** Of a mass put into a batch, each way; common practice, no source. */
const BATCHING_PCT = 5;
/** Least rammed dry density, percent of the maximum of the compaction test; common practice, no source. */
const MIN_DENSITY_PCT = 98;
/** Of the rammed depth of a lift, each way; common practice, no source. */
const LIFT_M = 0.02;

/** What of a mix is held against its tests. */
type StatedMix = Pick<MixStudy, "recipe" | "water" | "density">;

/**
 * The mix as it is specified, with the tolerance of each line and where that comes from.
 *
 * Entered tolerances (`tolerances` of the study) stand first. Where one is missing: for a share the batching
 * variation that the blend's robustness was computed with, else 5 % of its mass; for cement 5 % of its mass,
 * and never below the least content that meets the requirement;
 * for a lift 20 mm; for moisture the window of the compaction test or of the site's entry; for density the
 * lightest block that the strengths rest on, because nothing lighter was tested, and where no block was
 * weighed 98 % of the maximum of the compaction test.
 *
 * @returns no lines where the study gives no mix.
 * Source: 5 %, 20 mm and 98 % are common practice, no source; the rest is the study's own.
 */
export function specifiedMix({
  config,
  mix,
  compaction,
  strength,
}: Pick<StudyResult, "config" | "compaction" | "strength"> & {
  readonly mix?: StatedMix;
}): SpecifiedLine[] {
  if (!mix || !isBuildable(config)) return [];
  const { tolerances = {}, cement } = config;
  const { recipe, water, density } = mix;
  const around = (value: number, pct: number) => ({
    value,
    low: value * (1 - pct / 100),
    high: value * (1 + pct / 100),
  });
  const shares = recipe.materials.flatMap(({ id, name, dryMassKg, sharePct }): SpecifiedLine[] => {
    if (dryMassKg === 0) return [];
    const batching = config.materials.find((one) => one.id === id)?.batchingPlusMinusPct;
    const pct = tolerances.sharesPct ?? batching ?? BATCHING_PCT;
    const basis =
      tolerances.sharesPct === undefined && batching !== undefined
        ? "batching variation"
        : basisOf(tolerances.sharesPct);
    return [{ kind: "share", id, name, ...around(sharePct, pct), basis }];
  });
  const lift = tolerances.liftM ?? LIFT_M;
  // Elements with lifts of one depth share a line.
  const depths = [...new Set(config.elements.map(({ compactedLiftM }) => compactedLiftM))];
  const lifts = depths.map((depth): SpecifiedLine => {
    const ofDepth = config.elements.filter(({ compactedLiftM }) => compactedLiftM === depth);
    return {
      kind: "lift",
      name: depths.length > 1 ? joinTexts(ofDepth.map(({ name }) => name)) : undefined,
      value: depth,
      low: Math.max(0, depth - lift),
      high: depth + lift,
      basis: basisOf(tolerances.liftM),
    };
  });
  return [
    ...shares,
    ...(recipe.cementPct > 0 ? [cementLine()] : []),
    {
      kind: "moisture",
      value: recipe.targetMoisturePct,
      ...water.window.moisturePct,
      basis: water.basis === "test" ? "compaction test" : water.basis,
    },
    {
      kind: "density",
      value: density.valueKgM3,
      valueBasis: density.basis,
      ...leastDensity(tolerances, density, compaction),
    },
    ...lifts,
  ];

  function cementLine(): SpecifiedLine {
    const ends = around(recipe.cementPct, tolerances.cementPct ?? BATCHING_PCT);
    const least = strength?.leastCement?.cementPct ?? 0;
    const line = { kind: "cement", name: cement.name, ...ends } as const;
    // A default must not let a batch fall below what the requirement asks for.
    return tolerances.cementPct === undefined && ends.low < least
      ? { ...line, low: least, basis: "least cement" }
      : { ...line, basis: basisOf(tolerances.cementPct) };
  }
}

/** The least dry density that the wall must have, and what that rests on. */
export function leastDensity(
  { densityPct }: ToleranceConfig,
  { valueKgM3, lowKgM3, highKgM3 }: CompactedDensity,
  compaction: StudyResult["compaction"],
): Pick<SpecifiedLine, "low" | "lowOfMaximumPct" | "basis"> {
  // A mix is stated only where the compaction test has a top; without one the rammed density stands in.
  const max = compaction?.peak?.maximumDryDensityKgM3 ?? valueKgM3;
  const ofMaximum = (pct: number, basis: ToleranceBasis) => ({
    low: (pct / 100) * max,
    lowOfMaximumPct: compaction?.peak && pct,
    basis,
  });
  if (densityPct !== undefined && compaction?.peak) return ofMaximum(densityPct, "entered");
  // One value for all says that no block was weighed, or that the blocks show no range.
  return lowKgM3 < highKgM3
    ? { low: lowKgM3, basis: "lightest block" }
    : ofMaximum(MIN_DENSITY_PCT, "common practice");
}

/** The density that materials are ordered for: that of the blocks, and never below the one that the wall must have. */
export function orderedDensity(
  density: CompactedDensity,
  specified: readonly SpecifiedLine[],
): CompactedDensity {
  const least = specified.find(({ kind }) => kind === "density")?.low ?? 0;
  const { valueKgM3, highKgM3, basis } = density;
  if (valueKgM3 >= least) return density;
  return {
    valueKgM3: least,
    lowKgM3: least,
    highKgM3: Math.max(highKgM3, least),
    basis: say`${basis}, raised to the least that the wall must have`,
  };
}

const LEAVE_TESTS: readonly string[] = [
  "tolerance-below-least-cement",
  "tolerance-outside-window",
  "tolerance-below-blocks",
];

/** Of `toleranceFindings` those by which a wall could be built that nothing was tested for. */
export function leavesTests({ code }: Pick<Finding, "code">): boolean {
  return LEAVE_TESTS.includes(code);
}

function basisOf(entered: number | undefined): ToleranceBasis {
  return entered === undefined ? "common practice" : "entered";
}

/** A rounding's worth is no breach. */
const SLACK = 1e-9;

/**
 * Holds the entered tolerances against what was tested: a mix that keeps to them must not fall below the
 * least cement, leave the moisture window of the compaction test, or be lighter than every block.
 *
 * @returns none where neither the study nor its site enters tolerances, or where there is no mix.
 */
export function toleranceFindings(
  result: Pick<StudyResult, "config" | "compaction" | "strength"> & { readonly mix?: StatedMix },
): Finding[] {
  const { config, mix, compaction, strength } = result;
  const { tolerances, elements, units } = config;
  if (!mix || !isBuildable(config)) return [];
  const lines = specifiedMix(result);
  const line = (kind: SpecifiedLine["kind"]) => lines.find((one) => one.kind === kind);
  const ofMoisture = moistureTolerance(line("moisture")!, config, compaction);
  if (!tolerances) return ofMoisture;
  const liftM = Math.min(...elements.map(({ compactedLiftM }) => compactedLiftM));
  return [
    ...cementTolerance(line("cement"), strength),
    ...ofMoisture,
    ...(tolerances.densityPct === undefined ? [] : densityTolerance(line("density")!, config, mix)),
    ...tolerance((tolerances.liftM ?? 0) >= liftM, "lift", "tolerance-as-large-as-lift", {
      message: say`The tolerance of a lift is as large as the lift itself.`,
      expected: say`less than ${formatQuantity(1000 * liftM, "depth", units)}`,
      remedy: say`Correct the value in study.yaml.`,
    }),
    ...tolerance(line("density")?.basis === "common practice", "density", "tolerance-not-stated", {
      message: say`No least density is stated, and no weighed blocks give a range for one: ${MIN_DENSITY_PCT} % of the maximum dry density is taken, which is common practice.`,
      expected: say`tolerances.density, percent of the maximum dry density`,
      remedy: say`Let the responsible person state it.`,
    }),
  ];
}

function tolerance(isSo: boolean, key: string, code: string, words: FindingWords): Finding[] {
  return findingIf(isSo, { file: STUDY_FILE, column: `tolerances.${key}` }, "warning", code, words);
}

/** Two decimals show what a tolerance cuts off. */
export const percent = (value: number, decimals = 2) => say`${formatFixed(value, decimals)} %`;

function cementTolerance(
  { low = Infinity }: Partial<SpecifiedLine> = {},
  strength: StudyResult["strength"],
): Finding[] {
  const least = strength?.leastCement?.cementPct ?? 0;
  return tolerance(low < least - SLACK, "cement", "tolerance-below-least-cement", {
    message: say`With its tolerance the cement may fall to ${percent(low)}, below the ${percent(least)} at which the blocks meet the requirement.`,
    expected: say`a cement content that meets the requirement at the low end of its tolerance`,
    remedy: say`Narrow the tolerance, or specify more cement: strength.round-up-to rounds to larger steps.`,
  });
}

function moistureTolerance(
  { value, low = value, high = value }: SpecifiedLine,
  { tolerances, site: { tolerancePct } }: Pick<StudyConfig, "tolerances" | "site">,
  compaction: StudyResult["compaction"],
): Finding[] {
  const window = compaction && moistureWindow(compaction);
  if (!window) return [];
  const beyond = (dry: number, wet: number) =>
    dry < window.driestPct - SLACK || wet > window.wettestPct + SLACK;
  const kept = say`the compaction test keeps ${window.relativePct} % of its greatest dry density from ${percent(window.driestPct)} to ${percent(window.wettestPct)} only`;
  const expected = say`a tolerance inside the window of the compaction test`;
  const remedy = say`Narrow the tolerance, or test compaction at more moistures where the window ends with the test.`;
  if (tolerances?.moistureBelowPct !== undefined) {
    const message = say`The moisture may go from ${percent(low)} to ${percent(high)}; ${kept}.`;
    const words = { message, expected, remedy };
    return tolerance(beyond(low, high), "moisture", "tolerance-outside-window", words);
  }
  if (tolerancePct === undefined) return [];
  const [dry, wet] = [value - tolerancePct, value + tolerancePct];
  const place = { file: STUDY_FILE, column: "site.tolerance" };
  return findingIf(beyond(dry, wet), place, "warning", "site-tolerance-cut", {
    message: say`The tolerance of the site would let the moisture go from ${percent(dry)} to ${percent(wet)}; ${kept}, and the cards keep to that.`,
    expected,
    remedy,
  });
}

function densityTolerance(
  { low: leastKgM3 = 0 }: SpecifiedLine,
  { units }: Pick<StudyConfig, "units">,
  { density: { lowKgM3, highKgM3 } }: StatedMix,
): Finding[] {
  const density = (value: number) => formatQuantity(value, "density", units, 4);
  if (lowKgM3 >= highKgM3) return [];
  return [
    ...tolerance(leastKgM3 < lowKgM3 - SLACK, "density", "tolerance-below-blocks", {
      message: say`A wall of ${density(leastKgM3)} would be accepted; the lightest block that the strengths rest on has ${density(lowKgM3)}.`,
      expected: say`a least density that was tested for strength`,
      remedy: say`Raise the least density, or crush blocks that are rammed less.`,
    }),
    ...tolerance(leastKgM3 > highKgM3 + SLACK, "density", "tolerance-above-blocks", {
      message: say`The least density asked for, ${density(leastKgM3)}, is more than that of any block, ${density(highKgM3)} at most.`,
      expected: say`a least density that the blocks reached`,
      remedy: say`Lower it, or see why the blocks are lighter than the compaction test.`,
    }),
  ];
}

/** The blocks show what the rammed mix weighs; the compaction test stands in where none was weighed. */
export function mixDensity(
  { specimens, fit }: StrengthStudy,
  compaction: CompactionAnalysis | undefined,
): CompactedDensity | undefined {
  const allAges = fit.covariates.some(({ kind }) => kind === "ln age");
  const densities = specimens.flatMap(({ excluded, ageDays, dryDensityKgM3 }) =>
    !excluded && (allAges || ageDays === fit.ageDays) && dryDensityKgM3 !== undefined
      ? [dryDensityKgM3]
      : [],
  );
  if (densities.length > 0) {
    return {
      valueKgM3: mean(densities),
      lowKgM3: Math.min(...densities),
      highKgM3: Math.max(...densities),
      basis: allAges
        ? say`mean dry density of ${densities.length}{0, plural, one { block} other { blocks}} of all ages`
        : say`mean dry density of ${densities.length}{0, plural, one { block} other { blocks}} of ${fit.ageDays} days`,
    };
  }
  if (!compaction?.peak) return undefined;
  const valueKgM3 = compaction.peak.maximumDryDensityKgM3;
  return {
    valueKgM3,
    lowKgM3: valueKgM3,
    highKgM3: valueKgM3,
    basis: say`maximum dry density of the compaction test`,
  };
}
