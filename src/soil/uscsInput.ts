/** What the classification of ASTM D2487 asks for; percentages of the material under 75 mm. */
export interface UscsInput {
  /** Retained on 4.75 mm. */
  readonly gravelPct: number;
  /** Between 4.75 and 0.075 mm. */
  readonly sandPct: number;
  /** Passing 0.075 mm. */
  readonly finesPct: number;
  /** Coefficient of uniformity; asked for below 12 % fines. */
  readonly cu?: number;
  /** Coefficient of curvature. */
  readonly cc?: number;
  /** Of the part under 0.425 mm; asked for from 5 % fines. */
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  readonly nonPlastic?: boolean;
  /** Liquid limit after oven drying below 0.75 of that before. */
  readonly organic?: boolean;
}

export interface UscsClass {
  /** Absent where a value that decides is missing. */
  readonly symbol?: string;
  readonly groupName?: string;
  /** The decisions in their order, in plain sentences. */
  readonly path: readonly string[];
  /** Values that were asked for and not given. */
  readonly missing: readonly string[];
}
