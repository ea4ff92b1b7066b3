import type { LimitRow } from "./limitRows.js";

/**
 * The least (or largest) weighted mean that shares within their bounds can reach: by bisection on the
 * mean, because at a trial mean the best shares are found one by one, nearest material first.
 * Null where the bounds exclude shares that sum to one.
 */
export function nearestReachable(
  row: LimitRow,
  lower: readonly number[],
  upper: readonly number[],
): number | null {
  const sign = row.side === "largest" ? 1 : -1;
  const used = row.values.filter((_, j) => upper[j] > 0);
  let [low, high] = [Math.min(...used), Math.max(...used)];
  const sum = (of: readonly number[]) => of.reduce((total, value) => total + value, 0);
  if (sum(lower) > 1 + 1e-12 || sum(upper) < 1 - 1e-12) return null;
  const equalWeights = row.weights.every((weight) => weight === row.weights[0]);
  // The least of Σ share weight (value − mean) is negative just where a mean below is reachable.
  const excess = (mean: number): number => {
    const cost = row.values.map((value, j) => sign * row.weights[j] * (value - mean));
    let left = 1 - sum(lower);
    let total = cost.reduce((so, value, j) => so + lower[j] * value, 0);
    for (const j of cost.map((_, index) => index).sort((a, b) => cost[a] - cost[b])) {
      const take = Math.min(left, upper[j] - lower[j]);
      total += take * cost[j];
      left -= take;
    }
    return total;
  };
  if (equalWeights && row.weights[0] > 0) return (sign * excess(0)) / row.weights[0];
  for (let step = 0; step < 200 && low < high; step += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (excess(middle) <= 0 === (sign === 1)) high = middle;
    else low = middle;
  }
  return sign === 1 ? high : low;
}
