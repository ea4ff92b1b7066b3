/** A place in a plot, as parts of its width and height, 0 to 1, upwards. */
interface PlotPlace {
  readonly x: number;
  readonly y: number;
}

/** A point that gets a label, and the room that the label needs. */
interface LabelAnchor extends PlotPlace {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** From a point to the middle of its label, to the right and upwards. */
interface LabelOffset {
  readonly rightPx: number;
  readonly upPx: number;
}

interface PlotSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Steps away from the point: sideways in label widths, upwards in label heights. */
const SIDEWAYS = [0.62, -0.62, 0.85, -0.85, 1.15, -1.15];
const UPWARDS = [-0.9, 0.9, 0, -1.7, 1.7, -2.6, 2.6, -3.6, 3.6];

/**
 * Finds for each point a place of its label that covers no other label, no other point and as little as
 * possible of what is drawn, and stays within the plot: at each of the sizes that the figure may be
 * drawn at. Points are served in their order: the nearest free place wins.
 *
 * @param drawn points along what is drawn, close enough together not to slip through a label.
 */
export function placeLabels(
  anchors: readonly LabelAnchor[],
  drawn: readonly PlotPlace[],
  plots: readonly PlotSize[],
): LabelOffset[] {
  const scaled = plots.map((plot) => {
    const scale = ({ x, y }: PlotPlace) => ({ x: x * plot.widthPx, y: y * plot.heightPx });
    return { plot, scale, points: anchors.map(scale), lines: drawn.map(scale) };
  });
  const offsets: LabelOffset[] = [];
  const boxOf = (
    { rightPx, upPx }: LabelOffset,
    index: number,
    scale: (p: PlotPlace) => PlotPlace,
  ) => {
    const { x, y } = scale(anchors[index]);
    const { widthPx, heightPx } = anchors[index];
    return { x: x + rightPx, y: y + upPx, widthPx, heightPx };
  };
  for (const [index, { widthPx, heightPx }] of anchors.entries()) {
    const candidates = SIDEWAYS.flatMap((across) =>
      UPWARDS.map((up) => {
        const offset = { rightPx: across * widthPx, upPx: up * heightPx };
        const cost = scaled.reduce((sum, { plot, scale, points, lines }) => {
          const box = boxOf(offset, index, scale);
          const labels = offsets.filter((each, at) => overlap(box, boxOf(each, at, scale)));
          return (
            sum +
            5000 * labels.length +
            (isInside(box, plot) ? 0 : 1000) +
            200 * points.filter((point) => contains(box, point)).length +
            20 * lines.filter((point) => contains(box, point)).length
          );
        }, Math.abs(across) + Math.abs(up));
        return { offset, cost };
      }),
    );
    offsets.push(candidates.reduce((a, b) => (b.cost < a.cost ? b : a)).offset);
  }
  return offsets;
}

function overlap(a: Box, b: Box): boolean {
  return (
    Math.abs(a.x - b.x) < (a.widthPx + b.widthPx) / 2 &&
    Math.abs(a.y - b.y) < (a.heightPx + b.heightPx) / 2
  );
}

function contains({ x, y, widthPx, heightPx }: Box, point: PlotPlace): boolean {
  return Math.abs(point.x - x) < widthPx / 2 && Math.abs(point.y - y) < heightPx / 2;
}

function isInside({ x, y, widthPx, heightPx }: Box, plot: PlotSize): boolean {
  return (
    x - widthPx / 2 > 0 &&
    x + widthPx / 2 < plot.widthPx &&
    y - heightPx / 2 > 0 &&
    y + heightPx / 2 < plot.heightPx
  );
}
