import {
  displayUnit,
  displayValue,
  formatFixed,
  formatQuantity,
  type UnitSystem,
} from "../quantities/format.js";
import type {
  CompactionAnalysis,
  CompactionAnalysisPoint,
  DensityAtWater,
} from "../soil/compaction/compactionTest.js";
import { type MoistureWindow, moistureWindow } from "../soil/compaction/moistureWindow.js";
import { airVoidsDensity, WATER_KG_M3 } from "../soil/compaction/phaseRelations.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { type Figure, figureOf } from "./figure.js";
import { baseLayout, intervalBar, PALETTE, translucent } from "./style.js";

/**
 * Dry density against water content: points, fitted curve with its peak and the peak's 95 % intervals,
 * the compaction moisture range, and the lines of zero, 5 and 10 % air voids where the particle density
 * is known. Points above zero air voids are marked, and told whether the fit left them out.
 *
 * @param relativePct percent of the maximum dry density that the window keeps; default as `moistureWindow`.
 * @throws RangeError where the share is not above 0 and at most 100.
 *
 * @example
 * const points = [[6.5, 1872], [8.7, 1966], [10.6, 2043], [12.2, 2068], [14.4, 1996]].map(([waterContentPct, moistMassG], index) => ({ waterContentPct, moistMassG, row: index + 5 }));
 * const chart = compactionChart("Compaction", analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points }), "SI");
 * chart.data[0].x // => [8.82, 12.88, 12.88, 8.82, 8.82]
 */
export function compactionChart(
  title: Text,
  compaction: CompactionAnalysis,
  units: UnitSystem,
  relativePct?: number,
): Figure {
  const { points, curve, zeroAirVoids, peak } = compaction;
  const density = (value: number) => displayValue(value, "density", units);
  const window = moistureWindow(compaction, relativePct);
  const shown = points.length > 0 ? [...points, ...curve] : [compaction.highestPoint];
  const drawn = shown.map(({ dryDensityKgM3 }) => density(dryDensityKgM3));
  const [low, high] = [Math.min(...drawn), Math.max(...drawn)];
  // A reported top stands alone: a range about it is shown, so that it does not lie on the frame.
  const room = high > low ? 0.25 * (high - low) : 0.05 * high;
  const bottom = low - room;
  const airLines = airVoidsLines(zeroAirVoids);
  // High enough to see where the soil has no air voids left, but not so high that the curve looks flat.
  const wettest = zeroAirVoids.at(-1)?.dryDensityKgM3;
  const top = Math.max(
    high + 2 * room,
    wettest === undefined ? 0 : Math.min(density(wettest) + room / 2, high + 4 * room),
  );
  const line = (name: Text, at: readonly DensityAtWater[], style: object) => ({
    type: "scatter",
    mode: "lines",
    name,
    x: at.map(({ waterContentPct }) => waterContentPct),
    y: at.map(({ dryDensityKgM3 }) => density(dryDensityKgM3)),
    line: style,
  });
  return figureOf(
    title,
    compactionChartText(title, compaction, units, window),
    [
      ...(window ? [windowTrace(window, bottom, top)] : []),
      ...airLines.map(({ name, points: at, dash, width }) => ({
        ...line(name, at, { color: PALETTE.redEarth, width, dash }),
        showlegend: false,
      })),
      ...(airLines.length > 0 ? [LINES_IN_LEGEND] : []),
      ...(peak && curve.length > 0
        ? [line(say`fitted curve`, curve, { color: PALETTE.umber, width: 2 })]
        : []),
      ...compactionPoints(points, density),
      ...(peak ? [peakTrace(peak, density)] : []),
    ],
    baseLayout(
      { title: say`Water content (% of dry mass)` },
      { title: say`Dry density (${displayUnit("density", units)})`, range: [bottom, top] },
      {
        annotations: airLines.flatMap((each) => lineLabel(each, density, bottom, top) ?? []),
      },
    ),
  );
}

/** Height of a label as a part of the plot's: the curve with its peak stays below that. */
const LABEL_ROOM = 0.11;

/**
 * The air voids of a line: above it where it enters the plot, or below its end where it hardly does; nothing
 * where it stays outside.
 */
function lineLabel(
  { airPct, points }: ReturnType<typeof airVoidsLines>[number],
  density: (kgM3: number) => number,
  bottom: number,
  top: number,
): object | undefined {
  const under = (limit: number) =>
    points.filter(({ dryDensityKgM3 }) => density(dryDensityKgM3) <= limit);
  const [first] = under(top - LABEL_ROOM * (top - bottom));
  const at = first ?? under(top).at(-1);
  if (!at) return undefined;
  return {
    text: say`${airPct} %`,
    x: at.waterContentPct,
    y: density(at.dryDensityKgM3),
    ...(first ? { xanchor: "left", yanchor: "bottom" } : { xanchor: "right", yanchor: "top" }),
    showarrow: false,
    borderpad: 0,
    font: { size: 12, color: PALETTE.redEarth },
  };
}

function windowTrace(
  { driestPct, wettestPct, relativePct }: MoistureWindow,
  bottom: number,
  top: number,
): object {
  return {
    type: "scatter",
    mode: "lines",
    name: say`compaction moisture range:<br>${relativePct} % of the maximum, ${formatFixed(driestPct, 1)} to ${formatFixed(wettestPct, 1)} %`,
    x: [driestPct, wettestPct, wettestPct, driestPct, driestPct],
    y: [bottom, bottom, top, top, bottom],
    fill: "toself",
    fillcolor: translucent(PALETTE.greenEarth, 0.2),
    line: { color: PALETTE.greenEarth, width: 1, dash: "dot" },
    hoverinfo: "skip",
  };
}

function peakTrace(
  peak: NonNullable<CompactionAnalysis["peak"]>,
  density: (value: number) => number,
): object {
  const { optimumInterval95: water, maximumInterval95: dry } = peak;
  return {
    type: "scatter",
    mode: "markers",
    name: water ? say`optimum with 95 % intervals` : say`optimum`,
    x: [peak.optimumWaterPct],
    y: [density(peak.maximumDryDensityKgM3)],
    ...(water ? { error_x: intervalBar(water, PALETTE.umber) } : {}),
    ...(dry ? { error_y: intervalBar([density(dry[0]), density(dry[1])], PALETTE.umber) } : {}),
    marker: { color: PALETTE.umber, symbol: "diamond-open", size: 11, line: { width: 2 } },
  };
}

/** A point without a particle density has no air voids: nothing is said of it. */
const KINDS = [
  {
    name: say`test`,
    is: ({ rejected, airVoidsPct = 0 }: CompactionAnalysisPoint) => !rejected && airVoidsPct >= 0,
    marker: { color: PALETTE.azurite, symbol: "square", size: 8 },
  },
  {
    name: say`test, above zero air voids`,
    is: ({ rejected, airVoidsPct = 0 }: CompactionAnalysisPoint) => !rejected && airVoidsPct < 0,
    marker: { color: PALETTE.redEarth, symbol: "square-x-open", size: 10, line: { width: 2 } },
  },
  {
    name: say`test, above zero air voids: left out of the fit`,
    is: ({ rejected }: CompactionAnalysisPoint) => rejected === true,
    marker: { color: PALETTE.redEarth, symbol: "x-open", size: 10, line: { width: 2 } },
  },
];

/** The points of a compaction test; those above zero air voids look different. */
function compactionPoints(
  points: readonly CompactionAnalysisPoint[],
  density: (kgM3: number) => number,
): object[] {
  return KINDS.flatMap(({ name, is, marker }) => {
    const own = points.filter(is);
    if (own.length === 0) return [];
    return [
      {
        type: "scatter",
        mode: "markers",
        name,
        x: own.map(({ waterContentPct }) => waterContentPct),
        y: own.map(({ dryDensityKgM3 }) => density(dryDensityKgM3)),
        marker,
      },
    ];
  });
}

const LINES = [
  { airPct: 0, name: say`zero air voids`, dash: "dash", width: 1.8 },
  { airPct: 5, name: say`5 % air voids`, dash: "dashdot", width: 1.3 },
  { airPct: 10, name: say`10 % air voids`, dash: "dot", width: 1.3 },
] as const;

/** One entry of the legend for all lines; their labels tell them apart. */
const LINES_IN_LEGEND = {
  type: "scatter",
  mode: "lines",
  name: say`lines of 0, 5 and 10 % air voids`,
  x: [null],
  y: [null],
  line: { color: PALETTE.redEarth, width: LINES[0].width, dash: LINES[0].dash },
};

/** The lines of zero, 5 and 10 % air voids, at the water contents of the first; none without it. */
function airVoidsLines(zeroAirVoids: readonly DensityAtWater[]) {
  if (zeroAirVoids.length === 0) return [];
  const [{ waterContentPct, dryDensityKgM3 }] = zeroAirVoids;
  // The line of zero air voids holds the particle density: 1 / ρd = 1 / ρs + w / ρw.
  const particleDensity = 1 / (1 / dryDensityKgM3 - waterContentPct / 100 / WATER_KG_M3);
  return LINES.map((line) => ({
    ...line,
    points: zeroAirVoids.map(({ waterContentPct: water }) => ({
      waterContentPct: water,
      dryDensityKgM3: airVoidsDensity(water, particleDensity, line.airPct),
    })),
  }));
}

/** The words of a compaction chart: its points, peak, intervals and moisture range in numbers. */
function compactionChartText(
  title: Text,
  { points, peak }: CompactionAnalysis,
  units: UnitSystem,
  window: MoistureWindow | undefined,
): Text {
  if (points.length === 0 && peak) {
    return say`${title}. The laboratory reports a maximum dry density of ${formatQuantity(peak.maximumDryDensityKgM3, "density", units, 4)} at ${formatFixed(peak.optimumWaterPct, 1)} % water, without points.`;
  }
  const above = points.filter(
    ({ rejected, airVoidsPct }) => rejected || (airVoidsPct !== undefined && airVoidsPct < 0),
  );
  const [first, last] = [points[0], points[points.length - 1]];
  const interval = peak?.optimumInterval95;
  return joinTexts(
    [
      say`${title}. ${points.length} points from ${formatFixed(first.waterContentPct, 1)} to ${formatFixed(last.waterContentPct, 1)} % water.`,
      peak
        ? say`The fitted curve peaks at ${formatFixed(peak.optimumWaterPct, 1)} % water with a dry density of ${formatQuantity(peak.maximumDryDensityKgM3, "density", units, 4)}.`
        : say`The points show no peak.`,
      interval &&
        say`95 % interval of the optimum: ${formatFixed(interval[0], 1)} to ${formatFixed(interval[1], 1)} %.`,
      window &&
        say`Between ${formatFixed(window.driestPct, 1)} and ${formatFixed(window.wettestPct, 1)} % water the curve keeps ${window.relativePct} % of the maximum.`,
      ...above.map(({ waterContentPct, rejected }) =>
        rejected
          ? say`The point at ${formatFixed(waterContentPct, 1)} % lies above zero air voids and was left out of the fit.`
          : say`The point at ${formatFixed(waterContentPct, 1)} % lies above zero air voids.`,
      ),
    ],
    " ",
  );
}
