import type { Robustness } from "../blend/robustness.js";
import { formatNumber, formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

const BAND_COLOUR = "rgba(192,112,0,0.22)";

/** At each size of the band: what is allowed, and between what nine in ten blends lie. */
export function robustnessChart(title: string, of: Robustness): Figure {
  const { points, insideProbability, worst, draws } = of;
  const x = points.map(({ sizeMm }) => `${formatPlain(sizeMm, 3)} mm`);
  const percent = (part: number) => `${formatNumber(100 * part, 3)} %`;
  return {
    kind: "figure",
    title,
    altText: say`${title}. ${percent(insideProbability)} of ${draws} drawn blends stay inside the band at every size; the worst size is ${formatNumber(worst.sizeMm, 2)} mm. ${points
      .map(
        (point, i) =>
          say`At ${x[i]}: nine in ten between ${formatNumber(point.p05Pct, 3)} and ${formatNumber(point.p95Pct, 3)} %, allowed ${formatNumber(point.lowPct, 3)} to ${formatNumber(point.highPct, 3)} %, inside in ${percent(point.insideProbability)}.`,
      )
      .join(" ")}`,
    data: [
      {
        type: "bar",
        name: say`allowed`,
        x,
        base: points.map(({ lowPct }) => lowPct),
        y: points.map(({ lowPct, highPct }) => highPct - lowPct),
        width: 0.5,
        marker: { color: BAND_COLOUR, line: { color: PALETTE.ochre, width: 1 } },
      },
      {
        type: "scatter",
        mode: "markers",
        name: say`middle and nine in ten of the blends`,
        x,
        y: points.map(({ medianPct }) => medianPct),
        marker: { color: PALETTE.azurite, symbol: "diamond", size: 9 },
        error_y: {
          type: "data",
          symmetric: false,
          array: points.map(({ p95Pct, medianPct }) => p95Pct - medianPct),
          arrayminus: points.map(({ p05Pct, medianPct }) => medianPct - p05Pct),
          color: PALETTE.azurite,
          thickness: 2.5,
          width: 8,
        },
      },
    ],
    layout: baseLayout(
      { title: say`Grain size`, type: "category" },
      { title: say`Passing (% of dry mass)`, range: [0, 108], tickvals: [0, 20, 40, 60, 80, 100] },
      {
        annotations: points.map((point, i) => ({
          text: percent(point.insideProbability),
          x: x[i],
          y: Math.min(104, Math.max(point.highPct, point.p95Pct) + 4),
          showarrow: false,
          font: { size: 13 },
        })),
      },
    ),
  };
}
