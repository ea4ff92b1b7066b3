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
