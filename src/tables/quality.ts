import type { KeyValuesBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import type { LotConfig } from "../entries/quality.js";
import { formatFixed, formatQuantity, type UnitSystem } from "../quantities/format.js";
import type { AcceptanceRisks, LotJudgement } from "../strength/control/acceptance.js";
import type { ControlChart } from "../strength/control/controlChart.js";
import { type SpecifiedLine, specifiedMix } from "../study/specifiedMix.js";
import type { StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { fixed, plain, quantity, quantityColumn } from "./cell.js";

/** What stands in the place of the plan where the study asks for none. */
export function noQuality(): NoteBlock {
  return {
    kind: "note",
    tone: "note",
    text: say`No quality-control plan was entered; the responsible person sets how the work is watched.`,
  };
}

/** The quality-control plan in numbers: lots, blocks, rule and risks. */
export function qualityPlanTable({
  config,
  quality,
}: Pick<StudyResult, "config" | "quality">): KeyValuesBlock | NoteBlock {
  const asked = config.quality;
  if (!quality || !asked) return noQuality();
  const { units } = config;
  const { lots, blocks, blocksALot, agesDays, rule, risks, densityChecks } = quality;
  const stress = (mpa: number) => formatQuantity(mpa, "stress", units);
  const ages = joinTexts(agesDays.map((age) => plain(age)));
  const unknown = say`not known: enter how many batches are made a day`;
  return {
    kind: "keyValues",
    caption: say`Quality-control plan: ${config.element.name}`,
    items: [
      { label: say`A lot`, value: lotText(asked.lot, units) },
      { label: say`Lots of the element`, value: lots === undefined ? unknown : String(lots) },
      {
        label: say`Blocks of a lot`,
        value:
          rule && blocksALot !== undefined
            ? say`${rule.blocks} at each age (${ages} days), ${asked.spareBlocks} kept spare: ${blocksALot}`
            : say`not known without a rule`,
      },
      { label: say`Blocks in all`, value: blocks === undefined ? unknown : String(blocks) },
      {
        label: say`Lots are judged at`,
        value: say`${config.strength.requirement.ageDays} days, the age of the requirement; younger blocks give early warning only`,
      },
      { label: say`Rule`, value: quality.ruleMessage },
      {
        label: say`Scatter that the risks hold for`,
        value:
          quality.scatterBasis === "entered"
            ? say`standard deviation ${stress(quality.scatterMpa)}, as entered`
            : say`standard deviation ${stress(quality.scatterMpa)}, that of the laboratory blocks about the curve; blocks made on site mostly scatter more (common practice, no source)`,
      },
      ...(risks ? [{ label: say`Risks`, value: risks.message }] : []),
      ...(asked.densityChecks === undefined
        ? []
        : [
            {
              label: say`Density checks`,
              value:
                densityChecks === undefined
                  ? say`${asked.densityChecks} a lot`
                  : say`${asked.densityChecks} a lot, ${densityChecks} in all`,
            },
          ]),
      { label: say`Basis (as entered)`, value: asked.basis },
    ],
  };
}

function lotText(lot: LotConfig, units: StudyResult["config"]["units"]): Text {
  if (lot.kind === "volume") {
    return say`${formatQuantity(1e6 * lot.volumeM3, "volume", units)} rammed`;
  }
  return lot.batchesADay === undefined
    ? say`what is made in ${lot.days} working days`
    : say`what is made in ${lot.days} working days of ${plain(lot.batchesADay)} batches`;
}

/**
 * What is checked on site, how often, what is accepted, and what follows from a failure.
 *
 * How often and the trial wall are the study's entries where it has them; what is left out is marked. What
 * follows is common practice, no source: the responsible person decides.
 */
export function qualityChecksTable(
  result: Pick<StudyResult, "config" | "quality" | "mix" | "compaction" | "strength">,
): TableBlock | NoteBlock {
  const { config, quality } = result;
  const asked = config.quality;
  if (!quality || !asked) return noQuality();
  const lines = specifiedMix(result);
  const line = (kind: SpecifiedLine["kind"]) => lines.find((one) => one.kind === kind);
  const range = (kind: SpecifiedLine["kind"], decimals: number) => {
    const { low, high } = line(kind) ?? {};
    return low === undefined || high === undefined
      ? say`not stated`
      : say`${fixed(low, decimals)} to ${fixed(high, decimals)} %`;
  };
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", config.units);
  const lift = line("lift");
  const least = line("density")?.low;
  const usual = (words: Text) => say`${words} (common practice, no source)`;
  return {
    kind: "table",
    caption: say`Checks on site`,
    columns: [
      { header: say`Check` },
      { header: say`How often` },
      { header: say`Accepted` },
      { header: say`If not` },
    ],
    rows: [
      [
        say`Trial wall`,
        asked.trialWall ?? say`not stated; the responsible person decides`,
        say`by the responsible person, before the work begins`,
        say`change the mix, the ramming or the crew's way, and make another`,
      ],
      [
        say`Soil and aggregate`,
        usual(say`each load by eye and feel; sieve when it changes`),
        say`as the sample of the study`,
        say`set the load aside; sieve it before it is used`,
      ],
      [
        say`Cement in a batch`,
        usual(say`each batch; bags against batches each day`),
        range("cement", 2),
        say`mark the lift, tell the responsible person`,
      ],
      [
        say`Moisture at ramming`,
        asked.moistureChecks ?? usual(say`ball and drop before each lift, a dried sample each day`),
        range("moisture", 1),
        say`correct the batch before it is rammed; throw away what stiffens`,
      ],
      [
        say`Depth of a rammed lift`,
        usual(say`each lift`),
        lift?.low === undefined || lift.high === undefined
          ? say`not stated`
          : say`${depth(lift.low)} to ${depth(lift.high)}`,
        say`spread less; ram on until it no longer gives`,
      ],
      [
        say`Dry density, rammed`,
        asked.densityChecks === undefined
          ? say`not stated; the responsible person decides`
          : say`${asked.densityChecks} a lot`,
        least === undefined
          ? say`not stated`
          : say`at least ${formatQuantity(least, "density", config.units, 4)}`,
        say`stop, check moisture and ramming, tell the responsible person`,
      ],
      [
        say`Strength of blocks`,
        quality.blocksALot === undefined ? say`each lot` : say`${quality.blocksALot} blocks a lot`,
        say`by the rule of the plan`,
        say`stop on that lot; the responsible person decides in writing`,
      ],
    ],
    notes: [
      say`A check that fails is written down with its place in the wall. What follows is for the responsible person to decide; the last column is common practice, no source.`,
    ],
  };
}

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

  function signalsOf(label: string): Text {
    const point = site?.chart.points.find((one) => one.label === label);
    return joinTexts((point?.signals ?? []).map(signalWords));
  }
}

function signalWords(signal: "outside-limits" | "run-of-eight" | "spread-outside-limits"): Text {
  return {
    "outside-limits": say`outside the limits`,
    "run-of-eight": say`eight in a row on one side`,
    "spread-outside-limits": say`spread outside its limit`,
  }[signal];
}

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
      joinTexts(signals.map(signalWords)),
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
