export type JarLayerName = "sand and gravel" | "silt" | "clay";

/** A jar sedimentation test as read from its sheet. */
export interface JarRecord {
  readonly file: string;
  /** From the surface of the water to the bottom of the jar. */
  readonly waterDepthMm: number;
  /** Absent where nobody measured it; 20 °C is taken then. */
  readonly temperatureC?: number;
  /** Sieve through which the soil was put before; absent where the jar holds the whole sample. */
  readonly passedSizeMm?: number;
  /** Increasing times; the layers from the bottom up. */
  readonly layers: readonly JarLayer[];
}

export interface JarLayer {
  readonly name: JarLayerName;
  readonly timeMin: number;
  /** Height of the layer's top above the bottom of the jar at that time. */
  readonly topMm: number;
  readonly row: number;
}
