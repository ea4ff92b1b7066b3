import type { Finding } from "../lab/finding.js";
import type { GradingPoint } from "./gradingCurve.js";

/** One line of the sieve table of a report. */
export interface SieveAnalysisRow {
  readonly sizeMm: number;
  readonly label: string;
  /** Row of the sheet. */
  readonly row: number;
  readonly retainedG: number;
  /** Percent of the whole sample's dry mass. */
  readonly retainedPct: number;
  readonly passingPct: number;
  /** 0: sieved on the whole sample; 1: on the first split's subsample, and so on. */
  readonly portion: number;
}

/** The mass balance of one set of sieves. */
export interface SieveSet {
  readonly portion: number;
  readonly dryMassG: number;
  /** Fines lost to the wash water: dry mass before less dry mass after washing. */
  readonly washedOutG: number;
  /** Sum retained in this set, without the pan. */
  readonly retainedG: number;
  /**
   * Mass missing after sieving, percent of the dry mass before washing; negative where mass was gained.
   * Undefined where the material that passed the set was split and not weighed as a whole.
   */
  readonly lossPct?: number;
}

export interface SieveAnalysis {
  /** Increasing size. */
  readonly points: readonly GradingPoint[];
  /** As sieved, coarse to fine. */
  readonly rows: readonly SieveAnalysisRow[];
  readonly sets: readonly SieveSet[];
  readonly findings: readonly Finding[];
}

export interface SieveOptions {
  /** Largest loss that a set may have, percent of its dry mass; default 2. */
  readonly lossLimitPct?: number;
}
