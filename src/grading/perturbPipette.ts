import type { PipetteRecord } from "../lab/pipetteRecord.js";
import type { Random } from "../numerics/random.js";
import type { ReadingErrors } from "./readingErrors.js";

/**
 * A pipette sheet as the same suspension could have been sampled: each dried sample and each time moves
 * by itself; volume, thermometer and dispersed mass are off for all samples together.
 */
export function perturbPipette(
  record: PipetteRecord,
  { pipetteBalanceG, pipetteVolumePct, balanceG, temperatureC, timeS }: ReadingErrors,
  random: Random,
): PipetteRecord {
  const degrees = temperatureC * random.normal();
  return {
    ...record,
    dryMassG: record.dryMassG + balanceG * random.normal(),
    pipetteVolumeCm3: record.pipetteVolumeCm3 * (1 + (pipetteVolumePct / 100) * random.normal()),
    samples: record.samples.map((sample) => ({
      ...sample,
      solidsG: Math.max(0, sample.solidsG + pipetteBalanceG * random.normal()),
      temperatureC: Math.min(30, Math.max(10, sample.temperatureC + degrees)),
      timeMin: Math.max(sample.timeMin / 2, sample.timeMin + (timeS / 60) * random.normal()),
    })),
  };
}
