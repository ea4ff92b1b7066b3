import { type GradingCurve, passingAtSize, sizeAtPassing } from "../../grading/curve.js";
import { powerOf } from "../../numerics/powerOf.js";
import { formatNumber } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";
import { placeLabels } from "../placeLabels.js";
import { PALETTE, seriesStyle, widestLength } from "../style.js";
import { type ChartBand, isDrawnAsBars } from "./band.js";

/** Top of the axis of passing: above 100 stand the names of the fractions. */
export const TOP_PCT = 112;

/** The plots of a figure of half the page's width and of the whole. */
const PLOTS = [
  { widthPx: 400, heightPx: 170 },
  { widthPx: 920, heightPx: 400 },
];
/** Room of a letter and of a line. */
const LETTER_PX = 6.4;
const LINE_PX = 17;
/** Points along a curve, close enough not to slip through a label. */
const STEPS = 150;
/** The same between two points of a band. */
const EDGE_STEPS = 20;

/** A size read off a curve at a percentage passing. */
export interface CharacteristicMark {
  /** Which curve of the chart, counted from 0. */
  readonly curveIndex: number;
  readonly passingPct: number;
  readonly sizeMm: number;
  readonly text: Text;
}

interface NamedCurve {
  readonly name: Text;
  readonly curve: GradingCurve;
}

/** D10, D30, D60 … of the chosen curves, as far as they reach. */
export function characteristicMarks(
  curves: readonly NamedCurve[],
  chosen: readonly number[],
  passingPcts: readonly number[],
): CharacteristicMark[] {
  return chosen.flatMap((curveIndex) =>
    passingPcts.flatMap((passingPct) => {
      const sizeMm = sizeAtPassing(curves[curveIndex].curve, passingPct);
      if (sizeMm === undefined) return [];
      const text = say`D${passingPct} ${formatNumber(sizeMm, 2)} mm`;
      return [{ curveIndex, passingPct, sizeMm, text }];
    }),
  );
}

/** What labels are to leave free besides the curves. */
interface AvoidedParts {
  readonly bands: readonly ChartBand[];
  /** Points along other letters. */
  readonly labels: readonly { readonly sizeMm: number; readonly passingPct: number }[];
}

/** Rings on the curves and, beside them, labels that cover neither each other nor, if possible, a curve. */
export function characteristicMarkParts(
  curves: readonly NamedCurve[],
  marks: readonly CharacteristicMark[],
  range: readonly number[],
  avoided: AvoidedParts,
): { traces: object[]; annotations: object[] } {
  const offsets = labelOffsets(curves, marks, range, avoided);
  const traces = [...new Set(marks.map(({ curveIndex }) => curveIndex))].map((index) => {
    const own = marks.filter(({ curveIndex }) => curveIndex === index);
    return {
      type: "scatter",
      mode: "markers",
      name: say`${curves[index].name}, characteristic sizes`,
      showlegend: false,
      x: own.map(({ sizeMm }) => sizeMm),
      y: own.map(({ passingPct }) => passingPct),
      marker: {
        symbol: "circle-open",
        size: 12,
        color: seriesStyle(index).color,
        line: { width: 2 },
      },
    };
  });
  const annotations = marks.map(({ sizeMm, passingPct, text, curveIndex }, at) => ({
    text,
    x: Math.log10(sizeMm),
    y: passingPct,
    // In pixels from the point: in a wider figure the labels stay as near to their points.
    ax: Math.round(offsets[at].rightPx),
    ay: Math.round(-offsets[at].upPx),
    xanchor: "center",
    yanchor: "middle",
    showarrow: true,
    arrowhead: 0,
    arrowwidth: 1,
    arrowcolor: seriesStyle(curveIndex).color,
    standoff: 6,
    bgcolor: "rgba(255,255,255,0.85)",
    borderpad: 1,
    font: { size: 12, color: PALETTE.manganese },
  }));
  return { traces, annotations };
}

function labelOffsets(
  curves: readonly NamedCurve[],
  marks: readonly CharacteristicMark[],
  [left, right]: readonly number[],
  { bands, labels }: AvoidedParts,
): ReturnType<typeof placeLabels> {
  const across = (sizeMm: number) => (Math.log10(sizeMm) - left) / (right - left);
  const sizes = Array.from({ length: STEPS + 1 }, (_, step) =>
    powerOf(10, left + ((right - left) * step) / STEPS),
  );
  const lines = curves.flatMap(({ curve }) =>
    sizes.flatMap((sizeMm) => {
      const passing = passingAtSize(curve, sizeMm);
      return passing === undefined ? [] : [{ x: across(sizeMm), y: passing / TOP_PCT }];
    }),
  );
  const edges = bands.flatMap((band) => bandOutline(band, across));
  return placeLabels(
    marks.map(({ sizeMm, passingPct, text }) => ({
      x: across(sizeMm),
      y: passingPct / TOP_PCT,
      widthPx: LETTER_PX * widestLength(text),
      heightPx: LINE_PX,
    })),
    [
      ...lines,
      ...edges,
      ...labels.map(({ sizeMm, passingPct }) => ({ x: across(sizeMm), y: passingPct / TOP_PCT })),
    ],
    PLOTS,
  );
}

/** Points along the edges of a band, or along its bar where it is known at one size only. */
function bandOutline(
  band: ChartBand,
  across: (sizeMm: number) => number,
): { readonly x: number; readonly y: number }[] {
  const { points } = band;
  const steps = (from: number, to: number) =>
    Array.from({ length: EDGE_STEPS + 1 }, (_, step) => from + ((to - from) * step) / EDGE_STEPS);
  if (isDrawnAsBars(band)) {
    return points.flatMap(({ sizeMm, lowPct, highPct }) =>
      steps(lowPct, highPct).map((pct) => ({ x: across(sizeMm), y: pct / TOP_PCT })),
    );
  }
  return points.slice(1).flatMap((to, index) => {
    const from = points[index];
    const x = steps(across(from.sizeMm), across(to.sizeMm));
    return [steps(from.lowPct, to.lowPct), steps(from.highPct, to.highPct)].flatMap((pcts) =>
      pcts.map((pct, step) => ({ x: x[step], y: pct / TOP_PCT })),
    );
  });
}
