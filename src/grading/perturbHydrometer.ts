import type { HydrometerRecord } from "../lab/hydrometerRecord.js";
import type { Random } from "../numerics/random.js";
import type { ReadingErrors } from "./readingErrors.js";

/** One unit of the 152H scale (g/L of grains of 2650 kg/m³) in specific gravity. */
const GRAVITY_PER_UNIT = 1.65 / 2650;

/**
 * A hydrometer sheet as the same suspension could have been read: readings and times move one by one;
 * control, meniscus, thermometer and dispersed mass are off for all readings together.
 */
export function perturbHydrometer(
  record: HydrometerRecord,
  { hydrometerUnits, temperatureC, timeS, balanceG }: ReadingErrors,
  random: Random,
): HydrometerRecord {
  const sd = hydrometerUnits * (record.hydrometer === "152H" ? 1 : GRAVITY_PER_UNIT);
  const control = sd * random.normal();
  const degrees = temperatureC * random.normal();
  return {
    ...record,
    dryMassG: record.dryMassG + balanceG * random.normal(),
    meniscusCorrection: record.meniscusCorrection + (sd / 2) * random.normal(),
    // Without a control cylinder its error is that of the dispersant's share; the temperature has its own.
    ...(record.corrections
      ? {
          corrections: {
            ...record.corrections,
            dispersant: record.corrections.dispersant + control,
          },
        }
      : {}),
    readings: record.readings.map((reading) => ({
      ...reading,
      reading: reading.reading + sd * random.normal(),
      ...(reading.control === undefined ? {} : { control: reading.control + control }),
      temperatureC: Math.min(30, Math.max(10, reading.temperatureC + degrees)),
      timeMin: Math.max(reading.timeMin / 2, reading.timeMin + (timeS / 60) * random.normal()),
    })),
  };
}
