import { formatQuantity, type UnitSystem } from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { CompactionAnalysis } from "../soil/compactionAnalysis.js";
import type { MoistureWindow } from "../soil/moistureWindow.js";
import { say } from "../words/say.js";

/** The words of a compaction chart: its points, top, intervals and window in numbers. */
export function compactionChartText(
  title: string,
  { points, peak }: CompactionAnalysis,
  units: UnitSystem,
  window: MoistureWindow | undefined,
): string {
  const above = points.filter(
    ({ rejected, airVoidsPct }) => rejected || (airVoidsPct !== undefined && airVoidsPct < 0),
  );
  return [
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
  ].join(" ");
}
