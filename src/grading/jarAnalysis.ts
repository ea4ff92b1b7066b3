import type { Finding } from "../lab/finding.js";
import type { JarLayerName } from "../lab/jarRecord.js";

export interface JarShare {
  readonly name: JarLayerName;
  readonly heightMm: number;
  /** Percent of the settled height: not of the mass. */
  readonly heightSharePct: number;
  /** What the share by dry mass may be, percent. */
  readonly lowPct: number;
  readonly highPct: number;
  /** Smallest grain that had settled from the surface when the layer's top was read; absent outside 10 to 30 °C. */
  readonly finestMm?: number;
}

export interface JarAnalysis {
  /** Sand with gravel, silt, clay. */
  readonly shares: readonly JarShare[];
  readonly findings: readonly Finding[];
}
