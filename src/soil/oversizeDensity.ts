export interface OversizeInput {
  /** Of the part that was compacted in the mould. */
  readonly dryDensityKgM3: number;
  readonly waterContentPct: number;
  /** Dry share of the whole that was screened off before the test, percent. */
  readonly oversizePct: number;
  readonly oversizeParticleDensityKgM3: number;
}

/**
 * Dry density and water content of the whole material, where coarse grains were screened off before
 * the compaction test.
 *
 * Formula: 1 / ((1 − P) / ρd + P / ρs), w (1 − P); the coarse grains take up no water (computed form
 * that reproduces an exercise in Smith, Elements of Soil Mechanics, read).
 *
 * @throws RangeError where a density is not positive, the water negative or the share not 0 to below 100.
 *
 * @example
 * oversizeDensity({ dryDensityKgM3: 1900, waterContentPct: 12, oversizePct: 20, oversizeParticleDensityKgM3: 2650 }) // => { dryDensityKgM3: 2014.0, waterContentPct: 9.6 }
 */
export function oversizeDensity(input: OversizeInput): {
  readonly dryDensityKgM3: number;
  readonly waterContentPct: number;
} {
  const { dryDensityKgM3, waterContentPct, oversizePct, oversizeParticleDensityKgM3 } = input;
  for (const [name, value] of Object.entries({ dryDensityKgM3, oversizeParticleDensityKgM3 })) {
    if (!(value > 0)) throw new RangeError(`invalid \`${name}\`: ${value}; expected above 0`);
  }
  if (!(waterContentPct >= 0)) {
    throw new RangeError(`invalid \`waterContentPct\`: ${waterContentPct}; expected 0 or more`);
  }
  if (!(oversizePct >= 0 && oversizePct < 100)) {
    throw new RangeError(`invalid \`oversizePct\`: ${oversizePct}; expected 0 to below 100`);
  }
  const part = oversizePct / 100;
  return {
    dryDensityKgM3: 1 / ((1 - part) / dryDensityKgM3 + part / oversizeParticleDensityKgM3),
    waterContentPct: (1 - part) * waterContentPct,
  };
}
