import { mean } from "simple-statistics";
import { isBuildable } from "../entries/buildable.js";
import type { ToleranceConfig } from "../entries/studyConfig.js";
import { type Finding, type FindingWords, finding, STUDY_FILE } from "../findings/finding.js";
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
  const { tolerances = {} } = config;
  const { recipe, water, density } = mix;
  const around = (value: number, pct: number) => ({
    value,
    low: value * (1 - pct / 100),
    high: value * (1 + pct / 100),
  });
  const lines: SpecifiedLine[] = recipe.materials
    .filter(({ dryMassKg }) => dryMassKg > 0)
    .map(({ id, name, sharePct }) => {
      const batching = config.materials.find((one) => one.id === id)?.batchingPlusMinusPct;
      const pct = tolerances.sharesPct ?? batching ?? BATCHING_PCT;
      return {
        kind: "share",
        id,
        name,
        ...around(sharePct, pct),
        basis: shareBasis(tolerances.sharesPct, batching),
      };
    });
  if (recipe.cementPct > 0) {
    const ends = around(recipe.cementPct, tolerances.cementPct ?? BATCHING_PCT);
    const least = strength?.leastCement?.cementPct ?? 0;
    const bound = tolerances.cementPct === undefined && ends.low < least;
    lines.push({
      kind: "cement",
      name: config.cement.name,
      ...ends,
      // A default must not let a batch fall below what the requirement asks for.
      ...(bound ? { low: least, basis: "least cement" } : { basis: basisOf(tolerances.cementPct) }),
    });
  }
  const value = recipe.targetMoisturePct;
  const { low, high } = water.window.moisturePct;
  lines.push({ kind: "moisture", value, low, high, basis: WATER_BASIS[water.basis] });
  lines.push({
    kind: "density",
    value: density.valueKgM3,
    valueBasis: density.basis,
    ...leastDensity(tolerances, density, compaction),
  });
  const lift = tolerances.liftM ?? LIFT_M;
  // Elements with lifts of one depth share a line.
  for (const depth of new Set(config.elements.map(({ compactedLiftM }) => compactedLiftM))) {
    const ofDepth = config.elements.filter(({ compactedLiftM }) => compactedLiftM === depth);
    lines.push({
      kind: "lift",
      ...(ofDepth.length < config.elements.length
        ? { name: joinTexts(ofDepth.map(({ name }) => name)) }
        : {}),
      value: depth,
      low: Math.max(0, depth - lift),
      high: depth + lift,
      basis: basisOf(tolerances.liftM),
    });
  }
  return lines;
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
    ...(compaction?.peak ? { lowOfMaximumPct: pct } : {}),
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

const LEAVE_TESTS: ReadonlySet<string> = new Set([
  "tolerance-below-least-cement",
  "tolerance-outside-window",
  "tolerance-below-blocks",
]);

/** Of `toleranceFindings` those by which a wall could be built that nothing was tested for. */
export function leavesTests({ code }: Pick<Finding, "code">): boolean {
  return LEAVE_TESTS.has(code);
}

const WATER_BASIS = {
  entered: "entered",
  test: "compaction test",
  "common practice": "common practice",
} as const;

function shareBasis(entered: number | undefined, batching: number | undefined): ToleranceBasis {
  if (entered !== undefined) return "entered";
  return batching === undefined ? "common practice" : "batching variation";
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
  const { config, mix, compaction } = result;
  const { tolerances } = config;
  if (!mix || !isBuildable(config)) return [];
  const lines = specifiedMix(result);
  const line = (kind: SpecifiedLine["kind"]) => lines.find((one) => one.kind === kind);
  const ofMoisture = moistureTolerance(line("moisture"), config, compaction);
  if (!tolerances) return ofMoisture;
  const findings = [
    ...cementTolerance(line("cement"), result.strength),
    ...ofMoisture,
    ...densityTolerance(line("density"), result),
  ];
  const compactedLiftM = Math.min(...config.elements.map((element) => element.compactedLiftM));
  if (tolerances.liftM !== undefined && tolerances.liftM >= compactedLiftM) {
    findings.push(
      tolerance("lift", "tolerance-as-large-as-lift", {
        message: say`The tolerance of a lift is as large as the lift itself.`,
        expected: say`less than ${formatQuantity(1000 * compactedLiftM, "depth", config.units)}`,
        remedy: say`Correct the value in study.yaml.`,
      }),
    );
  }
  if (line("density")?.basis === "common practice") {
    findings.push(
      tolerance("density", "tolerance-not-stated", {
        message: say`No least density is stated, and no weighed blocks give a range for one: ${MIN_DENSITY_PCT} % of the maximum dry density is taken, which is common practice.`,
        expected: say`tolerances.density, percent of the maximum dry density`,
        remedy: say`Let the responsible person state it.`,
      }),
    );
  }
  return findings;
}

const tolerance = (key: string, code: string, words: FindingWords) =>
  finding({ file: STUDY_FILE, column: `tolerances.${key}` }, "warning", code, words);

const percent = (value: number) => say`${formatFixed(value, 2)} %`;

function cementTolerance(
  line: SpecifiedLine | undefined,
  strength: StudyResult["strength"],
): Finding[] {
  const least = strength?.leastCement?.cementPct ?? null;
  if (line?.low === undefined || least === null || line.low >= least - SLACK) return [];
  return [
    tolerance("cement", "tolerance-below-least-cement", {
      message: say`With its tolerance the cement may fall to ${percent(line.low)}, below the ${percent(least)} at which the blocks meet the requirement.`,
      expected: say`a cement content that meets the requirement at the low end of its tolerance`,
      remedy: say`Narrow the tolerance, or specify more cement: strength.round-up-to rounds to larger steps.`,
    }),
  ];
}

function moistureTolerance(
  { value, low, high }: Partial<SpecifiedLine> = {},
  { tolerances, site }: Pick<StudyResult["config"], "tolerances" | "site">,
  compaction: StudyResult["compaction"],
): Finding[] {
  const window = compaction && moistureWindow(compaction);
  if (!window || value === undefined || low === undefined || high === undefined) return [];
  const beyond = (dry: number, wet: number) =>
    dry < window.driestPct - SLACK || wet > window.wettestPct + SLACK;
  const kept = say`the compaction test keeps ${window.relativePct} % of its greatest dry density from ${percent(window.driestPct)} to ${percent(window.wettestPct)} only`;
  const expected = say`a tolerance inside the window of the compaction test`;
  const remedy = say`Narrow the tolerance, or test compaction at more moistures where the window ends with the test.`;
  if (tolerances?.moistureBelowPct !== undefined) {
    if (!beyond(low, high)) return [];
    return [
      tolerance("moisture", "tolerance-outside-window", {
        message: say`The moisture may go from ${percent(low)} to ${percent(high)}; ${kept}.`,
        expected,
        remedy,
      }),
    ];
  }
  const ofSite = site.tolerancePct;
  if (ofSite === undefined || !beyond(value - ofSite, value + ofSite)) return [];
  const place = { file: STUDY_FILE, column: "site.tolerance" };
  return [
    finding(place, "warning", "site-tolerance-cut", {
      message: say`The tolerance of the site would let the moisture go from ${percent(value - ofSite)} to ${percent(value + ofSite)}; ${kept}, and the cards keep to that.`,
      expected,
      remedy,
    }),
  ];
}

function densityTolerance(
  line: SpecifiedLine | undefined,
  { config, mix }: Pick<StudyResult, "config"> & { readonly mix?: StatedMix },
): Finding[] {
  if (config.tolerances?.densityPct === undefined || !mix) return [];
  const density = (value: number) => formatQuantity(value, "density", config.units, 4);
  const { lowKgM3, highKgM3 } = mix.density;
  const lightest = line?.low;
  const findings: Finding[] = [];
  if (lightest !== undefined && lowKgM3 < highKgM3 && lightest < lowKgM3 - SLACK) {
    findings.push(
      tolerance("density", "tolerance-below-blocks", {
        message: say`A wall of ${density(lightest)} would be accepted; the lightest block that the strengths rest on has ${density(lowKgM3)}.`,
        expected: say`a least density that was tested for strength`,
        remedy: say`Raise the least density, or crush blocks that are rammed less.`,
      }),
    );
  }
  if (lightest !== undefined && lowKgM3 < highKgM3 && lightest > highKgM3 + SLACK) {
    findings.push(
      tolerance("density", "tolerance-above-blocks", {
        message: say`The least density asked for, ${density(lightest)}, is more than that of any block, ${density(highKgM3)} at most.`,
        expected: say`a least density that the blocks reached`,
        remedy: say`Lower it, or see why the blocks are lighter than the compaction test.`,
      }),
    );
  }
  return findings;
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
