import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { CompactionAnalysis, DensityAtWater } from "../soil/compactionAnalysis.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

/** Dry density against water content: points, fitted curve with its peak, the line without air. */
export function compactionChart(
  title: string,
  { points, curve, zeroAirVoids, peak }: CompactionAnalysis,
  units: UnitSystem,
): Figure {
  const density = (value: number) => displayValue(value, "density", units);
  const trace = (name: string, at: readonly DensityAtWater[], style: object) => ({
    type: "scatter",
    name,
    x: at.map(({ waterContentPct }) => waterContentPct),
    y: at.map(({ dryDensityKgM3 }) => density(dryDensityKgM3)),
    ...style,
  });
  const all = [...points, ...curve].map(({ dryDensityKgM3 }) => density(dryDensityKgM3));
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const top = peak
    ? say`The fitted curve peaks at ${formatFixed(peak.optimumWaterPct, 1)} % water with a dry density of ${formatQuantity(peak.maximumDryDensityKgM3, "density", units, 4)}.`
    : say`The points show no top.`;
  const room = 0.25 * (high - low);
  return {
    kind: "figure",
    title,
    altText: say`${title}. ${points.length} points from ${formatFixed(points[0].waterContentPct, 1)} to ${formatFixed(points[points.length - 1].waterContentPct, 1)} % water. ${top}`,
    data: [
      trace(say`no air left (zero air voids)`, zeroAirVoids, {
        mode: "lines",
        line: { color: PALETTE.redEarth, width: 1.5, dash: "dash" },
      }),
      trace(say`fitted curve`, curve, {
        mode: "lines",
        line: { color: PALETTE.umber, width: 2 },
      }),
      trace(say`test`, points, {
        mode: "markers",
        marker: { color: PALETTE.azurite, symbol: "square", size: 8 },
      }),
      ...(peak
        ? [
            trace(
              say`optimum`,
              [
                {
                  waterContentPct: peak.optimumWaterPct,
                  dryDensityKgM3: peak.maximumDryDensityKgM3,
                },
              ],
              {
                mode: "markers",
                marker: {
                  color: PALETTE.umber,
                  symbol: "diamond-open",
                  size: 11,
                  line: { width: 2 },
                },
              },
            ),
          ]
        : []),
    ],
    layout: baseLayout(
      { title: say`Water content (% of dry mass)` },
      {
        title: say`Dry density (${displayUnit("density", units)})`,
        range: [low - room, high + 2 * room],
      },
    ),
  };
}
