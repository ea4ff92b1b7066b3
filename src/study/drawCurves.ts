import { blendCurve } from "../blend/blendCurve.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import { resampleReadings } from "../grading/resampleReadings.js";
import { readingSheets } from "./readingSheets.js";
import type { Study } from "./study.js";

/** Enough for a probability to about three points, and for 95 % intervals to a tenth of their width. */
export const READING_DRAWS = 250;

/** Curves as they could have come out within the stated reading errors. */
export interface DrawnCurves {
  /** In the order of the materials; the same draws as behind their intervals. */
  readonly materials: readonly (readonly GradingCurve[])[];
  readonly blend: readonly GradingCurve[];
}

/**
 * Draws the curves of all materials, bought ones too, and blends them at the designed shares.
 *
 * All materials draw from the same seed, so that a soil's curves are those of its own intervals. One
 * blend takes each material's curve from another place of its row: otherwise the same random numbers
 * would move all materials together.
 */
export function drawCurves(
  { materials, config }: Pick<Study, "materials" | "config">,
  sharesPct: readonly number[],
): DrawnCurves {
  const drawn = materials.map((material) =>
    resampleReadings(readingSheets(material), {
      seed: config.seed,
      resamples: READING_DRAWS,
      errors: config.readingErrors,
    }),
  );
  const step = Math.floor(READING_DRAWS / materials.length);
  const blend = Array.from(
    { length: READING_DRAWS },
    (_, draw) =>
      blendCurve(
        drawn.map((curves, index) => ({
          curve: curves[(draw + index * step) % READING_DRAWS],
          sharePct: sharesPct[index],
        })),
      ).curve,
  );
  return { materials: drawn, blend };
}
