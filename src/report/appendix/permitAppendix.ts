import type { TableBlock } from "../../blocks/block.js";
import { type AnnexKey, annexKeys } from "../../entries/report.js";
import { sheetsOf } from "../../entries/sheets.js";
import { blendChart } from "../../figures/blend/blendChart.js";
import { compactionChart } from "../../figures/compactionChart.js";
import { guidanceBand } from "../../figures/grading/band.js";
import { gradingChart } from "../../figures/grading/gradingChart.js";
import { lotsChart, operatingCharacteristicChart } from "../../figures/strength/controlCharts.js";
import { strengthByAgeChart } from "../../figures/strength/strengthByAge.js";
import { strengthChart } from "../../figures/strength/strengthChart.js";
import { boundariesOf } from "../../grading/fractions.js";
import { CAUTIONS } from "../../guidance/cautions.js";
import { formatFixed, formatQuantity, type UnitSystem } from "../../quantities/format.js";
import type { CompactionAnalysis } from "../../soil/compaction/compactionTest.js";
import type { Photograph } from "../../study/photographs.js";
import { notKnownYet, stageTitle } from "../../study/stages.js";
import type { GuidanceStudy, StrengthStudy, StudyResult } from "../../study/studyResult.js";
import { testedAnotherBlend } from "../../study/trials.js";
import { blendLimitsTable, blendSharesTable } from "../../tables/blend.js";
import { characteristicTable } from "../../tables/characteristicStrength.js";
import { computationTable } from "../../tables/computation.js";
import { firstMixTable } from "../../tables/firstMix.js";
import { sizesTable } from "../../tables/grading.js";
import { envelopeTables, guidanceTables, notTestedTable } from "../../tables/guidance.js";
import { recipeTable, toleranceTable } from "../../tables/mix.js";
import { qualityChecksTable, qualityPlanTable, siteBlocksTable } from "../../tables/quality.js";
import { referencesBlock, rememberedNote } from "../../tables/references.js";
import { trialCard } from "../../tables/site/trialCard.js";
import { compactionTable, limitsTable, moistureWindowTable } from "../../tables/soil.js";
import {
  bandsTable,
  blockMeansTable,
  leastCementTable,
  regressionTable,
  strengthByAgeTable,
} from "../../tables/strength.js";
import {
  checklistBlock,
  decisionsTable,
  materialsTable,
  methodsTable,
  projectTable,
  samplingTable,
} from "../../tables/studyEntries.js";
import { blendDifferenceTable, testedBlendsTable } from "../../tables/trials.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { appendixAnnexes } from "./annexes.js";
import { answerParts, isOfBlend } from "./answer.js";
import {
  type AppendixPart,
  cited,
  inReport,
  keyed,
  paragraph,
  rowLinks,
  sheetRow,
} from "./parts.js";

/** What the sections of the body hold; their headings and general words stand in the notebook. */
const SECTIONS = {
  answer: answerParts,
  purpose,
  materials,
  methods,
  grading,
  consistency,
  blend,
  compaction,
  strength,
  mix,
  tolerances,
  quality,
  validity,
  cautions,
  checklist,
  decisions,
  references,
  review,
} as const;

/** A section of the appendix, by the key that its heading has as a tag. */
export type AppendixSectionKey = keyof typeof SECTIONS;

/** The technical appendix of a study: what its notebook shows, section by section. */
export type PermitAppendix = ReturnType<typeof permitAppendix>;

/**
 * Composes the technical appendix of a study at any stage: what is not known yet is named with what would
 * tell it, and what was tested on another blend is not printed as this one's.
 *
 * @param annexes keys with commas between them, `all` or `none`; empty for those of the study, else the
 * usual ones of a permit
 * @param photographs of its trial blocks, as `openPhotographs` gives them
 * @throws RangeError for a key that no annex has
 */
export function permitAppendix(
  result: StudyResult,
  annexes = "",
  photographs: readonly Photograph[] = [],
) {
  const keys = annexKeys(result.config, annexes);
  return {
    /**
     * The tables, figures and sentences of one section, in the order of reading.
     *
     * @param key as the heading of the section has it in its tag `section-<key>`.
     * @throws RangeError for a key that no section has
     */
    section(key: AppendixSectionKey): AppendixPart[] {
      if (!Object.hasOwn(SECTIONS, key)) {
        const known = Object.keys(SECTIONS).join(", ");
        throw new RangeError(`invalid \`key\`: ${key}; expected one of ${known}`);
      }
      return SECTIONS[key](result, keys);
    },
    /** The annexes that were asked for, each with its heading; one that has nothing to say is left out. */
    annexes: () => appendixAnnexes(result, keys, photographs),
  };
}

function purpose({ config }: StudyResult): AppendixPart[] {
  return [
    ...(config.purpose === undefined ? [] : [paragraph(config.purpose)]),
    ...cited(say`The element and what it has to meet were entered by the user.`, [
      keyed("study", projectTable(config)),
    ]),
  ];
}

function materials({ config }: StudyResult): AppendixPart[] {
  // money has no place here unless it is asked for
  const unpriced = config.materials.map(({ price: _, ...material }) => material);
  const stated = (config.sampling ?? []).length > 0;
  return cited(
    stated
      ? say`Materials and sampling are the user's entries, printed as they stand.`
      : say`The materials are the user's entries, printed as they stand. How they were sampled was not stated.`,
    [
      keyed("materials-table", materialsTable({ ...config, materials: unpriced })),
      stated && keyed("sampling-table", samplingTable(config)),
    ],
  );
}

function methods(result: StudyResult): AppendixPart[] {
  const { config, strength, testing } = result;
  const own = testing?.state === "tested" ? strength : undefined;
  const parts = cited(say`Tests were made by these methods, and the numbers computed as follows.`, [
    keyed("methods-table", methodsTable(config)),
    result.materials.length > 0 &&
      keyed("computation", computationTable({ ...result, strength: own })),
  ]);
  return parts.length > 0
    ? parts
    : [paragraph(say`No methods of testing were entered, and no grading was computed yet.`)];
}

function grading(result: StudyResult): AppendixPart[] {
  const { config, materials: graded, blend, guidance } = result;
  if (graded.length === 0) return [notKnownYet(result, "soil"), ...firstMix(result)];
  const entries = [...new Map(guidance.map(({ check: { entry } }) => [entry.id, entry])).values()];
  const bands = entries.flatMap((entry) => guidanceBand(entry) ?? []);
  const curves = graded.map(({ name, curve }) => ({ name, curve }));
  const sizes = [...graded, ...(blend ? [{ ...blend, name: say`Blend`, id: undefined }] : [])];
  return [
    ...cited(
      say`Each material was sieved; where a sedimentation sheet was entered, its fines were measured too.`,
      [
        inReport(
          gradingChart(say`Grading of the materials`, curves, blend ? [] : bands, {
            boundaries: boundariesOf(config.units),
          }),
          "grading-chart",
          "low",
        ),
        keyed("sizes", sizesTable(say`Characteristic sizes and fractions`, sizes), {
          links: rowLinks(sizes.map(({ id }) => (id === undefined ? "shares" : `sieving-${id}`))),
        }),
      ],
    ),
    ...cited(
      say`The curves stand against the recommendation that the study names; it is guidance, not law.`,
      [
        ...guidanceTables(guidance.map(measuredOnly), config.units).map((table, at) =>
          keyed(`guidance-${at + 1}`, table),
        ),
        ...(blend ? [] : envelopeParts(result)),
      ],
    ),
    ...firstMix(result),
  ];
}

/** The sand that a soil asks for, where the study asks. */
function firstMix(result: StudyResult): AppendixPart[] {
  if (!result.firstMix) return [];
  return cited(say`A first mix follows from the fines alone; it is for trials, not for a wall.`, [
    keyed("first-mix", firstMixTable(result)),
  ]);
}

function envelopeParts(result: StudyResult): TableBlock[] {
  return envelopeTables(result).map((table, at) => keyed(`envelope-${at + 1}`, table));
}

/** A check without what was not measured: that is said once, with the limits of validity. */
function measuredOnly(study: GuidanceStudy): GuidanceStudy {
  const { check, probability } = study;
  const isMeasured =
    (criteria: readonly { readonly verdict: string }[] = []) =>
    (_: unknown, at: number) =>
      criteria[at].verdict !== "not measured";
  const [measured, tested] = [isMeasured(check.criteria), isMeasured(check.others)];
  return {
    ...study,
    check: {
      ...check,
      criteria: check.criteria.filter(measured),
      others: check.others?.filter(tested),
    },
    probability: {
      ...probability,
      criteria: probability.criteria.filter(measured),
      others: probability.others?.filter(tested),
    },
  };
}

function consistency({ config, materials: graded, ungraded = [] }: StudyResult): AppendixPart[] {
  const tested = [...graded, ...ungraded].flatMap(({ id, name, limits }) => {
    if (!limits) return [];
    const [file] = sheetsOf(config.materials.find((one) => one.id === id)?.limits);
    const table = limitsTable(name, limits);
    const items = table.items.map((item) => ({ ...item, to: `sheet-${file}` }));
    return [keyed(`limits-${id}`, { ...table, items })];
  });
  return tested.length > 0
    ? cited(
        say`Consistency limits and shrinkage were tested on the part that passes 0.425 mm.`,
        tested,
      )
    : [paragraph(say`No consistency limits were tested.`)];
}

function blend(result: StudyResult): AppendixPart[] {
  const { config, blend: design, guidance } = result;
  if (!design) return [notKnownYet(result, "blend")];
  const entry = guidance.find((check) => isOfBlend(check, result))?.check.entry;
  const band = entry && guidanceBand(entry);
  return cited(say`Shares are of the dry mass of soil and aggregate, cement excluded.`, [
    keyed("shares", blendSharesTable(design, config.materials, config.target), {
      links: rowLinks(design.shares.map(({ id }) => `sieving-${id}`)),
    }),
    inReport(
      blendChart(
        blendCaption(design.target !== undefined, band !== undefined),
        design,
        band,
        [],
        boundariesOf(config.units),
      ),
      "blend-chart",
      "low",
    ),
    ...envelopeParts(result),
    design.limits.length > 0 && keyed("blend-limits", blendLimitsTable(design)),
  ]);
}

/** What the chart of the blend draws, and nothing that it does not. */
function blendCaption(isTarget: boolean, isBand: boolean): Text {
  if (isTarget) {
    return isBand
      ? say`The blend against its target and the recommended envelope`
      : say`The blend against its target`;
  }
  return isBand ? say`The blend and the recommended envelope` : say`The blend`;
}

function compactionWords(
  { peak, points }: CompactionAnalysis,
  units: UnitSystem,
  isWindow: boolean,
): Text {
  if (isWindow) {
    return say`The compaction test gives the water content of the highest dry density, and the range that keeps most of it.`;
  }
  return peak && points.length === 0
    ? say`The compaction sheet reports ${formatFixed(peak.optimumWaterPct, 1)} % water for the highest dry density, ${formatQuantity(peak.maximumDryDensityKgM3, "density", units, 4)}. Without the test points the range of water that keeps most of it is not known.`
    : say`The compaction test gives the water content of the highest dry density.`;
}

function compaction(result: StudyResult): AppendixPart[] {
  const { config, compaction: test } = result;
  if (!test || testedAnotherBlend(result)) return ofAnotherBlend(result, "compaction");
  const window = moistureWindowTable(test, config.units);
  return cited(compactionWords(test, config.units, window !== undefined), [
    keyed("compaction-table", compactionTable(test, config.units), {
      links: rowLinks(test.points.map(({ row }) => sheetRow(config.compaction, row))),
    }),
    inReport(
      compactionChart(say`Compaction of the blend`, test, config.units),
      "compaction-chart",
      "low",
    ),
    window && keyed("moisture-window", window),
  ]);
}

const NOT_MADE = {
  compaction: say`This blend was not compacted.`,
  blocks: say`No blocks of this blend were crushed.`,
} as const;

/** What is not known of this blend, and whose tests there are. */
function ofAnotherBlend(result: StudyResult, stage: "compaction" | "blocks"): AppendixPart[] {
  const { config, trials, blocks } = result;
  if (!testedAnotherBlend(result)) {
    const open = notKnownYet(result, stage);
    if (stage !== "blocks" || !blocks) return [open];
    return [open, keyed("block-means", blockMeansTable(blocks, config.units))];
  }
  const names = joinTexts(trials.map(({ name }) => name));
  return [
    {
      kind: "note",
      tone: "warning",
      text: say`${NOT_MADE[stage]} What was tested is ${names}; nothing of that holds for this blend, and none of its numbers are printed here.`,
    },
  ];
}

function strength(result: StudyResult): AppendixPart[] {
  const { config, strength: tests, testing } = result;
  if (!tests || testedAnotherBlend(result)) return ofAnotherBlend(result, "blocks");
  const { units } = config;
  const required = config.strength.requirement !== undefined;
  // Blocks alone, without compaction, give the blend no cement content.
  const answered = tests.leastCement !== undefined && testing?.state !== "proposed";
  return [
    ...cited(
      say`Blocks of several cement contents were crushed, and a curve was fitted to their strengths. Cement is a percentage of the dry mass of soil and aggregate.`,
      [
        inReport(
          strengthChart(say`Strength against cement content`, result),
          "strength-chart",
          "full",
        ),
        keyed("regression-line", regressionTable(tests.fit, tests.lackOfFit, units), {
          links: rowLinks(tests.fit.coefficients.map(() => "blocks")),
        }),
        keyed("bands", bandsTable(tests.bandsAtContents, units, { required }), {
          links: rowLinks(
            tests.bandsAtContents.map(({ cementPct }) =>
              cementPct === tests.chosenCementPct ? "calculation-bound" : "blocks",
            ),
          ),
        }),
        answered && required && keyed("least-cement", leastCementTable(result)),
      ],
    ),
    ...(answered ? [] : [notKnownYet(result, "cement")]),
    ...contentAlone(tests, units),
    ...strengthAndAge(tests, units),
  ];
}

/** Strength at the tested ages, where age stands in the regression. */
function strengthAndAge({ byAge }: StrengthStudy, units: UnitSystem): AppendixPart[] {
  if (!byAge) return [];
  const table = strengthByAgeTable(byAge, units);
  if (byAge.status !== "ok") return [table];
  return cited(
    say`Age stands in the regression, so that it gives the strength at each tested age.`,
    [
      keyed("strength-by-age", table),
      inReport(
        strengthByAgeChart(say`Strength against age at ${byAge.cementPct} % cement`, byAge, units),
        "strength-by-age-chart",
        "low",
      ),
    ],
  );
}

/** The blocks of the specified content without the curve, or why there are none. */
function contentAlone(
  { chosenCementPct, characteristic, fit }: StrengthStudy,
  units: UnitSystem,
): AppendixPart[] {
  if (chosenCementPct === undefined) return [];
  const own = characteristic.find(({ cementPct }) => cementPct === chosenCementPct);
  if (own) {
    return cited(
      say`For comparison, the blocks of the specified ${chosenCementPct} % cement alone, without the curve.`,
      [keyed("characteristic", characteristicTable(own.values, units))],
    );
  }
  const contents = joinTexts(fit.contentsPct.map((content) => say`${content} %`));
  return [
    paragraph(
      say`No blocks were made with the specified ${chosenCementPct} % cement (tested: ${contents}), so characteristic values of single contents are not given: the curve applies to the content between them.`,
    ),
  ];
}

function mix(result: StudyResult): AppendixPart[] {
  const { trials, testing } = result;
  const differs = trials.some(({ difference }) => difference);
  const difference = blendDifferenceTable(result);
  const toShares = difference.rows.map(() => "shares");
  const tested = [
    differs && keyed("tested-blends", difference, { links: rowLinks(toShares, 1) }),
    trials.length > 1 && keyed("trials", testedBlendsTable(result)),
  ];
  return [...(testing ? cited(testing.message, tested) : []), ...batchParts(result)];
}

/** The batch of the mix; of a blend that was not tested the batches for its test blocks. */
function batchParts(result: StudyResult): AppendixPart[] {
  const { mix: specified, proposal } = result;
  if (specified) {
    return cited(
      say`One batch of the mix. Loose volumes are at the bulk densities and moistures that were entered: check them on site, because a bucket of damp sand holds less sand than a dry one.`,
      [
        keyed("recipe", recipeTable(result), {
          links: rowLinks([
            ...specified.recipe.materials.map(() => "calculation-batch"),
            "least-cement",
            "calculation-water",
          ]),
        }),
      ],
    );
  }
  if (!proposal) return [notKnownYet(result, "quantities")];
  return cited(
    say`These batches make test blocks of the blend: they are not a recipe for a wall.`,
    trialCard(result).blocks.flatMap((block, at) =>
      block.kind === "table" || block.kind === "keyValues"
        ? [keyed(`proposal-${at + 1}`, block)]
        : [],
    ),
  );
}

function tolerances(result: StudyResult): AppendixPart[] {
  if (!result.mix) return [paragraph(say`Tolerances follow once there is a mix.`)];
  return cited(say`How far the work may deviate from the mix before action is needed.`, [
    keyed("tolerances-table", toleranceTable(result), {
      links: rowLinks([
        ...result.mix.recipe.materials.map(() => "shares"),
        "least-cement",
        "moisture-window",
        "blocks",
      ]),
    }),
  ]);
}

function quality(result: StudyResult): AppendixPart[] {
  const { config, quality: plan } = result;
  if (!plan || !config.quality) {
    return [
      paragraph(
        say`No quality-control plan was entered; the responsible person sets how the work is watched.`,
      ),
    ];
  }
  const { rule, risks, scatterMpa, site } = plan;
  const { requirement } = config.strength;
  const { units, seed } = config;
  return [
    ...cited(
      say`Blocks made on site and checks at each lift show whether the wall is built of the mix that was tested.`,
      [
        keyed("quality-plan", qualityPlanTable(result)),
        keyed("quality-checks", qualityChecksTable(result)),
        site &&
          keyed("site-lots", siteBlocksTable(result), {
            links: rowLinks(site.lots.map(() => `sheet-${site.file}`)),
          }),
      ],
    ),
    ...cited(
      say`How often a lot of a given quality would pass the rule, and the lots crushed so far.`,
      [
        rule &&
          risks &&
          inReport(
            operatingCharacteristicChart(say`Probability that a lot is accepted`, rule, risks, {
              sdMpa: scatterMpa,
              units,
              seed,
            }),
            "operating-characteristic",
            "half",
          ),
        site &&
          requirement &&
          inReport(
            lotsChart(say`Lots of site blocks`, site.chart, units, requirement.strengthMpa),
            "lots-chart",
            "half",
          ),
      ],
    ),
  ];
}

/** What is not known yet, and what was not tested. */
function validity(result: StudyResult): AppendixPart[] {
  const open = result.stages.filter(({ known }) => !known);
  return [
    ...(open.length === 0
      ? []
      : cited(say`The study is not complete: these stages are open.`, [
          {
            kind: "table",
            key: "stages",
            caption: say`What is not known yet`,
            columns: [{ header: say`Stage` }, { header: say`What is needed` }],
            rows: open.map(({ stage, needs }) => [stageTitle(stage), needs ?? ""]),
          },
        ])),
    ...cited(say`These tests were not made.`, [keyed("not-tested", notTestedTable(result))]),
  ];
}

function cautions(): AppendixPart[] {
  return cited(say`The usual cautions of work with cement and rammed earth.`, [
    {
      kind: "table",
      key: "cautions-table",
      caption: say`Cautions`,
      columns: [{ header: say`Caution` }, { header: say`What it means, and its source` }],
      rows: CAUTIONS.map(({ title, text, source }): Text[] => [title, say`${text} (${source})`]),
    },
  ]);
}

function checklist({ config }: StudyResult): AppendixPart[] {
  if (!config.checklist?.length) return [paragraph(say`No clauses were entered.`)];
  return cited(
    say`The clauses are the user's, from the code that governs the place. Whether an answer is enough is for the official and the responsible person to decide.`,
    [keyed("checklist-table", checklistBlock(config))],
  );
}

function decisions({ config }: StudyResult): AppendixPart[] {
  if (!config.decisions?.length) return [paragraph(say`No decisions were entered.`)];
  return cited(say`What was chosen, why, and instead of what, as the designer wrote it down.`, [
    keyed("decisions-table", decisionsTable(config)),
  ]);
}

function references(result: StudyResult, annexes: readonly AnnexKey[]): AppendixPart[] {
  const block = referencesBlock(result, {
    guidance: annexes.includes("guidance"),
    classes: annexes.includes("resampling"),
    carbon: annexes.includes("cost"),
  });
  const note = rememberedNote(block);
  return [block, ...(note ? [paragraph(note)] : [])];
}

function review(): AppendixPart[] {
  return [
    {
      kind: "signature",
      label: say`Reviewed by the responsible licensed person`,
      lines: [say`Name`, say`Licence and number`, say`Conditions`, say`Signature`, say`Date`],
    },
  ];
}
