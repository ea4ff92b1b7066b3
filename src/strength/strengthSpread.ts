/**
 * How the scatter of blocks goes with their strength: `even`, one standard deviation on the fitted
 * scale; `proportional`, one coefficient of variation, so that strong blocks scatter more.
 */
export type StrengthSpread = "even" | "proportional";

/**
 * Standard deviation at a fitted strength over that at the reference strength. A line that falls to
 * nothing would have no scatter at all, so a hundredth of the reference is the least.
 */
export function relativeSpread(
  spread: StrengthSpread,
  fittedValue: number,
  reference: number,
): number {
  return spread === "even" ? 1 : Math.max(Math.abs(fittedValue / reference), 0.01);
}
