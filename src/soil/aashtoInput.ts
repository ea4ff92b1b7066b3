export interface AashtoInput {
  readonly passing2Pct: number;
  readonly passing0425Pct: number;
  readonly passing0075Pct: number;
  readonly liquidLimitPct?: number;
  readonly plasticityIndexPct?: number;
  readonly nonPlastic?: boolean;
}

export interface AashtoClass {
  /** For example `A-7-6`; absent where the limits are missing. */
  readonly group?: string;
  /** Whole number, present form of M 145. */
  readonly groupIndex?: number;
  /** The older capped form, whole number, because it is still in print; never part of `label`. */
  readonly cappedGroupIndex?: number;
  /** Group and index as written, for example `A-4(3)`. */
  readonly label?: string;
  readonly path: readonly string[];
}
