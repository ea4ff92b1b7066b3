import { PALETTE } from "./palette.js";

const AXIS = {
  showline: true,
  linecolor: PALETTE.manganese,
  linewidth: 1,
  ticks: "outside",
  tickcolor: PALETTE.manganese,
  ticklen: 4,
  gridcolor: "#e4ddd4",
  zeroline: false,
  title: { standoff: 10 },
} as const;

/** Above the plot: below it, a low figure would lay the legend over the axis title. */
export const TOP_LEGEND = {
  orientation: "h",
  x: 0,
  xanchor: "left",
  y: 1.02,
  yanchor: "bottom",
} as const;

export interface AxisOptions {
  readonly title: string;
  readonly [option: string]: unknown;
}

/** The layout that all figures share: white ground, quiet grid, no title inside (the caption has it). */
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
    font: { family: "Source Sans 3, sans-serif", size: 13, color: PALETTE.manganese },
    paper_bgcolor: "#ffffff",
    plot_bgcolor: "#ffffff",
    margin: { l: 62, r: 18, t: 16, b: 54 },
    xaxis: axis(x),
    yaxis: axis(y),
    legend: TOP_LEGEND,
    ...more,
  };
}
