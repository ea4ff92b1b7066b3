/** What a class reads off its jar and its balance, as typed into a notebook. */
export interface ClassReadings {
  readonly jar: {
    readonly waterDepthMm: number;
    /** Tops of the layers above the bottom of the jar. */
    readonly sandTopMm: number;
    readonly siltTopMm: number;
    readonly clayTopMm: number;
    /** When each top was read; default 1, 960 and 2880 min. */
    readonly sandMin?: number;
    readonly siltMin?: number;
    readonly clayMin?: number;
    /** Sieve through which the soil was put before. */
    readonly passedSizeMm?: number;
  };
  readonly sieve: {
    /** Before washing. */
    readonly dryMassG: number;
    readonly washedDryMassG: number;
    /** Coarse to fine. */
    readonly retained: readonly { readonly sizeMm: number; readonly massG: number }[];
    readonly panG: number;
  };
  /** What a laboratory found below the finest sieve, of the same soil; default none. */
  readonly laboratory?: readonly { readonly sizeMm: number; readonly passingPct: number }[];
}
