import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { SpecimenRecord } from "../../src/lab/specimens.js";
import { strengthBands } from "../../src/strength/regression/bounds.js";
import { type FitStrengthOptions, fitStrength } from "../../src/strength/regression/fit.js";
import {
  breuschPagan,
  brownForsythe,
  fittedResiduals,
  residualChecks,
  shapiroWilk,
} from "../../src/strength/regression/residuals.js";
import { robustStrength } from "../../src/strength/regression/robustFit.js";
import { render } from "../../src/words/render.js";
import { near } from "./near.js";

const file = new URL("../reference/strengthStatsmodels.json", import.meta.url);
const fixture = JSON.parse(readFileSync(file, "utf8"));

const specimens: SpecimenRecord[] = fixture.blocks.map(
  (
    [cementPct, ageDays, batch, dryDensityKgM3, testMoisturePct, strengthMpa]: [
      number,
      number,
      string,
      number,
      number,
      number,
    ],
    index: number,
  ) => ({
    id: `B${index + 1}`,
    cementPct,
    ageDays,
    batch,
    dryDensityKgM3,
    testMoisturePct,
    strengthMpa,
    row: index + 2,
  }),
);

const DIGITS = { rel: 1e-9, abs: 1e-12 };

function fitOf(options: Partial<FitStrengthOptions> = {}, blocks = specimens) {
  const fit = fitStrength(blocks, { model: "linear", ageDays: 28, ...options });
  if (fit.status !== "ok") throw new Error(render(fit.message));
  return fit;
}

describe(`beside statsmodels ${fixture.versions.statsmodels}`, () => {
  const cases: [string, Partial<FitStrengthOptions>][] = [
    ["linear", {}],
    ["quadratic", { model: "quadratic" }],
    ["power", { model: "power" }],
    [
      "covariates",
      {
        covariates: ["ln age", "dry density", "moisture at test"],
        at: { "dry density": 1890, "moisture at test": 4 },
      },
    ],
    ["batches", { batches: "block" }],
    ["proportional", { variance: "proportional" }],
  ];
  it.each(cases)("%s: coefficients, errors, p and both bands", (name, options) => {
    const wanted = fixture[name];
    const fit = fitOf(options);
    expect(fit.degreesOfFreedom).toBe(wanted.df);
    near(fit.residualSd, wanted.scale, DIGITS, "s");
    wanted.params.forEach((value: number, index: number) => {
      near(fit.coefficients[index].value, value, DIGITS, `coefficient ${index}`);
      near(fit.coefficients[index].standardError, wanted.bse[index], DIGITS, `error ${index}`);
      near(
        fit.coefficients[index].pValue,
        wanted.pvalues[index],
        { rel: 1e-7, abs: 0 },
        `p ${index}`,
      );
    });
    const back = name === "power" ? Math.exp : (value: number) => value;
    strengthBands(fit, { cementPct: fixture.at }).forEach((at, index) => {
      const { bands } = wanted;
      near(at.meanMpa, back(bands.mean[index]), DIGITS, "mean");
      near(at.meanLowMpa, back(bands.mean_ci_lower[index]), DIGITS, "mean, low");
      near(at.meanHighMpa, back(bands.mean_ci_upper[index]), DIGITS, "mean, high");
      near(at.predictionLowMpa, back(bands.obs_ci_lower[index]), DIGITS, "block, low");
      near(at.predictionHighMpa, back(bands.obs_ci_upper[index]), DIGITS, "block, high");
    });
  });

  it("has its R², studentised residuals and Cook's distances", () => {
    const fit = fitOf();
    near(fit.rSquared, fixture.linear.r2, DIGITS, "R²");
    fit.points.forEach(({ studentised, cooksDistance }, index) => {
      near(studentised, fixture.linear.studentised[index], { rel: 1e-8, abs: 0 }, "studentised");
      near(cooksDistance, fixture.linear.cooks[index], { rel: 1e-8, abs: 0 }, "Cook");
    });
  });

  it("has the Huber estimate of RLM, and names the block that was pulled up", () => {
    const { pulledIndex, by, params } = fixture.huber;
    const day = specimens.filter(({ ageDays }) => ageDays === 28);
    const pulled = day.map((block, index) =>
      index === pulledIndex ? { ...block, strengthMpa: block.strengthMpa + by } : block,
    );
    const found = robustStrength(fitOf({}, pulled));
    expect(found.status).toBe("ok");
    found.coefficients.forEach((value, index) => {
      near(value, params[index], { rel: 1e-7, abs: 0 }, `coefficient ${index}`);
    });
    const least = [...found.reduced].sort((a, b) => a.weight - b.weight)[0];
    expect(least.id).toBe(day[pulledIndex].id);
    // Nearer to the truth than least squares: compare with the fit before the pull.
    const clean = fitOf();
    const off = (slope: number) => Math.abs(slope - clean.coefficients[1].value);
    expect(off(found.coefficients[1])).toBeLessThan(off(fitOf({}, pulled).coefficients[1].value));
  });
});

describe(`beside SciPy ${fixture.versions.scipy}`, () => {
  it("Shapiro–Wilk", () => {
    for (const { values, w, p } of fixture.checks.shapiro) {
      const found = shapiroWilk(values)!;
      // SciPy's own routine works in single precision.
      near(found.w, w, { rel: 2e-6, abs: 0 }, `W of ${values.length}`);
      near(found.pValue, p, { rel: 5e-4, abs: 1e-9 }, `p of ${values.length}`);
    }
    expect(shapiroWilk([1, 2])).toBeNull();
    expect(shapiroWilk([2, 2, 2, 2])).toBeNull();
    expect(() => shapiroWilk([1, Number.NaN, 3])).toThrow("`values[1]`: NaN");
  });

  it("Brown–Forsythe, and Breusch–Pagan of statsmodels", () => {
    const fit = fitOf();
    const residuals = fittedResiduals(fit);
    const groups = fit.contentsPct.map((content) =>
      residuals.filter((_, index) => fit.points[index].cementPct === content),
    );
    const variance = brownForsythe(groups)!;
    near(variance.statistic, fixture.checks.brownForsythe[0], DIGITS, "F");
    near(variance.pValue, fixture.checks.brownForsythe[1], DIGITS, "p");
    const growth = breuschPagan(
      residuals,
      fit.points.map(({ fittedMpa }) => fittedMpa),
    )!;
    near(growth.statistic, fixture.checks.breuschPagan[0], DIGITS, "LM");
    near(growth.pValue, fixture.checks.breuschPagan[1], DIGITS, "p");
    expect(residualChecks(fit).map(({ statistic }) => statistic)).toEqual([
      shapiroWilk(residuals)!.w,
      variance.statistic,
      growth.statistic,
    ]);
  });
});
