/** What the loaded face is: a rectangle of length and width, or a disc of the diameter. */
export type SpecimenShape = "cube" | "prism" | "cylinder";

/** One crushed specimen. Strength is as measured: no aspect-ratio correction. */
export interface SpecimenRecord {
  readonly id: string;
  readonly batch?: string;
  /** Cement in percent of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  readonly ageDays: number;
  readonly strengthMpa: number;
  /** The parts by loose volume that `cementPct` was made from; absent where the sheet has percent. */
  readonly cementParts?: number;
  readonly soilParts?: number;
  readonly shape?: SpecimenShape;
  readonly lengthMm?: number;
  readonly widthMm?: number;
  readonly diameterMm?: number;
  readonly heightMm?: number;
  readonly loadKn?: number;
  /** When crushed, its moisture with it. */
  readonly massG?: number;
  /** As entered, or from mass, size and moisture at test. */
  readonly dryDensityKgM3?: number;
  /** Where the sheet does not say when it was measured. */
  readonly moisturePct?: number;
  readonly makingMoisturePct?: number;
  readonly testMoisturePct?: number;
  /** Place in the order of crushing. */
  readonly crushingOrder?: number;
  readonly remark?: string;
  /** The reason why it takes no part in the regression. Shown in every report, never dropped. */
  readonly excluded?: string;
  readonly row: number;
}

export interface SpecimenSheet {
  readonly file: string;
  readonly specimens: readonly SpecimenRecord[];
}
