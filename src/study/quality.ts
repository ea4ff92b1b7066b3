import type {
  AcceptanceConfig,
  LotConfig,
  RequirementConfig,
  StudyConfig,
} from "../entries/studyConfig.js";
import {
  type Finding,
  type FindingWords,
  finding,
  findingIf,
  STUDY_FILE,
} from "../findings/finding.js";
import type { SpecimenRecord, SpecimenSheet } from "../lab/specimens.js";
import { wholeCount } from "../quantities/checkNumber.js";
import { formatFixed, measured } from "../quantities/format.js";
import {
  type AcceptanceRisks,
  type AcceptanceRule,
  acceptanceRisks,
  acceptanceWords,
  designAcceptance,
  judgeLot,
} from "../strength/control/acceptance.js";
import { controlChart } from "../strength/control/controlChart.js";
import { groupBy } from "../strength/groupBy.js";
import { say, type Text } from "../words/message.js";
import type { MixStudy, QualityPlan, SiteBlocks, StrengthStudy } from "./studyResult.js";

/** Works out the quality-control plan that `quality` asks for, and judges the blocks made so far. */
export function computeQuality(
  config: StudyConfig,
  strength: StrengthStudy,
  mix: MixStudy | undefined,
  siteBlocks: SpecimenSheet | undefined,
): { readonly plan?: QualityPlan; readonly findings: readonly Finding[] } {
  const { quality } = config;
  const { requirement } = config.strength;
  if (!quality || !requirement) return { findings: [] };
  const agesDays = quality.agesDays ?? [requirement.ageDays];
  if (!agesDays.includes(requirement.ageDays)) {
    const place = { file: STUDY_FILE, column: "quality.ages", value: agesDays.join(", ") };
    const words = {
      message: say`No block of a lot is crushed at the age of the requirement.`,
      expected: say`${requirement.ageDays} d among the ages`,
      remedy: say`Add the age to quality.ages; lots are judged at it.`,
    };
    return { findings: [finding(place, "error", "age-not-tested", words)] };
  }
  const { rule, message, risks: shares } = ruleOf(quality.acceptance, requirement.strengthMpa);
  const scatterMpa = quality.scatterMpa ?? regressionScatter(strength);
  const risks =
    rule && scatterMpa > 0
      ? acceptanceRisks(rule, { sdMpa: scatterMpa, seed: config.seed, ...shares })
      : undefined;
  const cementPct = mix?.record.cementPct ?? strength.chosenCementPct;
  const site = rule && siteBlocks && judgeSiteBlocks(siteBlocks, rule, requirement, cementPct);
  const blocksALot = rule && rule.blocks * agesDays.length + quality.spareBlocks;
  return {
    plan: {
      agesDays,
      rule,
      ruleMessage: message,
      scatterMpa,
      scatterBasis: quality.scatterMpa === undefined ? "regression" : "entered",
      risks,
      ...countsOf(mix && lotsOf(quality.lot, mix), blocksALot, quality.densityChecks),
      site: site?.blocks,
    },
    findings: [
      ...(rule ? weakRule(rule, requirement.strengthMpa) : [noRule(message)]),
      ...(risks ? riskFindings(risks) : []),
      ...(site?.findings ?? []),
    ],
  };
}

/** Lots of the element, and what is tested of them in all. */
function countsOf(
  lots: number | undefined,
  blocksALot: number | undefined,
  densityChecks: number | undefined,
): Pick<QualityPlan, "lots" | "blocksALot" | "blocks" | "densityChecks"> {
  const inAll = (each: number | undefined) => lots && each && lots * each;
  return { lots, blocksALot, blocks: inAll(blocksALot), densityChecks: inAll(densityChecks) };
}

/** The rule, and, where it was designed, the shares that say what a good and a poor lot is. */
function ruleOf(acceptance: AcceptanceConfig, requiredMpa: number) {
  if (acceptance.kind === "designed") {
    const { acceptableQuality, rejectableQuality } = acceptance;
    const design = designAcceptance({
      requiredMpa: acceptance.strengthMpa ?? requiredMpa,
      acceptableQuality,
      rejectableQuality,
      builderRisk: acceptance.producerRisk,
      ownerRisk: acceptance.consumerRisk,
    });
    const { rule, message } = design;
    return { rule: rule ?? undefined, message, risks: { acceptableQuality, rejectableQuality } };
  }
  if (acceptance.kind === "mean-and-least") {
    return { rule: acceptance, message: acceptanceWords(acceptance), risks: {} };
  }
  const { strengthMpa = requiredMpa, ...asked } = acceptance;
  const rule = { ...asked, requiredMpa: strengthMpa };
  return { rule, message: acceptanceWords(rule), risks: {} };
}

const ACCEPTANCE = { file: STUDY_FILE, column: "quality.acceptance" };

function noRule(message: Text): Finding {
  return finding(ACCEPTANCE, "warning", "no-acceptance-rule", {
    message,
    expected: say`shares and risks that a rule can keep`,
    remedy: say`Take shares farther apart, or larger risks.`,
  });
}

/** A rule that asks for less than the study requires is said, not forbidden: ages and bases differ. */
function weakRule(rule: AcceptanceRule, requiredMpa: number): Finding[] {
  const asked = rule.kind === "mean-less-ks" ? rule.requiredMpa : rule.meanMpa;
  const place = { ...ACCEPTANCE, value: measured(asked, "stress") };
  return findingIf(asked < requiredMpa, place, "warning", "weak-acceptance-rule", {
    message: say`The acceptance rule asks for less than the requirement of the study.`,
    expected: say`at least ${measured(requiredMpa, "stress")}`,
    remedy: say`Raise the strength of the rule, or say in quality.basis why it may be lower.`,
  });
}

/** A rule that rejects more good lots than this works against whoever builds well; common practice, no source. */
const PRODUCER_RISK_LIMIT = 0.2;
/** A rule that accepts more poor lots than this lets most of them through; common practice, no source. */
const CONSUMER_RISK_LIMIT = 0.5;

/** A rule that tells good lots from poor ones hardly better than chance is said, not forbidden. */
function riskFindings({ builderRisk, ownerRisk }: AcceptanceRisks): Finding[] {
  const percent = (share: number) => say`${formatFixed(100 * share, 1)} %`;
  const told = (isSo: boolean, code: string, words: FindingWords) =>
    findingIf(isSo, ACCEPTANCE, "warning", code, words);
  return [
    ...told(builderRisk > PRODUCER_RISK_LIMIT, "rule-rejects-good-lots", {
      message: say`A good lot is rejected in ${percent(builderRisk)} of cases.`,
      expected: say`at most ${percent(PRODUCER_RISK_LIMIT)}`,
      remedy: say`Take more blocks a lot or a smaller factor, specify a stronger mix, or let the rule be designed from both risks.`,
    }),
    ...told(ownerRisk > CONSUMER_RISK_LIMIT, "rule-accepts-poor-lots", {
      message: say`A poor lot is accepted in ${percent(ownerRisk)} of cases.`,
      expected: say`at most ${percent(CONSUMER_RISK_LIMIT)}`,
      remedy: say`Take more blocks a lot or a larger factor, or let the rule be designed from both risks.`,
    }),
  ];
}

/** At least one. */
function lotsOf(lot: LotConfig, { quantities }: MixStudy): number | undefined {
  const up = (amount: number) => Math.max(1, wholeCount(amount));
  if (lot.kind === "volume") return up(quantities.madeVolumeM3 / lot.volumeM3);
  return lot.batchesADay && up(wholeCount(quantities.batches) / lot.batchesADay / lot.days);
}

/** The scatter about the curve in MPa at the chosen content, on whatever scale the curve was fitted. */
function regressionScatter({ fit, leastCement }: StrengthStudy): number {
  const line = leastCement?.lineAtBatchableMpa ?? null;
  if (fit.model === "power") return fit.residualSd * (line ?? Math.exp(fit.basis.reference));
  if (fit.basis.variance === "even" || line === null) return fit.residualSd;
  return (fit.residualSd * line) / fit.basis.reference;
}

/** A difference of cement that rounding in a sheet makes. */
const CEMENT_SLACK_PCT = 0.05;

/**
 * Judges the lots of a sheet of site blocks, one lot a batch, and charts them in their order.
 *
 * @param cementPct of the specified mix; undefined where none is known.
 */
function judgeSiteBlocks(
  { file, specimens }: SpecimenSheet,
  rule: AcceptanceRule,
  { ageDays }: RequirementConfig,
  cementPct: number | undefined,
): { readonly blocks: SiteBlocks; readonly findings: readonly Finding[] } {
  const warn = (
    isSo: boolean,
    row: number | undefined,
    column: string,
    code: string,
    [message, expected, remedy]: readonly [Text, Text, Text],
  ) => findingIf(isSo, { file, row, column }, "warning", code, { message, expected, remedy });
  const counted = specimens.filter(({ excluded }) => excluded === undefined);
  const atAge = counted.filter((block) => block.ageDays === ageDays);
  // A block of another mix tells nothing of this one.
  const isOther = (block: SpecimenRecord) =>
    cementPct !== undefined && Math.abs(block.cementPct - cementPct) > CEMENT_SLACK_PCT;
  const others = groupBy(atAge.filter(isOther), (block) => block.cementPct);
  const ofMix = atAge.filter((block) => !isOther(block) && block.batch !== undefined);
  const lots = [...groupBy(ofMix, ({ batch }) => batch!)].map(([label, blocks]) => {
    const strengthsMpa = blocks.map(({ strengthMpa }) => strengthMpa);
    return { label, strengthsMpa, judgement: judgeLot(rule, strengthsMpa), row: blocks[0].row };
  });
  const judged = lots.map(({ row: _, ...lot }) => lot);
  const chart = controlChart(judged);
  const isSignalled = chart.points.some(({ signals }) => signals.length > 0);
  return {
    blocks: {
      file,
      lots: judged,
      chart,
      otherAges: counted.length - atAge.length,
      excluded: specimens.flatMap(({ id, excluded }) =>
        excluded === undefined ? [] : [{ id, reason: excluded }],
      ),
    },
    findings: [
      ...atAge.flatMap(({ id, batch, row }) =>
        warn(batch === undefined, row, "batch", "site-block-without-lot", [
          say`Block ${id} names no batch, so it belongs to no lot.`,
          say`the lot in the column batch`,
          say`Add it from the making log.`,
        ]),
      ),
      ...[...others].flatMap(([content, blocks]) =>
        warn(true, blocks[0].row, "cement", "site-block-other-cement", [
          say`${blocks.length}{0, plural, one { block} other { blocks}} with ${formatFixed(content, 1)} % cement {0, plural, one {is} other {are}} not judged: the specified mix has ${formatFixed(cementPct!, 1)} %.`,
          say`blocks of the specified mix`,
          say`Correct the sheet, or find out why the mix was another.`,
        ]),
      ),
      ...warn(lots.length === 0, undefined, "age", "no-site-lots", [
        say`The sheet of site blocks holds no lot of the specified mix at ${ageDays} days.`,
        say`blocks of the specified mix, crushed at the age of the requirement`,
        say`Add them when they are crushed.`,
      ]),
      ...lots.flatMap(({ label, judgement: { status, message, rule: asked }, row }) =>
        warn(status !== "accepted", row, "batch", `lot-${status}`, [
          // Many a sheet calls its lots “Lot 1”.
          /^lote? /i.test(label) ? say`${label}: ${message}` : say`Lot ${label}: ${message}`,
          asked,
          say`Tell the responsible person, who decides; the order of steps stands with the lot.`,
        ]),
      ),
      ...warn(isSignalled, undefined, "strength", "control-chart-signal", [
        chart.message,
        say`lots inside the limits of the chart, on both sides of its centre`,
        say`Look at batching, moisture, ramming and testing of these lots. A signal does not reject a lot.`,
      ]),
    ],
  };
}
