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
