import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitGrading } from "../../src/grading/models/fit.js";
import type { GradingModelName } from "../../src/grading/models/gradingModel.js";
import { GRADING_MODELS } from "../../src/grading/models/gradingModels.js";
import { chooseModel } from "../../src/grading/models/modelChoice.js";
import { resampleGrading } from "../../src/grading/uncertainty/fitBand.js";
import { createRandom } from "../../src/numerics/random.js";
import { render, renderAll } from "../../src/words/render.js";
import { curveOf, frozen } from "./gradingCases.js";

const SIZES = [
  0.0015, 0.003, 0.006, 0.012, 0.025, 0.05, 0.063, 0.125, 0.25, 0.5, 1, 2, 4, 8, 16, 31.5,
];

function drawn(name: GradingModelName, values: readonly number[], noisePct = 0, seed = 1) {
  const random = createRandom(seed);
  let before = 0;
  return curveOf(
    ...SIZES.map((size): [number, number] => {
      const pct = GRADING_MODELS[name].evaluate(size, values) + noisePct * random.normal();
      before = Math.min(100, Math.max(before, pct));
      return [size, before];
    }),
  );
}

describe("fitGrading", () => {
  it.each([
    ["power", [16, 0.28]],
    ["lognormal", [0.12, 2.4]],
    ["weibull", [0.4, 0.45]],
    ["haverkamp-parlange", [0.9, 0.8, 0.4]],
    ["bimodal-lognormal", [0.45, 0.008, 1.2, 1.4, 1.1]],
  ] as const)("finds the %s curve that the points were drawn from", (name, values) => {
    const fit = fitGrading(drawn(name, values), name);
    expect(fit.converged).toBe(true);
    fit.parameters.forEach(({ value }, index) => {
      expect(Math.abs(value / values[index] - 1)).toBeLessThan(1e-5);
    });
    expect(fit.residualSdPct).toBeLessThan(1e-5);
  });

  it("meets the points of a Fredlund curve, whose fine end the points hardly fix", () => {
    const fit = fitGrading(drawn("fredlund", [0.5, 1.2, 1, 0.001]), "fredlund");
    expect(fit.residualSdPct).toBeLessThan(0.05);
  });

  it("finds bimodal curves from its own starts, wherever the modes lie", () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        between(0.25, 0.75),
        between(0.004, 0.03),
        between(0.4, 1.1),
        between(0.6, 5),
        between(0.4, 1.1),
        (...values) => {
          const fit = fitGrading(drawn("bimodal-lognormal", values), "bimodal-lognormal");
          expect(fit.residualSdPct).toBeLessThan(0.01);
        },
      ),
      { numRuns: 40, seed: 3 },
    );
  });

  it("its intervals hold the true value about as often as they say", () => {
    // 300 noisy curves: 95 % give 285, and 0.5 % chance of fewer than 274.
    let held = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const random = createRandom(seed);
      const pairs = SIZES.slice(3, 13).map((size): [number, number] => [
        size,
        GRADING_MODELS.lognormal.evaluate(size, [0.12, 1.9]) + 0.8 * random.normal(),
      ]);
      const [low, high] = fitGrading(curveOf(...pairs), "lognormal").parameters[0].interval95!;
      if (low <= 0.12 && 0.12 <= high) held++;
    }
    expect(held).toBeGreaterThanOrEqual(274);
    expect(held).toBeLessThanOrEqual(296);
  });

  it("scales its sizes with the curve and nothing else", () => {
    const curve = drawn("weibull", [0.4, 0.6], 1);
    const coarser = {
      points: curve.points.map((point) => ({ ...point, sizeMm: 10 * point.sizeMm })),
    };
    const [a, b] = [curve, coarser].map((each) => fitGrading(each, "weibull"));
    expect(b.parameters[0].value / a.parameters[0].value).toBeCloseTo(10, 6);
    expect(b.parameters[1].value).toBeCloseTo(a.parameters[1].value, 7);
    expect(b.aicc).toBeCloseTo(a.aicc!, 6);
  });

  it("does not use points that say nothing, and leaves the curve alone", () => {
    const curve = frozen(drawn("weibull", [0.4, 0.9], 1));
    const longer = curveOf(
      ...curve.points.map(({ sizeMm, passingPct }): [number, number] => [sizeMm, passingPct]),
      [63, 100],
      [90, 100],
    );
    expect(fitGrading(longer, "weibull").parameters).toEqual(
      fitGrading(curve, "weibull").parameters,
    );
  });

  it("warns of a parameter on its bound, of a guess that stayed one, and of few points", () => {
    // Nothing but a step: no spread is small enough.
    const step = fitGrading(curveOf([0.5, 0], [1, 50], [1.001, 100]), "lognormal");
    expect(renderAll(step.warnings)).toEqual([
      "“spread” is at its lower bound: the points do not determine it, and the other standard errors take it as known.",
      "Only 1 degree of freedom: the standard errors are very uncertain.",
    ]);
    const steep = [0.5, 0.7, 0.85, 1].map((sizeMm) => [sizeMm, 100 * sizeMm ** 8] as const);
    const power = fitGrading(curveOf(...steep), "power");
    expect(power.parameters.find(({ name }) => name === "exponent")?.value).toBeCloseTo(5, 6);
    const few = fitGrading(curveOf([0.1, 10], [1, 40], [8, 90]), "lognormal");
    expect(few.degreesOfFreedom).toBe(1);
    expect(renderAll(few.warnings).join(" ")).toContain("Only 1 degree of freedom");
    expect(few.aicc).toBeUndefined();
    const sand = fitGrading(
      curveOf(
        [0.063, 2],
        [0.125, 3],
        [0.25, 8.2],
        [0.5, 26.9],
        [1, 59.4],
        [2, 87.1],
        [4, 98.2],
        [6.3, 100],
      ),
      "fredlund",
    );
    expect(renderAll(sand.warnings).join(" ")).toContain("“residualSize”");
  });

  it("refuses fewer points than parameters", () => {
    expect(() => fitGrading(curveOf([0.1, 10], [1, 50]), "bimodal-lognormal")).toThrow(RangeError);
    expect(() => fitGrading(curveOf([0.1, 10], [1, 50]), "jaky" as GradingModelName)).toThrow(
      "invalid `name`: jaky",
    );
  });

  it("takes a few milliseconds at most", () => {
    const curve = drawn("bimodal-lognormal", [0.45, 0.008, 1.2, 1.4, 1.1], 0.5);
    const names = Object.keys(GRADING_MODELS) as GradingModelName[];
    const run = () => names.map((name) => fitGrading(curve, name));
    for (let warm = 0; warm < 5; warm++) run();
    const before = process.cpuUsage();
    for (let round = 0; round < 5; round++) run();
    const { user, system } = process.cpuUsage(before);
    // Measured about 1.4 ms of processor time a fit; ten times that is a fault, not a slow machine.
    expect((user + system) / 1000 / 5 / names.length).toBeLessThan(14);
  });
});

describe("chooseModel", () => {
  it.each([
    ["power", [20, 0.35]],
    ["bimodal-lognormal", [0.45, 0.008, 1.2, 1.4, 1.1]],
  ] as const)("finds again that the points follow the %s curve", (name, values) => {
    const { ranking, leftOut } = chooseModel(drawn(name, values, 0.3));
    expect(ranking[0].fit.model).toBe(name);
    expect(ranking[0].deltaAicc).toBe(0);
    expect(ranking.length + leftOut.length).toBe(Object.keys(GRADING_MODELS).length);
    ranking.slice(1).forEach(({ deltaAicc }, index) => {
      expect(deltaAicc).toBeGreaterThanOrEqual(ranking[index].deltaAicc);
    });
  });

  it("leaves out models with too few points to judge them, and says so", () => {
    const { ranking, leftOut } = chooseModel(
      curveOf([0.063, 2], [0.25, 20], [1, 60], [2, 87], [4, 98], [8, 100]),
    );
    expect(ranking.map(({ fit }) => fit.model)).toContain("weibull");
    expect(leftOut.map(({ model }) => model)).toEqual([
      "fredlund",
      "bimodal-lognormal",
      "fredlund-bimodal",
    ]);
    expect(render(leftOut[0].reason)).toContain("at least 7");
  });

  it("comes back from any curve that a sheet can give", () => {
    const steps = fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0, max: 30, noNaN: true })), {
      minLength: 1,
      maxLength: 16,
    });
    fc.assert(
      fc.property(steps, (given) => {
        let passing = 0;
        const curve = curveOf(
          ...given.map((step, index): [number, number] => {
            passing = Math.min(100, passing + step);
            return [SIZES[index], passing];
          }),
        );
        const { ranking, leftOut } = chooseModel(curve);
        expect(ranking.length + leftOut.length).toBe(Object.keys(GRADING_MODELS).length);
        for (const { fit } of ranking) {
          expect(Number.isFinite(fit.aicc)).toBe(true);
          // Infinities and NaN would become null.
          expect(JSON.stringify(fit)).not.toContain("null");
        }
      }),
      { numRuns: 40 },
    );
  });

  it("shows ties", () => {
    // A narrow curve with noise: lognormal and Weibull hardly differ.
    const { ranking, ties } = chooseModel(drawn("lognormal", [0.2, 1.2], 1.5, 5));
    expect(ties).toEqual(
      ranking.filter(({ deltaAicc }) => deltaAicc < 2).map(({ fit }) => fit.model),
    );
    expect(ties.length).toBeGreaterThanOrEqual(1);
  });
});

describe("resampleGrading", () => {
  const fit = fitGrading(drawn("weibull", [0.4, 0.5], 1), "weibull");
  const options = { sizesMm: [0.002, 0.063, 2], seed: 11 };

  it("gives the same band for the same seed and another for another", () => {
    expect(resampleGrading(fit, options)).toEqual(resampleGrading(fit, options));
    expect(resampleGrading(fit, { ...options, seed: 12 })).not.toEqual(
      resampleGrading(fit, options),
    );
  });

  it("holds the fitted curve, and widens with coverage", () => {
    const wide = resampleGrading(fit, { ...options, coverage: 0.95 });
    const narrow = resampleGrading(fit, { ...options, coverage: 0.5 });
    wide.forEach(({ lowPct, fittedPct, highPct }, index) => {
      expect(lowPct).toBeLessThan(fittedPct);
      expect(highPct).toBeGreaterThan(fittedPct);
      expect(highPct - lowPct).toBeGreaterThan(narrow[index].highPct - narrow[index].lowPct);
    });
  });

  it("agrees in size with the linearised error of the curve", () => {
    const [{ lowPct, highPct }] = resampleGrading(fit, { sizesMm: [0.4], seed: 2, resamples: 400 });
    // Along d63 alone the curve moves by slope times its error; the two errors together are of that size.
    const slopes = new Float64Array(2);
    const values = fit.parameters.map(({ value }) => value);
    GRADING_MODELS.weibull.evaluate(0.4, values, slopes);
    const width = 2 * 1.96 * Math.abs(slopes[0]) * fit.parameters[0].standardError!;
    expect((highPct - lowPct) / width).toBeGreaterThan(0.6);
    expect((highPct - lowPct) / width).toBeLessThan(1.6);
  });

  it("refuses what it cannot do", () => {
    expect(() => resampleGrading(fit, { ...options, coverage: 1 })).toThrow(
      "invalid `coverage`: 1",
    );
    expect(() => resampleGrading(fit, { ...options, resamples: 1 })).toThrow("invalid `resamples`");
    const exact = fitGrading(curveOf([0.1, 10], [1, 60]), "lognormal");
    expect(() => resampleGrading(exact, options)).toThrow("0 degrees of freedom");
  });
});
