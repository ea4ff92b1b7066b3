import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { MeasuredForm, MeasuredLine } from "../../src/batch/mixRecord.js";
import { MIN_SHARE_PCT } from "../../src/blend/design.js";
import { bucketSensitivity, practicalParts } from "../../src/blend/parts.js";
import { robustness } from "../../src/blend/robustness.js";
import type { BandAim } from "../../src/blend/target.js";
import type { TableBlock } from "../../src/blocks/block.js";
import type { GuidanceEntry } from "../../src/guidance/entry.js";
import { createRandom } from "../../src/numerics/random.js";
import { blendInput, computeBlend } from "../../src/study/blend.js";
import { computeMix } from "../../src/study/mix.js";
import { blendPartsTable, blendSharesTable, bucketTable } from "../../src/tables/blend.js";
import { carbonTable } from "../../src/tables/carbon.js";
import { massText } from "../../src/tables/cell.js";
import { costTable } from "../../src/tables/cost.js";
import { recipeTable, toleranceTable } from "../../src/tables/mix.js";
import { quantitiesTable, siteOrderList } from "../../src/tables/quantities.js";
import { siteBucketCard, siteSheets } from "../../src/tables/site/crewCards.js";
import { buckets as bucketsText } from "../../src/tables/site/crewMix.js";
import { siteCuringLog } from "../../src/tables/site/logAndLabels.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import type { SiteSheet } from "../../src/tables/site/siteSheet.js";
import { render } from "../../src/words/render.js";
import { curve } from "../blend/materials.js";
import { allTextOf, rowsOf } from "../support/blockText.js";
import { exampleResult, type FullResult } from "../support/exampleResult.js";

const AIMS: readonly BandAim[] = ["most-site-soil", "least-cost", "nearest-middle"];
const SIZES = [0.063, 0.2, 0.63, 2, 6.3, 20];

let example: FullResult;
beforeAll(async () => {
  example = await exampleResult("bus-shelter");
});

/** A study of two to six materials with made-up gradings, and a band that one of their blends keeps. */
function problem(seed: number, seek: BandAim) {
  const random = createRandom(seed);
  const count = 2 + random.integer(5);
  const roles = ["soil", "sand", "gravel", "sand", "soil", "gravel"] as const;
  const made = Array.from({ length: count }, (_, j) => {
    const middle = 10 ** (-1.7 + 0.45 * j + 0.6 * random.uniform());
    const slope = 0.5 + 2 * random.uniform();
    const points = SIZES.map(
      (sizeMm) => [sizeMm, sizeMm === 20 ? 100 : 100 / (1 + (middle / sizeMm) ** slope)] as const,
    );
    const from = j % example.materials.length;
    const named = { id: `m${j}`, name: `Material no. ${j}`, role: roles[j] };
    const [low, least] = [10 + 20 * random.uniform(), j < 2 && random.uniform() < 0.2 ? 5 : 0];
    return {
      config: {
        ...example.config.materials[from],
        ...named,
        minSharePct: least,
        maxSharePct: random.uniform() < 0.2 ? 60 : 100,
        bulkingPct: 10,
        haulKm: 20,
        finesPlusMinusPct: 1,
        price: { amount: low, low, high: low + 5, per: "t", written: `${low} per t` } as const,
      },
      result: { ...example.materials[from], ...named, curve: curve(...points) },
    };
  });
  const weights = made.map(() => (random.uniform() < 0.5 ? 0 : random.uniform()));
  weights[0] += 0.2;
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const points = SIZES.slice(0, -1).map((sizeMm, i) => {
    const passing = made.reduce(
      (total, { result }, j) => total + (weights[j] / sum) * result.curve.points[i].passingPct,
      0,
    );
    const [below, above] = [random, random].map((from) => 12 * from.uniform() ** 2);
    return {
      sizeMm,
      lowPct: Math.max(0, passing - below),
      highPct: Math.min(100, passing + above),
    };
  });
  const entry = { ...example.guidance[0].check.entry, points, consistency: [] } as GuidanceEntry;
  const config: FullResult["config"] = {
    ...example.config,
    materials: made.map((material) => material.config),
    target: { kind: "band", objective: seek as never },
    limits: [],
    maxMaterials: random.uniform() < 0.2 && count > 3 ? 3 : undefined,
    compareMix: undefined,
    site: {
      ...example.config.site,
      bucketL: [5, 10, 19][seed % 3],
      cementBy: seed % 2 === 0 ? "scale" : "bucket",
    },
  };
  return { config, materials: made.map(({ result }) => result), entries: [entry] };
}

function study(seed: number, seek: BandAim): FullResult {
  const { config, materials, entries } = problem(seed, seek);
  const { blend: sought, findings } = computeBlend(config, materials, entries);
  const blend = sought as typeof example.blend | undefined;
  if (!blend) throw new Error(JSON.stringify(findings));
  const { strength, compaction } = example;
  const made = computeMix(config, blend, strength, compaction);
  const found = [...findings, ...made.findings];
  return { ...example, config, materials, blend, mix: made.mix, findings: found };
}

/** All texts of a page, whatever it is made of. */
const textOf = (pages: unknown) => JSON.stringify(pages);

const CLOSE = 8;

/** Rows of the first table of a card, as printed. */
const rowsOfCard = (sheet: SiteSheet) =>
  rowsOf(sheet.blocks.find((block): block is TableBlock => block.kind === "table")!);

/** Each card, list and export speaks of the batch of the record, and cement keeps its tolerance or is told. */
function agreeWithRecord(result: FullResult): void {
  const mix = result.mix!;
  const { record } = mix;
  const { batch, buckets, parts, elements, total } = record;
  const ids = batch.materials.map(({ id }) => id);
  // The export: recipe, parts, quantities are those of the record.
  expect([mix.recipe, mix.parts, mix.quantities]).toEqual([batch, parts, total]);
  expect(record.batches).toBe(Math.ceil(total!.batches - 1e-9));
  const litres = new Map([...batch.materials, batch.cement].map((one) => [one.id, one]));
  for (const form of [buckets, parts]) {
    if (!form) continue;
    expect(form.materials.map(({ id }) => id)).toEqual(ids);
    const kgOf = ({ id, measure, dryMassKg }: MeasuredLine) => {
      const line = litres.get(id)!;
      return measure === null
        ? dryMassKg
        : (measure * form.size * line.dryMassKg) / line.looseVolumeL!;
    };
    const soilKg = form.materials.reduce((sum, line) => sum + kgOf(line), 0);
    // Buckets that nobody may count size no batch.
    if (form.withinTolerance || form.by !== "buckets") {
      expect(soilKg / batch.dryMassKg).toBeCloseTo(1, CLOSE);
    }
    const cementPct = (100 * kgOf(form.cement!)) / soilKg;
    expect(form.cement!.sharePct).toBeCloseTo(cementPct, CLOSE);
    const { low, high } = record.cementTolerance!;
    const inside = cementPct >= low - 1e-9 && cementPct <= high + 1e-9;
    const told =
      form.by === "buckets"
        ? /Do not use these buckets|weigh every material/i.test(
            allTextOf(siteBucketCard(result).blocks),
          )
        : allTextOf(mixCard(result).blocks).includes("No whole parts make this mix: weigh every");
    expect(told).toBe(!form.withinTolerance);
    if (!inside) expect(told).toBe(true);
  }
  // The printed cards.
  const { units } = result.config;
  const mass = (kilograms: number) => render(massText(kilograms, units));
  const count = (form: MeasuredForm | null, id: string) =>
    form?.materials.find((line) => line.id === id)?.measure ?? null;
  const crew = rowsOfCard(siteBucketCard(result));
  const card = rowsOfCard(mixCard(result));
  const table = rowsOf(recipeTable(result) as TableBlock);
  // Buckets and parts that make another mix have no column.
  const onScale = buckets?.withinTolerance ? 2 : 1;
  batch.materials.forEach(({ id, moistMassKg }, index) => {
    expect(crew[index][onScale]).toBe(mass(moistMassKg));
    expect(card[index].at(-1)).toBe(mass(moistMassKg));
    const bucket = count(buckets, id);
    if (bucket !== null && onScale === 2) expect(crew[index][1]).toBe(bucketsText(bucket));
    const part = count(parts, id);
    if (part !== null && parts?.withinTolerance) expect(table[index][6]).toBe(`${part}`);
    // A crew whose buckets do not make the mix weighs, and is told no parts either.
    const counted = buckets?.withinTolerance && parts?.withinTolerance;
    expect(card[index]).toHaveLength(counted ? 4 : 3);
    if (counted) expect(card[index][2]).toBe(`${part}`);
  });
  const cementMass = mass(batch.cement.dryMassKg);
  expect(crew[ids.length][onScale]).toBe(cementMass);
  expect(card[ids.length].at(-1)).toBe(cementMass);
  const batches = `${record.batches} in all`;
  for (const sheet of [mixCard(result), siteOrderList(result)]) {
    expect(allTextOf(sheet.blocks)).toContain(batches);
  }
  expect(allTextOf(quantitiesTable(result))).toContain(`${record.batches} of the size above`);
  expect(allTextOf(siteCuringLog(result).blocks)).toContain(
    `about ${elements[0].amounts.batchesPerLift.toFixed(1)} batches each`,
  );
  // What is ordered is so many batches, and the cement by bag holds it.
  const lost = new Map(result.config.materials.map(({ id, lossPct = 0 }) => [id, lossPct]));
  lost.set("cement", result.config.cement.lossPct ?? 0);
  for (const { id, moistMassKg, bags } of record.order!) {
    const kg = litres.get(id)!.moistMassKg * total!.batches * (1 + lost.get(id)! / 100);
    expect(moistMassKg / kg).toBeCloseTo(1, CLOSE);
    if (bags !== null)
      expect(bags * result.config.cement.bagMassKg).toBeGreaterThan(kg * (1 - 1e-9));
  }
}

describe("a blend sought within a band", () => {
  it("names no material without a share, and its masses agree with its shares", () => {
    let unused = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(...AIMS), (seed, seek) => {
        const result = study(seed, seek);
        const { config, blend, mix, findings } = result;
        if (!mix) throw new Error("no mix");
        const used = blend.shares.filter(({ sharePct }) => sharePct > 0);
        for (const { id, sharePct } of used) {
          expect(sharePct, id).toBeGreaterThanOrEqual(MIN_SHARE_PCT * (1 - 1e-9));
        }
        const gone = config.materials.filter(({ id }) => blend.notUsed.includes(id));
        expect(gone.length).toBe(blend.shares.length - used.length);
        unused += gone.length;
        const told = findings.filter(({ code }) => code === "material-not-used");
        expect(told.map(({ value }) => value)).toEqual(gone.map(({ name }) => name));

        const input = blendInput(config, result.materials, problem(seed, seek).entries);
        const densities = config.materials.map(({ looseBulkDensityKgM3 }) => looseBulkDensityKgM3);
        const looseDryDensityKgM3 = densities.map((density) => density ?? 1500);
        const whole = practicalParts(input, blend, { by: "volume", looseDryDensityKgM3 });
        const counts = whole.materials.map(({ parts }) => parts);
        const changes = bucketSensitivity(input, blend, counts, looseDryDensityKgM3);
        const pages = [
          recipeTable(result),
          mixCard(result),
          siteOrderList(result),
          siteSheets(result),
          quantitiesTable(result),
          costTable(result),
          carbonTable(result),
          toleranceTable(result),
          mix.recipe,
          mix.parts,
          mix.quantities.mix,
          blendPartsTable(whole, (id) => `${config.materials.find((m) => m.id === id)?.name}`),
          bucketTable(changes, (id) => `${config.materials.find((m) => m.id === id)?.name}`),
        ];
        for (const { name } of gone) expect(textOf(pages)).not.toContain(name);
        for (const { name } of config.materials) {
          expect(textOf(blendSharesTable(blend, config.materials))).toContain(name);
        }

        const ids = used.map(({ id }) => id);
        for (const { materials, dryMassKg } of [mix.recipe, mix.quantities.mix]) {
          expect(materials.map(({ id }) => id)).toEqual(ids);
          materials.forEach((line, index) => {
            expect((100 * line.dryMassKg) / dryMassKg).toBeCloseTo(used[index].sharePct, 8);
          });
        }
        agreeWithRecord(result);
      }),
      // A fault that shows in one study in fourteen is noticed with 95 %.
      { numRuns: 40, seed: 11 },
    );
    expect(unused).toBeGreaterThan(33);
  }, 120_000);
});

it("says how often a blend keeps its band, where the study tells how materials vary", async () => {
  const { blend, config, materials } = await exampleResult("reading-room");
  const { insideProbability, points } = blend.robustness!;
  const again = robustness({
    materials: materials.map(({ id, curve }) => ({ id, curve, minSharePct: 0, maxSharePct: 100 })),
    sharesPct: blend.shares.map(({ sharePct }) => sharePct),
    band: points.map(({ sizeMm, lowPct, highPct }) => ({ sizeMm, lowPct, highPct })),
    variation: [{ id: config.materials[0].id, finesPlusMinusPct: 4, batchingPlusMinusPct: 3 }],
    draws: 2000,
    seed: config.seed,
  });
  expect(insideProbability).toBe(again.insideProbability);
  // The band's sizes that the varied soil's own curve reaches: its finest grains are 0.00136 mm.
  expect(points.map(({ sizeMm }) => sizeMm)).toEqual([0.002, 0.063]);
  expect((await exampleResult("bus-shelter")).blend.robustness).toBeUndefined();
});

it("notes a material that is left out, unless the study itself forbids it", async () => {
  const { config, materials } = await exampleResult("reading-room");
  const notes = (maxSharePct: number) => {
    const allowed = config.materials.map((material) =>
      material.id === "pit-sand" ? { ...material, maxSharePct } : material,
    );
    return computeBlend({ ...config, materials: allowed }, materials, [])
      .findings.filter(({ code }) => code === "material-not-used")
      .map(({ value, column }) => [value, column]);
  };
  expect(notes(100)).toEqual([[config.materials[2].name, "materials.2.share"]]);
  expect(notes(0.5)).toHaveLength(1);
  expect(notes(0)).toEqual([]);
});
