import type { Finding } from "../lab/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimenRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { AcceptanceRule } from "../strength/acceptanceRule.js";
import { controlChart } from "../strength/controlChart.js";
import { judgeLot } from "../strength/judgeLot.js";
import { say } from "../words/say.js";
import type { SiteBlocks } from "./qualityPlan.js";
import type { RequirementConfig } from "./studyConfig.js";
import type { StrengthStudy } from "./studyResult.js";

/** A difference of cement that rounding in a sheet makes. */
const CEMENT_SLACK_PCT = 0.05;

/** Judges the lots of a sheet of site blocks, one lot a batch, and charts them in their order. */
export function judgeSiteBlocks(
  { file, specimens }: SpecimenSheet,
  of: {
    readonly rule: AcceptanceRule;
    readonly requirement: RequirementConfig;
    readonly strength: Pick<StrengthStudy, "chosenCementPct">;
  },
  findings: Finding[],
): SiteBlocks {
  const { rule, requirement, strength } = of;
  const warn = (
    block: SpecimenRecord | undefined,
    code: string,
    column: string,
    words: readonly [string, string, string],
  ) => {
    const [message, expected, wayOut] = words;
    const place = block === undefined ? {} : { row: block.row };
    findings.push({
      ...{ severity: "warning", code, file, column, ...place },
      ...{ message, expected, wayOut },
    });
  };
  const counted = specimens.filter(({ excluded }) => excluded === undefined);
  const atAge = counted.filter(({ ageDays }) => ageDays === requirement.ageDays);
  const lots = new Map<string, SpecimenRecord[]>();
  for (const block of atAge) {
    if (block.batch === undefined) {
      warn(block, "site-block-without-lot", "batch", [
        say`Block ${block.id} names no batch, so it belongs to no lot.`,
        say`the lot in the column batch`,
        say`Add it from the making log.`,
      ]);
    } else lots.set(block.batch, [...(lots.get(block.batch) ?? []), block]);
    const chosen = strength.chosenCementPct;
    if (chosen !== undefined && Math.abs(block.cementPct - chosen) > CEMENT_SLACK_PCT) {
      warn(block, "site-block-other-cement", "cement", [
        say`Block ${block.id} holds ${formatFixed(block.cementPct, 1)} % cement; the specified mix holds ${formatFixed(chosen, 1)} %.`,
        say`blocks of the specified mix`,
        say`Correct the sheet, or find out why the mix was another.`,
      ]);
    }
  }
  if (lots.size === 0) {
    warn(undefined, "no-site-lots", "age", [
      say`The sheet of site blocks holds no lot at ${requirement.ageDays} days.`,
      say`blocks crushed at the age of the requirement`,
      say`Add them when they are crushed.`,
    ]);
  }
  const judged = [...lots].map(([label, blocks]) => {
    const strengthsMpa = blocks.map(({ strengthMpa }) => strengthMpa);
    const judgement = judgeLot(rule, strengthsMpa);
    if (judgement.status !== "accepted") {
      warn(blocks[0], `lot-${judgement.status}`, "batch", [
        say`Lot ${label}: ${judgement.message}`,
        judgement.rule,
        say`Tell the responsible person, who decides; the order of steps stands with the lot.`,
      ]);
    }
    return { label, strengthsMpa, judgement };
  });
  const chart = controlChart(judged);
  if (chart.points.some(({ signals }) => signals.length > 0)) {
    warn(undefined, "control-chart-signal", "strength", [
      chart.message,
      say`lots inside the limits of the chart, on both sides of its centre`,
      say`Look at batching, moisture, ramming and testing of these lots. A signal does not reject a lot.`,
    ]);
  }
  return {
    ...{ file, lots: judged, chart, otherAges: counted.length - atAge.length },
    excluded: specimens.flatMap(({ id, excluded }) =>
      excluded === undefined ? [] : [{ id, reason: excluded }],
    ),
  };
}
