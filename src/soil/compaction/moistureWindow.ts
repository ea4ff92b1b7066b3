import { checkThat } from "../../quantities/checkNumber.js";
import type { CompactionAnalysis } from "./compactionTest.js";

/** Percent of the maximum dry density that the window keeps; common practice, no source. */
const MIN_RELATIVE_PCT = 98;

export interface MoistureWindow {
  /** Percent of the maximum dry density that is asked for. */
  readonly relativePct: number;
  readonly minDryDensityKgM3: number;
  readonly driestPct: number;
  readonly wettestPct: number;
  /** The window ends where the tests end on that side: it may reach further. */
  readonly openDry: boolean;
  readonly openWet: boolean;
}

/**
 * Water contents at which the compaction curve keeps a share of its maximum dry density: how wet a mix
 * may be rammed.
 *
 * Read off the fitted curve within the tested range, and never beyond it. It holds for the effort of
 * the test: a rammer with more effort has a drier window, one with less a wetter one.
 *
 * @param relativePct default 98 (common practice, no source).
 * @returns `undefined` where the points show no top.
 * @throws RangeError where the share is not above 0 and at most 100.
 *
 * @example
 * const points = [[6.5, 1872], [8.7, 1966], [10.6, 2043], [12.2, 2068], [14.4, 1996]].map(([waterContentPct, moistMassG], index) => ({ waterContentPct, moistMassG, row: index + 5 }));
 * const window = moistureWindow(analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points }));
 * [window.driestPct, window.wettestPct] // => [8.82, 12.88]
 */
export function moistureWindow(
  { peak, curve }: Pick<CompactionAnalysis, "peak" | "curve">,
  relativePct: number = MIN_RELATIVE_PCT,
): MoistureWindow | undefined {
  checkThat(relativePct > 0 && relativePct <= 100, { relativePct }, "above 0, up to 100");
  if (!peak || curve.length === 0) return undefined;
  const minDensityKgM3 = (relativePct / 100) * peak.maximumDryDensityKgM3;
  const top = curve.findIndex(({ waterContentPct }) => waterContentPct >= peak.optimumWaterPct);
  const walk = (step: -1 | 1): { water: number; open: boolean } => {
    let inside = {
      waterContentPct: peak.optimumWaterPct,
      dryDensityKgM3: peak.maximumDryDensityKgM3,
    };
    const from = step > 0 ? top : top - 1;
    for (let at = from; at >= 0 && at < curve.length; at += step) {
      const outside = curve[at];
      if (outside.dryDensityKgM3 < minDensityKgM3) {
        const fall = inside.dryDensityKgM3 - outside.dryDensityKgM3;
        const part = fall > 0 ? (inside.dryDensityKgM3 - minDensityKgM3) / fall : 0;
        const way = outside.waterContentPct - inside.waterContentPct;
        return { water: inside.waterContentPct + part * way, open: false };
      }
      inside = outside;
    }
    return { water: inside.waterContentPct, open: true };
  };
  const [dry, wet] = [walk(-1), walk(1)];
  return {
    relativePct,
    minDryDensityKgM3: minDensityKgM3,
    driestPct: dry.water,
    wettestPct: wet.water,
    openDry: dry.open,
    openWet: wet.open,
  };
}
