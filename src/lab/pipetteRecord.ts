import type { Pretreatment } from "./pretreatment.js";

/** A pipette analysis as read from its sheet. */
export interface PipetteRecord {
  readonly file: string;
  /** Oven-dry mass dispersed in the cylinder, without the dispersant. */
  readonly dryMassG: number;
  /** Sieve that the dispersed material had passed. */
  readonly separatingSizeMm: number;
  readonly cylinderVolumeCm3: number;
  readonly pipetteVolumeCm3: number;
  /** Dry mass of dispersant in the whole cylinder; it dries down with every sample. */
  readonly dispersantG: number;
  readonly pretreatment?: Pretreatment;
  /** Increasing times. */
  readonly samples: readonly PipetteSample[];
}

export interface PipetteSample {
  readonly timeMin: number;
  /** Of the pipette's tip below the surface at that time. */
  readonly depthMm: number;
  readonly temperatureC: number;
  /** Dried contents of the pipette. */
  readonly solidsG: number;
  readonly row: number;
}
