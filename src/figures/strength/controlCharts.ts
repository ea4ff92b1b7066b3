import {
  displayUnit,
  displayValue,
  formatQuantity,
  type UnitSystem,
} from "../../quantities/format.js";
import {
  type AcceptanceRisks,
  type AcceptanceRule,
  acceptanceWords,
  operatingCharacteristic,
} from "../../strength/control/acceptance.js";
import { type ControlChart, signalWords } from "../../strength/control/controlChart.js";
import { joinTexts, say, type Text, wordFor } from "../../words/message.js";
import { type Figure, figureOf } from "../figure.js";
import { baseLayout, horizontalLine, PALETTE } from "../style.js";

/** What the axis shows beyond its outermost mark, as a part of the range. */
const MARGIN = 0.08;
/** Room for the names of the levels, as a part of the lots' own. */
const LEVEL_NAMES = 0.4;

/**
 * The control chart of site lots: each lot's mean in order of making, with centre and limits, and the
 * strength that is required, which the axis always holds.
 *
 * @param requiredMpa the required strength; the limits speak of the lots alone, not of what is required.
 *
 * @example
 * const lots = [2.4, 2.5, 2.7, 2.4, 2.6].map((mpa, index) => ({ label: `L${index + 1}`, strengthsMpa: [mpa] }));
 * const { layout } = lotsChart("Site lots", controlChart(lots), "SI", 1.5);
 * layout.yaxis.range[0] < 1.5 // => true
 */
export function lotsChart(
  title: Text,
  chart: ControlChart,
  units: UnitSystem,
  requiredMpa: number,
): Figure {
  const { points, centreMpa, lowMpa, highMpa } = chart;
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const trace = (name: Text, shown: typeof points, marker: object) => ({
    type: "scatter",
    mode: "markers",
    name,
    marker,
    x: shown.map(({ label }) => label),
    y: shown.map(({ valueMpa }) => stress(valueMpa)),
    text: shown.map(({ signals }) => signalWords(signals)),
  });
  const marked = points.filter(({ signals }) => signals.length > 0);
  const plain = points.filter(({ signals }) => signals.length === 0);
  const data = [trace(say`lots`, plain, { color: PALETTE.azurite, symbol: "circle", size: 7 })];
  if (marked.length > 0) {
    const marker = { color: PALETTE.redEarth, symbol: "diamond", size: 10 };
    data.push(trace(say`lots with a signal`, marked, marker));
  }
  const levels = [
    { mpa: centreMpa, dash: "solid", color: PALETTE.manganese, text: say`centre` },
    { mpa: lowMpa, dash: "dash", color: PALETTE.manganese, text: say`lower limit` },
    { mpa: highMpa, dash: "dash", color: PALETTE.manganese, text: say`upper limit` },
    { mpa: requiredMpa, dash: "dot", color: PALETTE.redEarth, text: say`required` },
  ].flatMap(({ mpa, ...style }) => (mpa === null ? [] : [{ ...style, y: stress(mpa) }]));
  const reach = [...points.map(({ valueMpa }) => stress(valueMpa)), ...levels.map(({ y }) => y)];
  const [low, high] = [Math.min(...reach), Math.max(...reach)];
  const room = MARGIN * (high - low || high);
  return figureOf(
    title,
    lotsText(chart, units, requiredMpa),
    data,
    baseLayout(
      {
        title: say`Lot, in order of making`,
        type: "category",
        categoryorder: "array",
        categoryarray: points.map(({ label }) => label),
        // lots stand at 0, 1, 2 …; behind the last one there is room for the names of the levels
        range: [-0.5, points.length * (1 + LEVEL_NAMES) - 0.5],
      },
      {
        title: say`Strength (${displayUnit("stress", units)})`,
        range: [low - room, high + room],
      },
      {
        shapes: levels.map(({ y, dash, color }) => horizontalLine(y, { color, width: 1, dash })),
        annotations: levels.map(({ y, text }) => ({
          text,
          xref: "paper",
          x: 1,
          xanchor: "right",
          y,
          yanchor: "bottom",
          showarrow: false,
        })),
      },
    ),
  );
}

function lotsText(
  { points, kind, centreMpa, lowMpa, highMpa, message }: ControlChart,
  units: UnitSystem,
  requiredMpa: number,
): Text {
  const stress = (mpa: number) => formatQuantity(mpa, "stress", units);
  const required = say`Required: ${stress(requiredMpa)}.`;
  if (centreMpa === null || lowMpa === null || highMpa === null) return say`${message} ${required}`;
  return say`Control chart of ${points.length} lots (${wordFor(kind)}). Centre ${stress(centreMpa)}, limits ${stress(lowMpa)} and ${stress(highMpa)}. ${required} ${message}`;
}

const STEPS = 60;

/**
 * How likely a lot is accepted, by its true mean, with the acceptable and the rejectable quality marked.
 *
 * @param blocks.sdMpa standard deviation of blocks of a lot, as for the risks.
 * @param blocks.seed as there.
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
  {
    sdMpa,
    units,
    seed,
  }: { readonly sdMpa: number; readonly units: UnitSystem; readonly seed?: number },
): Figure {
  const low = Math.max(0.05 * sdMpa, risks.poorMeanMpa - 2.5 * sdMpa);
  const high = risks.goodMeanMpa + 1.5 * sdMpa;
  const meansMpa = Array.from({ length: STEPS + 1 }, (_, i) => low + ((high - low) * i) / STEPS);
  const curve = operatingCharacteristic(rule, { sdMpa, seed, meansMpa });
  const stress = (mpa: number) => displayValue(mpa, "stress", units);
  const half = curve.find(({ acceptance }) => acceptance >= 0.5);
  return figureOf(
    title,
    joinTexts(
      [
        say`Probability of acceptance against the true mean of a lot whose blocks have a standard deviation of ${formatQuantity(sdMpa, "stress", units)}. ${acceptanceWords(rule)} ${risks.message}`,
        half &&
          say`Half of the lots are accepted at about ${formatQuantity(half.meanMpa, "stress", units)}.`,
      ],
      " ",
    ),
    [
      {
        type: "scatter",
        mode: "lines",
        name: say`probability of acceptance`,
        x: curve.map(({ meanMpa }) => stress(meanMpa)),
        y: curve.map(({ acceptance }) => 100 * acceptance),
        line: { color: PALETTE.azurite, width: 2.5 },
      },
      {
        type: "scatter",
        mode: "markers+text",
        name: say`rejectable and acceptable quality`,
        x: [stress(risks.poorMeanMpa), stress(risks.goodMeanMpa)],
        y: [100 * risks.ownerRisk, 100 * (1 - risks.builderRisk)],
        text: [say`rejectable`, say`acceptable`],
        textposition: ["top left", "bottom right"],
        marker: { color: PALETTE.redEarth, symbol: "diamond", size: 9 },
      },
    ],
    baseLayout(
      { title: say`True mean of the lot (${displayUnit("stress", units)})` },
      { title: say`Accepted (% of lots)`, range: [0, 102] },
    ),
  );
}
