/** A hydrometer analysis as read from its sheet. */
export interface HydrometerRecord {
  readonly file: string;
  readonly hydrometer: "151H" | "152H";
  /** Oven-dry mass dispersed in the cylinder. */
  readonly dryMassG: number;
  /** Sieve that the dispersed material had passed; its share of the whole sample scales the result. */
  readonly separatingSizeMm: number;
  /** Added to the raw reading to get the true reading at the stem, in the hydrometer's own units. */
  readonly meniscusCorrection: number;
  /** Increasing times. */
  readonly readings: readonly HydrometerReading[];
}

export interface HydrometerReading {
  readonly timeMin: number;
  /** Raw reading at the top of the meniscus: g/L for 152H, specific gravity for 151H. */
  readonly reading: number;
  /** Reading in the control cylinder (water and dispersant) at the same temperature, same units. */
  readonly control: number;
  readonly temperatureC: number;
  readonly row: number;
}
