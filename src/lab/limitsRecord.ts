/** Liquid limit, plastic limit and linear shrinkage as read from their sheet. */
export interface LimitsRecord {
  readonly file: string;
  /** `cup`: blows (closure at 25). `cone`: penetration in mm (limit at 20 mm, 80 g and 30 degrees). */
  readonly liquidLimitMethod?: "cup" | "cone";
  readonly liquidLimitPoints: readonly LiquidLimitPoint[];
  readonly plasticLimitPoints: readonly PlasticLimitPoint[];
  /** The fines roll to no thread: the lab reports the soil as non-plastic. */
  readonly nonPlastic: boolean;
  /** Bar mould: wet and dry lengths. */
  readonly shrinkageBar?: { readonly wetLengthMm: number; readonly dryLengthMm: number };
  /** Long box of field practice, 600 mm where the sheet gives no length; not comparable with the bar. */
  readonly longBox?: { readonly shrinkageMm: number; readonly lengthMm: number };
}

export interface LiquidLimitPoint {
  /** Blows for the cup, penetration in mm for the cone. */
  readonly measure: number;
  readonly waterContentPct: number;
  readonly row: number;
}

export interface PlasticLimitPoint {
  readonly waterContentPct: number;
  readonly row: number;
}
