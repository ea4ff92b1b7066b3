import type { Finding } from "../lab/finding.js";
import type { Pretreatment } from "../lab/pretreatment.js";
import type { GradingPoint } from "./gradingCurve.js";

/** One line of the pipette table of a report. */
export interface PipetteAnalysisRow {
  readonly row: number;
  readonly timeMin: number;
  readonly depthMm: number;
  readonly temperatureC: number;
  readonly viscosityMPaS: number;
  readonly sizeMm: number;
  /** Mass finer than the size in the whole cylinder, dispersant taken off. */
  readonly finerG: number;
  /** Percent of the dispersed dry mass. */
  readonly finerOfDispersedPct: number;
  /** Percent of the whole sample. */
  readonly passingPct: number;
}

export interface PipetteAnalysis {
  /** Increasing size, percent of the whole sample. */
  readonly points: readonly GradingPoint[];
  /** In the order of time. */
  readonly rows: readonly PipetteAnalysisRow[];
  /** As the sheet gives it. */
  readonly pretreatment?: Pretreatment;
  readonly findings: readonly Finding[];
}

export interface PipetteInput {
  readonly particleDensityKgM3: number;
  /** Percent of the whole sample that passes the sieve that separated the dispersed material. */
  readonly passingSeparatingPct: number;
}
