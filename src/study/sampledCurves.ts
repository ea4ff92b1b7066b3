import { blendCurve } from "../blend/material.js";
import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import { type GradingCurve, passingAtSize } from "../grading/curve.js";
import { analyseSieve } from "../grading/sieveAnalysis.js";
import { resampleReadings } from "../grading/uncertainty/readingErrors.js";
import type { StudyMaterial } from "./study.js";

/** Enough for a probability to about three points, and for 95 % intervals to a tenth of their width. */
export const READING_DRAWS = 250;

/**
 * Draws the curves of one material. Without a particle density no sizes in water follow, nor where its sieves do
 * not span the one that separated the dispersed material: only the sieve sheet is then drawn from.
 */
export function sampleMaterial(
  {
    config: { particleDensityKgM3 },
    sieve,
    hydrometer,
    pipette,
  }: Pick<StudyMaterial, "sieve" | "hydrometer" | "pipette"> & {
    readonly config: Pick<MaterialConfig, "particleDensityKgM3">;
  },
  { seed, readingErrors }: Pick<StudyConfig, "seed" | "readingErrors">,
): GradingCurve[] {
  const separatingMm = (hydrometer ?? pipette)?.separatingSizeMm;
  const spanned =
    separatingMm === undefined ||
    passingAtSize({ points: analyseSieve(sieve).points }, separatingMm) !== undefined;
  const sheets =
    particleDensityKgM3 !== undefined && spanned
      ? { sieve, hydrometer, pipette, particleDensityKgM3 }
      : { sieve };
  return resampleReadings(sheets, { seed, resamples: READING_DRAWS, errors: readingErrors });
}

/**
 * Blends the drawn curves of all materials, bought ones too, at the designed shares.
 *
 * All materials draw from the same seed. One blend takes each material's curve from another place of
 * its row: otherwise the same random numbers would move all materials together.
 *
 * @param drawn of `sampleMaterial`, in the order of the materials: those behind a soil's own intervals.
 * @param sharesPct in the same order.
 */
export function sampleBlend(
  drawn: readonly (readonly GradingCurve[])[],
  sharesPct: readonly number[],
): GradingCurve[] {
  const step = Math.floor(READING_DRAWS / drawn.length);
  return Array.from({ length: READING_DRAWS }, (_, draw) => {
    const parts = drawn.map((curves, index) => ({
      curve: curves[(draw + index * step) % READING_DRAWS],
      sharePct: sharesPct[index],
    }));
    return blendCurve(parts).curve;
  });
}
