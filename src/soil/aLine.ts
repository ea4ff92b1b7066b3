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
