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
import { airVoidsDensity } from "../soil/compaction/phaseRelations.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { Figure } from "./figure.js";
import { baseLayout, PALETTE, translucent } from "./style.js";

/**
 * Dry density against water content: points, fitted curve with its peak and the peak's 95 % intervals,
 * the window of moisture to ram in, and the lines of no air, 5 and 10 % air where the particle density
 * is known. Points denser than without any air are marked, and told whether the fit left them out.
 *
 * @param relativePct percent of the maximum dry density that the window keeps; default as `moistureWindow`.
 * @throws RangeError where the share is not above 0 and at most 100.
 *
 * @example
 * const points = [[6.5, 1872], [8.7, 1966], [10.6, 2043], [12.2, 2068], [14.4, 1996]].map(([waterContentPct, moistMassG], index) => ({ waterContentPct, moistMassG, row: index + 5 }));
 * const chart = compactionChart("Compaction", analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points }), "SI");
 * chart.data[0].x // => [8.00, 12.94, 12.94, 8.00, 8.00]
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
  const drawn = [...points, ...curve].map(({ dryDensityKgM3 }) => density(dryDensityKgM3));
  const [low, high] = [Math.min(...drawn), Math.max(...drawn)];
  const room = 0.25 * (high - low);
  const bottom = low - room;
  const airLines = airVoidsLines(zeroAirVoids);
  // High enough to see where the soil has no air left, but not so high that the curve looks flat.
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
  return {
    kind: "figure",
    title,
    altText: compactionChartText(title, compaction, units, window),
    data: [
      ...(window ? [windowTrace(window, bottom, top)] : []),
      ...airLines.map(({ name, points: at, dash, width }) => ({
        ...line(name, at, { color: PALETTE.redEarth, width, dash }),
        showlegend: false,
      })),
      ...(peak ? [line(say`fitted curve`, curve, { color: PALETTE.umber, width: 2 })] : []),
      ...compactionPoints(points, density),
      ...(peak ? [peakTrace(peak, density)] : []),
    ],
    layout: baseLayout(
      { title: say`Water content (% of dry mass)` },
      { title: say`Dry density (${displayUnit("density", units)})`, range: [bottom, top] },
      { annotations: airLines.flatMap((each) => lineLabel(each, density, top) ?? []) },
    ),
  };
}

/** The name of a line of air where it enters the plot, to its right; nothing where it stays above. */
function lineLabel(
  { short, points }: ReturnType<typeof airVoidsLines>[number],
  density: (kgM3: number) => number,
  top: number,
): object | undefined {
  const first = points.find(({ dryDensityKgM3 }) => density(dryDensityKgM3) <= top);
  if (!first) return undefined;
  return {
    text: short,
    x: first.waterContentPct,
    y: Math.min(top, density(first.dryDensityKgM3)),
    xanchor: "left",
    yanchor: "top",
    xshift: 18,
    showarrow: false,
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
    name: say`water that keeps ${relativePct} % of the maximum: ${formatFixed(driestPct, 1)} to ${formatFixed(wettestPct, 1)} %`,
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
  const half = (interval: readonly [number, number] | undefined, to = (value: number) => value) =>
    interval
      ? {
          type: "data",
          array: [(to(interval[1]) - to(interval[0])) / 2],
          color: PALETTE.umber,
          thickness: 1.5,
          width: 5,
        }
      : undefined;
  return {
    type: "scatter",
    mode: "markers",
    name: water ? say`optimum with 95 % intervals` : say`optimum`,
    x: [peak.optimumWaterPct],
    y: [density(peak.maximumDryDensityKgM3)],
    ...(water ? { error_x: half(water) } : {}),
    ...(dry ? { error_y: half(dry, density) } : {}),
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
    name: say`test, denser than without air`,
    is: ({ rejected, airVoidsPct = 0 }: CompactionAnalysisPoint) => !rejected && airVoidsPct < 0,
    marker: { color: PALETTE.redEarth, symbol: "square-x-open", size: 10, line: { width: 2 } },
  },
  {
    name: say`test, denser than without air: left out of the fit`,
    is: ({ rejected }: CompactionAnalysisPoint) => rejected === true,
    marker: { color: PALETTE.redEarth, symbol: "x-open", size: 10, line: { width: 2 } },
  },
];

/** The points of a compaction test; those denser than the soil can be without air look different. */
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
        name: name,
        x: own.map(({ waterContentPct }) => waterContentPct),
        y: own.map(({ dryDensityKgM3 }) => density(dryDensityKgM3)),
        marker,
      },
    ];
  });
}

const LINES = [
  {
    airPct: 0,
    name: say`no air left (zero air voids)`,
    short: say`no air`,
    dash: "dash",
    width: 1.8,
  },
  { airPct: 5, name: say`5 % air`, short: say`5 % air`, dash: "dashdot", width: 1.3 },
  { airPct: 10, name: say`10 % air`, short: say`10 % air`, dash: "dot", width: 1.3 },
] as const;

/** Water that fills a volume, kg/m³: the convention of the phase relations. */
const WATER_KG_M3 = 1000;

/** The line without air and those of 5 and 10 % air, at the water contents of the first; none without it. */
function airVoidsLines(zeroAirVoids: readonly DensityAtWater[]): {
  readonly name: Text;
  /** For a label beside the line. */
  readonly short: Text;
  readonly dash: string;
  readonly width: number;
  readonly points: readonly DensityAtWater[];
}[] {
  if (zeroAirVoids.length === 0) return [];
  const [{ waterContentPct, dryDensityKgM3 }] = zeroAirVoids;
  // The line without air holds the particle density: 1 / ρd = 1 / ρs + w / ρw.
  const particleDensity = 1 / (1 / dryDensityKgM3 - waterContentPct / 100 / WATER_KG_M3);
  return LINES.map(({ airPct, name, short, dash, width }) => ({
    name: name,
    short: short,
    dash,
    width,
    points: zeroAirVoids.map(({ waterContentPct: water }) => ({
      waterContentPct: water,
      dryDensityKgM3: airVoidsDensity(water, particleDensity, airPct),
    })),
  }));
}

/** The words of a compaction chart: its points, top, intervals and window in numbers. */
function compactionChartText(
  title: Text,
  { points, peak }: CompactionAnalysis,
  units: UnitSystem,
  window: MoistureWindow | undefined,
): Text {
  const above = points.filter(
    ({ rejected, airVoidsPct }) => rejected || (airVoidsPct !== undefined && airVoidsPct < 0),
  );
  return joinTexts(
    [
      say`${title}. ${points.length} points from ${formatFixed(points[0].waterContentPct, 1)} to ${formatFixed(points[points.length - 1].waterContentPct, 1)} % water.`,
      peak
        ? say`The fitted curve peaks at ${formatFixed(peak.optimumWaterPct, 1)} % water with a dry density of ${formatQuantity(peak.maximumDryDensityKgM3, "density", units, 4)}.`
        : say`The points show no top.`,
      ...(peak?.optimumInterval95
        ? [
            say`95 % interval of the optimum: ${formatFixed(peak.optimumInterval95[0], 1)} to ${formatFixed(peak.optimumInterval95[1], 1)} %.`,
          ]
        : []),
      ...(window
        ? [
            say`Between ${formatFixed(window.driestPct, 1)} and ${formatFixed(window.wettestPct, 1)} % water the curve keeps ${window.relativePct} % of the maximum.`,
          ]
        : []),
      ...above.map(({ waterContentPct, rejected }) =>
        rejected
          ? say`The point at ${formatFixed(waterContentPct, 1)} % is denser than without any air and was left out of the fit.`
          : say`The point at ${formatFixed(waterContentPct, 1)} % is denser than without any air.`,
      ),
    ],
    " ",
  );
}
