import type { BoundarySystem } from "../grading/sizeBoundaries.js";
import { say } from "../words/say.js";
import { bandTraces } from "./bandTraces.js";
import { baseLayout, TOP_LEGEND } from "./baseLayout.js";
import { characteristicMarkParts, characteristicMarks, TOP_PCT } from "./characteristicMarks.js";
import type { ChartBand } from "./chartBand.js";
import type { ChartCurve } from "./chartCurve.js";
import type { Figure } from "./figure.js";
import { gradingChartText } from "./gradingChartText.js";
import { seriesStyle } from "./palette.js";
import { type SizeDirection, sizeAxis, sizeClassMarks } from "./sizeAxis.js";

export type { ChartBand } from "./chartBand.js";
export type { ChartCurve } from "./chartCurve.js";

export interface GradingChartOptions {
  /** Fine at the left (default, `fine-to-coarse`) or coarse at the left: the axis alone is turned. */
  readonly direction?: SizeDirection;
  /** Whose names and boundaries of fractions stand along the axis; default `iso14688`. */
  readonly boundaries?: BoundarySystem;
  /** Curves, counted from 0, whose characteristic sizes are marked and named; default none. */
  readonly markSizesOf?: readonly number[];
  /** Which of them: percentages passing; default 10, 30 and 60. */
  readonly markedPct?: readonly number[];
}

/**
 * A grading chart: percent passing against the logarithm of grain size, with the names of the fractions
 * along the top and, where given, bands behind the curves: envelopes, or the doubt about a curve
 * (`uncertaintyBand`). Several envelopes are told apart by hatching and dash, not by colour alone.
 *
 * @param title the caption; the text alternative begins with it and goes on with the numbers.
 * @throws RangeError where `markSizesOf` names no curve, or a percentage is not 0 to 100.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.01, passingPct: 10, origin: "sedimentation" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * const chart = gradingChart("Grading", [{ name: "Site soil", curve }], [], { direction: "coarse-to-fine", markSizesOf: [0], markedPct: [55] });
 * chart.data[1].x // => [0.316]
 */
export function gradingChart(
  title: string,
  curves: readonly ChartCurve[],
  bands: ChartBand | readonly ChartBand[] = [],
  options: GradingChartOptions = {},
): Figure {
  const { direction = "fine-to-coarse", boundaries = "iso14688" } = options;
  const { markSizesOf = [], markedPct = [10, 30, 60] } = options;
  for (const index of markSizesOf) {
    if (!curves[index]) {
      throw new RangeError(
        `invalid \`markSizesOf\`: ${index}; expected 0 to below ${curves.length}`,
      );
    }
  }
  const behind = "name" in bands ? [bands] : bands;
  const sizes = [...curves.map(({ curve }) => curve), ...behind].flatMap(({ points }) =>
    points.map(({ sizeMm }) => sizeMm),
  );
  const smallest = Math.min(0.001, ...sizes);
  const largest = Math.max(20, ...sizes) * 1.3;
  const axis = sizeAxis(smallest, largest, boundaries, direction);
  const { annotations, shapes } = sizeClassMarks(smallest, largest, boundaries);
  const marks = characteristicMarks(curves, markSizesOf, markedPct);
  const bars = behind.filter(({ pointsOnly }) => pointsOnly);
  const marked = characteristicMarkParts(curves, marks, axis.range as number[], bars);
  // Doubt first, so that envelopes are counted alone.
  const doubts = behind.filter(({ aboutCurve }) => aboutCurve !== undefined);
  const envelopes = behind.filter(({ aboutCurve }) => aboutCurve === undefined);
  return {
    kind: "figure",
    title,
    altText: gradingChartText(title, curves, behind, marks, { direction, boundaries }),
    data: [
      ...envelopes.flatMap(bandTraces),
      ...doubts.flatMap(bandTraces),
      ...curves.map(curveTrace),
      ...marked.traces,
    ],
    layout: baseLayout(
      axis,
      { title: say`Passing (% of dry mass)`, range: [0, TOP_PCT], dtick: 20 },
      {
        annotations: [...annotations, ...marked.annotations],
        shapes,
        margin: { l: 62, r: 18, t: 26, b: 54 },
        // Above the names of the fractions. Filled areas would turn the order round.
        legend: { ...TOP_LEGEND, y: 1.1, traceorder: "normal" },
      },
    ),
  };
}

function curveTrace({ name, curve, smooth }: ChartCurve, index: number): object {
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
}
