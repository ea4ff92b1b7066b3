/** What was measured on a hydrometer and its cylinder. */
export interface HydrometerCalibration {
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

/**
 * Effective depth from the hydrometer's own calibration, in cm.
 *
 * Formula: L = L1 + (L2 − Vb / A) / 2 with L1 from the reading to the neck, linear between the marks,
 * L2 the bulb's length, Vb its volume and A the cylinder's cross-section (Murthy eq. 3.28, read).
 *
 * @param reading corrected for the meniscus only.
 * @throws RangeError where a length, volume or area is not positive or the marks do not differ.
 *
 * @example
 * const calibration = { marks: [{ reading: 0, toNeckCm: 10.5 }, { reading: 50, toNeckCm: 2.3 }], bulbLengthCm: 14, bulbVolumeCm3: 67, cylinderAreaCm2: 27.8 };
 * hydrometerDepth(calibration, 25) // => 12.19
 */
export function hydrometerDepth(calibration: HydrometerCalibration, reading: number): number {
  const { marks, bulbLengthCm, bulbVolumeCm3, cylinderAreaCm2 } = calibration;
  for (const [name, value] of Object.entries({ bulbLengthCm, bulbVolumeCm3, cylinderAreaCm2 })) {
    if (!(value > 0)) throw new RangeError(`invalid \`${name}\`: ${value}; expected above 0`);
  }
  const [a, b] = marks;
  if (a.reading === b.reading) {
    throw new RangeError(`invalid \`marks\`: ${a.reading} twice; expected two readings`);
  }
  const part = (reading - a.reading) / (b.reading - a.reading);
  const toNeckCm = a.toNeckCm + part * (b.toNeckCm - a.toNeckCm);
  return toNeckCm + 0.5 * (bulbLengthCm - bulbVolumeCm3 / cylinderAreaCm2);
}
