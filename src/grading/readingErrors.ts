/** How far a lab's readings may be off: standard deviations, each of its own reading. */
export interface ReadingErrors {
  /** Each weighing on the balance, g. */
  readonly balanceG: number;
  /** Each weighing of a dried pipette sample, g. */
  readonly pipetteBalanceG: number;
  /** Volume of the pipette, percent, one error for all its samples. */
  readonly pipetteVolumePct: number;
  /** Mass that wanders between neighbouring sieves or is lost, percent of what a sieve retains. */
  readonly sievingPct: number;
  /** Hydrometer reading and control, in units of the 152H scale (g/L). */
  readonly hydrometerUnits: number;
  readonly temperatureC: number;
  /** Time of a reading, in seconds. */
  readonly timeS: number;
  /** Density of the particles, kg/m³. */
  readonly particleDensityKgM3: number;
}

/**
 * Reading errors taken where a study states none: common practice, no source. Balance 0.1 g, 1 % of
 * what a sieve retains, half a division of the hydrometer, half a degree, two seconds, 20 kg/m³; dried
 * pipette samples to 1 mg and the pipette's volume to 0.5 %.
 * They say nothing about how well the sample stands for the heap, which is mostly worse.
 *
 * @example
 * DEFAULT_READING_ERRORS.hydrometerUnits // => 0.5
 */
export const DEFAULT_READING_ERRORS: ReadingErrors = {
  balanceG: 0.1,
  pipetteBalanceG: 0.001,
  pipetteVolumePct: 0.5,
  sievingPct: 1,
  hydrometerUnits: 0.5,
  temperatureC: 0.5,
  timeS: 2,
  particleDensityKgM3: 20,
};
