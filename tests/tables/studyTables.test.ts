import { beforeAll, describe, expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import * as loam from "../../src/index.js";
import { EXAMPLE_NAMES, exampleResult, type FullResult } from "../support/exampleResult.js";

function allTables(result: FullResult): readonly loam.Said<ReportBlock>[] {
  const { config, materials, blend, compaction, strength } = result;
  if (!compaction) throw new Error("the examples have a compaction test");
  return loam.renderAll([
    loam.projectTable(config),
    loam.materialsTable(config),
    loam.methodsTable(config),
    loam.sizesTable("Sizes", materials),
    loam.compactionTable(compaction, config.units),
    ...loam.guidanceTables(result.guidance),
    ...(blend.limits.length > 0 ? [loam.blendLimitsTable(blend)] : []),
    ...(blend.relaxed.length > 0 ? [loam.blendRelaxTable(blend, blend.relaxed)] : []),
    loam.blendSharesTable(blend, config.materials),
    loam.blendFitTable(blend),
    loam.regressionTable(strength.fit, strength.lackOfFit),
    loam.bandsTable(strength.bandsAtContents, config.units),
    loam.leastCementTable(result),
    loam.specimensTable(strength.specimens, strength.fit, config.units),
    loam.recipeTable(result),
    loam.quantitiesTable(result),
    loam.costTable(result),
    loam.comparisonTable(result),
    loam.inputsTable(result.inputs),
    loam.cautionsBlock(),
    loam.referencesBlock(result),
    ...result.sheets.map(loam.sheetTable),
    ...materials.flatMap(({ name, sieve, sedimentation, models, limits }) => [
      loam.sievingTable(name, sieve),
      ...(models ? [loam.modelTable(name, models)] : []),
      ...(sedimentation ? [loam.sedimentationTable(name, sedimentation)] : []),
      ...(limits ? [loam.limitsTable(name, limits)] : []),
    ]),
  ]);
}

describe.each(EXAMPLE_NAMES)("the tables of %s", (name) => {
  let result: FullResult;
  let tables: readonly loam.Said<ReportBlock>[];
  beforeAll(async () => {
    result = await exampleResult(name);
    tables = allTables(result);
  });

  it("have a caption, and a cell for every column", () => {
    for (const table of tables) {
      if (table.kind === "note") throw new Error(table.text);
      if (table.kind !== "table") continue;
      expect(table.caption).toMatch(/\S/);
      expect(table.rows.length, table.caption).toBeGreaterThan(0);
      for (const row of table.rows) expect(row.length, table.caption).toBe(table.columns.length);
    }
  });

  it("show no value that is none", () => {
    expect(JSON.stringify(tables)).not.toMatch(/NaN|undefined|Infinity|null|\[object/);
  });

  it("speak the study's units", () => {
    const text = JSON.stringify(tables);
    const units = result.config.units === "SI" ? ["MPa", "kg/m³"] : ["psi", "lb/ft³"];
    for (const unit of units) expect(text).toContain(unit);
  });

  it("show every block, every sheet and every material", () => {
    const text = JSON.stringify(tables);
    for (const { id } of result.strength.specimens) expect(text).toContain(`"${id}"`);
    for (const { file } of result.inputs) expect(text).toContain(file);
    for (const { name: material } of result.materials) expect(text).toContain(material);
  });
});

it("numbers of a table are those of the result, in the unit of its head", async () => {
  const result = await exampleResult("bus-shelter");
  const table = loam.renderAll(loam.bandsTable(result.strength.bandsAtContents, "US"));
  // 1 psi = 6.894757 kPa (NIST SP 811 App. B, from memory).
  result.strength.bandsAtContents.forEach(({ meanMpa }, index) => {
    expect(Number(table.rows[index][1])).toBeCloseTo(meanMpa / 0.006894757, -0.5);
  });
  expect(table.columns[1]).toMatchObject({ header: "Mean", unit: "psi" });
});
