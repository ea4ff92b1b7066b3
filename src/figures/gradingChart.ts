import type { GradingCurve } from "../grading/gradingCurve.js";
import { formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE, seriesStyle } from "./palette.js";
import { sizeAxis, sizeClassMarks } from "./sizeAxis.js";

export interface ChartCurve {
  readonly name: string;
  readonly curve: GradingCurve;
  /** Drawn as a smooth line without markers: a model or a target. */
  readonly smooth?: boolean;
}

export interface ChartBand {
  /** Says what the band is and how far it can be trusted. */
  readonly name: string;
  /** Nothing is known between the points: they are drawn as bars, not joined to a band. */
  readonly pointsOnly?: boolean;
  readonly points: readonly {
    readonly sizeMm: number;
    readonly lowPct: number;
    readonly highPct: number;
  }[];
}

/**
 * A grading chart: percent passing against the logarithm of grain size, fine at the left, with the
 * names of the grain-size classes along the top and, where given, a band behind the curves.
 */
export function gradingChart(
  title: string,
  curves: readonly ChartCurve[],
  band?: ChartBand,
): Figure {
  const sizes = curves.flatMap(({ curve }) => curve.points.map(({ sizeMm }) => sizeMm));
  const smallest = Math.min(0.001, ...sizes);
  const largest = Math.max(20, ...sizes) * 1.3;
  const marks = sizeClassMarks(smallest, largest);
  const data = [
    ...(band ? bandTraces(band) : []),
    ...curves.map(({ name, curve, smooth }, index) => {
      const { color, dash, symbol } = seriesStyle(index);
      return {
        type: "scatter",
        mode: smooth ? "lines" : "lines+markers",
        name,
        x: curve.points.map(({ sizeMm }) => sizeMm),
        y: curve.points.map(({ passingPct }) => passingPct),
        line: { color, dash, width: 2 },
        marker: { color, symbol, size: 6 },
      };
    }),
  ];
  return {
    kind: "figure",
    title,
    altText: describe(title, curves, band),
    data,
    layout: baseLayout(
      sizeAxis(smallest, largest),
      { title: say`Passing (% of dry mass)`, range: [0, 102], dtick: 20 },
      { ...marks, margin: { l: 62, r: 18, t: 26, b: 54 } },
    ),
  };
}

function bandTraces(band: ChartBand): object[] {
  const x = band.points.map(({ sizeMm }) => sizeMm);
  if (band.pointsOnly) {
    return [
      {
        type: "scatter",
        mode: "markers",
        name: band.name,
        x,
        y: band.points.map(({ lowPct, highPct }) => (lowPct + highPct) / 2),
        marker: { symbol: "line-ns-open", size: 10, color: PALETTE.ochre, line: { width: 4 } },
        error_y: {
          type: "data",
          array: band.points.map(({ lowPct, highPct }) => (highPct - lowPct) / 2),
          color: PALETTE.ochre,
          thickness: 4,
          width: 7,
        },
        hoverinfo: "skip",
      },
    ];
  }
  const edge = {
    type: "scatter",
    mode: "lines",
    x,
    line: { color: "#a08c76", width: 1, dash: "dot" },
  };
  return [
    { ...edge, y: band.points.map(({ highPct }) => highPct), showlegend: false, hoverinfo: "skip" },
    {
      ...edge,
      y: band.points.map(({ lowPct }) => lowPct),
      name: band.name,
      fill: "tonexty",
      fillcolor: "rgba(192,112,0,0.14)",
      marker: { color: PALETTE.ochre },
    },
  ];
}

function describe(title: string, curves: readonly ChartCurve[], band?: ChartBand): string {
  const lines = curves.map(({ name, curve }) => {
    const { points } = curve;
    const reading = [
      points[0],
      points[Math.floor(points.length / 2)],
      points[points.length - 1],
    ].map(
      ({ sizeMm, passingPct }) =>
        say`${formatNumber(passingPct, 3)} % at ${formatNumber(sizeMm, 2)} mm`,
    );
    return say`${name}: passing ${reading.join(", ")}.`;
  });
  const behind = band
    ? [
        say`Band (${band.name}): ${band.points
          .map(
            ({ sizeMm, lowPct, highPct }) =>
              say`${formatNumber(lowPct, 3)} to ${formatNumber(highPct, 3)} % at ${formatNumber(sizeMm, 2)} mm`,
          )
          .join(", ")}.`,
      ]
    : [];
  return [
    say`${title}. Percent passing against grain size on a logarithmic axis.`,
    ...lines,
    ...behind,
  ].join(" ");
}
