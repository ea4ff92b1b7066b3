import { describe, expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import * as tables from "../../src/tables/index.js";
import { renderAll, type Said } from "../../src/words/render.js";
import { openExample } from "../support/exampleResult.js";

/** Cards and tables of a study by the name of what makes them; those that a stage of a study lacks are left out. */
function pagesOf(result: StudyResult): Record<string, readonly (ReportBlock | undefined)[]> {
  const { config, materials, blend, compaction, strength, trials } = result;
  const { units } = config;
  const { requirement } = config.strength;
  const looks = trials.flatMap((trial) => trial.looks ?? []);
  return {
    bucketCard: tables.siteBucketCard(result).blocks,
    moistureCard: tables.siteMoistureCard(result).blocks,
    mixCard: tables.mixCard(result).blocks,
    trialCard: tables.trialCard(result).blocks,
    orderList: tables.siteOrderList(result).blocks,
    curingLog: tables.siteCuringLog(result).blocks.slice(0, 1),
    blockLabels: tables.siteBlockLabels(result).blocks.slice(0, 1),
    project: [tables.projectTable(config)],
    materials: [tables.materialsTable(config)],
    sizes: [tables.sizesTable("Sizes", materials)],
    sieving: materials.map(({ name, sieve }) => tables.sievingTable(name, sieve)),
    sedimentation: materials.map(
      ({ name, sedimentation }) => sedimentation && tables.sedimentationTable(name, sedimentation),
    ),
    jar: materials.map(({ name, jar }) => jar && tables.jarTable(name, jar)),
    limits: materials.map(({ name, limits }) => limits && tables.limitsTable(name, limits)),
    models: materials.map(({ name, models }) => models && tables.modelTable(name, models)),
    uncertainty: materials.flatMap(({ name, uncertainty }) =>
      uncertainty
        ? [tables.intervalsTable(name, uncertainty, units), tables.classesTable(name, uncertainty)]
        : [],
    ),
    guidance: [
      ...tables.guidanceTables(result.guidance, units),
      ...tables.envelopeTables(result),
      result.guidanceComparison &&
        tables.guidanceComparisonTable("Blend", result.guidanceComparison),
    ],
    blend: blend
      ? [
          tables.blendSharesTable(blend, config.materials),
          tables.blendFitTable(blend),
          tables.blendLimitsTable(blend),
          tables.blendRelaxTable(blend, blend.relaxed),
        ]
      : [],
    compaction: compaction
      ? [tables.compactionTable(compaction, units), tables.moistureWindowTable(compaction, units)]
      : [],
    regression: strength
      ? [
          tables.regressionTable(strength.fit, strength.lackOfFit),
          tables.bandsTable(strength.bandsAtContents, units),
          tables.modelsTable(strength.models),
          tables.strengthChecksTable(strength.checks, strength.robust),
          tables.specimensTable(strength.specimens, strength.fit, units),
          tables.leastCementTable(result),
          ...strength.characteristic.map(({ values }) => tables.characteristicTable(values, units)),
        ]
      : [],
    leastCementBy: [
      strength &&
        requirement &&
        tables.leastCementByStatisticTable(strength.fit, requirement, units),
    ],
    trials: [
      tables.testedBlendsTable(result),
      tables.blendDifferenceTable(result),
      tables.trialsTable(looks),
    ],
    mix: [tables.recipeTable(result), tables.toleranceTable(result)],
    quantities: [tables.quantitiesTable(result), tables.costTable(result)],
    carbon: [
      tables.carbonTable(result),
      tables.comparisonTable(result),
      tables.compareMixTable(result),
    ],
    quality: [
      tables.qualityPlanTable(result),
      tables.qualityChecksTable(result),
      tables.siteBlocksTable(result),
    ],
  };
}

const NUMBER = /[−-]?\d+(?:[.,]\d+)*/g;

/** The numbers of caption, notes and rows, cell by cell; words may change without anybody looking at the numbers again. */
function numbersOf(block: Said<ReportBlock>): string[] {
  const numbers = (text: string) => (text === "–" ? "–" : (text.match(NUMBER) ?? []).join(" "));
  const row = (cells: readonly string[]) => cells.map(numbers).join(" | ");
  if (block.kind === "table") {
    return [block.caption, ...(block.notes ?? [])]
      .map(numbers)
      .filter((text) => text !== "")
      .concat(block.rows.map(row));
  }
  if (block.kind === "keyValues") return block.items.map(({ label, value }) => row([label, value]));
  return [];
}

describe.each(["reading-room", "bus-shelter", "two-blends", "untested-blend"])(
  "the numbers that %s prints",
  (name) => {
    // Looked at, card by card, when they were written down. Where one changes on purpose, look at the page
    // that prints it, then run this file with `--update`.
    it("are those that somebody looked at", async () => {
      const result = await openExample(name);
      const pages = Object.entries(pagesOf(result)).map(([page, blocks]) => {
        const said = renderAll(blocks.filter((block) => block !== undefined));
        return [`# ${page}`, ...said.flatMap(numbersOf)].join("\n");
      });
      expect(pages.join("\n\n")).not.toMatch(/NaN|Infinity/);
      await expect(`${pages.join("\n\n")}\n`).toMatchFileSnapshot(`printed/${name}.txt`);
    }, 60_000);
  },
);
