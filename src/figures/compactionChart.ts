import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

export interface CompactionChartInput {
  readonly title: string;
  readonly units: UnitSystem;
  readonly points: readonly { readonly waterContentPct: number; readonly dryDensityKgM3: number }[];
  readonly curve: readonly { readonly waterContentPct: number; readonly dryDensityKgM3: number }[];
  readonly zeroAirVoids: readonly {
    readonly waterContentPct: number;
    readonly dryDensityKgM3: number;
  }[];
  readonly optimumWaterPct: number;
  readonly maximumDryDensityKgM3: number;
}

/** Dry density against water content: points, fitted curve with its peak, the line without air. */
export function compactionChart(input: CompactionChartInput): Figure {
  const { units } = input;
  const density = (value: number) => displayValue(value, "density", units);
  const trace = (name: string, points: CompactionChartInput["points"], style: object) => ({
    type: "scatter",
    name,
    x: points.map(({ waterContentPct }) => waterContentPct),
    y: points.map(({ dryDensityKgM3 }) => density(dryDensityKgM3)),
    ...style,
  });
  const all = [...input.points, ...input.curve].map(({ dryDensityKgM3 }) =>
    density(dryDensityKgM3),
  );
  const peak = [
    { waterContentPct: input.optimumWaterPct, dryDensityKgM3: input.maximumDryDensityKgM3 },
  ];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = 0.25 * (high - low);
  return {
    kind: "figure",
    title: input.title,
    altText: `${input.title}. ${input.points.length} points from ${formatFixed(input.points[0].waterContentPct, 1)} to ${formatFixed(input.points[input.points.length - 1].waterContentPct, 1)} % water. The fitted curve peaks at ${formatFixed(input.optimumWaterPct, 1)} % water with a dry density of ${formatQuantity(input.maximumDryDensityKgM3, "density", units, 4)}.`,
    data: [
      trace("no air left (zero air voids)", input.zeroAirVoids, {
        mode: "lines",
        line: { color: PALETTE.redEarth, width: 1.5, dash: "dash" },
      }),
      trace("fitted curve", input.curve, {
        mode: "lines",
        line: { color: PALETTE.umber, width: 2 },
      }),
      trace("test", input.points, {
        mode: "markers",
        marker: { color: PALETTE.azurite, symbol: "square", size: 8 },
      }),
      trace("optimum", peak, {
        mode: "markers",
        marker: { color: PALETTE.umber, symbol: "diamond-open", size: 11, line: { width: 2 } },
      }),
    ],
    layout: baseLayout(
      { title: "Water content (% of dry mass)" },
      {
        title: `Dry density (${displayUnit("density", units)})`,
        range: [low - room, high + 2 * room],
      },
    ),
  };
}
