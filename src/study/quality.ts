import type {
  AcceptanceConfig,
  LotConfig,
  QualityConfig,
  RequirementConfig,
  StudyConfig,
} from "../entries/studyConfig.js";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
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
  const site = rule && siteBlocks && judgeSiteBlocks(siteBlocks, { rule, requirement, cementPct });
  const blocksALot = rule && rule.blocks * agesDays.length + quality.spareBlocks;
  return {
    plan: {
      agesDays,
      rule,
      ruleMessage: message,
      scatterMpa,
      scatterBasis: quality.scatterMpa === undefined ? "regression" : "entered",
      risks,
      ...countsOf(quality, mix && lotsOf(quality.lot, mix), blocksALot),
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
  { densityChecks }: QualityConfig,
  lots: number | undefined,
  blocksALot: number | undefined,
): Pick<QualityPlan, "lots" | "blocksALot" | "blocks" | "densityChecks"> {
  const eachLot = blocksALot === undefined ? {} : { blocksALot };
  if (lots === undefined) return eachLot;
  return {
    lots,
    ...eachLot,
    ...(blocksALot === undefined ? {} : { blocks: lots * blocksALot }),
    ...(densityChecks === undefined ? {} : { densityChecks: lots * densityChecks }),
  };
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
    return {
      rule: design.rule ?? undefined,
      message: design.message,
      risks: { acceptableQuality, rejectableQuality },
    };
  }
  const rule: AcceptanceRule =
    acceptance.kind === "mean-and-least"
      ? acceptance
      : {
          kind: acceptance.kind,
          blocks: acceptance.blocks,
          factor: acceptance.factor,
          requiredMpa: acceptance.strengthMpa ?? requiredMpa,
        };
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
  if (asked >= requiredMpa) return [];
  return [
    finding(
      { ...ACCEPTANCE, value: measured(asked, "stress") },
      "warning",
      "weak-acceptance-rule",
      {
        message: say`The acceptance rule asks for less than the requirement of the study.`,
        expected: say`at least ${measured(requiredMpa, "stress")}`,
        remedy: say`Raise the strength of the rule, or say in quality.basis why it may be lower.`,
      },
    ),
  ];
}

/** A rule that rejects more good lots than this works against whoever builds well; common practice, no source. */
const PRODUCER_RISK_LIMIT = 0.2;
/** A rule that accepts more poor lots than this lets most of them through; common practice, no source. */
const CONSUMER_RISK_LIMIT = 0.5;

/** A rule that tells good lots from poor ones hardly better than chance is said, not forbidden. */
function riskFindings({ builderRisk, ownerRisk }: AcceptanceRisks): Finding[] {
  const percent = (share: number) => say`${formatFixed(100 * share, 1)} %`;
  const findings: Finding[] = [];
  if (builderRisk > PRODUCER_RISK_LIMIT) {
    findings.push(
      finding(ACCEPTANCE, "warning", "rule-rejects-good-lots", {
        message: say`A good lot is rejected in ${percent(builderRisk)} of cases.`,
        expected: say`at most ${percent(PRODUCER_RISK_LIMIT)}`,
        remedy: say`Take more blocks a lot or a smaller factor, specify a stronger mix, or let the rule be designed from both risks.`,
      }),
    );
  }
  if (ownerRisk > CONSUMER_RISK_LIMIT) {
    findings.push(
      finding(ACCEPTANCE, "warning", "rule-accepts-poor-lots", {
        message: say`A poor lot is accepted in ${percent(ownerRisk)} of cases.`,
        expected: say`at most ${percent(CONSUMER_RISK_LIMIT)}`,
        remedy: say`Take more blocks a lot or a larger factor, or let the rule be designed from both risks.`,
      }),
    );
  }
  return findings;
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

/** Judges the lots of a sheet of site blocks, one lot a batch, and charts them in their order. */
function judgeSiteBlocks(
  { file, specimens }: SpecimenSheet,
  {
    rule,
    requirement,
    cementPct,
  }: {
    readonly rule: AcceptanceRule;
    readonly requirement: RequirementConfig;
    /** Of the specified mix; undefined where none is known. */
    readonly cementPct?: number;
  },
): { readonly blocks: SiteBlocks; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const warn = (
    block: SpecimenRecord | undefined,
    code: string,
    column: string,
    words: readonly [Text, Text, Text],
  ) => {
    const [message, expected, remedy] = words;
    const place = block === undefined ? {} : { row: block.row };
    findings.push(
      finding({ file, column, ...place }, "warning", code, {
        message,
        expected,
        remedy,
      }),
    );
  };
  const counted = specimens.filter(({ excluded }) => excluded === undefined);
  const atAge = counted.filter(({ ageDays }) => ageDays === requirement.ageDays);
  const lots = new Map<string, SpecimenRecord[]>();
  const others = new Map<number, SpecimenRecord[]>();
  for (const block of atAge) {
    if (block.batch === undefined) {
      warn(block, "site-block-without-lot", "batch", [
        say`Block ${block.id} names no batch, so it belongs to no lot.`,
        say`the lot in the column batch`,
        say`Add it from the making log.`,
      ]);
    }
    const other =
      cementPct !== undefined && Math.abs(block.cementPct - cementPct) > CEMENT_SLACK_PCT;
    // A block of another mix tells nothing of this one.
    if (block.batch !== undefined && !other) {
      lots.set(block.batch, [...(lots.get(block.batch) ?? []), block]);
    }
    if (other) others.set(block.cementPct, [...(others.get(block.cementPct) ?? []), block]);
  }
  for (const [content, blocks] of others) {
    warn(blocks[0], "site-block-other-cement", "cement", [
      say`${blocks.length}{0, plural, one { block} other { blocks}} with ${formatFixed(content, 1)} % cement {0, plural, one {is} other {are}} not judged: the specified mix has ${formatFixed(cementPct!, 1)} %.`,
      say`blocks of the specified mix`,
      say`Correct the sheet, or find out why the mix was another.`,
    ]);
  }
  if (lots.size === 0) {
    warn(undefined, "no-site-lots", "age", [
      say`The sheet of site blocks holds no lot of the specified mix at ${requirement.ageDays} days.`,
      say`blocks of the specified mix, crushed at the age of the requirement`,
      say`Add them when they are crushed.`,
    ]);
  }
  const judged = [...lots].map(([label, blocks]) => {
    const strengthsMpa = blocks.map(({ strengthMpa }) => strengthMpa);
    const judgement = judgeLot(rule, strengthsMpa);
    if (judgement.status !== "accepted") {
      warn(blocks[0], `lot-${judgement.status}`, "batch", [
        // Many a sheet calls its lots “Lot 1”.
        /^lote? /i.test(label)
          ? say`${label}: ${judgement.message}`
          : say`Lot ${label}: ${judgement.message}`,
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
    blocks: {
      file,
      lots: judged,
      chart,
      otherAges: counted.length - atAge.length,
      excluded: specimens.flatMap(({ id, excluded }) =>
        excluded === undefined ? [] : [{ id, reason: excluded }],
      ),
    },
    findings,
  };
}
