import { type GradingCurve, passingAtSize } from "../../grading/curve.js";
import type { GradingBandPoint } from "../../grading/uncertainty/fitBand.js";
import type { GuidanceEntry } from "../../guidance/entry.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type LineStyle, PALETTE, seriesStyle, translucent } from "../style.js";

/** An area behind the curves of a grading chart: an envelope, or how far a curve is in doubt. */
export interface ChartBand {
  /** Says what the band is and how far it can be trusted. */
  readonly name: Text;
  /** Nothing is known between the points: they are drawn as bars, not joined to a band. */
  readonly pointsOnly?: boolean;
  /** The band is the doubt about this curve, counted from 0: it takes the curve's colour. */
  readonly aboutCurve?: number;
  readonly points: readonly {
    readonly sizeMm: number;
    readonly lowPct: number;
    readonly highPct: number;
  }[];
}

/** Half of a 95 % interval in standard errors of a normal distribution. */
const HALF_95 = 1.96;

/**
 * The doubt about a measured curve as a band for `gradingChart`: passing ± 1.96 standard deviations at
 * each of its sizes, kept within 0 and 100 %.
 *
 * @param spread of the stated reading errors: `uncertainty.spread` of a material, `blendSpread` of a result.
 * @param aboutCurve which curve of the chart it belongs to, counted from 0; default 0.
 * @throws RangeError where the spread names a size that the curve does not reach.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.063, passingPct: 30, origin: "sieve" }, { sizeMm: 2, passingPct: 99, origin: "sieve" }] };
 * const band = uncertaintyBand("Site soil", curve, [{ sizeMm: 0.063, sdPct: 1 }, { sizeMm: 2, sdPct: 1 }]);
 * band.points // => [{ sizeMm: 0.063, lowPct: 28.04, highPct: 31.96 }, { sizeMm: 2, lowPct: 97.04, highPct: 100 }]
 */
export function uncertaintyBand(
  name: Text,
  curve: GradingCurve,
  spread: readonly { readonly sizeMm: number; readonly sdPct: number }[],
  aboutCurve = 0,
): ChartBand {
  return {
    name: say`${name}: 95 % within the reading errors`,
    aboutCurve,
    points: spread.map(({ sizeMm, sdPct }) => {
      const passing = passingAtSize(curve, sizeMm);
      if (passing === undefined) {
        throw new RangeError(`invalid \`spread\`: ${sizeMm} mm; expected sizes of the curve`);
      }
      return {
        sizeMm,
        lowPct: Math.max(0, passing - HALF_95 * sdPct),
        highPct: Math.min(100, passing + HALF_95 * sdPct),
      };
    }),
  };
}

/**
 * The doubt about a fitted model as a band for `gradingChart` or `modelChart`.
 *
 * @param points of `resampleGrading`.
 * @param coverage as it was given there; default 0.95.
 * @param aboutCurve which curve of the chart the model is, counted from 0; default 1, as in `modelChart`.
 * @throws RangeError where the coverage is not between 0 and 1.
 *
 * @example
 * modelBand("lognormal", [{ sizeMm: 1, fittedPct: 50, lowPct: 48, highPct: 53 }]).name // => "lognormal: 95 % of its resampled fits"
 */
export function modelBand(
  name: Text,
  points: readonly GradingBandPoint[],
  coverage = 0.95,
  aboutCurve = 1,
): ChartBand {
  if (!(coverage > 0 && coverage < 1)) {
    throw new RangeError(`invalid \`coverage\`: ${coverage}; expected between 0 and 1`);
  }
  return {
    name: say`${name}: ${Math.round(100 * coverage)} % of its resampled fits`,
    aboutCurve,
    points: points.map(({ sizeMm, lowPct, highPct }) => ({ sizeMm, lowPct, highPct })),
  };
}

/** The band of a guidance entry for a grading chart, named with how far it can be trusted; nothing where it limits no passing. */
export function guidanceBand(entry: GuidanceEntry): ChartBand | undefined {
  if (entry.points.length === 0) return undefined;
  const first = entry.own ? entry.title : entry.source.authors.split(/[;,(]/)[0].trim();
  const mark = entry.own
    ? [say`the study's own`]
    : [
        entry.derived ? say`derived by us` : say`as published`,
        entry.basis === "read" ? say`read` : say`from memory`,
      ];
  return {
    name: say`${entry.source.year === undefined ? first : say`${first} ${String(entry.source.year)}`} (${joinTexts(mark)})`,
    pointsOnly: entry.derived,
    points: entry.points,
  };
}

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
