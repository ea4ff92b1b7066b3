import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../quantities/displayUnits.js";
import type { ControlChart } from "../strength/controlChart.js";
import { say } from "../words/say.js";
import { baseLayout } from "./baseLayout.js";
import type { Figure } from "./figure.js";
import { PALETTE } from "./palette.js";

/**
 * The control chart of site lots: each lot's mean in order of making, with centre and limits.
 *
 * @example
 * const lots = [2.4, 2.5, 2.7, 2.4, 2.6].map((mpa, index) => ({ label: `L${index + 1}`, strengthsMpa: [mpa] }));
 * lotsChart("Site lots", controlChart(lots), "SI").data.length // => 1
 */
export function lotsChart(title: string, chart: ControlChart, units: UnitSystem): Figure {
  const { points, centreMpa, lowMpa, highMpa } = chart;
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const marked = points.filter(({ signals }) => signals.length > 0);
  const plain = points.filter(({ signals }) => signals.length === 0);
  const trace = (name: string, shown: typeof points, marker: object) => ({
    ...{ type: "scatter", mode: "markers", name, marker },
    x: shown.map(({ label }) => label),
    y: shown.map(({ valueMpa }) => stress(valueMpa)),
    text: shown.map(({ signals }) => signals.join(", ")),
  });
  const levels = [
    [centreMpa, "solid", "centre"],
    [lowMpa, "dash", say`lower limit`],
    [highMpa, "dash", say`upper limit`],
  ] as const;
  const drawn = levels.filter(([mpa]) => mpa !== null);
  return {
    kind: "figure",
    title,
    altText:
      centreMpa === null || lowMpa === null || highMpa === null
        ? chart.message
        : say`Control chart of ${points.length} lots (${chart.kind}). Centre ${formatQuantity(centreMpa, "stress", units)}, limits ${formatQuantity(lowMpa, "stress", units)} and ${formatQuantity(highMpa, "stress", units)}. ${chart.message}`,
    data: [
      trace("lots", plain, { color: PALETTE.azurite, symbol: "circle", size: 7 }),
      ...(marked.length > 0
        ? [
            trace(say`lots with a signal`, marked, {
              color: PALETTE.redEarth,
              symbol: "diamond",
              size: 10,
            }),
          ]
        : []),
    ],
    layout: baseLayout(
      {
        ...{ title: say`Lot, in order of making`, type: "category" },
        ...{ categoryorder: "array", categoryarray: points.map(({ label }) => label) },
      },
      { title: say`Strength (${displayUnit("stress", units)})` },
      {
        shapes: drawn.map(([mpa, dash]) => ({
          ...{ type: "line", xref: "paper", x0: 0, x1: 1, y0: stress(mpa!), y1: stress(mpa!) },
          line: { color: PALETTE.manganese, width: 1, dash },
        })),
        annotations: drawn.map(([mpa, , text]) => ({
          ...{ text, xref: "paper", x: 1, xanchor: "right", y: stress(mpa!), yanchor: "bottom" },
          showarrow: false,
        })),
      },
    ),
  };
}
