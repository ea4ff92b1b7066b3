import { describe, expect, it } from "vitest";
import { fiellerContent } from "../../src/strength/contentInterval.js";
import { strengthBands } from "../../src/strength/regression/bounds.js";
import { fitStrength } from "../../src/strength/regression/fit.js";
import { lackOfFit } from "../../src/strength/regression/lackOfFit.js";
import { compareModels } from "../../src/strength/regression/modelComparison.js";
import { render } from "../../src/words/render.js";
import { blocksOf, fitted, SIXTEEN } from "./blocks.js";
import { near } from "./near.js";

const FORMS = ["linear", "quadratic", "logarithmic", "power"] as const;
const RAGGED = SIXTEEN.filter((_, index) => ![3, 6, 7, 14].includes(index));

describe("fitStrength", () => {
  it("uses one age and leaves out the excluded", () => {
    const blocks = blocksOf(SIXTEEN).map((block, index) => ({
      ...block,
      ...(index === 0 ? { excluded: "corner broken" } : {}),
      ...(index === 1 ? { ageDays: 7 } : {}),
    }));
    const before = JSON.stringify(blocks);
    const fit = fitStrength(blocks, { model: "linear", ageDays: 28 });
    expect(fit.blocks).toBe(14);
    expect(JSON.stringify(blocks)).toBe(before);
  });

  it("knows no distance for a block that its own curve goes through", () => {
    const { points } = fitted([
      [4, 1.4],
      [4, 1.6],
      [4, 1.5],
      [4, 1.9],
      [8, 3],
    ]);
    expect(points[4].leverage).toBeCloseTo(1, 12);
    expect([points[4].studentised, points[4].cooksDistance]).toEqual([null, null]);
    // (1.4 − 1.6)² × ¼ over two coefficients, the variance 0.14 / 3 and (1 − ¼)².
    expect(points[0].cooksDistance).toBeCloseTo(0.01 / ((2 * 0.14 * 0.5625) / 3), 9);
  });

  it.each(FORMS)("%s: leave-one-out error equals that of refitting without each block", (model) => {
    const squares = RAGGED.map(([content, strength], index) => {
      const rest = fitted(
        RAGGED.filter((_, other) => other !== index),
        model,
      );
      return (strengthBands(rest, { cementPct: [content] })[0].meanMpa - strength) ** 2;
    });
    const wanted = Math.sqrt(squares.reduce((sum, value) => sum + value, 0) / RAGGED.length);
    near(fitted(RAGGED, model).leaveOneOutErrorMpa, wanted, { rel: 1e-9, abs: 0 }, "error");
  });

  it.each(FORMS)(
    "%s: studentised residual and Cook's distance equal those of refitting",
    (model) => {
      const whole = fitted(RAGGED, model);
      const log = model === "power" ? Math.log : (value: number) => value;
      whole.points.forEach((point, index) => {
        const rest = fitted(
          RAGGED.filter((_, other) => other !== index),
          model,
        );
        const [at] = strengthBands(rest, { cementPct: [point.cementPct] });
        const error = log(point.strengthMpa) - log(at.meanMpa);
        const wanted = error / (rest.residualSd * Math.sqrt(1 + at.leverage));
        near(point.studentised, wanted, { rel: 1e-8, abs: 1e-10 }, "studentised");
        const moved = whole.points.reduce((sum, { cementPct, fittedMpa }) => {
          const [other] = strengthBands(rest, { cementPct: [cementPct] });
          return sum + (log(fittedMpa) - log(other.meanMpa)) ** 2;
        }, 0);
        near(
          point.cooksDistance,
          moved / (whole.coefficients.length * whole.residualSd ** 2),
          { rel: 1e-8, abs: 1e-12 },
          "Cook",
        );
      });
    },
  );

  it("fits the power model exactly to a power law, and calls its line the median", () => {
    const fit = fitted(
      [3, 4, 6, 8, 11].map((content) => [content, 0.4 * content ** 0.9]),
      "power",
    );
    expect(fit.line).toBe("median");
    near(Math.exp(fit.coefficients[0].value), 0.4, { rel: 1e-10, abs: 0 }, "a");
    near(fit.coefficients[1].value, 0.9, { rel: 1e-10, abs: 0 }, "b");
    expect(fit.aicc).toBeNull();
  });

  it("takes logarithms of contents below 1 %", () => {
    const pairs = [0.5, 1, 2, 4].flatMap((c) => [
      [c, 1 + c ** 0.5],
      [c, 1.1 + c ** 0.5],
    ]);
    expect(fitted(pairs, "logarithmic").contentsPct).toEqual([0.5, 1, 2, 4]);
  });

  it("compares AICc of the power model on the same strengths in MPa", () => {
    // Independent of the code: the log-likelihood of the lognormal density at its maximum.
    const fit = fitted(SIXTEEN, "power");
    const n = SIXTEEN.length;
    const variance =
      fit.points.reduce(
        (sum, { strengthMpa, fittedMpa }) => sum + Math.log(strengthMpa / fittedMpa) ** 2,
        0,
      ) / n;
    const logLikelihood = fit.points.reduce((sum, { strengthMpa, fittedMpa }) => {
      const z2 = Math.log(strengthMpa / fittedMpa) ** 2 / variance;
      return sum - Math.log(strengthMpa * Math.sqrt(2 * Math.PI * variance)) - z2 / 2;
    }, 0);
    near(fit.aicc, -2 * logLikelihood + 6 + 24 / (n - 4), { rel: 1e-10, abs: 0 }, "AICc");
  });

  it("says what is missing instead of fitting", () => {
    const status = (pairs: readonly (readonly number[])[], model: (typeof FORMS)[number]) =>
      fitStrength(blocksOf(pairs), { model, ageDays: 28 });
    expect(status(SIXTEEN.slice(0, 2), "linear").status).toBe("too-few-points");
    expect(status(SIXTEEN.slice(0, 4), "linear").status).toBe("rank-deficient");
    expect(status(SIXTEEN.slice(0, 8), "quadratic").status).toBe("rank-deficient");
    const zero = status([[0, 0.4], ...SIXTEEN], "logarithmic");
    expect(zero.status).toBe("not-defined");
    expect(render(zero.message)).toContain("B1");
    expect(() => fitStrength([], { model: "cubic" as "linear", ageDays: 28 })).toThrow(/cubic/);
    expect(() => fitStrength([], { model: "linear", ageDays: -1 })).toThrow(
      "invalid `ageDays`: -1",
    );
  });

  it("has no finite interval where the slope is lost in scatter", () => {
    const flat = SIXTEEN.map(([content], index) => [content, 2 + 0.3 * Math.sin(7 * index)]);
    const found = fiellerContent(fitted(flat), { strengthMpa: 2, statistic: "mean" });
    expect(found.status).toBe("slope-not-significant");
    expect(render(found.message)).toMatch(/^At \d\d(\.\d)? % confidence these blocks do not/);
    expect(found.g).toBeGreaterThanOrEqual(1);
    expect([found.lowPct, found.highPct]).toEqual([null, null]);
  });
});

it("gives Cook's distance as by hand, and none where nothing scatters", () => {
  const fit = fitted(SIXTEEN);
  for (const { residualMpa, leverage, cooksDistance } of fit.points) {
    const own = (residualMpa ** 2 * leverage) / (2 * fit.residualSd ** 2 * (1 - leverage) ** 2);
    expect(cooksDistance).toBeCloseTo(own, 12);
  }
  // Two coefficients and a scatter near 1 MPa, so that no number stands in for another.
  const wide = fitted(
    SIXTEEN.map(([content, strength], at) => [content, strength + (at % 2 ? 1 : -1)]),
  );
  expect(wide.points.every(({ cooksDistance }) => cooksDistance !== null)).toBe(true);
});

describe("strengthBands", () => {
  it("covers the tested contents, marks what lies beyond, and nests", () => {
    const fit = fitted(SIXTEEN);
    const bands = strengthBands(fit, { steps: 12 });
    expect([bands[0].cementPct, bands[12].cementPct, bands.length]).toEqual([4, 10, 13]);
    for (const at of bands) {
      expect(at.extrapolated).toBe(false);
      expect(at.predictionLowMpa).toBeLessThan(at.meanLowMpa);
      expect(at.lowerBoundMpa.tolerance).toBeLessThan(at.lowerBoundMpa.prediction);
      expect(at.lowerBoundMpa.prediction).toBeLessThan(at.lowerBoundMpa.mean);
    }
    expect(strengthBands(fit, { cementPct: [3.9] })[0].extrapolated).toBe(true);
    expect(() => strengthBands(fitted(SIXTEEN, "power"), { cementPct: [0] })).toThrow(
      "invalid `cementPct`: 0",
    );
  });
});

describe("lackOfFit", () => {
  it("tells why it cannot test", () => {
    const singles = SIXTEEN.filter((_, index) => index % 4 === 0);
    expect(lackOfFit(fitted(singles)).status).toBe("no-replicates");
    expect(lackOfFit(fitted(SIXTEEN.slice(0, 8))).status).toBe("no-spare-contents");
    const copied = [...singles, ...singles];
    expect(lackOfFit(fitted(copied)).status).toBe("no-scatter");
  });
});

describe("compareModels", () => {
  it("ranks by AICc with ties, keeps the straight line and says why", () => {
    const { models, used, message } = compareModels(blocksOf(SIXTEEN), { ageDays: 28 });
    expect(used).toBe("linear");
    expect(render(message)).toContain("no model was chosen");
    const scores = models.map(({ aicc }) => aicc!);
    expect([...scores].sort((a, b) => a - b)).toEqual(scores);
    expect(models[0].rank).toBe(1);
    models.forEach(({ rank, aicc }) => {
      const leader = models.find((other) => other.rank === rank)!;
      expect(aicc! - leader.aicc!).toBeLessThan(2);
    });
  });

  it("keeps the form of the caller, and shows forms that cannot be fitted", () => {
    const { models, used, message } = compareModels(blocksOf([[0, 0.3], ...SIXTEEN]), {
      ageDays: 28,
      model: "power",
    });
    expect(used).toBe("power");
    expect(render(message)).toContain("could not be fitted");
    expect(models.slice(2).map(({ rank }) => rank)).toEqual([null, null]);
  });
});
