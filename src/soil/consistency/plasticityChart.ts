/**
 * Plasticity index on the A-line, which parts clays (above) from silts (below).
 *
 * Formula: 0.73 (LL − 20) (BS 5930 as in Smith, Elements of Soil Mechanics, read).
 *
 * @example
 * aLine(50) // => 21.9
 */
export function aLine(liquidLimitPct: number): number {
  return 0.73 * (liquidLimitPct - 20);
}

/**
 * Plasticity index on the U-line, above which natural soils are hardly ever found.
 *
 * Formula: 0.9 (LL − 8) (ASTM D2487, from memory).
 *
 * @example
 * uLine(50) // => 37.8
 */
export function uLine(liquidLimitPct: number): number {
  return 0.9 * (liquidLimitPct - 8);
}

/**
 * Skempton's activity of the clay.
 *
 * Formula: A = PI / percent finer than 0.002 mm, both of the same material (the part under 0.425 mm).
 * Below 0.75 the clay is called inactive, above 1.25 active (Skempton 1953, from memory).
 *
 * @returns `undefined` where there is no clay.
 * @throws RangeError where the clay is not 0 to 100 or the index negative.
 *
 * @example
 * activity(18, 24) // => 0.75
 */
export function activity(plasticityIndexPct: number, clayPct: number): number | undefined {
  if (!(plasticityIndexPct >= 0)) {
    throw new RangeError(
      `invalid \`plasticityIndexPct\`: ${plasticityIndexPct}; expected 0 or more`,
    );
  }
  if (!(clayPct >= 0 && clayPct <= 100)) {
    throw new RangeError(`invalid \`clayPct\`: ${clayPct}; expected 0 to 100`);
  }
  return clayPct === 0 ? undefined : plasticityIndexPct / clayPct;
}
