import { blendFrontier } from "../../blend/tradeoffs.js";
import type { SectionBlock } from "../../blocks/block.js";
import { ANNEX_KEYS, type AnnexKey } from "../../entries/report.js";
import type { StudyConfig } from "../../entries/studyConfig.js";
import { robustnessChart } from "../../figures/blend/blendChart.js";
import { frontierChart } from "../../figures/blend/tradeoffCharts.js";
import { modelBand, uncertaintyBand } from "../../figures/grading/band.js";
import { gradingChart } from "../../figures/grading/gradingChart.js";
import { gradingResidualsChart, modelChart } from "../../figures/grading/modelChart.js";
import { guidanceRangesCharts } from "../../figures/guidanceRanges.js";
import { photographsFigure } from "../../figures/photographs.js";
import { plasticityChart } from "../../figures/plasticityChart.js";
import { residualsChart } from "../../figures/strength/strengthChart.js";
import { textureTriangle } from "../../figures/textureTriangle.js";
import { boundariesOf } from "../../grading/fractions.js";
import { resampleGrading } from "../../grading/uncertainty/fitBand.js";
import type { SheetSource } from "../../lab/sheet/grid.js";
import type { UnitSystem } from "../../quantities/format.js";
import { compareTrials } from "../../strength/trials.js";
import { blendInputOf, hasTarget } from "../../study/blend.js";
import type { Photograph } from "../../study/photographs.js";
import { ANNEX_TITLES } from "../../study/review.js";
import type { MaterialResult, StudyResult } from "../../study/studyResult.js";
import { blendFitTable, blendRelaxTable } from "../../tables/blend.js";
import { carbonTable, comparisonTable } from "../../tables/carbon.js";
import { aspectTable } from "../../tables/characteristicStrength.js";
import { compareMixTable, costTable } from "../../tables/cost.js";
import { jarTable, pipetteTable, sedimentationTable, sievingTable } from "../../tables/grading.js";
import { classesTable, intervalsTable } from "../../tables/gradingUncertainty.js";
import { guidanceComparisonTable } from "../../tables/guidance.js";
import { inputsTable, sheetTable } from "../../tables/inputs.js";
import { quantitiesTable } from "../../tables/quantities.js";
import { modelTable } from "../../tables/soil.js";
import { modelsTable, specimensTable, strengthChecksTable } from "../../tables/strength.js";
import { trialDifferencesTable, trialsTable } from "../../tables/trialBlocks.js";
import { say } from "../../words/message.js";
import { findingsOfMix } from "./answer.js";
import { calculationTables } from "./calculations.js";
import {
  type AppendixPart,
  acrossThePage,
  cited,
  inReport,
  keyed,
  paragraph,
  rowLinks,
  sheetRow,
} from "./parts.js";

/** What each annex holds; nothing where the study does not know it. The code is the report's own to add. */
const ANNEXES: Readonly<
  Record<AnnexKey, (result: StudyResult, photographs: readonly Photograph[]) => AppendixPart[]>
> = {
  calculations: (result) =>
    cited(
      say`One calculation of each kind, with the numbers of this study filled in. The numbers as printed give the printed result.`,
      calculationTables(result),
    ),
  findings: (result) => {
    const findings = findingsOfMix(result);
    const others = result.findings.length - findings.length;
    const whole = say`Every reading was checked when it was read. Nothing was left out or repaired without a line here.`;
    return [
      paragraph(
        others === 0
          ? whole
          : say`Every reading was checked when it was read. ${others}{0, plural, one { finding} other { findings}} on the tests of another blend, which say nothing of this mix, are not printed: “loambook check” lists them.`,
      ),
      { kind: "findings", findings },
    ];
  },
  analyses,
  readings: ({ sheets }) =>
    cited(
      say`The cells of every sheet as they were read, numbered as a spreadsheet does.`,
      sheets.flatMap((sheet) =>
        acrossThePage(sheetTable(sheet)).map((table, part) =>
          part > 0
            ? keyed(`sheet-${sheet.file}-${part + 1}`, table)
            : keyed(`sheet-${sheet.file}`, table, {
                rowKeys: table.rows.map(([row]) => sheetRow(sheet.file, Number(row))),
              }),
        ),
      ),
    ),
  regression,
  trials,
  guidance,
  resampling,
  models,
  alternatives,
  quantities: (result) =>
    result.mix
      ? cited(say`Quantities of the mix for the element.`, [
          keyed("quantities-table", quantitiesTable(result)),
        ])
      : [],
  cost: (result) =>
    result.mix
      ? cited(
          say`Cement is compared with cement. To set the cement in an earthen wall against the whole mass of concrete, which is mostly sand and gravel, would overstate the saving many times.`,
          [
            keyed("cost-table", costTable(result)),
            result.mix.compared && keyed("compared-mix", compareMixTable(result)),
            keyed("comparison", comparisonTable(result)),
            keyed("carbon", carbonTable(result)),
          ],
        )
      : [],
  inputs: ({ inputs, madeWith, config }) =>
    cited(say`The files that the numbers come from, and what computed them.`, [
      keyed("inputs-table", inputsTable(inputs)),
      {
        kind: "keyValues",
        key: "versions",
        caption: say`Versions`,
        items: [
          { label: say`Computed with`, value: madeWith },
          { label: say`Seed`, value: String(config.seed) },
        ],
      },
    ]),
  code: () => [],
};

/**
 * The annexes of the technical appendix, each with its heading, in the order of the list of keys. An annex
 * that has nothing to say is left out.
 *
 * @param keys as `annexKeys` gives them
 */
export function appendixAnnexes(
  result: StudyResult,
  keys: readonly AnnexKey[],
  photographs: readonly Photograph[],
): AppendixPart[] {
  return ANNEX_KEYS.filter((key) => keys.includes(key)).flatMap((key): AppendixPart[] => {
    const parts = ANNEXES[key](result, photographs);
    const heading: SectionBlock = {
      kind: "section",
      level: 1,
      title: ANNEX_TITLES[key],
      key,
      annex: true,
    };
    return parts.length === 0 ? [] : [heading, ...parts];
  });
}

function analyses(result: StudyResult): AppendixPart[] {
  const { config, materials, ungraded = [], blend, strength, testing } = result;
  const own = testing?.state === "proposed" ? undefined : strength;
  return cited(
    say`What follows from the readings of each sheet, row by row; each row leads to its reading.`,
    [
      ...materials.flatMap((material) => materialAnalyses(material, config)),
      ...ungraded.flatMap(({ id, name, jar }) =>
        jar ? [keyed(`jar-${id}`, jarTable(name, jar))] : [],
      ),
      blend?.target && keyed("blend-fit", blendFitTable(blend)),
      own &&
        keyed("blocks", specimensTable(own.specimens, own.fit, config.units), {
          links: rowLinks(own.specimens.map(({ row }) => sheetRow(config.strength.sheet, row))),
        }),
      own && own.aspect.length > 0 && keyed("aspect", aspectTable(own.aspect, config.units)),
    ],
  );
}

function materialAnalyses(material: MaterialResult, config: StudyConfig): AppendixPart[] {
  const { id, name, sieve, sedimentation, pipette, jar } = material;
  const sheets = config.materials.find((one) => one.id === id);
  const toSheet = (source: SheetSource | undefined, rows: readonly { readonly row: number }[]) => ({
    links: rowLinks(rows.map(({ row }) => sheetRow(source, row))),
  });
  const key = `sedimentation-${id}`;
  const parts = [
    keyed(`sieving-${id}`, sievingTable(name, sieve), toSheet(sheets?.sieve, sieve.rows)),
  ];
  if (sedimentation) {
    const table = sedimentationTable(name, sedimentation, config.units);
    parts.push(keyed(key, table, toSheet(sheets?.hydrometer, sedimentation.rows)));
  }
  if (pipette) {
    const table = pipetteTable(name, pipette, config.units);
    parts.push(keyed(key, table, toSheet(sheets?.pipette, pipette.rows)));
  }
  if (jar) parts.push(keyed(`jar-${id}`, jarTable(name, jar)));
  return parts;
}

function regression({ config, strength, testing }: StudyResult): AppendixPart[] {
  if (!strength || testing?.state === "proposed") return [];
  return cited(
    say`Whether the curve and its bounds may be relied on: the scatter about the curve, tests of it, and other models of the curve.`,
    [
      keyed("regression-checks", strengthChecksTable(strength.checks, strength.robust)),
      inReport(
        residualsChart(say`Studentised residuals`, strength.fit, config.units),
        "residuals-chart",
        "full",
      ),
      keyed("curve-models", modelsTable(strength.models, config.units)),
    ],
  );
}

/** What somebody saw on the trial blocks, in their words and pictures; never a verdict. */
function trials(
  { trials: tried, config }: StudyResult,
  photographs: readonly Photograph[],
): AppendixPart[] {
  const looks = tried.flatMap((trial) => trial.looks ?? []);
  return cited(
    say`What was seen on the trial blocks, in the words of whoever looked; nothing of it is judged here.`,
    [
      keyed("trial-looks", trialsTable(looks, config.units)),
      keyed("trial-colours", trialDifferencesTable(compareTrials(looks))),
      photographs.length > 0 &&
        inReport(
          photographsFigure(say`Photographs of the trial blocks`, photographs),
          "trial-photographs",
          "own",
        ),
    ],
  );
}

function guidance({ guidanceComparison, blend, materials }: StudyResult): AppendixPart[] {
  if (!guidanceComparison) return [];
  const name = blend ? say`the blend` : (materials[0]?.name ?? "");
  return cited(
    say`Published recommendations for earth of this kind beside each other, none of them chosen. Where they disagree, no soil meets them all.`,
    [
      ...guidanceRangesCharts(guidanceComparison, name).map((figure, at) =>
        inReport(figure, `guidance-ranges-${at + 1}`, "own"),
      ),
      keyed("guidance-compared", guidanceComparisonTable(name, guidanceComparison)),
    ],
  );
}

function resampling(result: StudyResult): AppendixPart[] {
  const { config, materials, textures, blend } = result;
  const robustness = blend?.robustness;
  return cited(
    say`The readings are drawn again and again within the stated errors of balance, sieving, hydrometer and temperature; what changes is the interval. The errors say nothing about how well a sample represents the deposit, which usually matters more.`,
    [
      ...materials.flatMap((material) => [
        ...withinErrors(material, config.units),
        ...plasticity(material),
      ]),
      textures.length > 0 &&
        inReport(
          textureTriangle(say`Textures of the soils and of the blend`, textures),
          "textures",
          "own",
        ),
      robustness &&
        inReport(
          robustnessChart(say`The blend when its materials vary as stated`, robustness),
          "robustness-chart",
          "full",
        ),
    ],
  );
}

function withinErrors(
  { id, name, curve, uncertainty }: MaterialResult,
  units: UnitSystem,
): AppendixPart[] {
  if (!uncertainty) return [];
  const chart = gradingChart(
    say`${name}: the curve within its reading errors`,
    [{ name, curve }],
    uncertaintyBand(name, curve, uncertainty.spread),
    { markSizesOf: [0], boundaries: boundariesOf(units) },
  );
  return [
    inReport(chart, `uncertainty-chart-${id}`, "full"),
    keyed(`intervals-${id}`, intervalsTable(name, uncertainty, units)),
    keyed(`classes-${id}`, classesTable(name, uncertainty)),
  ];
}

function plasticity({ id, name, limits }: MaterialResult): AppendixPart[] {
  if (limits?.liquidLimitPct === undefined || limits.plasticityIndexPct === undefined) return [];
  const { liquidLimitPct, plasticityIndexPct } = limits;
  const sample = { name, ...limits, liquidLimitPct, plasticityIndexPct };
  return [
    inReport(plasticityChart(say`Plasticity of ${name}`, [sample]), `plasticity-${id}`, "half"),
  ];
}

function models({ materials, config }: StudyResult): AppendixPart[] {
  return cited(
    say`A smooth model helps to compare soils and to see a reading that does not belong. The blend is computed from the readings, not from the model.`,
    materials.flatMap(({ id, name, curve, models: fitted }): AppendixPart[] => {
      const best = fitted?.ranking[0]?.fit;
      if (!fitted || !best) return [];
      const sizesMm = curve.points.map(({ sizeMm }) => sizeMm);
      const bands =
        best.points > best.parameters.length
          ? [modelBand(best.title, resampleGrading(best, { sizesMm, seed: config.seed }))]
          : [];
      const closest = fitted.ranking.slice(0, 3).map(({ fit }) => fit);
      return [
        keyed(`model-${id}`, modelTable(name, fitted)),
        inReport(
          modelChart(say`Grading of ${name} and the model nearest to it`, curve, fitted, bands),
          `model-chart-${id}`,
          "half",
        ),
        inReport(
          gradingResidualsChart(say`Residuals of the best models: ${name}`, closest),
          `model-residuals-${id}`,
          "half",
        ),
      ];
    }),
  );
}

function alternatives(result: StudyResult): AppendixPart[] {
  const { blend, config } = result;
  if (!blend) return [];
  const frontier = hasTarget(config) ? blendFrontier(blendInputOf(result), "site-soil", 8) : [];
  return cited(say`Other shares, within the same limits.`, [
    blend.relaxed.length > 0 && keyed("relaxed", blendRelaxTable(blend, blend.relaxed)),
    frontier.length > 1 &&
      inReport(
        frontierChart(
          say`What more site soil does to the fit`,
          frontier,
          say`Site soil (% of dry mass)`,
          config.materials.map(({ name }) => name),
        ),
        "frontier",
        "full",
      ),
  ]);
}
