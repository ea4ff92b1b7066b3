import type { GradingCurve } from "../grading/gradingCurve.js";
import { passingAtSize } from "../grading/passingAtSize.js";
import { sizeAtPassing } from "../grading/sizeAtPassing.js";
import { powerOf } from "../numerics/powerOf.js";
import { formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { ChartBand } from "./chartBand.js";
import { PALETTE, seriesStyle } from "./palette.js";
import { placeLabels } from "./placeLabels.js";

/** Top of the axis of passing, a little above 100 so that a curve along it is seen whole. */
export const TOP_PCT = 102;

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
/** The same along the bars of a band that is known at some sizes only. */
const BAR_STEPS = 10;

export interface CharacteristicMark {
  readonly curveName: string;
  readonly passingPct: number;
  readonly sizeMm: number;
  readonly text: string;
}

interface Marked {
  readonly name: string;
  readonly curve: GradingCurve;
}

/** D10, D30, D60 … of the named curves, as far as they reach. */
export function characteristicMarks(
  curves: readonly Marked[],
  of: readonly number[],
  passingPcts: readonly number[],
): (CharacteristicMark & { readonly curveIndex: number })[] {
  return of.flatMap((curveIndex) =>
    passingPcts.flatMap((passingPct) => {
      const { name: curveName, curve } = curves[curveIndex];
      const sizeMm = sizeAtPassing(curve, passingPct);
      if (sizeMm === undefined) return [];
      const text = say`D${passingPct} ${formatNumber(sizeMm, 2)} mm`;
      return [{ curveIndex, curveName, passingPct, sizeMm, text }];
    }),
  );
}

/** Rings on the curves and, beside them, labels that cover neither each other nor, if possible, a curve. */
export function characteristicMarkParts(
  curves: readonly Marked[],
  marks: ReturnType<typeof characteristicMarks>,
  range: readonly number[],
  bands: readonly ChartBand[],
): { traces: object[]; annotations: object[] } {
  const across = (sizeMm: number) => (Math.log10(sizeMm) - range[0]) / (range[1] - range[0]);
  const lines = curves.flatMap(({ curve }) =>
    Array.from({ length: STEPS + 1 }, (_, step) => {
      const sizeMm = powerOf(10, range[0] + ((range[1] - range[0]) * step) / STEPS);
      const passing = passingAtSize(curve, sizeMm);
      return passing === undefined ? [] : [{ x: across(sizeMm), y: passing / TOP_PCT }];
    }).flat(),
  );
  const bars = bands.flatMap(({ points }) =>
    points.flatMap(({ sizeMm, lowPct, highPct }) =>
      Array.from({ length: BAR_STEPS + 1 }, (_, step) => ({
        x: across(sizeMm),
        y: (lowPct + ((highPct - lowPct) * step) / BAR_STEPS) / TOP_PCT,
      })),
    ),
  );
  const ways = placeLabels(
    marks.map(({ sizeMm, passingPct, text }) => ({
      x: across(sizeMm),
      y: passingPct / TOP_PCT,
      widthPx: LETTER_PX * text.length,
      heightPx: LINE_PX,
    })),
    [...lines, ...bars],
    PLOTS,
  );
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
    ax: Math.round(ways[at].rightPx),
    ay: Math.round(-ways[at].upPx),
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
