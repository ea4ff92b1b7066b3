import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type GradingModelName, straightLine } from "../../src/grading/models/gradingModel.js";
import { GRADING_MODELS } from "../../src/grading/models/gradingModels.js";
import cases from "../reference/gradingWorkedExamples.json" with { type: "json" };

const MODELS = Object.values(GRADING_MODELS);

/** Reasonable values for every model, as fractions of the way through a middle range. */
const TYPICAL: Record<GradingModelName, readonly (readonly [number, number])[]> = {
  power: [
    [8, 40],
    [0.15, 1],
  ],
  lognormal: [
    [0.01, 2],
    [0.5, 3],
  ],
  weibull: [
    [0.01, 2],
    [0.3, 2],
  ],
  "haverkamp-parlange": [
    [0.05, 2],
    [0.6, 4],
    [0.15, 1.5],
  ],
  fredlund: [
    [0.05, 2],
    [0.6, 4],
    [0.3, 2],
    [0.0005, 0.5],
  ],
  "bimodal-lognormal": [
    [0.2, 0.8],
    [0.002, 0.02],
    [0.4, 1.2],
    [1, 6],
    [0.4, 1],
  ],
  skaggs: [
    [0.05, 0.4],
    [0.05, 2],
    [0.2, 0.6],
  ],
  "fredlund-bimodal": [
    [0.2, 0.8],
    [0.005, 0.05],
    [0.6, 4],
    [0.3, 2],
    [0.5, 2],
    [0.6, 4],
    [0.3, 2],
    [0.0005, 0.5],
  ],
};

const valuesOf = (name: GradingModelName) =>
  fc.tuple(...TYPICAL[name].map(([min, max]) => fc.double({ min, max, noNaN: true })));

describe("cross-check vectors, computed with plain Python, not published", () => {
  it.each([
    [
      "fredlund",
      [0.5, 2, 0.8, 0.001],
      { 0.002: 14.6396, 0.063: 31.8147, 0.63: 85.9465, 2: 98.2179 },
    ],
    ["lognormal", [0.1, 1.5], { 0.063: 37.9032, 2: 97.7096 }],
    ["haverkamp-parlange", [0.1, 2.5, 0.2], { 0.002: 14.142, 0.063: 75.1421 }],
    ["skaggs", [0.2, 0.76976, 0.26585], { 0.002: 20, 0.02: 49.86, 0.05: 60, 0.1: 68.56, 0.25: 80 }],
  ] as const)("%s", (name, values, table) => {
    for (const [size, pct] of Object.entries(table)) {
      expect(GRADING_MODELS[name].evaluate(Number(size), values)).toBeCloseTo(
        pct,
        name === "skaggs" ? 1 : 3,
      );
    }
  });
});

it("a share is sought between 0 and 1, everything else above 0", () => {
  for (const { name: model, parameters } of MODELS) {
    for (const { name, lower, upper } of parameters) {
      expect(lower, `${model} ${name}`).toBeGreaterThanOrEqual(0);
      expect(upper, `${model} ${name}`).toBeGreaterThan(lower);
      if (/share/i.test(name)) expect(upper, `${model} ${name}`).toBeLessThanOrEqual(1);
    }
  }
});

describe("the Rosin–Rammler sheet of Doll 2017", () => {
  const { input, published } = cases["model-rr-regression"];
  const line = straightLine(
    input.sieve_um.map((size, index) => ({
      x: Math.log(size),
      y: Math.log(-Math.log(input.cum_retained_pct[index] / 100)),
    })),
  )!;

  it("slope, intercept and fitted percentages", () => {
    expect(Math.abs(line.slope - published.n)).toBeLessThan(0.002);
    expect(Math.abs(line.intercept - published.intercept)).toBeLessThan(0.002);
    const size63 = Math.exp(-line.intercept / line.slope);
    input.sieve_um.forEach((size, index) => {
      const retained = 100 - GRADING_MODELS.weibull.evaluate(size, [size63, line.slope]);
      expect(Math.abs(retained - published.fitted_retained_pct[index])).toBeLessThan(0.1);
    });
  });

  it("not the printed size, which is its reciprocal", () => {
    const size63 = Math.exp(-line.intercept / line.slope);
    expect(size63).toBeCloseTo(66.82, 1);
    expect(1 / size63).toBeCloseTo(published.DN_as_printed, 5);
  });
});

describe.each(MODELS.map((model) => [model.name, model] as const))("%s", (name, model) => {
  it("rises with size from 0 to 100", () => {
    fc.assert(
      fc.property(valuesOf(name), (values) => {
        let before = 0;
        const wrong: number[] = [];
        for (let exponent = -4; exponent <= 3; exponent += 0.05) {
          const pct = model.evaluate(10 ** exponent, values);
          if (!(pct >= before - 1e-9 && pct <= 100 + 1e-9)) wrong.push(exponent, pct);
          before = pct;
        }
        expect(wrong).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it("has the slopes of its own curve", () => {
    fc.assert(
      fc.property(
        valuesOf(name),
        fc.double({ min: -2.8, max: 1.4, noNaN: true }),
        (values, exponent) => {
          const size = 10 ** exponent;
          // The power curve has a kink at its top size.
          if (name === "power" && Math.abs(size / values[0] - 1) < 1e-3) return;
          const slopes = new Float64Array(values.length).fill(NaN);
          expect(model.evaluate(size, values, slopes)).toBe(model.evaluate(size, values));
          values.forEach((value, index) => {
            const step = 1e-5 * value;
            const at = (moved: number) =>
              model.evaluate(
                size,
                values.map((old, other) => (other === index ? moved : old)),
              );
            const difference = (at(value + step) - at(value - step)) / (2 * step);
            const scale = Math.max(1, Math.abs(difference), 1 / value);
            expect(Math.abs(slopes[index] - difference) / scale).toBeLessThan(1e-4);
          });
        },
      ),
      { numRuns: 60 },
    );
  });
});
