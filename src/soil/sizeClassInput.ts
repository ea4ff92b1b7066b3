/** What the classifications of ISO 14688-2 and BS 5930 ask for; percent of the part under 63 mm. */
export interface SizeClassInput {
  /** 2 to 63 mm. */
  readonly gravelPct: number;
  /** 0.063 to 2 mm. */
  readonly sandPct: number;
  /** Under 0.063 mm. */
  readonly finesPct: number;
  /** Under 0.002 mm; only ISO 14688-2 asks for it, where there are fines. */
  readonly clayPct?: number;
  readonly cu?: number;
  readonly cc?: number;
  /** Only BS 5930 asks for limits, from 5 % fines. */
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  readonly nonPlastic?: boolean;
  readonly organic?: boolean;
}

export interface SizeClass {
  /** Absent where a value that decides is missing. */
  readonly symbol?: string;
  /** In words. */
  readonly name?: string;
  /** The decisions in their order, in plain sentences. */
  readonly path: readonly string[];
  readonly missing: readonly string[];
  /** How far the rules themselves can be trusted. */
  readonly source: string;
}
