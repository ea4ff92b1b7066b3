const SCALE = 1 / Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return SCALE * Math.exp(-0.5 * z * z);
}
