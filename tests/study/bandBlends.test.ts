import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { wholeBuckets } from "../../src/batch/wholeBuckets.js";
import { MIN_SHARE_PCT } from "../../src/blend/design.js";
import { bucketSensitivity, practicalParts } from "../../src/blend/parts.js";
import type { BandAim } from "../../src/blend/target.js";
import type { Finding } from "../../src/findings/finding.js";
import type { GuidanceEntry } from "../../src/guidance/entry.js";
import { createRandom } from "../../src/numerics/random.js";
import { blendInput, computeBlend } from "../../src/study/blend.js";
import { computeMix } from "../../src/study/mix.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { blendPartsTable, blendSharesTable, bucketTable } from "../../src/tables/blend.js";
import { carbonTable } from "../../src/tables/carbon.js";
import { costTable } from "../../src/tables/cost.js";
import { recipeTable, toleranceTable } from "../../src/tables/mix.js";
import { quantitiesTable, siteOrderList } from "../../src/tables/quantities.js";
import { siteSheets } from "../../src/tables/site/crewCards.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import { curve } from "../blend/materials.js";
import { exampleResult } from "../support/exampleResult.js";

const AIMS: readonly BandAim[] = ["most-site-soil", "least-cost", "nearest-middle"];
const SIZES = [0.063, 0.2, 0.63, 2, 6.3, 20];

let example: StudyResult;
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
        ...{ minSharePct: least, maxSharePct: random.uniform() < 0.2 ? 60 : 100 },
        ...{ bulkingPct: 10, haulKm: 20, finesPlusMinusPct: 1 },
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
  const config: StudyResult["config"] = {
    ...example.config,
    materials: made.map((material) => material.config),
    target: { kind: "band", objective: seek } as StudyResult["config"]["target"],
    limits: [],
    maxMaterials: random.uniform() < 0.2 && count > 3 ? 3 : undefined,
    compareMix: undefined,
  };
  return { config, materials: made.map(({ result }) => result), entries: [entry] };
}

function study(seed: number, seek: BandAim): StudyResult {
  const { config, materials, entries } = problem(seed, seek);
  const findings: Finding[] = [];
  const blend = computeBlend(config, materials, entries, findings);
  if (!blend) throw new Error(JSON.stringify(findings));
  const { strength, compaction } = example;
  const mix = computeMix(config, blend, strength, compaction, findings);
  return { ...example, config, materials, blend, mix, findings };
}

/** All texts of a page, whatever it is made of. */
const textOf = (pages: unknown) => JSON.stringify(pages);

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
          ...[recipeTable(result), mixCard(result), siteOrderList(result), siteSheets(result)],
          ...[quantitiesTable(result), costTable(result), carbonTable(result)],
          ...[toleranceTable(result), mix.recipe, mix.parts, mix.quantities.mix],
          ...[blendPartsTable(whole, (id) => `${config.materials.find((m) => m.id === id)?.name}`)],
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
        // Cement by parts is what parts and densities say, and never less than the recipe asks for.
        const { parts, recipe: asked } = mix;
        if (parts.status === "ok" && parts.cement) {
          expect(parts.materials.map(({ id }) => id)).toEqual(ids);
          const kg = parts.materials.reduce((total, { id, parts: count }) => {
            const line = asked.materials.find((one) => one.id === id);
            return total + (count * (line?.dryMassKg ?? 0)) / (line?.looseVolumeL ?? 1);
          }, 0);
          const { dryMassKg, looseVolumeL } = asked.cement;
          const cementKg = (parts.cement.parts * dryMassKg) / (looseVolumeL ?? 1);
          expect(parts.cement.sharePct).toBeCloseTo((100 * cementKg) / kg, 8);
          expect(parts.cement.sharePct).toBeGreaterThanOrEqual(asked.cementPct - 1e-9);
        }
        const { batch, materials } = wholeBuckets(asked, { bucketL: 10, bucketStep: 0.5 });
        if (batch) {
          expect(materials.map(({ id }) => id)).toEqual(ids);
          expect(batch.cementPct).toBeCloseTo(asked.cementPct, 8);
        }
      }),
      { numRuns: 120, seed: 11 },
    );
    expect(unused).toBeGreaterThan(100);
  }, 120_000);
});
