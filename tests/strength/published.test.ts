import { readFileSync } from "node:fs";
import { describe, it } from "vitest";
import { tQuantile } from "../../src/numerics/distributions.js";
import { fiellerContent } from "../../src/strength/contentInterval.js";
import { lackOfFit } from "../../src/strength/regression/lackOfFit.js";
import { render } from "../../src/words/render.js";
import { fitted } from "./blocks.js";
import { near } from "./near.js";

interface Case {
  readonly source: string;
  readonly points: readonly (readonly number[])[];
  readonly expected: {
    readonly inverse?: readonly {
      strength: number;
      statistic: "mean" | "prediction";
      confidence: number;
      content: number;
      low: number;
      high: number;
    }[];
    readonly wald?: readonly {
      strength: number;
      statistic: "mean" | "prediction";
      standardError: number;
    }[];
  };
}

const file = new URL("../reference/strengthRegression.json", import.meta.url);
const cases = JSON.parse(readFileSync(file, "utf8"));
const all = Object.entries(cases) as [string, Case][];

/** Half a unit of the last digit as printed in the source. */
const printed = (value: number) => ({
  rel: 0,
  abs: 0.51 * 10 ** -(String(value).split(".")[1]?.length ?? 0),
});

describe("inverse prediction against published results", () => {
  for (const [name, { points, source, expected }] of all) {
    for (const entry of expected.inverse ?? []) {
      it(`${name}, ${entry.statistic} ${entry.strength}: ${source}`, () => {
        const { strength: strengthMpa, statistic, confidence } = entry;
        const found = fiellerContent(fitted(points), { strengthMpa, statistic, confidence });
        near(found.cementPct, entry.content, printed(entry.content), "content");
        // The sources print round limits (103.4) of fewer digits than the JSON number shows.
        near(found.lowPct, entry.low, printed(entry.low), "low");
        near(found.highPct, entry.high, printed(entry.high), "high");
      });
    }
    for (const entry of expected.wald ?? []) {
      it(`${name}, Wald standard error, ${entry.statistic}`, () => {
        const { strength: strengthMpa, statistic } = entry;
        const found = fiellerContent(fitted(points), { strengthMpa, statistic });
        near(found.standardErrorPct, entry.standardError, printed(entry.standardError), "se");
      });
    }
  }

  it("inv-din32645: half width, which the standard takes from the Wald standard error", () => {
    const {
      strength: strengthMpa,
      statistic,
      confidence,
      value,
    } = cases["inv-din32645"].expected.halfWidth;
    const { points } = cases["inv-din32645"];
    const { standardErrorPct } = fiellerContent(fitted(points), { strengthMpa, statistic });
    const t = tQuantile((1 + confidence) / 2, points.length - 2);
    near(t * standardErrorPct, value, { rel: 0, abs: 5.1e-6 }, "half width");
  });
});

describe("lack of fit", () => {
  it("cadmium: published F, degrees of freedom and p", () => {
    const { points, expected } = cases["lof-cadmium"];
    const found = lackOfFit(fitted(points));
    near(found.fValue, expected.lackOfFit.f, { rel: 0, abs: 5e-4 }, "F");
    near(found.pValue, expected.lackOfFit.p, { rel: 0, abs: 5.1e-5 }, "p");
    near(found.lackDegreesOfFreedom, expected.lackOfFit.df[0], { rel: 0, abs: 0 }, "df lack");
    near(found.pureDegreesOfFreedom, expected.lackOfFit.df[1], { rel: 0, abs: 0 }, "df pure");
    near(
      found.lackSumOfSquares + found.pureSumOfSquares,
      expected.residualSumOfSquares,
      { rel: 0, abs: 5.1e-3 },
      "residual sum of squares",
    );
  });

  it("Pontius: the line does not fit, the parabola does (own recalculation)", () => {
    const { points, expected } = cases["strd-pontius"];
    const line = lackOfFit(fitted(points));
    near(line.fValue, expected.lackOfFit.line.f, { rel: 1e-5, abs: 0 }, "F line");
    near(line.pValue, 5.5e-19, { rel: 0.02, abs: 0 }, "p line");
    const curve = lackOfFit(fitted(points, "quadratic"));
    near(curve.fValue, expected.lackOfFit.quadratic.f, { rel: 2e-5, abs: 0 }, "F quadratic");
    near(curve.pValue, expected.lackOfFit.quadratic.p, { rel: 0, abs: 5.1e-4 }, "p quadratic");
  });

  it("Draper and Smith table 2.1 (data read, results recalculated)", () => {
    const { points, expected } = cases["lof-draper-smith"];
    const found = lackOfFit(fitted(points));
    near(found.fValue, expected.lackOfFit.f, { rel: 1e-5, abs: 0 }, "F");
    near(found.pureSumOfSquares, expected.lackOfFit.pure, { rel: 1e-5, abs: 0 }, "pure");
    near(found.lackSumOfSquares, expected.lackOfFit.lack, { rel: 1e-5, abs: 0 }, "lack");
  });
});

describe("coefficients", () => {
  it("Pontius, quadratic: NIST certified values", () => {
    const { points, expected } = cases["strd-pontius"];
    const fit = fitted(points, "quadratic");
    fit.coefficients.forEach(({ value, standardError, name }, index) => {
      near(value, expected.quadratic.values[index], { rel: 1e-10, abs: 0 }, render(name));
      near(
        standardError,
        expected.quadratic.standardErrors[index],
        { rel: 1e-9, abs: 0 },
        render(name),
      );
    });
    near(fit.residualSd, expected.quadratic.residualSd, { rel: 1e-9, abs: 0 }, "s");
    near(fit.rSquared, expected.quadratic.rSquared, { rel: 1e-13, abs: 0 }, "R²");
  });

  it.each(["lof-draper-smith", "steam-draper-smith"])("%s, straight line", (name) => {
    const { points, expected } = cases[name];
    const fit = fitted(points);
    fit.coefficients.forEach(({ value }, index) => {
      near(value, expected.line[index], { rel: 5e-6, abs: 0 }, "coefficient");
    });
    if (expected.residualSd) {
      near(fit.residualSd, expected.residualSd, { rel: 1e-6, abs: 0 }, "s");
      near(fit.rSquared, expected.rSquared, { rel: 1e-6, abs: 0 }, "R²");
    }
  });
});
