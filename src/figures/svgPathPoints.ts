const ARGUMENTS: Record<string, number> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};
const STEPS_PER_CURVE = 24;

type Point = readonly [x: number, y: number];

function bezier(points: readonly Point[], t: number): Point {
  if (points.length === 1) return points[0]!;
  const shorter = points.slice(1).map((point, index): Point => {
    const before = points[index]!;
    return [before[0] + (point[0] - before[0]) * t, before[1] + (point[1] - before[1]) * t];
  });
  return bezier(shorter, t);
}

/**
 * Flattens the `d` attribute of an SVG path to points, so that its length and the point at a
 * distance can be answered without a browser. Curves of Bézier kind become 24 chords; elliptical
 * arcs one chord, which is enough for what plotly asks (arrow shafts and labels on lines).
 */
export function svgPathPoints(d: string): readonly Point[] {
  const points: Point[] = [];
  let at: Point = [0, 0];
  let start: Point = at;
  let control: Point | undefined;
  for (const [, letter, tail] of d.matchAll(/([MLHVCSQTAZ])([^MLHVCSQTAZ]*)/gi)) {
    const command = letter!.toUpperCase();
    const relative = letter !== command;
    const numbers = (tail!.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? []).map(Number);
    const size = ARGUMENTS[command]!;
    if (command === "Z") {
      points.push(start);
      at = start;
      continue;
    }
    for (let from = 0; from + size <= numbers.length; from += size) {
      const part = numbers.slice(from, from + size);
      const [x0, y0] = relative ? at : [0, 0];
      const pair = (index: number): Point => [x0 + part[index]!, y0 + part[index + 1]!];
      const mirrored: Point = control ? [2 * at[0] - control[0], 2 * at[1] - control[1]] : at;
      let curve: Point[] = [];
      if (command === "H") curve = [[x0 + part[0]!, at[1]]];
      else if (command === "V") curve = [[at[0], y0 + part[0]!]];
      else if (command === "C") curve = [pair(0), pair(2), pair(4)];
      else if (command === "S") curve = [mirrored, pair(0), pair(2)];
      else if (command === "Q") curve = [pair(0), pair(2)];
      else if (command === "T") curve = [mirrored, pair(0)];
      else curve = [pair(size - 2)];
      control = curve.length > 1 ? curve[curve.length - 2] : undefined;
      const steps = curve.length > 1 ? STEPS_PER_CURVE : 1;
      for (let step = 1; step <= steps; step++) points.push(bezier([at, ...curve], step / steps));
      if (command === "M" && from === 0) start = curve[0]!;
      at = curve[curve.length - 1]!;
    }
  }
  return points;
}

/** Length of the polyline through the points. */
export function polylineLength(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    sum += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]);
  }
  return sum;
}

/** Point at a distance along the polyline, held to its ends. */
export function pointAlong(points: readonly Point[], distance: number): { x: number; y: number } {
  let left = Math.max(0, distance);
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const step = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= step && step > 0) {
      return { x: a[0] + ((b[0] - a[0]) * left) / step, y: a[1] + ((b[1] - a[1]) * left) / step };
    }
    left -= step;
  }
  const [x, y] = points[points.length - 1] ?? [0, 0];
  return { x, y };
}
