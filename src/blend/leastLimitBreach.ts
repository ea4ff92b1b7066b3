import type { ConstrainedFit } from "../numerics/constrainedFit.js";
import { constrainedLeastSquares } from "../numerics/convexQuadraticProgramme.js";
import type { BlendProgramme } from "./blendProgramme.js";
import { type LimitRow, limitCoefficients, limitValue } from "./limitRows.js";

/**
 * The allowed shares that break the limits least (sum of squares, each breach relative to the size of
 * its limit's terms, so that a price and a percentage can stand side by side), and the breach of each
 * limit in its own unit. No limits, no breach. A limit that is not soft must be kept.
 */
export function leastLimitBreach(
  programme: BlendProgramme,
  soft: (row: LimitRow) => boolean = () => true,
): {
  readonly status: ConstrainedFit["status"];
  readonly shares: readonly number[];
  readonly breach: readonly number[];
} {
  const { lower, upper, rows } = programme;
  const coefficients = rows.map((row) => {
    const own = limitCoefficients(row);
    const size = Math.max(...own.map(Math.abs));
    return size > 0 ? own.map((value) => value / size) : own;
  });
  const none = rows.map(() => 0);
  const unit = (at: number, value: number) => rows.map((_, i): number => (i === at ? value : 0));
  const fit = constrainedLeastSquares({
    matrix:
      rows.length > 0
        ? rows.map((_, i) => [...lower.map(() => 0), ...unit(i, 1)])
        : [lower.map(() => 0)],
    target: rows.length > 0 ? none : [0],
    equalities: { matrix: [[...lower.map(() => 1), ...none]], target: [1] },
    lower: [...lower, ...none],
    upper: [...upper, ...rows.map((row) => (soft(row) ? Infinity : 0))],
    inequalities: {
      matrix: coefficients.map((row, i) => [...row, ...unit(i, -1)]),
      limit: none,
    },
  });
  const shares = fit.x.slice(0, lower.length);
  const breach = rows.map((row) => {
    const value = limitValue(row, shares);
    return Math.max(0, row.side === "largest" ? value - row.limit : row.limit - value);
  });
  return { status: fit.status, shares, breach };
}
