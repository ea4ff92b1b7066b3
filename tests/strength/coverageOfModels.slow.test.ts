import { describe, expect, it } from "vitest";
import type { SpecimenRecord } from "../../src/lab/specimens.js";
import { createRandom, type Random } from "../../src/numerics/random.js";
import { batchMeans } from "../../src/strength/batches.js";
import { fiellerContent } from "../../src/strength/contentInterval.js";
import { leastCement } from "../../src/strength/leastCement.js";
import { strengthBands } from "../../src/strength/regression/bounds.js";
import { type FitStrengthOptions, fitStrength } from "../../src/strength/regression/fit.js";
import { render } from "../../src/words/render.js";

const STUDIES = 2000;
const CONTENTS = [4, 6, 8, 10];
const AT = 6.5;
const Z95 = 1.6448536269514722;

/** Blocks of a study: each content's batches, each batch's blocks; `strength` makes one block. */
function study(
  batches: number,
  blocks: number,
  strength: (content: number, batch: number) => Omit<SpecimenRecord, "id" | "row" | "cementPct">,
): SpecimenRecord[] {
  const made: SpecimenRecord[] = [];
  for (const cementPct of CONTENTS) {
    for (let batch = 0; batch < batches; batch += 1) {
      for (let block = 0; block < blocks; block += 1) {
        const row = made.length + 2;
        made.push({ ...strength(cementPct, batch), cementPct, id: `B${row}`, row });
      }
    }
  }
  return made;
}

/** Shares, in percent, of studies whose bands hold the truth. */
function shares(of: {
  readonly seed: number;
  readonly options: Omit<FitStrengthOptions, "ageDays">;
  readonly make: (random: Random) => SpecimenRecord[];
  readonly meanMpa: number;
  readonly draw: (random: Random) => number;
  readonly quantileMpa: number;
}) {
  const random = createRandom(of.seed);
  const hits = { mean: 0, prediction: 0, tolerance: 0, inverted: 0, least: 0 };
  for (let count = 0; count < STUDIES; count += 1) {
    const fit = fitStrength(of.make(random), { ageDays: 28, ...of.options });
    if (fit.status !== "ok") throw new Error(render(fit.message));
    const [at] = strengthBands(fit, { cementPct: [AT] });
    const one = of.draw(random);
    hits.mean += Number(at.meanLowMpa <= of.meanMpa && of.meanMpa <= at.meanHighMpa);
    hits.prediction += Number(at.predictionLowMpa <= one && one <= at.predictionHighMpa);
    hits.tolerance += Number(at.lowerBoundMpa.tolerance <= of.quantileMpa);
    const rule = { strengthMpa: of.meanMpa, statistic: "mean", confidence: 0.95 } as const;
    const least = leastCement(fit, rule);
    hits.least += Number(least.status === "above-range" || least.cementPct! >= AT);
    const { interval } = least;
    hits.inverted += Number(interval !== null && interval.lowPct <= AT && AT <= interval.highPct);
  }
  return Object.fromEntries(Object.entries(hits).map(([key, hit]) => [key, (100 * hit) / STUDIES]));
}

function expectNinetyFive(
  found: Readonly<Record<string, number>>,
  keys = Object.keys(found),
): void {
  for (const key of keys) {
    expect(found[key], key).toBeGreaterThanOrEqual(93.5);
    expect(found[key], key).toBeLessThanOrEqual(96.5);
  }
}

describe("coverage in 2,000 simulated studies of each model", () => {
  it("quadratic form", () => {
    const truth = (content: number) => -0.4 + 0.62 * content - 0.02 * content ** 2;
    expectNinetyFive(
      shares({
        seed: 11,
        options: { model: "quadratic" },
        meanMpa: truth(AT),
        make: (random) =>
          study(1, 4, (content) => ({
            ageDays: 28,
            strengthMpa: truth(content) + 0.15 * random.normal(),
          })),
        draw: (random) => truth(AT) + 0.15 * random.normal(),
        quantileMpa: truth(AT) - Z95 * 0.15,
      }),
    );
  });

  it("power form: the median and blocks of lognormal scatter", () => {
    const truth = (content: number) => 0.42 * content ** 0.9;
    expectNinetyFive(
      shares({
        seed: 12,
        options: { model: "power" },
        meanMpa: truth(AT),
        make: (random) =>
          study(1, 4, (content) => ({
            ageDays: 28,
            strengthMpa: truth(content) * Math.exp(0.12 * random.normal()),
          })),
        draw: (random) => truth(AT) * Math.exp(0.12 * random.normal()),
        quantileMpa: truth(AT) * Math.exp(-Z95 * 0.12),
      }),
    );
  });

  it("covariates age, density and moisture, the curve at one value of each", () => {
    const truth = (content: number, age: number, density: number, moisture: number) =>
      0.3 +
      0.35 * content +
      0.3 * Math.log(age / 28) +
      0.003 * (density - 1900) -
      0.06 * (moisture - 4);
    expectNinetyFive(
      shares({
        options: {
          model: "linear",
          covariates: ["ln age", "dry density", "moisture at test"],
          at: { "dry density": 1900, "moisture at test": 4 },
        },
        seed: 13,
        meanMpa: truth(AT, 28, 1900, 4),
        make: (random) =>
          study(1, 6, (content) => {
            const ageDays = [7, 28, 90][random.integer(3)];
            const dryDensityKgM3 = 1900 + 40 * random.normal();
            const testMoisturePct = 4 + 2 * (random.uniform() - 0.5);
            const strengthMpa =
              truth(content, ageDays, dryDensityKgM3, testMoisturePct) + 0.25 * random.normal();
            return { ageDays, dryDensityKgM3, testMoisturePct, strengthMpa };
          }),
        draw: (random) => truth(AT, 28, 1900, 4) + 0.25 * random.normal(),
        quantileMpa: truth(AT, 28, 1900, 4) - Z95 * 0.25,
      }),
    );
  });

  it("scatter that grows with strength, weighted", () => {
    const truth = (content: number) => -0.6 + 0.42 * content;
    expectNinetyFive(
      shares({
        seed: 14,
        options: { model: "linear", variance: "proportional" },
        meanMpa: truth(AT),
        make: (random) =>
          study(1, 5, (content) => ({
            ageDays: 28,
            strengthMpa: truth(content) * (1 + 0.1 * random.normal()),
          })),
        draw: (random) => truth(AT) * (1 + 0.1 * random.normal()),
        quantileMpa: truth(AT) * (1 - Z95 * 0.1),
      }),
    );
  });

  it("batches across contents, each with a level of its own: the curve of these batches' average", () => {
    // Fixed batches: their levels are part of the truth, and sum to zero.
    const levels = [-0.3, 0.05, 0.25];
    const truth = (content: number) => 0.3 + 0.35 * content;
    const options = { model: "linear", batches: "block" } as const;
    expectNinetyFive(
      shares({
        seed: 15,
        options,
        meanMpa: truth(AT),
        make: (random) =>
          study(3, 2, (content, batch) => ({
            ageDays: 28,
            batch: `M${batch}`,
            strengthMpa: truth(content) + levels[batch] + 0.2 * random.normal(),
          })),
        draw: (random) => truth(AT) + 0.2 * random.normal(),
        quantileMpa: truth(AT) - Z95 * 0.2,
      }),
    );
  });

  it("batches within contents: single blocks claim too much, means of batches are right", () => {
    const truth = (content: number) => 0.3 + 0.35 * content;
    const make = (random: Random) =>
      CONTENTS.flatMap((content) =>
        [1, 2].flatMap((batch) => {
          const level = 0.25 * random.normal();
          return [1, 2, 3].map(
            (block): SpecimenRecord => ({
              id: `${content}-${batch}-${block}`,
              row: 2,
              ageDays: 28,
              cementPct: content,
              batch: `${content}-${batch}`,
              strengthMpa: truth(content) + level + 0.15 * random.normal(),
            }),
          );
        }),
      );
    const count = (prepare: (blocks: readonly SpecimenRecord[]) => readonly SpecimenRecord[]) => {
      const random = createRandom(16);
      let [mean, inverted] = [0, 0];
      for (let i = 0; i < STUDIES; i += 1) {
        const fit = fitStrength(prepare(make(random)), { model: "linear", ageDays: 28 });
        const [at] = strengthBands(fit, { cementPct: [AT] });
        mean += Number(at.meanLowMpa <= truth(AT) && truth(AT) <= at.meanHighMpa);
        const { lowPct, highPct } = fiellerContent(fit, {
          strengthMpa: truth(AT),
          statistic: "mean",
        });
        inverted += Number(lowPct !== null && highPct !== null && lowPct <= AT && AT <= highPct);
      }
      return { mean: (100 * mean) / STUDIES, inverted: (100 * inverted) / STUDIES };
    };
    expectNinetyFive(count(batchMeans));
    expect(count((blocks) => blocks).mean).toBeLessThan(88);
  });
});
