import type { Finding } from "../lab/finding.js";
import type { GradingPoint } from "./gradingCurve.js";
import type { HydrometerCalibration } from "./hydrometerDepth.js";

/** One line of the hydrometer table of a report. */
export interface HydrometerAnalysisRow {
  readonly row: number;
  readonly timeMin: number;
  readonly temperatureC: number;
  /** Reading less control, in the hydrometer's units. */
  readonly correctedReading: number;
  readonly effectiveDepthCm: number;
  readonly viscosityMPaS: number;
  readonly sizeMm: number;
  /** Percent of the dispersed dry mass. */
  readonly finerOfDispersedPct: number;
  /** Percent of the whole sample. */
  readonly passingPct: number;
}

export interface HydrometerAnalysis {
  /** Increasing size, percent of the whole sample, held within 0 and the passing of the separating sieve. */
  readonly points: readonly GradingPoint[];
  /** In the order of time. */
  readonly rows: readonly HydrometerAnalysisRow[];
  /** Factor a of the 152H scale for particles that are not of 2650 kg/m³; 1 for the 151H, whose formula needs none. */
  readonly densityFactor: number;
  readonly findings: readonly Finding[];
}

export interface HydrometerInput {
  readonly particleDensityKgM3: number;
  /** Percent of the whole sample that passes the sieve that separated the dispersed material. */
  readonly passingSeparatingPct: number;
  /** The hydrometer's own calibration; without it the standard instrument is taken. */
  readonly calibration?: HydrometerCalibration;
}
