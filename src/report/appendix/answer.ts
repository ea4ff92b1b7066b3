import type { TableBlock } from "../../blocks/block.js";
import type { AnnexKey } from "../../entries/report.js";
import { sheetsOf } from "../../entries/sheets.js";
import type { Finding } from "../../findings/finding.js";
import { STUDY_FILE } from "../../findings/finding.js";
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
import { type AppendixPart, cited, keyed } from "./parts.js";

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

/** A value of the mix, and where it is shown. */
interface Item {
  readonly label: Text;
  readonly value: Text;
  readonly to: string;
}

function mixTable(result: StudyResult): TableBlock {
  const { config, blend, testing } = result;
  const { units, elements } = config;
  const { requirement } = config.strength;
  const used = blend?.shares.filter(({ sharePct }) => sharePct > 0) ?? [];
  const nameOf = (id: string) => config.materials.find((one) => one.id === id)?.name ?? id;
  const items: Item[] = [
    {
      label: say`Element`,
      ...(elements.length > 0 ? { value: elementsText(elements, units), to: "study" } : UNKNOWN),
    },
    {
      label: say`State of the mix`,
      ...(testing ? { value: testing.message, to: placeOfState(result) } : UNKNOWN),
    },
    {
      label: say`Soil and aggregate`,
      ...(blend
        ? {
            value: say`${joinTexts(
              used.map(({ id, sharePct }) => say`${nameOf(id)} ${fixed(sharePct, 1)} %`),
            )}, of their dry mass`,
            to: "shares",
          }
        : UNKNOWN),
    },
    ...specifiedItems(result),
    {
      label: say`Required strength`,
      ...(requirement
        ? {
            value: joinTexts(
              [
                say`${formatQuantity(requirement.strengthMpa, "stress", units)} at ${requirement.ageDays} days`,
                requirement.crushed && CRUSHED[requirement.crushed],
                requirement.basis && say`basis as entered: “${requirement.basis}”`,
              ],
              "; ",
            ),
            to: "study",
          }
        : UNKNOWN),
    },
    { label: say`Strength shown`, ...shownStrength(result) },
    ...(result.mix?.record.doubts.length
      ? [
          {
            label: say`Doubts about the mix`,
            value: joinTexts(result.mix.record.doubts, " "),
            to: placeOfState(result),
          },
        ]
      : []),
  ];
  return leadingTable(
    say`The mix`,
    say`Value`,
    items.map(({ label, value, to }) => [label, value, to]),
  );
}

/** Where the state of the mix is shown: beside the tested blends, or in its section where there are none to compare. */
function placeOfState({ trials }: StudyResult): string {
  return trials.some(({ difference }) => difference) ? "tested-blends" : "mix";
}

/** A table whose last column names the place that each row is shown in. */
function leadingTable(
  caption: Text,
  header: Text,
  lines: readonly (readonly [what: Text, said: Text, to: string])[],
): TableBlock {
  return {
    kind: "table",
    caption,
    columns: [{ header: say`Subject` }, { header }, { header: say`Shown in` }],
    rows: lines.map(([what, said]) => [what, said, ""]),
    links: lines.map(([, , to], row) => ({ row, column: 2, to })),
  };
}

/** Cement, water and density of the specified mix, or what would tell them. */
function specifiedItems(result: StudyResult): Item[] {
  const { config, mix } = result;
  const lines = specifiedMix(result);
  const line = (kind: (typeof lines)[number]["kind"]) => lines.find((one) => one.kind === kind);
  const [cement, moisture, density] = [line("cement"), line("moisture"), line("density")];
  if (!mix) {
    return [
      { label: say`Cement`, ...UNKNOWN },
      { label: say`Water and dry density`, ...compactedAlone(result) },
    ];
  }
  return [
    ...(cement
      ? [
          {
            label: say`Cement`,
            value: say`${config.cement?.name ?? say`cement`}: ${fixed(cement.value, 1)} % of the dry mass of soil and aggregate`,
            to: "least-cement",
          },
        ]
      : []),
    ...(moisture
      ? [
          {
            label: say`Water at compaction`,
            value: say`${fixed(moisture.value, 1)} %, allowed ${fixed(moisture.low, 1)} to ${fixed(moisture.high, 1)} %, of the dry mass of all solids`,
            to: "tolerances-table",
          },
        ]
      : []),
    ...(density
      ? [
          {
            label: say`Dry density, rammed`,
            value: rammedDensityText(density, config.units),
            to: "tolerances-table",
          },
        ]
      : []),
  ];
}

/** The top of the compaction test of a blend that has no mix yet. */
function compactedAlone(result: StudyResult): Pick<Item, "value" | "to"> {
  const { config, compaction } = result;
  if (!compaction?.peak || testedAnotherBlend(result)) return UNKNOWN;
  const { optimumWaterPct, maximumDryDensityKgM3 } = compaction.peak;
  const density = formatQuantity(maximumDryDensityKgM3, "density", config.units, 4);
  return {
    value: say`optimum of the blend compacted: ${fixed(optimumWaterPct, 1)} % water, ${density} dry; no mix yet`,
    to: "compaction-table",
  };
}

/** The bound at the chosen cement, with what its confidence means in words. */
function shownStrength(result: StudyResult): Pick<Item, "value" | "to"> {
  const { config, strength, testing } = result;
  const { requirement } = config.strength;
  const least = strength?.leastCement;
  const bound = least?.boundAtBatchableMpa;
  if (testing?.state !== "tested" || !requirement || !least || bound == null) {
    return UNKNOWN;
  }
  const shown = formatQuantity(bound, "stress", config.units);
  const words = CONFIDENCE[requirement.statistic](fixed(100 * requirement.confidence, 0));
  return {
    value: say`${shown} at ${fixed(least.batchablePct, 1)} % cement: ${words}`,
    to: "least-cement",
  };
}

/** How the blocks of the requirement are crushed. */
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

/** What stands for a value that is not there yet: what would tell it is listed with the limits of validity. */
const UNKNOWN = { value: say`not known yet`, to: "stages" } as const;

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

/** Those of a kind that lie outside, or that all that were measured lie inside. */
function verdictOf(
  { check: { entry, criteria }, probability }: GuidanceStudy,
  wanted: (criterion: CriterionCheck) => boolean,
): Text | undefined {
  const known = criteria
    .map((criterion, at) => ({ criterion, likely: probability.criteria[at]?.probability }))
    .filter(({ criterion }) => wanted(criterion) && criterion.verdict !== "not measured");
  if (known.length === 0) return undefined;
  const outside = known.filter(({ criterion }) => criterion.verdict === "outside");
  const of = say`${shortSource(entry)} (${sourceMark(entry)})`;
  if (outside.length === 0) return say`inside ${of}`;
  const list = outside.map(({ criterion, likely }) => outsideBy(criterion, likely));
  const others = known.length - outside.length;
  return joinTexts(
    [
      say`not inside ${of}: ${joinTexts(list, "; ")}`,
      others > 0
        ? say`${others}{0, plural, one { other limit is} other { other limits are}} kept`
        : undefined,
    ],
    "; ",
  );
}

function gradingVerdict(result: StudyResult): Text {
  const ofBlend = result.guidance.filter((check) => isOfBlend(check, result));
  const checks = ofBlend.length > 0 ? ofBlend : result.guidance;
  const found = checks.flatMap((check) => {
    const { derived } = check.check.entry;
    const verdict = verdictOf(
      check,
      ({ kind }) => kind === "fraction" || (kind === "passing" && !derived),
    );
    return verdict ? [say`${check.name}: ${verdict}`] : [];
  });
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
  const found = result.guidance.flatMap((check) => {
    const verdict = verdictOf(check, ({ kind }) => kind === "consistency" || kind === "class");
    return verdict ? [say`${check.name}: ${verdict}`] : [];
  });
  if (found.length > 0) return joinTexts(found, "; ");
  return result.materials.some(({ limits }) => limits)
    ? say`tested; no recommendation with limits for it was named`
    : say`not tested`;
}

function strengthVerdict(result: StudyResult): Text {
  const { config, strength, testing } = result;
  const { requirement } = config.strength;
  const least = strength?.leastCement;
  if (testing?.state !== "tested" || !requirement || !least) return UNKNOWN.value;
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
    return [
      { kind: "paragraph", text: say`Open findings of the checks: none.`, cites: ["findings"] },
    ];
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
      links: shown.map((_, row) => ({ row, column: 0, to: "findings" })),
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
  return findings.filter(
    ({ file, column = "" }) =>
      !sheets.includes(file) && !(file === STUDY_FILE && /^strength|crushed$/.test(column)),
  );
}

/** Where a finding was made, in short. */
export function placeOf({ file, row, column }: Finding): Text {
  if (row !== undefined) return say`${file}, row ${row}`;
  return file === STUDY_FILE && column !== undefined ? column : file;
}
