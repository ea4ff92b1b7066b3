import type { Recipe } from "../batch/recipe.js";
import { type WaterWindow, waterWindow } from "../batch/water.js";
import type { ToleranceConfig } from "../entries/studyConfig.js";
import { checkNotNegative } from "../quantities/checkNumber.js";
import type { CompactionAnalysis } from "../soil/compaction/compactionTest.js";
import { type MoistureWindow, moistureWindow } from "../soil/compaction/moistureWindow.js";

/** The water that a batch may hold, and how that is known. */
export interface MixWater {
  readonly window: WaterWindow;
  readonly basis: "test" | "entered" | "common practice";
  /** Only with the basis `test`. */
  readonly fromTest?: MoistureWindow;
}

/** Tolerance that stands in where neither a window nor a tolerance is known; common practice, no source. */
export const COMMON_TOLERANCE_PCT = 1;

/**
 * The entered tolerance before the window of the compaction test, and that before a common one.
 *
 * @param tolerances of the study. Where the site has its own beside them, the narrower holds on each side,
 * so that no crew is allowed more than the mix is stated with; where it alone has one, that never leads
 * beyond the window.
 */
export function mixWater(
  batch: Recipe,
  compaction: CompactionAnalysis | undefined,
  { moistureBelowPct, moistureAbovePct }: ToleranceConfig = {},
  siteTolerancePct?: number,
): MixWater {
  if (siteTolerancePct !== undefined) checkNotNegative("tolerancePct", siteTolerancePct);
  const { targetMoisturePct: target } = batch;
  const fromTest = compaction && moistureWindow(compaction);
  const ofSite = siteTolerancePct ?? Infinity;
  const [toDriest, toWettest] =
    siteTolerancePct !== undefined && fromTest
      ? [target - fromTest.driestPct, fromTest.wettestPct - target]
      : [Infinity, Infinity];
  const below = Math.min(moistureBelowPct ?? Infinity, ofSite, toDriest);
  const above = Math.min(moistureAbovePct ?? Infinity, ofSite, toWettest);
  if (below < Infinity && above < Infinity) {
    const limits = { driestPct: Math.max(0, target - below), wettestPct: target + above };
    return { window: waterWindow(batch, limits), basis: "entered" };
  }
  if (fromTest) return { window: waterWindow(batch, fromTest), basis: "test", fromTest };
  const common = { tolerancePct: COMMON_TOLERANCE_PCT };
  return { window: waterWindow(batch, common), basis: "common practice" };
}
