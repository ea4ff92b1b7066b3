export interface StraightLine {
  readonly slope: number;
  readonly intercept: number;
}

/**
 * Least-squares line y = intercept + slope x, only good enough to start a fit from.
 *
 * @returns `undefined` where the x do not differ.
 */
export function straightLine(
  points: readonly { readonly x: number; readonly y: number }[],
): StraightLine | undefined {
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const meanX = mean(points.map(({ x }) => x));
  const meanY = mean(points.map(({ y }) => y));
  let [xx, xy] = [0, 0];
  for (const { x, y } of points) {
    xx += (x - meanX) ** 2;
    xy += (x - meanX) * (y - meanY);
  }
  if (!(xx > 0)) return undefined;
  const slope = xy / xx;
  return { slope, intercept: meanY - slope * meanX };
}
