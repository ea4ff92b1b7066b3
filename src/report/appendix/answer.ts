import type { TableBlock } from "../../blocks/block.js";
import type { AnnexKey } from "../../entries/report.js";
import { sheetsOf } from "../../entries/sheets.js";
import { type Finding, STUDY_FILE } from "../../findings/finding.js";
import type { CriterionCheck } from "../../guidance/check.js";
import { recommendedRange } from "../../guidance/comparison.js";
import { shortSource, sourceMark } from "../../guidance/entry.js";
import { probabilityWords } from "../../guidance/probability.js";
import { formatQuantity } from "../../quantities/format.js";
import { curveInDoubt } from "../../strength/modelFindings.js";
import { requirementNotShown } from "../../study/doubts.js";
import { specifiedMix } from "../../study/specifiedMix.js";
import type { GuidanceStudy, StudyResult } from "../../study/studyResult.js";
import { testedAnotherBlend } from "../../study/trials.js";
import { fixed, plain } from "../../tables/cell.js";
import { notTestedTable } from "../../tables/guidance.js";
import { rammedDensityText } from "../../tables/mix.js";
import { elementsText } from "../../tables/studyEntries.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { type AppendixPart, cited, keyed, paragraph, rowLinks } from "./parts.js";

/** Findings that page 1 holds; the others stand in the annex. */
const MAX_FINDINGS = 6;

/**
 * The first page: the element, the mix with its state, what is required and what is shown, a verdict a
 * line, the open findings, what was not tested and who must review. Each number leads to the table that
 * gives it.
 */
export function answerParts(result: StudyResult, annexes: readonly AnnexKey[]): AppendixPart[] {
  return cited(
    say`The last column leads from each value to its table, and from each verdict to its section.`,
    [
      keyed("mix-table", mixTable(result)),
      keyed("verdicts", verdictsTable(result)),
      ...findingsTable(result, annexes.includes("findings")),
    ],
  );
}

/** What is told, and where it is shown. */
type Line = readonly [what: Text, said: Text, to: string];

/** A line of the mix; what would tell a value that is not there yet is listed with the limits of validity. */
function known(what: Text, said: Text | undefined, to: string): Line {
  return said === undefined ? [what, UNKNOWN, "stages"] : [what, said, to];
}

const UNKNOWN = say`not known yet`;

function mixTable(result: StudyResult): TableBlock {
  const { config, blend, testing, mix } = result;
  const { units, elements } = config;
  const { requirement } = config.strength;
  const element = elements.length > 0 ? elementsText(elements, units) : undefined;
  const required =
    requirement &&
    joinTexts(
      [
        say`${formatQuantity(requirement.strengthMpa, "stress", units)} at ${requirement.ageDays} days`,
        requirement.crushed && CRUSHED[requirement.crushed],
        requirement.basis && say`basis as entered: “${requirement.basis}”`,
      ],
      "; ",
    );
  const lines = [
    known(say`Element`, element, "study"),
    known(say`State of the mix`, testing?.message, placeOfState(result)),
    known(say`Soil and aggregate`, blend && sharesText(result), "shares"),
    ...specifiedLines(result),
    known(say`Required strength`, required, "study"),
    known(say`Strength shown`, shownStrength(result), "least-cement"),
  ];
  if (mix?.record.doubts.length) {
    const doubts = joinTexts(mix.record.doubts, " ");
    lines.push([say`Doubts about the mix`, doubts, placeOfState(result)]);
  }
  return leadingTable(say`The mix`, say`Value`, lines);
}

function sharesText({ config, blend }: StudyResult): Text {
  const nameOf = (id: string) => config.materials.find((one) => one.id === id)?.name ?? id;
  const used = blend?.shares.filter(({ sharePct }) => sharePct > 0) ?? [];
  const shares = used.map(({ id, sharePct }) => say`${nameOf(id)} ${fixed(sharePct, 1)} %`);
  return say`${joinTexts(shares)}, of their dry mass`;
}

/** Where the state of the mix is shown: beside the tested blends, or in its section where there are none to compare. */
function placeOfState({ trials }: StudyResult): string {
  return trials.some(({ difference }) => difference) ? "tested-blends" : "mix";
}

/** A table whose last column names the place that each row is shown in. */
function leadingTable(caption: Text, header: Text, lines: readonly Line[]): TableBlock {
  return {
    kind: "table",
    caption,
    columns: [{ header: say`Subject` }, { header }, { header: say`Shown in` }],
    rows: lines.map(([what, said]) => [what, said, ""]),
    links: rowLinks(
      lines.map(([, , to]) => to),
      2,
    ),
  };
}

/** Cement, water and density of the specified mix, or what would tell them. */
function specifiedLines(result: StudyResult): Line[] {
  const { config, mix } = result;
  if (!mix) {
    const compacted = compactedAlone(result);
    return [
      known(say`Cement`, undefined, "least-cement"),
      known(say`Water and dry density`, compacted, "compaction-table"),
    ];
  }
  const specified = specifiedMix(result);
  type Kind = (typeof specified)[number]["kind"];
  const line = (kind: Kind) => specified.find((one) => one.kind === kind);
  const [cement, moisture, density] = [line("cement"), line("moisture"), line("density")];
  const lines: Line[] = [];
  if (cement) {
    const name = config.cement?.name ?? say`cement`;
    const said = say`${name}: ${fixed(cement.value, 1)} % of the dry mass of soil and aggregate`;
    lines.push([say`Cement`, said, "least-cement"]);
  }
  if (moisture) {
    const [value, low, high] = [moisture.value, moisture.low, moisture.high].map((pct) =>
      fixed(pct, 1),
    );
    const said = say`${value} %, allowed ${low} to ${high} %, of the dry mass of all solids`;
    lines.push([say`Water at compaction`, said, "tolerances-table"]);
  }
  if (density) {
    const said = rammedDensityText(density, config.units);
    lines.push([say`Dry density, rammed`, said, "tolerances-table"]);
  }
  return lines;
}

/** The top of the compaction test of a blend that has no mix yet. */
function compactedAlone(result: StudyResult): Text | undefined {
  const { config, compaction } = result;
  if (!compaction?.peak || testedAnotherBlend(result)) return undefined;
  const { optimumWaterPct, maximumDryDensityKgM3 } = compaction.peak;
  const density = formatQuantity(maximumDryDensityKgM3, "density", config.units, 4);
  return say`optimum of the blend compacted: ${fixed(optimumWaterPct, 1)} % water, ${density} dry; no mix yet`;
}

/** The bound at the chosen cement, with what its confidence means in words. */
function shownStrength(result: StudyResult): Text | undefined {
  const { config, strength, testing } = result;
  const { requirement } = config.strength;
  const least = strength?.leastCement;
  const bound = least?.boundAtBatchableMpa;
  if (testing?.state !== "tested" || !requirement || !least || bound == null) return undefined;
  const shown = formatQuantity(bound, "stress", config.units);
  const words = CONFIDENCE[requirement.statistic](fixed(100 * requirement.confidence, 0));
  return say`${shown} at ${fixed(least.batchablePct, 1)} % cement: ${words}`;
}

const CRUSHED = {
  dry: say`blocks crushed dry`,
  moist: say`blocks crushed moist`,
  soaked: say`blocks crushed soaked`,
} as const;

const CONFIDENCE = {
  mean: (percent: Text): Text =>
    say`with ${percent} % confidence, the mean of such blocks is higher`,
  prediction: (percent: Text): Text =>
    say`a further block is stronger with ${percent} % probability`,
  tolerance: (percent: Text): Text =>
    say`with ${percent} % confidence, at least 95 of 100 such blocks are stronger`,
} as const;

function verdictsTable(result: StudyResult): TableBlock {
  return leadingTable(say`Verdicts, limits and review`, say`Verdict`, [
    [say`Grading`, gradingVerdict(result), "grading"],
    [say`Plasticity and shrinkage`, plasticityVerdict(result), "consistency"],
    [say`Strength`, strengthVerdict(result), "strength"],
    [say`Quality plan`, qualityVerdict(result), "quality"],
    [say`Not tested`, notTested(result), "validity"],
    [
      say`Review`,
      say`by the responsible licensed person under the local code, and by the building official. Nothing here is an approval.`,
      "review",
    ],
  ]);
}

/** Whether a recommendation's check is of the blend, not of a soil. */
export function isOfBlend({ name }: GuidanceStudy, { materials }: StudyResult): boolean {
  return !materials.some((material) => material.name === name);
}

/** Value, recommended range, by how much it is missed, and what the reading errors leave of that. */
function outsideBy(criterion: CriterionCheck, probability: number | undefined): Text {
  const { what, byPct, measuredPct, lowPct, highPct } = criterion;
  const by = byPct === undefined ? say`outside` : say`outside by ${fixed(byPct, 1)} points`;
  const missed = probability === undefined ? by : say`${by} ${probabilityWords(probability)}`;
  return measuredPct === undefined || (lowPct === undefined && highPct === undefined)
    ? say`${what} ${missed}`
    : say`${what} ${fixed(measuredPct, 1)} % (recommended ${recommendedRange(lowPct, highPct)}), ${missed}`;
}

/** Of a check its criteria of a kind: those that lie outside, or that all that were measured lie inside. */
function verdictOf(
  { name, check: { entry, criteria }, probability }: GuidanceStudy,
  wanted: (criterion: CriterionCheck) => boolean,
): Text[] {
  const measured = criteria
    .map((criterion, at) => ({ criterion, likely: probability.criteria[at]?.probability }))
    .filter(({ criterion }) => wanted(criterion) && criterion.verdict !== "not measured");
  if (measured.length === 0) return [];
  const outside = measured.filter(({ criterion }) => criterion.verdict === "outside");
  const of = say`${shortSource(entry)} (${sourceMark(entry)})`;
  if (outside.length === 0) return [say`${name}: ${say`inside ${of}`}`];
  const list = outside.map(({ criterion, likely }) => outsideBy(criterion, likely));
  const others = measured.length - outside.length;
  const kept =
    others > 0
      ? say`${others}{0, plural, one { other limit is} other { other limits are}} kept`
      : undefined;
  const verdict = joinTexts([say`not inside ${of}: ${joinTexts(list, "; ")}`, kept], "; ");
  return [say`${name}: ${verdict}`];
}

function gradingVerdict(result: StudyResult): Text {
  const ofBlend = result.guidance.filter((check) => isOfBlend(check, result));
  const checks = ofBlend.length > 0 ? ofBlend : result.guidance;
  const found = checks.flatMap((study) =>
    verdictOf(
      study,
      ({ kind }) => kind === "fraction" || (kind === "passing" && !study.check.entry.derived),
    ),
  );
  const off = offTarget(result);
  if (found.length > 0) return joinTexts([...found, off], "; ");
  if (off) return off;
  return result.config.guidance === undefined
    ? say`not compared: no recommendation was named`
    : say`not comparable: the recommendation limits no grading that was measured`;
}

/** How far the blend is from what the designer aimed at. */
function offTarget({ blend }: StudyResult): Text | undefined {
  if (!blend?.target || !blend.worst) return undefined;
  const { differencePct, sizeMm } = blend.worst;
  return say`at most ${fixed(Math.abs(differencePct), 1)} points off the target of the study (at ${plain(sizeMm)} mm)`;
}

function plasticityVerdict(result: StudyResult): Text {
  const found = result.guidance.flatMap((study) =>
    verdictOf(study, ({ kind }) => kind === "consistency" || kind === "class"),
  );
  if (found.length > 0) return joinTexts(found, "; ");
  return result.materials.some(({ limits }) => limits)
    ? say`tested; no recommendation with limits for it was named`
    : say`not tested`;
}

function strengthVerdict(result: StudyResult): Text {
  const { config, strength, testing } = result;
  const { requirement } = config.strength;
  const least = strength?.leastCement;
  if (testing?.state !== "tested" || !requirement || !least) return UNKNOWN;
  const bound = least.boundAtBatchableMpa;
  if (bound === null) return least.message;
  const otherwise = requirementNotShown(result);
  if (otherwise) return say`not shown: ${otherwise}`;
  const stress = (mpa: number) => formatQuantity(mpa, "stress", config.units);
  if (bound >= requirement.strengthMpa) {
    const [content, shown] = [fixed(least.batchablePct, 1), stress(bound)];
    const required = stress(requirement.strengthMpa);
    return curveInDoubt(result.findings)
      ? say`requirement met by the curve at ${content} % cement (${shown}; required ${required}), but the bounds of the curve are in doubt: see the open findings`
      : say`requirement met at ${content} % cement (${shown}; required ${required})`;
  }
  return say`requirement not met (${stress(bound)}; required ${stress(requirement.strengthMpa)})`;
}

function qualityVerdict({ quality }: StudyResult): Text {
  if (!quality) return say`no plan was entered`;
  const { lots, blocks, rule, site } = quality;
  if (!rule) return quality.ruleMessage;
  const plan =
    lots === undefined || blocks === undefined
      ? say`plan stated`
      : say`plan stated: ${lots}{0, plural, one { lot} other { lots}}, ${blocks} blocks in all`;
  if (!site) return say`${plan}; no site blocks yet`;
  const passed = site.lots.filter(({ judgement }) => judgement.status === "accepted").length;
  return say`${plan}; ${passed} of ${site.lots.length} lots crushed so far meet the rule`;
}

/** What was not tested, each once. */
function notTested(result: StudyResult): Text {
  const said = notTestedTable(result).rows.map((row) => row[1]);
  const once = new Map(said.map((text) => [JSON.stringify(text), text]));
  return joinTexts([...once.values()]);
}

/** The errors and warnings in short; the annex has all of them with their remedies. */
function findingsTable(result: StudyResult, inAnnex: boolean): AppendixPart[] {
  const findings = findingsOfMix(result);
  const open = findings.filter(({ severity }) => severity !== "note");
  const shown = open.slice(0, MAX_FINDINGS);
  if (shown.length === 0) {
    return [paragraph(say`Open findings of the checks: none.`, ["findings"])];
  }
  const left = open.length - shown.length;
  const notes = findings.length - open.length;
  return [
    {
      kind: "table",
      key: "open-findings",
      caption: say`Open findings of the checks`,
      columns: [{ header: say`Place` }, { header: say`Finding` }],
      rows: shown.map((found) => [placeOf(found), found.message]),
      links: rowLinks(shown.map(() => "findings")),
      ...(left + notes > 0 ? { notes: [furtherFindings(left, notes, inAnnex)] } : {}),
    },
  ];
}

/** What the first page leaves out, and where it stands. */
function furtherFindings(warnings: number, notes: number, inAnnex: boolean): Text {
  const counted = joinTexts([
    warnings > 0
      ? say`${warnings}{0, plural, one { further warning} other { further warnings}}`
      : undefined,
    notes > 0 ? say`${notes}{0, plural, one { note} other { notes}}` : undefined,
  ]);
  return inAnnex
    ? say`The annex of findings gives the remedy of each, and ${counted} besides.`
    : say`Not printed here: ${counted}.`;
}

/** The findings that bear on this mix: none about tests of a blend that is not this one. */
export function findingsOfMix(result: StudyResult): Finding[] {
  const { config, findings } = result;
  if (!testedAnotherBlend(result)) return [...findings];
  const sheets = sheetsOf(config.strength.sheet, config.compaction);
  const isOfTests = ({ file, column = "" }: Finding) =>
    file === STUDY_FILE
      ? column.split(".")[0] === "strength" || column.endsWith(".crushed")
      : sheets.includes(file);
  return findings.filter((found) => !isOfTests(found));
}

/** Where a finding was made, in short. */
function placeOf({ file, row, column }: Finding): Text {
  if (row !== undefined) return say`${file}, row ${row}`;
  return file === STUDY_FILE && column !== undefined ? column : file;
}
