import { formatQuantity, type UnitSystem } from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { AcceptanceRisks } from "../strength/acceptanceRisks.js";
import type { ControlChart } from "../strength/controlChart.js";
import type { LotJudgement } from "../strength/judgeLot.js";
import { quantity, quantityColumn } from "./cell.js";
import type { KeyValuesBlock, TableBlock } from "./reportBlock.js";

/** The acceptance rule with its risks, how often lots are tested, and the user's basis for both. */
export function acceptanceTable(
  risks: AcceptanceRisks,
  entered: { readonly frequency: string; readonly basis: string },
  units: UnitSystem,
): KeyValuesBlock {
  const percent = (share: number) => `${formatFixed(100 * share, 1)} % of lots`;
  return {
    kind: "keyValues",
    caption: "Acceptance of site blocks",
    items: [
      { label: "Rule and risks", value: risks.message },
      { label: "Good lots rejected (builder's risk)", value: percent(risks.builderRisk) },
      {
        label: "Mean of such a good lot",
        value: formatQuantity(risks.goodMeanMpa, "stress", units),
      },
      { label: "Poor lots accepted (owner's risk)", value: percent(risks.ownerRisk) },
      {
        label: "Mean of such a poor lot",
        value: formatQuantity(risks.poorMeanMpa, "stress", units),
      },
      { label: "Frequency (as entered)", value: entered.frequency },
      { label: "Basis (as entered)", value: entered.basis },
    ],
  };
}

/** The lots of the control chart. */
export function lotsTable(chart: ControlChart, units: UnitSystem): TableBlock {
  return {
    kind: "table",
    caption: "Lots of site blocks",
    columns: [
      { header: "Lot" },
      quantityColumn("Mean", "stress", units),
      quantityColumn("Standard deviation", "stress", units),
      { header: "Signal" },
    ],
    rows: chart.points.map(({ label, valueMpa, sdMpa, signals }) => [
      label,
      quantity(valueMpa, "stress", units),
      quantity(sdMpa ?? undefined, "stress", units),
      signals.join(", ").replaceAll("-", " "),
    ]),
    notes: [chart.message],
  };
}

/** What was found of a lot, and, where it fails, what to do in which order. */
export function lotJudgementTable(judgement: LotJudgement, units: UnitSystem): KeyValuesBlock {
  const stress = (mpa: number) => formatQuantity(mpa, "stress", units);
  return {
    kind: "keyValues",
    caption: "Judgement of the lot",
    items: [
      { label: "Rule", value: judgement.rule },
      { label: "Mean", value: stress(judgement.meanMpa) },
      { label: "Weakest", value: stress(judgement.leastMpa) },
      { label: "Outcome", value: judgement.message },
      ...judgement.steps.map((value, index) => ({ label: `Step ${index + 1}`, value })),
    ],
  };
}
