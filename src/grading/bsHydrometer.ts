/** mm² of the printed formula, with viscosity in mPa·s, depth in mm, density in Mg/m³ and time in min. */
const CONSTANT = 0.005531;

export interface BsReading {
  /** Reading at the top of the meniscus, in units of 0.001 above 1.000 (1.0240 is 24.0). */
  readonly reading: number;
  /** Meniscus correction in the same units, added for the depth. */
  readonly meniscusCorrection: number;
  /** Reading at the top of the meniscus in water with dispersant, same units. */
  readonly control: number;
  /** Depth Hr in mm at the corrected reading, by the hydrometer's own calibration. */
  readonly depthMm: number;
  readonly timeMin: number;
  readonly viscosityMPaS: number;
  readonly particleDensityKgM3: number;
  readonly dryMassG: number;
}

/**
 * One hydrometer reading worked out as the sheet of BS 1377-2 does: a cross-check beside
 * `analyseHydrometer`, which takes the density of water at the test's temperature.
 *
 * Formula: D = 0.005531 √(η Hr / ((ρs − 1) t)), K = 100 ρs Rd / (m (ρs − 1)), Rd = Rh' − Ro'
 * (blank form of BS 1377-2, read). The printed form takes water as 1 Mg/m³.
 *
 * @throws RangeError where a depth, time, viscosity or mass is not positive or the grain would float.
 *
 * @example
 * const { sizeMm, finerPct } = bsHydrometer({ reading: 24, meniscusCorrection: 0.5, control: 0.5, depthMm: 100, timeMin: 8, viscosityMPaS: 1.0087, particleDensityKgM3: 2650, dryMassG: 50 });
 * sizeMm // => 0.01529
 * finerPct // => 75.48
 */
export function bsHydrometer(input: BsReading): {
  readonly sizeMm: number;
  /** Percent of the dispersed dry mass. */
  readonly finerPct: number;
  /** Rh, at which the calibration gives the depth. */
  readonly trueReading: number;
} {
  for (const key of ["depthMm", "timeMin", "viscosityMPaS", "dryMassG"] as const) {
    if (!(input[key] > 0 && input[key] < Infinity)) {
      throw new RangeError(`invalid \`${key}\`: ${input[key]}; expected above 0`);
    }
  }
  const gravity = input.particleDensityKgM3 / 1000;
  if (!(gravity > 1 && gravity < Infinity)) {
    throw new RangeError(
      `invalid \`particleDensityKgM3\`: ${input.particleDensityKgM3}; expected above 1000`,
    );
  }
  const settling = (input.viscosityMPaS * input.depthMm) / ((gravity - 1) * input.timeMin);
  return {
    sizeMm: CONSTANT * Math.sqrt(settling),
    finerPct: (100 * gravity * (input.reading - input.control)) / (input.dryMassG * (gravity - 1)),
    trueReading: input.reading + input.meniscusCorrection,
  };
}
