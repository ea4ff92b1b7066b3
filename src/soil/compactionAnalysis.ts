import type { Finding } from "../lab/finding.js";

export type PeakMethod = "cubic" | "quadratic" | "three-point parabola";

export interface CompactionAnalysisPoint {
  readonly row: number;
  readonly waterContentPct: number;
  readonly bulkDensityKgM3: number;
  readonly dryDensityKgM3: number;
  /** Percent of the volume; absent without a particle density. */
  readonly airVoidsPct?: number;
  /** Denser than without any air, and on the caller's wish left out of the fitted curve. */
  readonly rejected?: true;
}

export interface CompactionPeak {
  readonly method: PeakMethod;
  readonly optimumWaterPct: number;
  readonly maximumDryDensityKgM3: number;
  /** 95 % limits by the delta method and Student's t; absent without a degree of freedom. */
  readonly optimumInterval95?: readonly [number, number];
  readonly maximumInterval95?: readonly [number, number];
  readonly residualSdKgM3?: number;
}

export interface DensityAtWater {
  readonly waterContentPct: number;
  readonly dryDensityKgM3: number;
}

export interface CompactionAnalysis {
  /** In the order of water content. */
  readonly points: readonly CompactionAnalysisPoint[];
  /** Absent where the points show no top. */
  readonly peak?: CompactionPeak;
  /** What the other methods give on the same points. */
  readonly alternatives: readonly CompactionPeak[];
  readonly highestPoint: DensityAtWater;
  /** Fitted curve over the measured range, for drawing; empty without a peak. */
  readonly curve: readonly DensityAtWater[];
  /** Dry density without any air left, over the measured range; empty without a particle density. */
  readonly zeroAirVoids: readonly DensityAtWater[];
  readonly findings: readonly Finding[];
}
