import { type GradingCurve, passingAtSize } from "../../grading/curve.js";
import type { GradingBandPoint } from "../../grading/uncertainty/fitBand.js";
import {
  type BandPoint,
  type GuidanceEntry,
  shortSource,
  sourceMark,
} from "../../guidance/entry.js";
import { envelopeRemarks, gradingEnvelope } from "../../guidance/envelope.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type LineStyle, PALETTE, seriesStyle, translucent } from "../style.js";

/** An area behind the curves of a grading chart: an envelope, or how far a curve is in doubt. */
export interface ChartBand {
  /** What the band is. */
  readonly name: Text;
  /** What more a reader must know of it: further lines of the legend. */
  readonly remarks?: readonly Text[];
  /** Nothing was published between the points: the edges there are ours, and dashed. */
  readonly derived?: boolean;
  /** A formula gives the edges at every size: they have no marks at the points. */
  readonly smooth?: boolean;
  /** The band is the doubt about this curve, counted from 0: it takes the curve's colour. */
  readonly aboutCurve?: number;
  readonly points: readonly BandPoint[];
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
 * render(modelBand("lognormal", [{ sizeMm: 1, fittedPct: 50, lowPct: 48, highPct: 53 }]).name) // => "lognormal: 95 % of its resampled fits"
 */
export function modelBand(
  name: Text,
  points: readonly GradingBandPoint[],
  coverage = 0.95,
  aboutCurve = 1,
): ChartBand {
  checkThat(coverage > 0 && coverage < 1, { coverage }, "between 0 and 1");
  return {
    name: say`${name}: ${Math.round(100 * coverage)} % of its resampled fits`,
    aboutCurve,
    points: points.map(({ sizeMm, lowPct, highPct }) => ({ sizeMm, lowPct, highPct })),
  };
}

/**
 * The envelope of a guidance entry as a band for `gradingChart` and `blendChart`, with how far it can be
 * trusted in the legend; undefined where the entry limits no passing. Power curves are smooth; the edges of
 * what we derived from fraction limits are dashed.
 *
 * @param curve the grading of the chart, for entries that limit a part of it (see `gradingEnvelope`).
 *
 * @example
 * const entry = GUIDANCE_ENTRIES.find(({ id }) => id === "darchitectures-pise");
 * const { derived, points } = guidanceBand(entry);
 * [derived, points[0]] // => [true, { sizeMm: 0.002, lowPct: 5, highPct: 20 }]
 */
export function guidanceBand(entry: GuidanceEntry, curve?: GradingCurve): ChartBand | undefined {
  const envelope = gradingEnvelope(entry, curve);
  if (!envelope) return undefined;
  const { kind, edges } = envelope;
  return {
    name: entry.own ? entry.title : say`${shortSource(entry)} (${sourceMark(entry)})`,
    remarks: envelopeRemarks(entry),
    derived: kind === "derived",
    smooth: kind === "power",
    points: edges,
  };
}

/**
 * Envelopes are told apart by their hatching, the marks on their edges and the colour, in this order;
 * those that we derived also by a dash of their own.
 */
const ENVELOPES: readonly {
  readonly color: string;
  readonly derivedDash: LineStyle["dash"];
  readonly hatch: string;
  readonly symbol: string;
}[] = [
  { color: PALETTE.ochre, derivedDash: "dash", hatch: "", symbol: "circle-open" },
  { color: PALETTE.azurite, derivedDash: "dot", hatch: "/", symbol: "diamond-open" },
  { color: PALETTE.greenEarth, derivedDash: "longdash", hatch: "\\", symbol: "square-open" },
  { color: PALETTE.redEarth, derivedDash: "dashdot", hatch: ".", symbol: "triangle-up-open" },
];

/** Whether a band has no two sizes to draw an area between. */
export function isDrawnAsBars({ points, aboutCurve }: ChartBand): boolean {
  return aboutCurve === undefined && points.length < 2;
}

/** The traces of one band; `index` counts the envelopes, so that several look different. */
export function bandTraces(band: ChartBand, index: number): object[] {
  if (band.aboutCurve !== undefined) {
    return doubtTraces(band, seriesStyle(band.aboutCurve).color);
  }
  return isDrawnAsBars(band) ? barTraces(band, index) : envelopeTraces(band, index);
}

/** Curves stand before their bands in the legend. */
const AFTER_CURVES = { legendrank: 1100 } as const;

/** The name as the legend shows it, each remark on a line of its own. */
function legendName({ name, remarks = [] }: ChartBand): Text {
  return joinTexts([name, ...remarks], "<br>");
}

/** Limits at a single size, where an area would not be seen. */
function barTraces(band: ChartBand, index: number): object[] {
  const { points } = band;
  const { color, symbol } = ENVELOPES[index % ENVELOPES.length];
  return [
    {
      type: "scatter",
      mode: "markers",
      name: legendName(band),
      ...AFTER_CURVES,
      x: points.map(({ sizeMm }) => sizeMm),
      y: points.map(({ lowPct, highPct }) => (lowPct + highPct) / 2),
      marker: { symbol, size: 10, color, line: { width: 3 } },
      error_y: {
        type: "data",
        array: points.map(({ lowPct, highPct }) => (highPct - lowPct) / 2),
        color,
        thickness: 4 - (index % 3),
        width: 7 + 3 * (index % 3),
      },
      hoverinfo: "skip",
    },
  ];
}

/** A filled area with an upper and a lower edge, each with its marks at the sizes that were stated. */
function envelopeTraces(band: ChartBand, index: number): object[] {
  const { points, derived, smooth } = band;
  const { color, derivedDash, hatch, symbol } = ENVELOPES[index % ENVELOPES.length];
  const edge = {
    type: "scatter",
    mode: smooth ? "lines" : "lines+markers",
    x: points.map(({ sizeMm }) => sizeMm),
    line: { color, width: 1.5, dash: derived ? derivedDash : "solid" },
    marker: { symbol, size: 6, color },
    hoverinfo: "skip",
  };
  const fill = hatch
    ? {
        fillcolor: translucent(color, 0.07),
        fillpattern: {
          shape: hatch,
          fgcolor: translucent(color, 0.5),
          bgcolor: translucent(color, 0.07),
          size: 9,
          solidity: 0.15,
        },
      }
    : { fillcolor: translucent(color, 0.16) };
  return [
    { ...edge, y: points.map(({ highPct }) => highPct), showlegend: false },
    {
      ...edge,
      y: points.map(({ lowPct }) => lowPct),
      name: legendName(band),
      ...AFTER_CURVES,
      fill: "tonexty",
      ...fill,
    },
  ];
}

/** Without edges, so that it is seen as the breadth of its curve and not as a limit. */
function doubtTraces({ name, points }: ChartBand, color: string): object[] {
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
      ...AFTER_CURVES,
      fill: "tonexty",
      fillcolor: translucent(color, 0.28),
    },
  ];
}
