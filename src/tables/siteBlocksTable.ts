import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { quantity, quantityColumn } from "./cell.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

const OUTCOME = {
  accepted: () => say`meets the rule`,
  rejected: () => say`does not meet the rule`,
  "wrong-number": () => say`wrong number of blocks`,
};

/** The lots of site blocks as far as crushed, each judged by the rule; what to do where one fails. */
export function siteBlocksTable({
  config,
  quality,
}: Pick<StudyResult, "config" | "quality">): TableBlock | NoteBlock {
  const site = quality?.site;
  if (!site) {
    return { kind: "note", tone: "note", text: say`No sheet of site blocks was entered.` };
  }
  const { units } = config;
  const failed = site.lots.find(({ judgement }) => judgement.status === "rejected");
  return {
    kind: "table",
    caption: say`Lots of site blocks at ${config.strength.requirement.ageDays} days`,
    columns: [
      { header: say`Lot` },
      { header: say`Blocks`, align: "right" },
      quantityColumn(say`Mean`, "stress", units),
      quantityColumn(say`Standard deviation`, "stress", units),
      quantityColumn(say`Weakest`, "stress", units),
      { header: say`Outcome` },
      { header: say`Signal of the control chart` },
    ],
    rows: site.lots.map(({ label, strengthsMpa, judgement }) => [
      label,
      String(strengthsMpa.length),
      quantity(judgement.meanMpa, "stress", units),
      quantity(judgement.sdMpa ?? undefined, "stress", units),
      quantity(judgement.leastMpa, "stress", units),
      OUTCOME[judgement.status](),
      signalsOf(label),
    ]),
    notes: [
      ...(quality.rule ? [quality.ruleMessage] : []),
      site.chart.message,
      ...(site.otherAges > 0
        ? [say`${site.otherAges} blocks of other ages stand in the annex and are not judged.`]
        : []),
      ...site.excluded.map(({ id, reason }) => say`Block ${id} was left out: ${reason}`),
      ...(failed
        ? failed.judgement.steps.map((step, index) => say`Step ${index + 1}: ${step}`)
        : []),
    ],
  };

  function signalsOf(label: string): string {
    const point = site?.chart.points.find((one) => one.label === label);
    return (point?.signals ?? []).map(signalWords).join(", ");
  }
}

function signalWords(signal: "outside-limits" | "run-of-eight" | "spread-outside-limits"): string {
  return {
    "outside-limits": say`outside the limits`,
    "run-of-eight": say`eight in a row on one side`,
    "spread-outside-limits": say`spread outside its limit`,
  }[signal];
}
