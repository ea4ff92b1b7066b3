import type { ReadingSheets } from "../grading/resampleReadings.js";
import type { StudyMaterial } from "./study.js";

/** The sheets that a material's grading was read from, to be read again with errors. */
export function readingSheets({
  config,
  sieve,
  hydrometer,
  pipette,
}: StudyMaterial): ReadingSheets {
  return { sieve, hydrometer, pipette, particleDensityKgM3: config.particleDensityKgM3 };
}
