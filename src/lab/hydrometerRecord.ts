import type { HydrometerCalibration } from "./hydrometerCalibration.js";
import type { Pretreatment } from "./pretreatment.js";

/** 152H reads g/L; 151H reads specific gravity; BS reads 0.001 above 1.000 (24.0 is 1.0240). */
export type HydrometerType = "151H" | "152H" | "BS";

/** Corrections measured one by one, in place of readings in a control cylinder. */
export interface HydrometerCorrections {
  /** What the dispersant adds to a reading, in the units of the record. */
  readonly dispersant: number;
  /** At which the scale is right; 20 °C where the sheet does not say. */
  readonly calibrationC?: number;
}

/** A hydrometer analysis as read from its sheet: g/L for 152H, specific gravity for 151H and BS. */
export interface HydrometerRecord {
  readonly file: string;
  readonly hydrometer: HydrometerType;
  /** Oven-dry mass dispersed in the cylinder. */
  readonly dryMassG: number;
  /** Sieve that the dispersed material had passed; its share of the whole sample scales the result. */
  readonly separatingSizeMm: number;
  /** Added to the raw reading to get the true reading at the stem, in the units of the record. */
  readonly meniscusCorrection: number;
  /** In place of the readings' `control`. */
  readonly corrections?: HydrometerCorrections;
  /** Of this instrument; without it the standard one is taken (a BS hydrometer must have it). */
  readonly calibration?: HydrometerCalibration;
  readonly pretreatment?: Pretreatment;
  /** Increasing times. */
  readonly readings: readonly HydrometerReading[];
}

export interface HydrometerReading {
  readonly timeMin: number;
  /** Raw reading at the top of the meniscus: g/L for 152H, else specific gravity. */
  readonly reading: number;
  /** Reading in the control cylinder (water and dispersant) at the same temperature, same units; absent with `corrections`. */
  readonly control?: number;
  readonly temperatureC: number;
  readonly row: number;
}
