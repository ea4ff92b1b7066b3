import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../../quantities/format.js";
import {
  type AcceptanceRisks,
  type AcceptanceRule,
  operatingCharacteristic,
} from "../../strength/control/acceptance.js";
import type { ControlChart } from "../../strength/control/controlChart.js";
import { say, type Text } from "../../words/message.js";
import type { Figure } from "../figure.js";
import { baseLayout, PALETTE } from "../style.js";

/**
 * The control chart of site lots: each lot's mean in order of making, with centre and limits.
 *
 * @example
 * const lots = [2.4, 2.5, 2.7, 2.4, 2.6].map((mpa, index) => ({ label: `L${index + 1}`, strengthsMpa: [mpa] }));
 * lotsChart("Site lots", controlChart(lots), "SI").data.length // => 1
 */
export function lotsChart(title: Text, chart: ControlChart, units: UnitSystem): Figure {
  const { points, centreMpa, lowMpa, highMpa } = chart;
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const marked = points.filter(({ signals }) => signals.length > 0);
  const plain = points.filter(({ signals }) => signals.length === 0);
  const trace = (name: Text, shown: typeof points, marker: object) => ({
    ...{ type: "scatter", mode: "markers", name, marker },
    x: shown.map(({ label }) => label),
    y: shown.map(({ valueMpa }) => stress(valueMpa)),
    text: shown.map(({ signals }) => signals.join(", ")),
  });
  const levels = [
    [centreMpa, "solid", say`centre`],
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
      trace(say`lots`, plain, { color: PALETTE.azurite, symbol: "circle", size: 7 }),
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

const STEPS = 60;

/**
 * How likely a lot is accepted, by its true mean, with the good and the poor lot marked.
 *
 * @param of.sdMpa standard deviation of blocks of a lot, as for the risks.
 *
 * @example
 * const rule = { kind: "mean-less-ks", blocks: 5, requiredMpa: 2, factor: 1 };
 * const risks = acceptanceRisks(rule, { sdMpa: 0.3 });
 * operatingCharacteristicChart("Acceptance", rule, risks, { sdMpa: 0.3, units: "SI" }).data.length // => 2
 */
export function operatingCharacteristicChart(
  title: Text,
  rule: AcceptanceRule,
  risks: AcceptanceRisks,
  of: { readonly sdMpa: number; readonly units: UnitSystem; readonly seed?: number },
): Figure {
  const { sdMpa, units, seed } = of;
  const low = Math.max(0.05 * sdMpa, risks.poorMeanMpa - 2.5 * sdMpa);
  const high = risks.goodMeanMpa + 1.5 * sdMpa;
  const meansMpa = Array.from({ length: STEPS + 1 }, (_, i) => low + ((high - low) * i) / STEPS);
  const curve = operatingCharacteristic(rule, { sdMpa, seed, meansMpa });
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const half = curve.find(({ acceptance }) => acceptance >= 0.5);
  return {
    kind: "figure",
    title,
    altText: say`Chance of acceptance against the true mean of a lot whose blocks scatter by ${formatQuantity(sdMpa, "stress", units)}. ${risks.message}${half ? say` Half of the lots pass at about ${formatQuantity(half.meanMpa, "stress", units)}.` : ""}`,
    data: [
      {
        ...{ type: "scatter", mode: "lines", name: say`chance of acceptance` },
        x: curve.map(({ meanMpa }) => stress(meanMpa)),
        y: curve.map(({ acceptance }) => 100 * acceptance),
        line: { color: PALETTE.azurite, width: 2.5 },
      },
      {
        ...{ type: "scatter", mode: "markers+text", name: say`poor lot and good lot` },
        x: [stress(risks.poorMeanMpa), stress(risks.goodMeanMpa)],
        y: [100 * risks.ownerRisk, 100 * (1 - risks.builderRisk)],
        text: [say`poor`, say`good`],
        textposition: ["top left", "bottom right"],
        marker: { color: PALETTE.redEarth, symbol: "diamond", size: 9 },
      },
    ],
    layout: baseLayout(
      { title: say`True mean of the lot (${displayUnit("stress", units)})` },
      { title: say`Accepted (% of lots)`, range: [0, 102] },
    ),
  };
}
