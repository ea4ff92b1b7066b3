import type { StudyResult } from "./studyResult.js";

/** Where a tolerance comes from. */
export type ToleranceBasis =
  | "entered"
  | "batching variation"
  | "compaction test"
  | "lightest block"
  | "least cement"
  | "common practice"
  | "not stated";

/** One line of the specified mix: the value, and how far the work may stand from it. */
export interface SpecifiedLine {
  /** `share` and `cement` in percent of the dry soil and aggregate, `moisture` of all solids. */
  readonly kind: "share" | "cement" | "moisture" | "density" | "lift";
  /** Name of the material, for shares and cement. */
  readonly name?: string;
  /** Percent, kg/m³ or metres. */
  readonly value: number;
  /** Absent where nothing bounds that side. */
  readonly low?: number;
  readonly high?: number;
  readonly basis: ToleranceBasis;
}

/** Of a mass put into a batch, each way; common practice, no source. */
const BATCHING_PCT = 5;
/** Of the rammed depth of a lift, each way; common practice, no source. */
const LIFT_M = 0.02;

/**
 * The mix as it is specified, with the tolerance of each line and where that comes from.
 *
 * Entered tolerances (`tolerances` of the study) stand first. Where one is missing: for a share the batching
 * variation that the blend's robustness was computed with, else 5 % of its mass; for cement 5 % of its mass,
 * and never below the least content that meets the requirement;
 * for a lift 20 mm; for moisture the window of the compaction test or of the site's entry; for density the
 * lightest block that the strengths rest on, because nothing lighter was tested. Without such a block no
 * least density is stated.
 *
 * @returns no lines where the study gives no mix.
 * Source: 5 % and 20 mm are common practice, no source; the rest is the study's own.
 */
export function specifiedMix({
  config,
  mix,
  compaction,
  strength,
}: Pick<StudyResult, "config" | "mix" | "compaction" | "strength">): SpecifiedLine[] {
  if (!mix) return [];
  const { tolerances = {} } = config;
  const { recipe, water, density } = mix;
  const around = (value: number, pct: number) => ({
    ...{ value, low: value * (1 - pct / 100), high: value * (1 + pct / 100) },
  });
  const lines: SpecifiedLine[] = recipe.materials
    .filter(({ dryMassKg }) => dryMassKg > 0)
    .map(({ id, name, sharePct }) => {
      const batching = config.materials.find((one) => one.id === id)?.batchingPlusMinusPct;
      const pct = tolerances.sharesPct ?? batching ?? BATCHING_PCT;
      return {
        ...{ kind: "share", name, ...around(sharePct, pct) },
        basis:
          tolerances.sharesPct !== undefined
            ? "entered"
            : batching === undefined
              ? "common practice"
              : "batching variation",
      };
    });
  if (recipe.cementPct > 0) {
    const ends = around(recipe.cementPct, tolerances.cementPct ?? BATCHING_PCT);
    const least = strength.leastCement.cementPct ?? 0;
    const bound = tolerances.cementPct === undefined && ends.low < least;
    lines.push({
      ...{ kind: "cement", name: config.cement.name, ...ends },
      // A default must not let a batch fall below what the requirement asks for.
      ...(bound ? { low: least, basis: "least cement" } : { basis: basisOf(tolerances.cementPct) }),
    });
  }
  const value = recipe.targetMoisturePct;
  const { moistureBelowPct, moistureAbovePct } = tolerances;
  const window =
    moistureBelowPct === undefined || moistureAbovePct === undefined
      ? water.window.moisturePct
      : { low: Math.max(0, value - moistureBelowPct), high: value + moistureAbovePct };
  lines.push({
    ...{ kind: "moisture", value, low: window.low, high: window.high },
    basis:
      moistureBelowPct !== undefined || water.basis === "entered"
        ? "entered"
        : water.basis === "test"
          ? "compaction test"
          : "common practice",
  });
  lines.push({ kind: "density", value: density.valueKgM3, ...leastDensity() });
  const lift = tolerances.liftM ?? LIFT_M;
  const depth = config.element.compactedLiftM;
  lines.push({
    ...{ kind: "lift", value: depth, low: Math.max(0, depth - lift), high: depth + lift },
    basis: basisOf(tolerances.liftM),
  });
  return lines;

  function leastDensity(): Pick<SpecifiedLine, "low" | "basis"> {
    const most = compaction?.peak?.maximumDryDensityKgM3;
    if (tolerances.densityPct !== undefined && most !== undefined) {
      return { low: (tolerances.densityPct / 100) * most, basis: "entered" };
    }
    // One value for all says that no block was weighed.
    return density.lowKgM3 < density.highKgM3
      ? { low: density.lowKgM3, basis: "lightest block" }
      : { basis: "not stated" };
  }
}

function basisOf(entered: number | undefined): ToleranceBasis {
  return entered === undefined ? "common practice" : "entered";
}
