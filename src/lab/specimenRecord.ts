/** One crushed specimen. Strength is as measured: no aspect-ratio correction. */
export interface SpecimenRecord {
  readonly id: string;
  readonly batch?: string;
  /** Cement in percent of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly ageDays: number;
  readonly strengthMpa: number;
  readonly lengthMm?: number;
  readonly widthMm?: number;
  readonly heightMm?: number;
  readonly loadKn?: number;
  readonly dryDensityKgM3?: number;
  readonly moisturePct?: number;
  readonly remark?: string;
  /** The reason why it takes no part in the regression. Shown in every report, never dropped. */
  readonly excluded?: string;
  readonly row: number;
}

export interface SpecimenSheet {
  readonly file: string;
  readonly specimens: readonly SpecimenRecord[];
}
