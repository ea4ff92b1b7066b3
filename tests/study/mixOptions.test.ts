import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { TableBlock } from "../../src/blocks/block.js";
import { isBuildable } from "../../src/entries/buildable.js";
import { computeMix } from "../../src/study/mix.js";
import type { MixStudy, StudyResult } from "../../src/study/studyResult.js";
import { trialEntryFindings } from "../../src/study/trials.js";
import { carbonTable, comparisonTable, mixReferences } from "../../src/tables/carbon.js";
import { compareMixTable, costTable } from "../../src/tables/cost.js";
import { recipeTable } from "../../src/tables/mix.js";
import { quantitiesTable, siteOrderList } from "../../src/tables/quantities.js";
import { siteBucketCard, siteMoistureCard } from "../../src/tables/site/crewCards.js";
import { siteMix } from "../../src/tables/site/crewMix.js";
import { siteBlockLabels, siteCuringLog } from "../../src/tables/site/logAndLabels.js";
import { renderAll } from "../../src/words/render.js";
import { near } from "../strength/near.js";
import { allTextOf } from "../support/blockText.js";
import { exampleResult, type FullResult } from "../support/exampleResult.js";
import { parseStudyYaml } from "../support/saidStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

const EXACT = { rel: 1e-9, abs: 1e-9 };
const YAML = readFileSync(join(EXAMPLES, "bus-shelter/study.yaml"), "utf8");
let base: FullResult;
beforeAll(async () => {
  base = await exampleResult("bus-shelter");
}, 60_000);

/** The study with some texts of study.yaml replaced and lines added at its end. */
function read(edits: readonly (readonly [string, string])[], more = "") {
  const text = edits.reduce((yaml, [from, to]) => {
    expect(yaml.split(from), from).toHaveLength(2);
    return yaml.replace(from, to);
  }, YAML);
  return parseStudyYaml(`${text}\n${more}`);
}

function study(edits: readonly (readonly [string, string])[], more = "") {
  const { config, findings } = read(edits, more);
  expect(findings).toEqual([]);
  if (!config || !isBuildable(config)) throw new Error("not all is told");
  const { mix, findings: found } = computeMix(config, base.blend, base.strength, base.compaction);
  const result: StudyResult = { ...base, config, mix };
  return { mix: mix as MixStudy, findings: found, result };
}

describe("prices of study.yaml", () => {
  it("a firm price costs what it did: amount times price", () => {
    const { mix } = study([]);
    // By hand: a tonne as delivered holds its water, a cubic metre is loose.
    const { mix: recipe } = mix.quantities;
    const { materials, cement } = base.config;
    const costs = [...recipe.materials, recipe.cement].map((line) => {
      const price = (materials.find(({ id }) => id === line.id) ?? cement).price;
      if (!price || line.dryMassKg === 0) return 0;
      const amount = price.per === "t" ? line.moistMassKg / 1000 : line.looseVolumeL! / 1000;
      return price.amount * amount;
    });
    const total = costs.reduce((sum, cost) => sum + cost, 0);
    near(mix.cost!.total.low, total, EXACT, "low");
    near(mix.cost!.total.high, total, EXACT, "high");
    expect((costTable(base) as TableBlock).columns).toHaveLength(3);
  });

  it("a range, haul, loss and bags add up by hand, low with low", () => {
    const { mix, result } = study(
      [
        [
          "price: 41 per yd3",
          "price: 30 to 40 per short ton\n    haul: 5 to 7 per load\n    waste: 10 %",
        ],
        ["price: 0.11 per lb", "price: 11 to 12 per bag\n  haul: 2 to 3 per t"],
      ],
      "site:\n  truck: { payload: 1 short ton, body: 3 yd3 }",
    );
    const gravel = mix.quantities.mix.materials.find(({ id }) => id === "pea-gravel")!;
    const tons = (gravel.moistMassKg * 1.1) / 907.18474;
    const yards = ((gravel.looseVolumeL! / 1000) * 1.1) / 0.764554857984;
    const loads = Math.ceil(Math.max(tons, yards / 3));
    expect(loads).toBeGreaterThan(1);
    const line = mix.cost!.lines.find(({ id }) => id === "pea-gravel")!;
    near(line.material!.low, 30 * tons, EXACT, "low");
    near(line.material!.high, 40 * tons, EXACT, "high");
    expect(line.haul).toEqual({ low: 5 * loads, high: 7 * loads });
    const cement = mix.cost!.lines.find(({ id }) => id === "cement")!;
    const bags = Math.ceil(mix.quantities.mix.cement.dryMassKg / (94 * 0.45359237));
    expect(cement.material).toEqual({ low: 11 * bags, high: 12 * bags });
    const table = renderAll(costTable(result)) as TableBlock;
    expect(table.columns.map(({ header }) => header)).toEqual([
      "Material",
      "Price, as entered",
      "Purchase",
      "Haulage",
    ]);
    expect(table.rows.at(-1)!.at(-1)).toMatch(/^\d+ to \d+$/);
    expect(allTextOf(table)).toContain(
      "30 to 40 per short ton, haulage 5 to 7 per load, 10 % lost",
    );
    expect(allTextOf(quantitiesTable(result))).toMatch(/\d+ truck loads/);
  });

  it("orders what is lost on the way too: half as much again is half as much again", () => {
    const tonsOf = (waste: string) => {
      const { result } = study([["price: 41 per yd3", `price: 41 per yd3\n    waste: ${waste}`]]);
      const [table] = renderAll(siteOrderList(result)).blocks as readonly TableBlock[];
      const row = table.rows.find(([name]) => /gravel/i.test(`${name}`))!;
      const pounds = `${row[1]}`.match(/[\d.]+/g)!.map(Number);
      return { most: pounds[pounds.length - 1], notes: `${table.notes}` };
    };
    const [none, little, much] = ["0 %", "6 %", "50 %"].map(tonsOf);
    near(little.most / none.most, 1.06, { rel: 0.01, abs: 0 }, "6 % more");
    near(much.most / none.most, 1.5, { rel: 0.01, abs: 0 }, "half as much again");
    expect(none.notes).not.toContain("lost in the heap");
    expect(much.notes).toContain("lost in the heap and on the way: Pea gravel 50 %.");
  });

  it("orders the cement that is lost too", () => {
    const poundsOf = (waste: string) => {
      const { result } = study([["price: 0.11 per lb", `price: 0.11 per lb\n  waste: ${waste}`]]);
      const [table] = renderAll(siteOrderList(result)).blocks as readonly TableBlock[];
      const row = table.rows.find(([name]) => /cement/i.test(`${name}`))!;
      const [, most] = `${row[1]}`.match(/[\d.]+/g)!.map(Number);
      const bags = `${row.at(-1)}`.match(/\d+/g)!.map(Number);
      return { most, bags: bags[bags.length - 1] };
    };
    const [none, lost] = [poundsOf("0 %"), poundsOf("40 %")];
    near(lost.most / none.most, 1.4, { rel: 0.01, abs: 0 }, "40 % more");
    near(lost.bags / none.bags, 1.4, { rel: 0.12, abs: 0 }, "whole bags");
  });

  it("counts the same bags on the order list, in the quantities and beside another mix", () => {
    const shares = base.blend!.shares.map(({ id, sharePct }) => `${id}: ${sharePct} %`);
    const { cementPct } = base.mix!.recipe;
    const bagsOf = (density: string) => {
      const { result } = study(
        [
          ["price: 0.11 per lb", "price: 0.11 per lb\n  waste: 40 %"],
          ["bag: 94 lb", "bag: 5 lb"],
        ],
        `compare-mix: { name: the same, basis: invented, shares: { ${shares.join(", ")} }, cement: ${cementPct} %${density} }`,
      );
      const [order] = renderAll(siteOrderList(result)).blocks as readonly TableBlock[];
      const { rows } = renderAll(compareMixTable(result)) as TableBlock;
      const [, here, there] = rows.find(([name]) => name === "Cement, bags")!;
      return { order: order.rows.at(-1)!.at(-1), here, there, all: quantitiesTable(result) };
    };
    const { order, here, there, all } = bagsOf("");
    expect(order).toMatch(/^\d+ to \d+$/);
    expect([here, there]).toEqual([order, order]);
    expect(allTextOf(all)).toContain(`${order} bags of 5.0 lb`);
    // Of another density no range is known.
    expect(bagsOf(", density: 120 lb/ft3").there).toMatch(/^\d+$/);
  });

  it("haul by load without a truck is said, and the total with it", () => {
    const { mix, findings } = study([
      ["price: 41 per yd3", "price: 41 per yd3\n    haul: 60 per load"],
    ]);
    expect(mix.cost!.status).toBe("incomplete");
    expect(findings).toMatchObject([
      { code: "price-without-amount", column: "materials.pea-gravel.haul" },
    ]);
  });

  it.each<[string, string, RegExp]>([
    ["30", "materials.3.price", /no unit/],
    ["30 to 40", "materials.3.price", /no unit/],
    ["30 to 40 per shovel", "materials.3.price", /“shovel” is not known/],
    ["40 to 30 per t", "materials.3.price", /larger end/],
    ["-4 per t", "materials.3.price", /not a price/],
    ["30 per load", "materials.3.price", /“load” is not known/],
  ])("a price of %s is refused", (price, column, message) => {
    const { config, findings } = read([["price: 41 per yd3", `price: ${price}`]]);
    expect(config).toBeUndefined();
    expect(findings).toMatchObject([{ column, value: price }]);
    expect(findings[0].message).toMatch(message);
    expect(findings[0].expected).toContain("per");
  });
});

const COMPARE = `compare-mix:
  name: soil alone
  shares: { site-soil: 100 % }
  cement: 10 %
  density: 1800 kg/m3
  basis: invented`;

describe("compare-mix of study.yaml", () => {
  it("saves the difference of the two mixes at the element's volume", () => {
    const { mix, result } = study([], COMPARE);
    const { compared, quantities } = mix;
    const otherKg = (quantities.madeVolumeM3 * 1800 * 10) / 110;
    near(compared!.savedCementKg, otherKg - quantities.mix.cement.dryMassKg, EXACT, "cement");
    expect(compared!.savedCementKg).toBeGreaterThan(50);
    // Firm prices: the saving is the plain difference of the totals.
    near(
      compared!.saving!.saved!.low,
      compared!.cost!.total.low - mix.cost!.total.low,
      EXACT,
      "money",
    );
    const { savedCarbonKg, carbon } = compared!;
    expect(savedCarbonKg!.low).toBeGreaterThanOrEqual(carbon.total.low - mix.carbon.total.high);
    expect(savedCarbonKg!.high).toBeLessThanOrEqual(carbon.total.high - mix.carbon.total.low);
    const table = renderAll(compareMixTable(result)) as TableBlock;
    expect(table.rows[0].slice(1)).toEqual(["5.5", "10.0", "4.5"]);
    expect(allTextOf(table)).toContain("says nothing of the other mix's strength");
  });

  it("against itself saves nothing", () => {
    const shares = base.blend.shares
      .filter(({ sharePct }) => sharePct > 0)
      .map(({ id, sharePct }) => `${id}: ${sharePct} %`)
      .join(", ");
    const same = `compare-mix:\n  name: same\n  shares: { ${shares} }\n  cement: ${base.strength.chosenCementPct} %\n  basis: the same`;
    const { mix } = study([], same);
    near(mix.compared!.savedCementKg, 0, { rel: 0, abs: 1e-6 }, "cement");
    near(mix.compared!.savedCarbonKg!.high, 0, { rel: 0, abs: 1e-6 }, "carbon");
  });

  it("is refused with shares off 100 %, and found with a material that is not there", () => {
    const { findings } = read([], COMPARE.replace("100 %", "90 %"));
    expect(findings).toMatchObject([{ column: "compare-mix.shares" }]);
    const { config } = read([], COMPARE.replace("site-soil", "loam"));
    expect(trialEntryFindings(config!)).toMatchObject([
      { code: "unknown-material", value: "loam", severity: "error" },
    ]);
  });

  it("without it the table is a note", () => {
    expect(compareMixTable(base).kind).toBe("note");
  });
});

describe("carbon of study.yaml", () => {
  it("takes general factors with their marks where none was entered", () => {
    const { mix, result } = study([]);
    expect(mix.carbon.status).toBe("ok");
    expect(mix.carbon.lines.every(({ haul }) => haul === null)).toBe(true);
    expect(allTextOf(carbonTable(result))).toContain("No haul distances were entered");
    expect(allTextOf(carbonTable(result))).toContain("from memory");
  });

  it("takes the user's factor, distance and concrete, and prints their source", () => {
    const { mix, result } = study(
      [
        [
          "price: 0.11 per lb",
          "price: 0.11 per lb\n  carbon: { factor: 0.5 to 0.6 kg CO2e/kg, source: Invented declaration 7 }\n  haul-distance: 50 mi",
        ],
      ],
      "carbon:\n  haul: { factor: 0.1 kg CO2e/(t km), source: Invented carrier }\n  concrete:\n    volume: 2 m3\n    cement: { factor: 300 to 320 kg/m3, source: Invented plant }",
    );
    const { cement } = mix.quantities.mix;
    const line = mix.carbon.lines.find(({ id }) => id === "cement")!;
    near(line.making!.low, 0.5 * cement.dryMassKg, EXACT, "making");
    const km = 50 * 1.609344;
    near(line.haul!.high, (cement.dryMassKg / 1000) * km * 0.1, EXACT, "haul");
    expect(mix.comparison.concreteCementKg).toEqual({ low: 600, high: 640 });
    near(mix.comparison.concreteCementCarbonKg.high, 640 * 0.6, EXACT, "concrete");
    // Aggregate of two cubic metres, 1800 to 1900 kg each.
    near(mix.carbonComparison!.concrete.high, 640 * 0.6 + 2 * 1900 * 0.0075, EXACT, "all");
    const tables = allTextOf([carbonTable(result), comparisonTable(result), mixReferences(mix)]);
    for (const source of ["Invented declaration 7", "Invented carrier", "Invented plant"]) {
      expect(tables).toContain(source);
    }
    expect(tables).toContain("as entered, not checked");
  });

  it.each([
    ["carbon: { factor: 0.5 to 0.6, source: x }", /no unit/],
    ["carbon: { factor: 0.6 to 0.5 kg CO2e/kg, source: x }", /larger end/],
    ["carbon: { factor: 0.5 kg, source: x }", /“kg” is not known/],
    ["carbon: { factor: 0.5 kg CO2e/kg }", /missing/],
  ])("%s is refused", (line, message) => {
    const { config, findings } = read([["price: 0.11 per lb", `price: 0.11 per lb\n  ${line}`]]);
    expect(config).toBeUndefined();
    expect(findings[0].column).toMatch(/^cement\.carbon\./);
    expect(findings[0].message).toMatch(message);
  });
});

describe("water and bulking of study.yaml", () => {
  it("a tolerance that was entered stands before the window of the test", () => {
    const { result, mix } = study([], "site:\n  tolerance: 1 %");
    expect(mix.water.basis).toBe("entered");
    near(mix.water.window.moisturePct.low, mix.recipe.targetMoisturePct - 1, EXACT, "dry end");
    expect(allTextOf(recipeTable(result))).toContain("a tolerance that was entered");
    expect(allTextOf(siteMoistureCard(result).blocks)).toContain("A tolerance that was entered");
    expect(allTextOf(recipeTable(base))).toContain("the compaction test keeps 98 %");
  });

  it("bulking by the flooding test gives the gravel more room, not more mass", () => {
    const moisture = "moisture: 1.0 %";
    const { mix, result } = study([
      [moisture, `${moisture}\n    bulking: { damp: 10 in, flooded: 8 in }`],
    ]);
    const [before, after] = [base.mix!, mix].map(
      ({ recipe }) => recipe.materials.find(({ id }) => id === "pea-gravel")!,
    );
    // Whole buckets may make a batch of another size; by the kilogram nothing else changes.
    const litres = (line: typeof after) => line.looseVolumeL! / line.dryMassKg;
    near(litres(after), 1.25 * litres(before), EXACT, "room");
    near(after.moistMassKg / after.dryMassKg, before.moistMassKg / before.dryMassKg, EXACT, "mass");
    near(after.sharePct, before.sharePct, EXACT, "share");
    expect(allTextOf(recipeTable(result))).toContain("Pea gravel 25 %");
    const reversed = read([[moisture, `${moisture}\n    bulking: { damp: 7 in, flooded: 8 in }`]]);
    expect(reversed.findings[0].message).toContain("read both heights again");
    expect(reversed.findings[0].column).toBe("materials.3.bulking");
  });
});

const SITE = `site:
  bucket: 4 gal
  bucket-step: 1
  cement-by: bucket
  mixer: 40 gal
  stripping: 36 h
  damp-curing: 9 d
  labels: 12
  truck: { payload: 8 short ton, body: 7 yd3 }
  forms: { area: 100 ft2, set-and-ram: 6 h, working-day: 8 h }
  trial: { dry-mass: 20 lb, scale-step: 1 oz }`;

describe("site of study.yaml", () => {
  it("reaches every sheet, and an option of the call stands before it", () => {
    const { result } = study([], SITE);
    const card = allTextOf(siteBucketCard(result).blocks);
    expect(card).toContain("Bucket of 4 gal");
    expect(card).toContain("Trial batch");
    // Whole buckets were asked for; where none keeps the tolerances the card says that it halves them.
    const told = /Whole buckets leave the tolerances|Do not use these buckets/.test(card);
    expect(told || !card.includes("½")).toBe(true);
    expect(card).not.toContain("is a default");
    expect(allTextOf(siteBucketCard(result, { bucketL: 10 }).blocks)).toContain(
      "Bucket of 2.64 gal",
    );
    const log = allTextOf(siteCuringLog(result).blocks);
    expect(log).toContain("36 hours; local rules");
    expect(log).toContain("9 days, covered");
    expect(allTextOf(siteBlockLabels(result).blocks)).toContain("Block 12 ");
    const order = allTextOf(siteOrderList(result).blocks);
    expect(order).toContain("Loads, at most");
    // 6 of 8 hours and 36 of 24: 2.25 days a setting.
    expect(order).toMatch(/3 uses of the formwork, 2\.[23] days each/);
    expect(allTextOf(quantitiesTable(result))).toContain("ft², ends and reveals counted");
  });

  it("the trial batch is the recipe made small, and comes back when scaled", () => {
    const { mix, result } = study([], SITE);
    const { trial } = siteMix(result, {})!;
    const times = mix.recipe.dryMassKg / (20 * 0.45359237);
    for (const line of trial!.lines) {
      const full = [...mix.recipe.materials, mix.recipe.cement].find(({ id }) => id === line.id)!;
      near(line.exactKg * times, full.moistMassKg, EXACT, line.id);
      expect(Math.abs(line.weighedKg - line.exactKg)).toBeLessThanOrEqual(0.45359237 / 32 + 1e-12);
    }
  });

  it("a batch can fill a lift", () => {
    const { mix, result } = study([], "site:\n  batch-fills: lift\n  bucket: 1 gal");
    const { batch, record } = siteMix(result, {})!;
    expect(batch).toBe(mix.recipe);
    const ratio = batch.dryMassKg / record.askedDryMassKg;
    near(ratio * mix.record.elements[0].amounts.batchesPerLift, 1, EXACT, "a lift");
    expect(ratio).toBeGreaterThan(0.88);
    expect(ratio).toBeLessThanOrEqual(1 + 1e-9);
  });

  it.each([
    ["bucket: 0 L", "site.bucket"],
    ["bucket-step: 0.3", "site.bucket-step"],
    ["labels: 0", "site.labels"],
    ["damp-curing: 200 d", "site.damp-curing"],
    ["stripping: -1 h", "site.stripping"],
    ["stripping: 24", "site.stripping"],
    ["tolerance: 40 %", "site.tolerance"],
    ["truck: { payload: 9 t }", "site.truck.body"],
    ["forms: { area: 0 m2, set-and-ram: 8 h, working-day: 8 h }", "site.forms.area"],
    ["forms: { area: 9 m2, set-and-ram: 8 h, working-day: 25 h }", "site.forms.working-day"],
    ["mixer: 100 L\n  batch-fills: lift", "site"],
    ["spoon: 3 L", "site.spoon"],
  ])("%s is refused", (line, column) => {
    const { config, findings } = read([], `site:\n  ${line}`);
    expect(config).toBeUndefined();
    expect(findings.map((finding) => finding.column)).toEqual([column]);
  });
});
