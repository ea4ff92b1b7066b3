import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";

export type GradedTerm = "multi-graded" | "medium-graded" | "even-graded" | "gap-graded";

/**
 * How widely a coarse soil is graded, by ISO 14688-2:2004 (from memory): multi-graded Cu above 15 and
 * Cc 1 to 3; medium-graded Cu 6 to 15 and Cc below 1; even-graded Cu below 6 and Cc below 1;
 * gap-graded a high Cu with any Cc, often below 0.5.
 *
 * The lines leave holes (Cu 10 with Cc 1.5). There Cu alone decides here, and the sentence says so.
 *
 * @throws RangeError where a coefficient is not positive.
 *
 * @example
 * gradedTerm(20, 1.5).term // => "multi-graded"
 * gradedTerm(20, 0.3).term // => "gap-graded"
 * gradedTerm(3, 0.9).term // => "even-graded"
 */
export function gradedTerm(
  cu: number,
  cc: number,
): { readonly term: GradedTerm; readonly reason: string } {
  for (const [name, value] of Object.entries({ cu, cc })) {
    if (!(value > 0)) throw new RangeError(`invalid \`${name}\`: ${value}; expected above 0`);
  }
  const told = say`Cu ${formatFixed(cu, 1)}, Cc ${formatFixed(cc, 2)}`;
  const named = (term: GradedTerm, fits: boolean) => ({
    term,
    reason: fits
      ? `${told}: ${term}.`
      : say`${told}: no line of the table fits both; ${term} by Cu alone.`,
  });
  if (cu > 15) return cc >= 1 && cc <= 3 ? named("multi-graded", true) : named("gap-graded", true);
  if (cu >= 6) return named("medium-graded", cc < 1);
  return named("even-graded", cc < 1);
}
