import type { KeyValuesBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import type { LotConfig } from "../entries/studyConfig.js";
import { formatQuantity } from "../quantities/format.js";
import { signalWords } from "../strength/control/controlChart.js";
import { type SpecifiedLine, specifiedMix } from "../study/specifiedMix.js";
import type { StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { depthText, fixed, numberColumn, plain, volumeText } from "./cell.js";
import { elementNames } from "./studyEntries.js";
import { listOf, note, quantityCells, tableOf } from "./tableOf.js";

/** What stands in the place of the plan where the study asks for none. */
function noQuality(): NoteBlock {
  return note(
    say`No quality-control plan was entered; the responsible person sets how the work is watched.`,
  );
}

/** The quality-control plan in numbers: lots, blocks, rule and risks. */
export function qualityPlanTable({
  config,
  quality,
}: Pick<StudyResult, "config" | "quality">): KeyValuesBlock | NoteBlock {
  const entered = config.quality;
  const { requirement } = config.strength;
  if (!quality || !entered || !requirement) return noQuality();
  const { units } = config;
  const { lots, blocks, blocksALot, agesDays, rule, risks, densityChecks } = quality;
  const stress = (mpa: number) => formatQuantity(mpa, "stress", units);
  const ages = joinTexts(agesDays.map((age) => plain(age)));
  const unknown = say`not known: enter how many batches are made a day`;
  return listOf(
    config.elements.length > 0
      ? say`Quality-control plan: ${elementNames(config.elements)}`
      : say`Quality-control plan`,
    [
      [say`Size of a lot`, lotText(entered.lot, units)],
      [say`Lots in the element`, lots === undefined ? unknown : String(lots)],
      [
        say`Blocks per lot`,
        rule && blocksALot !== undefined
          ? say`${rule.blocks} at each age (${ages} days), ${entered.spareBlocks} kept spare: ${blocksALot}`
          : say`not known without a rule`,
      ],
      [say`Blocks in all`, blocks === undefined ? unknown : String(blocks)],
      [
        say`Lots are judged at`,
        say`${requirement.ageDays} days, the age of the requirement; younger blocks give early warning only`,
      ],
      [say`Rule`, quality.ruleMessage],
      [
        say`Scatter assumed for the risks`,
        quality.scatterBasis === "entered"
          ? say`standard deviation ${stress(quality.scatterMpa)}, as entered`
          : say`standard deviation ${stress(quality.scatterMpa)}, that of the laboratory blocks about the curve; blocks made on site usually scatter more (common practice, no source)`,
      ],
      risks && [say`Risks`, risks.message],
      entered.densityChecks !== undefined && [
        say`Density checks`,
        densityChecks === undefined
          ? say`${entered.densityChecks} per lot`
          : say`${entered.densityChecks} per lot, ${densityChecks} in all`,
      ],
      [say`Basis (as entered)`, entered.basis],
    ],
  );
}

function lotText(lot: LotConfig, units: StudyResult["config"]["units"]): Text {
  if (lot.kind === "volume") {
    return say`${volumeText(lot.volumeM3, units)} rammed`;
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
  const entered = config.quality;
  if (!quality || !entered) return noQuality();
  const lines = specifiedMix(result);
  const line = (kind: SpecifiedLine["kind"]) => lines.find((one) => one.kind === kind);
  const range = (kind: SpecifiedLine["kind"], decimals: number) => {
    const { low, high } = line(kind) ?? {};
    return low === undefined || high === undefined
      ? say`not stated`
      : say`${fixed(low, decimals)} to ${fixed(high, decimals)} %`;
  };
  const depth = (metres: number) => depthText(metres, config.units);
  const lifts = lines.filter(({ kind }) => kind === "lift");
  const minDensity = line("density")?.low;
  const liftRange = ({ name, low = 0, high = 0 }: SpecifiedLine) =>
    name === undefined
      ? say`${depth(low)} to ${depth(high)}`
      : say`${name}: ${depth(low)} to ${depth(high)}`;
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
        entered.trialWall ?? say`not stated; the responsible person decides`,
        say`by the responsible person, before the work begins`,
        say`change the mix, the ramming or the way of working, and make another`,
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
        say`Moisture at compaction`,
        entered.moistureChecks ??
          usual(say`ball and drop before each lift, a dried sample each day`),
        range("moisture", 1),
        say`correct the batch before it is rammed; throw away what stiffens`,
      ],
      [
        say`Compacted lift thickness`,
        usual(say`each lift`),
        lifts.length === 0 ? say`not stated` : joinTexts(lifts.map(liftRange), "; "),
        say`spread less; ram on until it no longer gives`,
      ],
      [
        say`Dry density, rammed`,
        entered.densityChecks === undefined
          ? say`not stated; the responsible person decides`
          : say`${entered.densityChecks} per lot`,
        minDensity === undefined
          ? say`not stated`
          : say`at least ${formatQuantity(minDensity, "density", config.units, 4)}`,
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
  accepted: say`meets the rule`,
  rejected: say`does not meet the rule`,
  "wrong-number": say`wrong number of blocks`,
} as const;

/** The lots of site blocks as far as crushed, each judged by the rule; what to do where one fails. */
export function siteBlocksTable({
  config,
  quality,
}: Pick<StudyResult, "config" | "quality">): TableBlock | NoteBlock {
  const site = quality?.site;
  const { requirement } = config.strength;
  if (!site || !requirement) {
    return note(say`No sheet of site blocks was entered.`);
  }
  const { units } = config;
  const failed = site.lots.find(({ judgement }) => judgement.status === "rejected");
  return tableOf(
    say`Lots of site blocks at ${requirement.ageDays} days`,
    site.lots,
    [
      [say`Lot`, ({ label }) => label],
      [numberColumn(say`Blocks`), ({ strengthsMpa }) => String(strengthsMpa.length)],
      quantityCells(say`Mean`, "stress", units, ({ judgement }) => judgement.meanMpa),
      quantityCells(say`Standard deviation`, "stress", units, ({ judgement }) => judgement.sdMpa),
      quantityCells(say`Minimum`, "stress", units, ({ judgement }) => judgement.minMpa),
      [say`Outcome`, ({ judgement }) => OUTCOME[judgement.status]],
      [
        say`Signal of the control chart`,
        ({ label }) =>
          signalWords(site.chart.points.find((point) => point.label === label)?.signals ?? []),
      ],
    ],
    [
      quality.rule && quality.ruleMessage,
      site.chart.message,
      site.otherAges > 0 &&
        say`${site.otherAges} blocks of other ages stand in the annex and are not judged.`,
      ...site.excluded.map(({ id, reason }) => say`Block ${id} was left out: ${reason}`),
      ...(failed
        ? failed.judgement.steps.map((step, index) => say`Step ${index + 1}: ${step}`)
        : []),
    ],
  );
}
