import type { Recipe } from "../batch/recipe.js";
import { type WaterWindow, waterWindow } from "../batch/water.js";
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
const FALLBACK_TOLERANCE_PCT = 1;

/** The entered tolerance before the window of the compaction test, and that before a common one. */
export function mixWater(
  batch: Recipe,
  compaction: CompactionAnalysis | undefined,
  tolerancePct: number | undefined,
): MixWater {
  if (tolerancePct !== undefined) {
    return { window: waterWindow(batch, { tolerancePct }), basis: "entered" };
  }
  const fromTest = compaction && moistureWindow(compaction);
  if (fromTest) return { window: waterWindow(batch, fromTest), basis: "test", fromTest };
  const common = { tolerancePct: FALLBACK_TOLERANCE_PCT };
  return { window: waterWindow(batch, common), basis: "common practice" };
}
