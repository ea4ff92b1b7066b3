/** Standard gravity, m/s² (exact by definition). */
const GRAVITY = 9.80665;

export interface SettlingInput {
  /** Depth that the grain has fallen. */
  readonly depthCm: number;
  readonly timeMin: number;
  readonly viscosityMPaS: number;
  readonly waterDensityKgM3: number;
  readonly particleDensityKgM3: number;
}

/**
 * Diameter of the sphere that falls a depth in a time, in mm.
 *
 * Formula: d = √(18 η L / ((ρs − ρw) g t)), Stokes' law, in SI units inside. It gives the constant
 * 0.005531 of the BS 1377-2 sheet (read) to its printed digits, where ρw is 1.
 *
 * @throws RangeError where a depth, time or viscosity is not positive or the grain would float.
 *
 * @example
 * stokesDiameter({ depthCm: 10, timeMin: 60, viscosityMPaS: 1.0087, waterDensityKgM3: 998.23, particleDensityKgM3: 2650 }) // => 0.005580
 */
export function stokesDiameter(input: SettlingInput): number {
  for (const key of ["depthCm", "timeMin", "viscosityMPaS"] as const) {
    if (!(input[key] > 0 && input[key] < Infinity)) {
      throw new RangeError(`invalid \`${key}\`: ${input[key]}; expected above 0`);
    }
  }
  const excess = input.particleDensityKgM3 - input.waterDensityKgM3;
  if (!(excess > 0 && excess < Infinity)) {
    throw new RangeError(
      `invalid \`particleDensityKgM3\`: ${input.particleDensityKgM3}; expected above the water's ${input.waterDensityKgM3}`,
    );
  }
  const metresPerSecond = input.depthCm / 100 / (60 * input.timeMin);
  return (
    1000 * Math.sqrt(((18 * input.viscosityMPaS) / 1000 / (excess * GRAVITY)) * metresPerSecond)
  );
}
