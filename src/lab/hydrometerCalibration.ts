/** The bulb and its cylinder as measured: the effective depth is computed from them. */
export interface BulbCalibration {
  /** Two marks of the scale and their distance to the neck of the bulb, cm. */
  readonly marks: readonly [
    { readonly reading: number; readonly toNeckCm: number },
    { readonly reading: number; readonly toNeckCm: number },
  ];
  /** Length of the bulb from neck to tip, cm. */
  readonly bulbLengthCm: number;
  readonly bulbVolumeCm3: number;
  /** Inner cross-section of the cylinder. */
  readonly cylinderAreaCm2: number;
}

/** Effective depths as the instrument's calibration gives them. */
export interface DepthCalibration {
  /** Two pairs or more, rising readings; the depth falls as the reading rises. */
  readonly depths: readonly { readonly reading: number; readonly depthCm: number }[];
}

/** What is known of a hydrometer's own depths; readings are corrected for the meniscus. */
export type HydrometerCalibration = BulbCalibration | DepthCalibration;
