import { fCdf } from "../numerics/fCdf.js";

const median = (values: readonly number[]) => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
};

export interface SpreadTest {
  readonly statistic: number;
  readonly pValue: number;
}

/**
 * Brown–Forsythe test of whether groups have one spread: analysis of variance of the distances from each
 * group's median. Null without two groups of two values, or without scatter.
 * Source: Brown & Forsythe 1974 (from memory); proved beside SciPy.
 */
export function brownForsythe(groups: readonly (readonly number[])[]): SpreadTest | null {
  const distances = groups
    .filter((group) => group.length > 1)
    .map((group) => {
      const middle = median(group);
      return group.map((value) => Math.abs(value - middle));
    });
  const all = distances.flat();
  const [between, within] = [distances.length - 1, all.length - distances.length];
  if (between < 1 || within < 1) return null;
  const mean = (values: readonly number[]) =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const grand = mean(all);
  let [outer, inner] = [0, 0];
  for (const group of distances) {
    const own = mean(group);
    outer += group.length * (own - grand) ** 2;
    inner += group.reduce((sum, value) => sum + (value - own) ** 2, 0);
  }
  if (inner <= 1e-24 * all.length * grand * grand) return null;
  const statistic = outer / between / (inner / within);
  return { statistic, pValue: statistic > 0 ? fCdf(1 / statistic, within, between) : 1 };
}
