import type { Text } from "../words/message.js";
import { render } from "../words/render.js";

/**
 * Line colours named after earth pigments. Each has a contrast of at least 3 : 1 on white, and any two
 * stay apart under the three common colour-vision deficiencies (checked in tests/figures/palette.test.ts).
 * No figure tells things apart by colour alone: dash and marker go with it.
 */
export const PALETTE = {
  umber: "#5f2b00",
  azurite: "#01629c",
  ochre: "#c07000",
  greenEarth: "#6a8a6c",
  redEarth: "#a3424e",
  manganese: "#1b150f",
} as const;

/** How a series is drawn. */
export interface LineStyle {
  readonly color: string;
  readonly dash: "solid" | "dash" | "dot" | "dashdot" | "longdash" | "longdashdot";
  readonly symbol: "circle" | "square" | "diamond" | "triangle-up" | "cross" | "x";
}

/** Styles for series that stand side by side, in order of use. */
export const SERIES_STYLES: readonly LineStyle[] = [
  { color: PALETTE.umber, dash: "solid", symbol: "circle" },
  { color: PALETTE.azurite, dash: "dash", symbol: "square" },
  { color: PALETTE.ochre, dash: "dot", symbol: "diamond" },
  { color: PALETTE.greenEarth, dash: "dashdot", symbol: "triangle-up" },
  { color: PALETTE.redEarth, dash: "longdash", symbol: "cross" },
  { color: PALETTE.manganese, dash: "longdashdot", symbol: "x" },
];

/** The style of the n-th series; after six the colours and dashes repeat out of step. */
export function seriesStyle(index: number): LineStyle {
  const count = SERIES_STYLES.length;
  const base = SERIES_STYLES[index % count];
  const round = Math.floor(index / count);
  return round === 0 ? base : { ...base, dash: SERIES_STYLES[(index + round) % count].dash };
}

/**
 * Tints between the palette's manganese and white for what must not compete with the curves: borders of
 * classes, names along an axis. Letters keep a contrast of at least 4.5 : 1 on white (tested).
 */
export const QUIET = {
  letters: "#6b5d50",
  border: "#8a7a69",
  faint: "#b9aa98",
} as const;

/** A palette colour with some of the ground showing through, for areas behind curves. */
export function translucent(hex: string, opacity: number): string {
  const part = (from: number) => Number.parseInt(hex.slice(from, from + 2), 16);
  return `rgba(${part(1)},${part(3)},${part(5)},${opacity})`;
}

/** The bar of a 95 % interval about a point in its middle. */
export function intervalBar([low, high]: readonly [number, number], color: string): object {
  return { type: "data", array: [(high - low) / 2], color, thickness: 1.4, width: 5 };
}

/** How a line of a shape is drawn. */
interface ShapeLine {
  readonly color: string;
  readonly width: number;
  readonly dash?: string;
}

/** A line from the left edge of the plot to the right one, at a value of the y axis. */
export function horizontalLine(y: number, line: ShapeLine): object {
  return { type: "line", xref: "paper", x0: 0, x1: 1, y0: y, y1: y, line };
}

/** A line from the foot of the plot to its top, at a value of the x axis. */
export function verticalLine(x: number, line: ShapeLine): object {
  return { type: "line", x0: x, x1: x, yref: "paper", y0: 0, y1: 1, line };
}

/** Letters of a text in the language where it is longest: labels get the same place in every language. */
export function widestLength(text: Text): number {
  return Math.max(render(text, "en").length, render(text, "es").length);
}

const FONT = { family: "Source Sans 3, sans-serif", size: 13, color: PALETTE.manganese } as const;

/** What the layouts of all figures share: letters, a white ground, and the reader's decimal sign along axes. */
export const GROUND = {
  font: FONT,
  paper_bgcolor: "#ffffff",
  separators: { number: "." },
} as const;

/** Lines of a grid, and the finer ones between them. */
export const GRID = { line: "#e4ddd4", fine: "#f1ece5" } as const;

const AXIS = {
  showline: true,
  linecolor: PALETTE.manganese,
  linewidth: 1,
  ticks: "outside",
  tickcolor: PALETTE.manganese,
  ticklen: 4,
  gridcolor: GRID.line,
  zeroline: false,
  title: { standoff: 10 },
  automargin: true,
} as const;

/**
 * Between the title and the plot, which makes room for both. Below the plot, a low figure would lay the
 * legend over the axis title.
 */
const TOP_LEGEND = {
  orientation: "h",
  x: 0,
  xanchor: "left",
  yref: "container",
  y: 0.92,
  yanchor: "top",
  // One below the other, a filled band would turn the order round.
  traceorder: "normal",
} as const;

/** A plotly axis; what is left out is as in all figures. */
export interface AxisOptions {
  readonly title: Text;
  readonly [option: string]: unknown;
}

/** The layout of figures with two axes: white ground, quiet grid, the legend above the plot. */
export function baseLayout(
  x: AxisOptions,
  y: AxisOptions,
  more: Readonly<Record<string, unknown>> = {},
): object {
  const axis = ({ title, ...rest }: AxisOptions) => ({
    ...AXIS,
    title: { ...AXIS.title, text: title },
    ...rest,
  });
  return {
    ...GROUND,
    plot_bgcolor: "#ffffff",
    margin: { l: 62, r: 18, t: 16, b: 54 },
    xaxis: axis(x),
    yaxis: axis(y),
    legend: TOP_LEGEND,
    ...more,
  };
}
