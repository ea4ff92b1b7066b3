import type { ChartBand } from "./chartBand.js";
import { type LineStyle, PALETTE, seriesStyle } from "./palette.js";
import { translucent } from "./translucent.js";

/** Envelopes are told apart by their hatching, the dash of their edges and the colour, in this order. */
const ENVELOPES: readonly {
  readonly color: string;
  readonly dash: LineStyle["dash"];
  readonly hatch: string;
  readonly bar: string;
}[] = [
  { color: PALETTE.ochre, dash: "dot", hatch: "", bar: "line-ns-open" },
  { color: PALETTE.azurite, dash: "dash", hatch: "/", bar: "diamond-open" },
  { color: PALETTE.greenEarth, dash: "longdash", hatch: "\\", bar: "square-open" },
  { color: PALETTE.redEarth, dash: "dashdot", hatch: ".", bar: "triangle-up-open" },
];

/** The traces of one band; `index` counts the envelopes, so that several look different. */
export function bandTraces(band: ChartBand, index: number): object[] {
  if (band.aboutCurve !== undefined) return doubt(band, seriesStyle(band.aboutCurve).color);
  const style = ENVELOPES[index % ENVELOPES.length];
  const x = band.points.map(({ sizeMm }) => sizeMm);
  if (band.pointsOnly || band.points.length < 2) {
    return [
      {
        type: "scatter",
        mode: "markers",
        name: band.name,
        x,
        y: band.points.map(({ lowPct, highPct }) => (lowPct + highPct) / 2),
        marker: { symbol: style.bar, size: 10, color: style.color, line: { width: 3 } },
        error_y: {
          type: "data",
          array: band.points.map(({ lowPct, highPct }) => (highPct - lowPct) / 2),
          color: style.color,
          thickness: 4 - (index % 3),
          width: 7 + 3 * (index % 3),
        },
        hoverinfo: "skip",
      },
    ];
  }
  const edge = { type: "scatter", mode: "lines", x, hoverinfo: "skip" };
  const line = { color: style.color, width: 1.2, dash: style.dash };
  return [
    { ...edge, line, y: band.points.map(({ highPct }) => highPct), showlegend: false },
    {
      ...edge,
      line,
      y: band.points.map(({ lowPct }) => lowPct),
      name: band.name,
      fill: "tonexty",
      ...(style.hatch
        ? {
            fillpattern: {
              shape: style.hatch,
              fgcolor: translucent(style.color, 0.5),
              bgcolor: "rgba(0,0,0,0)",
              size: 9,
              solidity: 0.15,
            },
          }
        : { fillcolor: translucent(style.color, 0.14) }),
    },
  ];
}

/** Without edges, so that it is seen as the breadth of its curve and not as a limit. */
function doubt({ name, points }: ChartBand, color: string): object[] {
  const edge = {
    type: "scatter",
    mode: "lines",
    x: points.map(({ sizeMm }) => sizeMm),
    line: { color, width: 0 },
    hoverinfo: "skip",
  };
  return [
    { ...edge, y: points.map(({ highPct }) => highPct), showlegend: false },
    {
      ...edge,
      y: points.map(({ lowPct }) => lowPct),
      name,
      fill: "tonexty",
      fillcolor: translucent(color, 0.28),
    },
  ];
}
