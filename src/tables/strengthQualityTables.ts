import { formatQuantity, type UnitSystem } from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { AcceptanceRisks } from "../strength/acceptanceRisks.js";
import type { ControlChart } from "../strength/controlChart.js";
import type { LotJudgement } from "../strength/judgeLot.js";
import { say } from "../words/say.js";
import { quantity, quantityColumn } from "./cell.js";
import type { KeyValuesBlock, TableBlock } from "./reportBlock.js";

/** The acceptance rule with its risks, how often lots are tested, and the user's basis for both. */
export function acceptanceTable(
  risks: AcceptanceRisks,
  entered: { readonly frequency: string; readonly basis: string },
  units: UnitSystem,
): KeyValuesBlock {
  const percent = (share: number) => say`${formatFixed(100 * share, 1)} % of lots`;
  return {
    kind: "keyValues",
    caption: say`Acceptance of site blocks`,
    items: [
      { label: say`Rule and risks`, value: risks.message },
      { label: say`Good lots rejected (builder's risk)`, value: percent(risks.builderRisk) },
      {
        label: say`Mean of such a good lot`,
        value: formatQuantity(risks.goodMeanMpa, "stress", units),
      },
      { label: say`Poor lots accepted (owner's risk)`, value: percent(risks.ownerRisk) },
      {
        label: say`Mean of such a poor lot`,
        value: formatQuantity(risks.poorMeanMpa, "stress", units),
      },
      { label: say`Frequency (as entered)`, value: entered.frequency },
      { label: say`Basis (as entered)`, value: entered.basis },
    ],
  };
}

/** The lots of the control chart. */
export function lotsTable(chart: ControlChart, units: UnitSystem): TableBlock {
  return {
    kind: "table",
    caption: say`Lots of site blocks`,
    columns: [
      { header: say`Lot` },
      quantityColumn(say`Mean`, "stress", units),
      quantityColumn(say`Standard deviation`, "stress", units),
      { header: say`Signal` },
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
    caption: say`Judgement of the lot`,
    items: [
      { label: say`Rule`, value: judgement.rule },
      { label: say`Mean`, value: stress(judgement.meanMpa) },
      { label: say`Weakest`, value: stress(judgement.leastMpa) },
      { label: say`Outcome`, value: judgement.message },
      ...judgement.steps.map((value, index) => ({ label: say`Step ${index + 1}`, value })),
    ],
  };
}
