import type { Finding } from "../lab/finding.js";
import type { HydrometerCalibration } from "../lab/hydrometerCalibration.js";
import type { HydrometerCorrections } from "../lab/hydrometerRecord.js";
import type { Pretreatment } from "../lab/pretreatment.js";
import type { GradingPoint } from "./gradingCurve.js";

/** One line of the hydrometer table of a report. */
export interface HydrometerAnalysisRow {
  readonly row: number;
  readonly timeMin: number;
  readonly temperatureC: number;
  /** What separate corrections stand for as a control reading; absent where a control was read. */
  readonly computedControl?: number;
  /** Reading less control, in the units of the record. */
  readonly correctedReading: number;
  readonly effectiveDepthCm: number;
  readonly viscosityMPaS: number;
  readonly sizeMm: number;
  /** Size by the form of BS 1377-2, for comparison; of a BS hydrometer only. */
  readonly bsSizeMm?: number;
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
  /** As the sheet gives them; absent where it does not. */
  readonly corrections?: HydrometerCorrections;
  readonly calibration?: HydrometerCalibration;
  readonly pretreatment?: Pretreatment;
  readonly findings: readonly Finding[];
}

export interface HydrometerInput {
  readonly particleDensityKgM3: number;
  /** Percent of the whole sample that passes the sieve that separated the dispersed material. */
  readonly passingSeparatingPct: number;
  /** In place of the record's own calibration; without either the standard instrument is taken. */
  readonly calibration?: HydrometerCalibration;
}
