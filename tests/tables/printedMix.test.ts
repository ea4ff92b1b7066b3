import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { TableBlock } from "../../src/blocks/block.js";
import type { BuildableConfig } from "../../src/entries/buildable.js";
import { exportTables, tableCsv } from "../../src/report/export/exportTable.js";
import { computeMix } from "../../src/study/mix.js";
import { orderedDensity, specifiedMix } from "../../src/study/specifiedMix.js";
import { recipeTable } from "../../src/tables/mix.js";
import { quantitiesTable, siteOrderList } from "../../src/tables/quantities.js";
import { siteSheets } from "../../src/tables/site/crewCards.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import type { SiteSheet } from "../../src/tables/site/siteSheet.js";
import { render } from "../../src/words/render.js";
import { allTextOf, rowsOf } from "../support/blockText.js";
import { exampleResult, type FullResult } from "../support/exampleResult.js";

/** From memory: a pound by definition. */
const POUND_KG = 0.45359237;
const KG = { kg: 1, lb: POUND_KG, g: 0.001 } as const;

let base: FullResult;
beforeAll(async () => {
  base = await exampleResult("reading-room");
}, 60_000);

const STUDY = fc.record({
  soilPct: fc.integer({ min: 30, max: 80 }),
  sandPct: fc.integer({ min: 0, max: 20 }),
  cementPct: fc.constantFrom(6, 6.5, 7, 8, 9.5, 10),
  batchDryMassKg: fc.integer({ min: 25, max: 300 }),
  wastePct: fc.integer({ min: 0, max: 20 }),
  lossPct: fc.constantFrom(undefined, 3, 12),
  moisturePct: fc.constantFrom(0.5, 3, 6),
  cementTolerancePct: fc.constantFrom(1, 5, 10),
  sharesTolerancePct: fc.constantFrom(3, 8, 15),
  units: fc.constantFrom("SI" as const, "US" as const),
  site: fc.record(
    {
      bucketL: fc.constantFrom(5, 8, 10, 14),
      mixerVolumeL: fc.constantFrom(80, 150),
      cementBy: fc.constantFrom("scale" as const, "bucket" as const),
      scaleStepKg: fc.constantFrom(0.05, 0.2, 1),
    },
    { requiredKeys: [] },
  ),
});
type Drawn = typeof STUDY extends fc.Arbitrary<infer T> ? T : never;

/** The example as another study would have it, with the mix that follows. */
function studyOf(drawn: Drawn) {
  const { soilPct, sandPct, cementPct, moisturePct, lossPct, units, site } = drawn;
  // The fine pit sand is in none of them.
  const sharesPct = [soilPct, sandPct, 0, 100 - soilPct - sandPct];
  const config = {
    ...base.config,
    units,
    site,
    batchDryMassKg: drawn.batchDryMassKg,
    specified: { cementPct },
    tolerances: {
      ...base.config.tolerances,
      cementPct: drawn.cementTolerancePct,
      sharesPct: drawn.sharesTolerancePct,
    },
    materials: base.config.materials.map((material) => ({ ...material, moisturePct, lossPct })),
    elements: base.config.elements.map((one) => ({ ...one, wastePct: drawn.wastePct })),
  } as BuildableConfig;
  const shares = sharesPct.map((sharePct) => ({ sharePct }));
  const { mix } = computeMix(config, { shares }, base.strength, base.compaction);
  if (!mix) throw new Error("no mix");
  const result = { ...base, config, mix } as FullResult;
  const used = config.materials.flatMap((material, index) =>
    sharesPct[index] > 0 ? [{ ...material, sharePct: sharesPct[index] }] : [],
  );
  return { result, config, used };
}

const rowsOfSheet = ({ blocks }: SiteSheet) =>
  blocks
    .filter((block): block is TableBlock => block.kind === "table")
    .flatMap((table) => rowsOf(table));

/** A mass as it is printed: kilograms, and half of its last digit. */
function massOf(cell: string): { readonly kg: number; readonly half: number } {
  const [, digits, unit] = /^([\d.]+) (kg|lb|g)$/.exec(cell) ?? [];
  expect(digits, cell).toBeDefined();
  const factor = KG[unit as keyof typeof KG];
  const decimals = digits.split(".")[1]?.length ?? 0;
  // Whole numbers of four digits and more are rounded to three.
  const lost = decimals > 0 ? 0 : Math.max(0, digits.length - 4);
  return { kg: Number(digits) * factor, half: 0.5 * 10 ** (lost - decimals) * factor };
}

function expectMass(cell: string, kg: number, stepKg = 0): void {
  const printed = massOf(cell);
  const slack = printed.half + stepKg / 2 + 1e-6 * kg;
  expect(Math.abs(printed.kg - kg), `${cell} for ${kg} kg`).toBeLessThanOrEqual(slack);
}

const countOf = (cell: string) => Number(cell.replace("½", ".5").replace(/^\./, "0."));

describe("what is printed of any mix", () => {
  it("is the mix: each mass on each card, list and export, and cement by every route", () => {
    const seen = { buckets: 0, parts: 0, scale: 0, weighed: 0 };
    fc.assert(
      fc.property(STUDY, (drawn) => {
        const { result, config, used } = studyOf(drawn);
        const { record } = result.mix!;
        const { batch } = record;
        const [dryKg, cementPct] = [batch.dryMassKg, drawn.cementPct];
        const cementKg = (dryKg * cementPct) / 100;
        const moist = (sharePct: number) =>
          (dryKg * sharePct * (1 + drawn.moisturePct / 100)) / 100;
        const stepKg = record.scale?.withinTolerance ? drawn.site.scaleStepKg : undefined;
        const [bucketCard, log, labels, moisture] = siteSheets(result);
        const [card, order] = [mixCard(result), siteOrderList(result)];

        // One batch, in every head that names it.
        const heads = [bucketCard, log, card].map(({ blocks }) => allTextOf(blocks));
        const sizes = heads.map(
          (text) => /([\d.]+ (?:kg|lb)) dry soil and aggregate/.exec(text)![1],
        );
        for (const size of sizes) expectMass(size, dryKg);
        // In the units of the study, and in no others.
        const [own, other] = drawn.units === "SI" ? ["kg", "lb"] : ["lb", "kg"];
        for (const text of heads) expect(text).toMatch(new RegExp(`\\d ${own}\\b`));
        // A caution says what two people lift in both.
        expect(heads.join(" ").replace(/\d+ kg \(\d+ lb\)/g, "")).not.toMatch(
          new RegExp(`\\d ${other}\\b`),
        );
        const ofLog = /dry soil and aggregate, ([\d.]+ (?:kg|lb)) cement/.exec(heads[1])![1];
        expectMass(ofLog, cementKg);

        // Each material by mass, on both cards alike.
        const [onBucketCard, onCard] = [bucketCard, card].map(rowsOfSheet);
        const cementRow = onBucketCard.find(([name]) => name === "Cement")!;
        const cementOnCard = onCard.find(([name]) => name === config.cement.name)!;
        for (const row of [cementRow, cementOnCard]) {
          expectMass(row.at(-1)!, cementKg, stepKg);
        }
        for (const { name, sharePct } of used) {
          for (const rows of [onBucketCard, onCard]) {
            expectMass(rows.find(([first]) => first === name)!.at(-1)!, moist(sharePct), stepKg);
          }
        }

        // With another bucket it is another batch of the same mix.
        if (drawn.site.scaleStepKg === undefined) {
          const [elsewhere] = siteSheets(result, { bucketL: 12 });
          const [, size] = /([\d.]+ (?:kg|lb)) dry soil and aggregate/.exec(
            allTextOf(elsewhere.blocks),
          )!;
          const row = rowsOfSheet(elsewhere).find(([name]) => name === "Cement")!;
          const pct = (100 * massOf(row.at(-1)!).kg) / massOf(size).kg;
          expect(Math.abs(pct / cementPct - 1)).toBeLessThan(0.012);
        }

        // By volume: the cement and each share within the study's tolerances, by the densities alone.
        const keeps = (litresOf: (name: string) => number, cementL: number | undefined) => {
          const dry = used.map(({ name, looseBulkDensityKgM3 = 0, bulkingPct = 0 }) => {
            return (litresOf(name) * looseBulkDensityKgM3) / (1 + bulkingPct / 100) / 1000;
          });
          const soil = dry.reduce((sum, kg) => sum + kg, 0);
          const within = (pct: number, asked: number, tolerancePct: number) =>
            expect(Math.abs(pct / asked - 1)).toBeLessThanOrEqual(tolerancePct / 100 + 1e-9);
          used.forEach(({ sharePct }, index) => {
            within((100 * dry[index]) / soil, sharePct, drawn.sharesTolerancePct);
          });
          const cementBy =
            cementL === undefined
              ? cementKg
              : (cementL * config.cement.looseBulkDensityKgM3) / 1000;
          return { pct: (100 * cementBy) / soil, soil };
        };
        const cementKeeps = (pct: number) =>
          expect(Math.abs(pct / cementPct - 1)).toBeLessThanOrEqual(
            drawn.cementTolerancePct / 100 + 1e-9,
          );
        const printedBuckets = cementRow.length === 3;
        if (printedBuckets) {
          seen.buckets += 1;
          const { bucketL = 10 } = drawn.site;
          const litres = (name: string) =>
            bucketL * countOf(onBucketCard.find(([first]) => first === name)![1]);
          const US_L = 5 * 3.785411784;
          const scaleUs = drawn.site.bucketL === undefined && drawn.units === "US" ? US_L / 10 : 1;
          const byScale = cementRow[1] === "weigh";
          const { pct, soil } = keeps(
            (name) => scaleUs * litres(name),
            byScale ? undefined : scaleUs * bucketL * countOf(cementRow[1]),
          );
          cementKeeps(pct);
          // The batch in buckets is the batch by mass.
          expect(soil).toBeCloseTo(dryKg, 6);
        } else {
          seen.weighed += 1;
          expect(heads[0]).toMatch(/weigh every material/i);
        }
        if (cementOnCard.length === 4) {
          seen.parts += 1;
          const { size } = record.parts!;
          const litres = (name: string) => size * Number(onCard.find(([f]) => f === name)![2]);
          const byScale = cementOnCard[2] === "weigh";
          cementKeeps(keeps(litres, byScale ? undefined : litres(config.cement.name)).pct);
        }
        if (stepKg !== undefined) seen.scale += 1;

        // The order: the wall with its waste, and what is lost before; the density is between the ends.
        const { netVolumeM3 } = result.mix!.quantities;
        const { valueKgM3 } = orderedDensity(result.mix!.density, specifiedMix(result));
        const solids = netVolumeM3 * (1 + drawn.wastePct / 100) * valueKgM3;
        const soilKg = solids / (1 + cementPct / 100);
        const ordered = rowsOfSheet(order);
        const between = (cell: string, kg: number) => {
          const ends = cell.split(" to ").map(massOf);
          expect(ends[0].kg - ends[0].half).toBeLessThanOrEqual(kg);
          expect(ends.at(-1)!.kg + ends.at(-1)!.half).toBeGreaterThanOrEqual(kg);
          expect(ends.at(-1)!.kg / ends[0].kg).toBeLessThan(1.05);
        };
        const brought = 1 + (drawn.lossPct ?? 0) / 100;
        for (const { name, sharePct } of used) {
          const kg = (soilKg * sharePct * (1 + drawn.moisturePct / 100) * brought) / 100;
          between(ordered.find(([first]) => first === name)![1], kg);
        }
        const { lossPct: cementLossPct = 0 } = config.cement;
        between(
          ordered.find(([first]) => first === config.cement.name)![1],
          ((soilKg * cementPct) / 100) * (1 + cementLossPct / 100),
        );
        const batches = `${Math.ceil(soilKg / dryKg - 1e-9)}`;
        expect(allTextOf(card.blocks)).toContain(`"${batches} in all"`);
        expect(allTextOf(order.blocks)).toContain(`"${batches} in all"`);
        expect(allTextOf(quantitiesTable(result))).toContain(`"${batches} of the size above"`);

        // Labels speak of the mix, and the export holds what the table holds.
        const { blocks } = labels;
        expect(allTextOf(blocks)).toContain(`cement ${cementPct} %`);
        const [table] = exportTables([{ ...recipeTable(result), number: 1 } as never], "en");
        const csv = tableCsv(table, "en");
        const unit = /Dry mass[^a-z]+(kg|lb|g)/.exec(csv)?.[1];
        expect(unit, csv).toBeDefined();
        for (const { name, sharePct } of used) {
          const [, line] = new RegExp(`^"?${name}"?,(.*)$`, "m").exec(csv)!;
          const [share, dry, moistMass] = line.split(",");
          expect(Number(share)).toBeCloseTo(sharePct, 1);
          expectMass(`${dry} ${unit}`, (dryKg * sharePct) / 100);
          expectMass(`${moistMass} ${unit}`, moist(sharePct));
        }

        // No ghost: nothing names what is not in the mix.
        const all = allTextOf([
          ...[bucketCard, log, labels, moisture, card, order].map((sheet) => sheet.blocks),
          recipeTable(result),
        ]);
        const unused = config.materials.filter(({ id }) => used.every((one) => one.id !== id));
        for (const { name } of unused) expect(all).not.toContain(render(name));
      }),
      { numRuns: 60, seed: 19 },
    );
    expect(seen.buckets).toBeGreaterThan(15);
    expect(seen.weighed).toBeGreaterThan(5);
    expect(seen.parts).toBeGreaterThan(20);
    expect(seen.scale).toBeGreaterThan(10);
  }, 120_000);
});
