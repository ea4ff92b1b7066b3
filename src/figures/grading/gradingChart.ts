import type { GradingCurve } from "../../grading/curve.js";
import { type BoundarySystem, SIZE_BOUNDARIES } from "../../grading/fractions.js";
import { powerOf } from "../../numerics/powerOf.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { formatNumber, formatPlain } from "../../quantities/format.js";
import { parseSieve } from "../../quantities/sieves.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type Figure, figureOf } from "../figure.js";
import { type AxisOptions, baseLayout, GRID, QUIET, seriesStyle, verticalLine } from "../style.js";
import { bandTraces, type ChartBand } from "./band.js";
import {
  type CharacteristicMark,
  characteristicMarkParts,
  characteristicMarks,
  TOP_PCT,
} from "./characteristicMarks.js";

/** A curve of a grading chart. */
export interface ChartCurve {
  readonly name: Text;
  readonly curve: GradingCurve;
  /** Drawn as a smooth line without markers: a model or a target. */
  readonly smooth?: boolean;
}

export interface GradingChartOptions {
  /** Fine at the left (default, `fine-to-coarse`) or coarse at the left: the axis alone is turned. */
  readonly direction?: SizeDirection;
  /** Whose names and boundaries of fractions stand along the axis; default `iso14688`. */
  readonly boundaries?: BoundarySystem;
  /** Curves, counted from 0, whose characteristic sizes are marked and named; default none. */
  readonly markSizesOf?: readonly number[];
  /** Which of them: percentages passing; default 10, 30 and 60. */
  readonly markedPct?: readonly number[];
  /** Standard sieves to mark with their designations: ISO 565 by opening, or of ASTM E11; default none. */
  readonly sieves?: keyof typeof STANDARD_SIEVES;
}

/** Sieves of which each is about half as wide as the next (from memory; openings of ASTM in `SIEVE_DESIGNATIONS`). */
const STANDARD_SIEVES = {
  iso565: [
    "63 mm",
    "31.5 mm",
    "16 mm",
    "8 mm",
    "4 mm",
    "2 mm",
    "1 mm",
    "500 µm",
    "250 µm",
    "125 µm",
    "63 µm",
  ],
  astm: [
    "3 in",
    "1 1/2 in",
    "3/4 in",
    "3/8 in",
    "No. 4",
    "No. 10",
    "No. 20",
    "No. 40",
    "No. 60",
    "No. 100",
    "No. 200",
  ],
} as const;

/**
 * A grading chart: percent passing against the logarithm of grain size, with the names of the fractions
 * along the top and, where given, bands behind the curves: envelopes, or the doubt about a curve
 * (`uncertaintyBand`). Several envelopes are told apart by hatching and marks, not by colour alone; edges
 * that were not published are dashed.
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
  title: Text,
  curves: readonly ChartCurve[],
  bands: ChartBand | readonly ChartBand[] = [],
  options: GradingChartOptions = {},
): Figure {
  const { direction = "fine-to-coarse", boundaries = "iso14688" } = options;
  const { markSizesOf = [], markedPct = [10, 30, 60] } = options;
  for (const index of markSizesOf) {
    checkThat(curves[index] !== undefined, { markSizesOf: index }, `0 to below ${curves.length}`);
  }
  const behind = "name" in bands ? [bands] : bands;
  const sizes = [...curves.map(({ curve }) => curve), ...behind].flatMap(({ points }) =>
    points.map(({ sizeMm }) => sizeMm),
  );
  const minMm = Math.min(0.001, ...sizes);
  const maxMm = Math.max(20, ...sizes) * 1.3;
  const axis = sizeAxis(minMm, maxMm, boundaries, direction);
  const { annotations, shapes } = sizeClassMarks(minMm, maxMm, boundaries);
  const sieves = sieveMarks(options.sieves, minMm, maxMm);
  const marks = characteristicMarks(curves, markSizesOf, markedPct);
  const marked = characteristicMarkParts(curves, marks, axis.range as number[], {
    bands: behind,
    labels: sieves.labels,
  });
  // Apart from the doubts, so that envelopes are counted alone.
  const envelopes = behind.filter(({ aboutCurve }) => aboutCurve === undefined);
  const doubts = behind.filter(({ aboutCurve }) => aboutCurve !== undefined);
  return figureOf(
    title,
    gradingChartText(title, curves, behind, marks, { direction, boundaries }),
    [
      ...envelopes.flatMap(bandTraces),
      ...doubts.flatMap(bandTraces),
      ...curves.map(curveTrace),
      ...marked.traces,
    ],
    baseLayout(
      axis,
      {
        title: say`Passing (% of dry mass)`,
        range: [0, TOP_PCT],
        tickvals: [0, 20, 40, 60, 80, 100],
      },
      {
        annotations: [...annotations, ...sieves.annotations, ...marked.annotations],
        shapes: [...shapes, ...sieves.shapes],
      },
    ),
  );
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

/** Which way a grading chart runs from left to right. */
type SizeDirection = "fine-to-coarse" | "coarse-to-fine";

/** Ticks stand at the fraction boundaries of the system, and at rounder sizes between them. */
const ISO_TICKS = [0.002, 0.0063, 0.02, 0.063, 0.2, 0.63, 2, 6.3, 20, 63];
const TICKS: Readonly<Record<BoundarySystem, readonly number[]>> = {
  iso14688: ISO_TICKS,
  bs5930: ISO_TICKS,
  astm: [0.002, 0.0075, 0.02, 0.075, 0.425, 2, 4.75, 19, 75],
  usda: [0.002, 0.0075, 0.02, 0.05, 0.25, 2, 5, 20, 75],
};

/**
 * A logarithmic axis of grain size with ticks at the limits of the grain-size classes.
 *
 * Class limits: ISO 14688-1 (0.002, 0.0063, 0.02, 0.063 … 63 mm), from memory; the boundaries of
 * fractions as in `SIZE_BOUNDARIES`; sieves of ASTM between them, from memory.
 */
export function sizeAxis(
  minMm: number,
  maxMm: number,
  system: BoundarySystem = "iso14688",
  direction: SizeDirection = "fine-to-coarse",
): AxisOptions {
  const range = [Math.log10(minMm), Math.log10(maxMm)];
  const ticks = TICKS[system].filter((tick) => tick >= minMm * 0.999 && tick <= maxMm * 1.001);
  return {
    title: say`Grain size (mm)`,
    type: "log",
    range: direction === "fine-to-coarse" ? range : range.reverse(),
    tickmode: "array",
    tickvals: ticks,
    ticktext: ticks.map((tick) => formatPlain(tick, 3)),
    tickangle: 0,
    tickfont: { size: 12 },
    minor: {
      tickmode: "array",
      tickvals: decadeSizes(minMm, maxMm),
      ticks: "outside",
      ticklen: 2,
      showgrid: true,
      gridcolor: GRID.fine,
    },
  };
}

/** Steps of each decade between two sizes; default 1, 2, 3 … 9, the fine lines of logarithmic paper. */
export function decadeSizes(
  minMm: number,
  maxMm: number,
  steps: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9],
): number[] {
  // An end that is a power of ten may be off in its last digit.
  const [from, to] = [minMm * (1 - 1e-9), maxMm * (1 + 1e-9)];
  const sizes: number[] = [];
  for (let decade = Math.floor(Math.log10(from)); powerOf(10, decade) <= to; decade++) {
    sizes.push(...steps.map((step) => Number(`${step}e${decade}`)));
  }
  return sizes.filter((sizeMm) => sizeMm >= from && sizeMm <= to);
}

/** Names of the fractions along the top of a grading chart, and light lines between them. */
function sizeClassMarks(minMm: number, maxMm: number, system: BoundarySystem): AxisMarks {
  const { clayMm, siltMm, sandMm, gravelMm } = SIZE_BOUNDARIES[system];
  const inside = [
    { name: say`clay`, fromMm: 0, toMm: clayMm },
    { name: say`silt`, fromMm: clayMm, toMm: siltMm },
    { name: say`sand`, fromMm: siltMm, toMm: sandMm },
    { name: say`gravel`, fromMm: sandMm, toMm: gravelMm },
    { name: say`cobbles`, fromMm: gravelMm, toMm: Infinity },
  ]
    .map(({ name, fromMm, toMm }) => ({
      name,
      from: Math.max(fromMm, minMm),
      to: Math.min(toMm, maxMm),
    }))
    // A name needs about a quarter of a decade; a fraction that the chart does not reach has none.
    .filter(({ from, to }) => Math.log10(to / from) > 0.25);
  return {
    annotations: inside.map(({ name, from, to }) => ({
      text: name,
      xref: "x",
      yref: "paper",
      x: (Math.log10(from) + Math.log10(to)) / 2,
      y: 1,
      yanchor: "top",
      showarrow: false,
      font: { size: 12, color: QUIET.letters },
    })),
    shapes: inside.slice(1).map(({ from }) => ({
      ...verticalLine(from, { color: QUIET.faint, width: 1 }),
      layer: "below",
    })),
  };
}

interface AxisMarks {
  readonly annotations: readonly object[];
  readonly shapes: readonly object[];
}

interface SieveMarks extends AxisMarks {
  /** Points along the designations, for labels that must not cover them. */
  readonly labels: readonly { readonly sizeMm: number; readonly passingPct: number }[];
}

/** Heights that a designation takes up above the axis, in percent passing, at most. */
const DESIGNATION_PCTS = [0, 4, 8, 12, 16, 20];

/** Dotted lines at standard sieves, with their designations upright above the axis. */
function sieveMarks(
  series: GradingChartOptions["sieves"],
  minMm: number,
  maxMm: number,
): SieveMarks {
  const names: readonly string[] = series ? STANDARD_SIEVES[series] : [];
  const sieves = names
    .map((name) => ({ name, sizeMm: parseSieve(name) as number }))
    .filter(({ sizeMm }) => sizeMm >= minMm && sizeMm <= maxMm);
  return {
    labels: sieves.flatMap(({ sizeMm }) =>
      DESIGNATION_PCTS.map((passingPct) => ({ sizeMm, passingPct })),
    ),
    annotations: sieves.map(({ name, sizeMm }) => ({
      text: name,
      x: Math.log10(sizeMm),
      xanchor: "right",
      y: 0,
      yanchor: "bottom",
      textangle: -90,
      showarrow: false,
      borderpad: 1,
      font: { size: 10, color: QUIET.letters },
    })),
    shapes: sieves.map(({ sizeMm }) => ({
      ...verticalLine(sizeMm, { color: QUIET.faint, width: 1, dash: "dot" }),
      layer: "below",
    })),
  };
}

/** The words of a grading chart: its curves, bands and marked sizes in numbers. */
function gradingChartText(
  title: Text,
  curves: readonly ChartCurve[],
  bands: readonly ChartBand[],
  marks: readonly CharacteristicMark[],
  { direction, boundaries }: Required<Pick<GradingChartOptions, "direction" | "boundaries">>,
): Text {
  const system = SIZE_BOUNDARIES[boundaries].name;
  const axis =
    direction === "fine-to-coarse"
      ? say`${title}. Percent passing against grain size on a logarithmic axis, fine at the left; fractions by ${system}.`
      : say`${title}. Percent passing against grain size on a logarithmic axis, coarse at the left; fractions by ${system}.`;
  const read = curves.map((curve, index) =>
    curveText(
      curve,
      marks.filter(({ curveIndex }) => curveIndex === index),
    ),
  );
  return joinTexts([axis, ...read, ...bands.map(bandText)], " ");
}

function curveText(
  { name, curve: { points } }: ChartCurve,
  marks: readonly CharacteristicMark[],
): Text {
  const passing = endsAndMiddle(points).map(
    ({ sizeMm, passingPct }) =>
      say`${formatNumber(passingPct, 3)} % at ${formatNumber(sizeMm, 2)} mm`,
  );
  return marks.length > 0
    ? say`${name}: passing ${joinTexts(passing)}; ${joinTexts(marks.map(({ text }) => text))}.`
    : say`${name}: passing ${joinTexts(passing)}.`;
}

function bandText({ name, remarks = [], aboutCurve, smooth, points }: ChartBand): Text {
  if (aboutCurve !== undefined) {
    const widest = points.reduce((a, b) => (b.highPct - b.lowPct > a.highPct - a.lowPct ? b : a));
    return say`${name}: widest at ${formatNumber(widest.sizeMm, 2)} mm, ${formatNumber(widest.lowPct, 3)} to ${formatNumber(widest.highPct, 3)} %.`;
  }
  const limits = (smooth ? endsAndMiddle(points) : points).map(
    ({ sizeMm, lowPct, highPct }) =>
      say`${formatNumber(lowPct, 3)} to ${formatNumber(highPct, 3)} % at ${formatNumber(sizeMm, 2)} mm`,
  );
  return say`Band (${joinTexts([name, ...remarks])}): ${joinTexts(limits)}.`;
}

function endsAndMiddle<Point>(points: readonly Point[]): Point[] {
  return [points[0], points[Math.floor(points.length / 2)], points[points.length - 1]];
}
