/** A point that gets a label, as parts of the plot's width and height, 0 to 1, upwards. */
export interface LabelAnchor {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Middles of the labels' boxes. */
export interface LabelPlace {
  readonly x: number;
  readonly y: number;
}

type Box = LabelPlace & { readonly width: number; readonly height: number };

/** Steps away from the point: sideways in label widths, upwards in label heights. */
const SIDEWAYS = [0.62, -0.62, 0.85, -0.85, 1.15, -1.15];
const UPWARDS = [-0.9, 0.9, 0, -1.7, 1.7, -2.6, 2.6, -3.6, 3.6];

/**
 * Finds for each point a place of its label that covers no other label, no other point and as little as
 * possible of the drawn lines, and stays within the plot. Points are served in their order: the nearest
 * free place wins.
 *
 * @param lines points along what is drawn, close enough together not to slip through a label.
 */
export function placeLabels(
  anchors: readonly LabelAnchor[],
  lines: readonly LabelPlace[],
): LabelPlace[] {
  const placed: Box[] = [];
  return anchors.map((anchor) => {
    const { width, height } = anchor;
    const places = SIDEWAYS.flatMap((across) =>
      UPWARDS.map((up) => ({
        x: anchor.x + across * width,
        y: anchor.y + up * height,
        width,
        height,
        way: Math.abs(across) + Math.abs(up),
      })),
    );
    const cost = (box: (typeof places)[number]) =>
      1000 * placed.filter((other) => overlap(box, other)).length +
      1000 * (within(box) ? 0 : 1) +
      200 * anchors.filter((other) => holds(box, other)).length +
      20 * lines.filter((point) => holds(box, point)).length +
      box.way;
    const best = places.reduce((a, b) => (cost(b) < cost(a) ? b : a));
    placed.push(best);
    return { x: best.x, y: best.y };
  });
}

function overlap(a: Box, b: Box): boolean {
  return (
    Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2
  );
}

function holds({ x, y, width, height }: Box, point: LabelPlace): boolean {
  return Math.abs(point.x - x) < width / 2 && Math.abs(point.y - y) < height / 2;
}

function within({ x, y, width, height }: Box): boolean {
  return x - width / 2 > 0 && x + width / 2 < 1 && y - height / 2 > 0 && y + height / 2 < 1;
}
