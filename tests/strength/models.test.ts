import { describe, expect, it } from "vitest";
import type { SpecimenRecord } from "../../src/lab/specimens.js";
import { batchMeans, batchScatter } from "../../src/strength/batches.js";
import { contentInterval, fiellerContent } from "../../src/strength/contentInterval.js";
import { includedSpecimens } from "../../src/strength/includedBlocks.js";
import { leastCement } from "../../src/strength/leastCement.js";
import { strengthBands, strengthBound } from "../../src/strength/regression/bounds.js";
import { type FitStrengthOptions, fitStrength } from "../../src/strength/regression/fit.js";
import { lackOfFit } from "../../src/strength/regression/lackOfFit.js";
import { residualChecks } from "../../src/strength/regression/residuals.js";
import { robustStrength } from "../../src/strength/regression/robustFit.js";
import { render } from "../../src/words/render.js";
import { blocksOf, fitted, SIXTEEN } from "./blocks.js";
import { near } from "./near.js";

const AGES = [7, 28, 56];
/** Invented: the sixteen blocks at three ages, with densities, moistures and three crossing batches. */
const FULL: SpecimenRecord[] = AGES.flatMap((ageDays, age) =>
  blocksOf(SIXTEEN).map((block, index) => ({
    ...block,
    id: `${block.id}-${ageDays}`,
    ageDays,
    batch: `M${(index % 3) + 1}`,
    strengthMpa: block.strengthMpa * [0.6, 1, 1.15][age],
    dryDensityKgM3: 1850 + ((index * 37 + age * 11) % 90),
    testMoisturePct: 3 + ((index * 5 + age) % 7) / 3,
  })),
);
const fitOf = (options: Partial<FitStrengthOptions>, blocks = FULL) =>
  fitStrength(blocks, { model: "linear", ageDays: 28, ...options });
function okOf(options: Partial<FitStrengthOptions>, blocks = FULL) {
  const fit = fitOf(options, blocks);
  if (fit.status !== "ok") throw new Error(render(fit.message));
  return fit;
}

describe("covariates, batches and weights", () => {
  it("gives the curve at the values asked, moved by the covariate's coefficient", () => {
    const options = { covariates: ["dry density"] } as const;
    const low = okOf({ ...options, at: { "dry density": 1860 } });
    const high = okOf({ ...options, at: { "dry density": 1900 } });
    const slope = low.coefficients[2].value;
    expect(render(low.coefficients[2].name)).toBe("dry density");
    const [a, b] = [low, high].map((fit) => strengthBands(fit, { cementPct: [7] })[0].meanMpa);
    near(b - a, 40 * slope, { rel: 1e-9, abs: 1e-12 }, "shift");
    near(high.residualSd, low.residualSd, { rel: 1e-12, abs: 0 }, "s");
  });

  it("is no fit where all blocks have one density, which then tells nothing", () => {
    const same = blocksOf(SIXTEEN).map((block) => ({ ...block, dryDensityKgM3: 1900 }));
    const found = fitStrength(same, {
      model: "linear",
      ageDays: 28,
      covariates: ["dry density"],
    } as const);
    expect(found.status).not.toBe("ok");
    expect(render(found.message)).not.toContain("NaN");
    expect(render(found.message).length).toBeGreaterThan(20);
  });

  it("asks at the mean density where none is named", () => {
    const fit = okOf({ covariates: ["dry density"] });
    const used = FULL.filter(({ ageDays }) => ageDays === 28);
    const mean = used.reduce((sum, block) => sum + block.dryDensityKgM3!, 0) / used.length;
    near(fit.covariates[0].at, mean, { rel: 1e-12, abs: 0 }, "mean density");
  });

  it("uses all ages where age is a covariate, and asks at the age of the requirement", () => {
    const fit = okOf({ covariates: ["ln age"] });
    expect([fit.blocks, fit.ageDays]).toEqual([48, 28]);
    expect(render(fit.message)).toContain("7, 28, 56 days");
    expect(fit.coefficients[2].value).toBeGreaterThan(0);
  });

  it.each([
    [
      "an age beyond the tested",
      { covariates: ["ln age"], ageDays: 90 },
      "outside-tested",
      "Keep blocks to crush at 90 days",
    ],
    [
      "an age before the tested",
      { covariates: ["ln age"], ageDays: 3 },
      "outside-tested",
      "3 days or earlier",
    ],
    [
      "a density that no block has",
      { covariates: ["dry density"], at: { "dry density": 2100 } },
      "outside-tested",
      "Make blocks with it",
    ],
    [
      "more terms than blocks",
      { covariates: ["dry density", "moisture at test"], batches: "block" },
      "too-few-points",
      "at least 7 blocks",
    ],
  ] as [string, Partial<FitStrengthOptions>, string, string][])(
    "refuses %s",
    (name, options, status, words) => {
      const blocks = name.startsWith("more") ? FULL.slice(16, 22) : FULL;
      const fit = fitOf(options, blocks);
      expect(fit.status).toBe(status);
      expect(render(fit.message)).toContain(words);
    },
  );

  it("names the blocks that lack a reading or a batch", () => {
    const some = FULL.map((block, index) =>
      index === 20 ? { ...block, dryDensityKgM3: undefined, batch: undefined } : block,
    );
    for (const options of [{ covariates: ["dry density"] }, { batches: "block" }] as const) {
      const fit = fitOf(options, some);
      expect(fit.status).toBe("missing-reading");
      expect(render(fit.message)).toContain(FULL[20].id);
    }
  });

  it("says that batches of one content each cannot be told from cement", () => {
    const nested = FULL.map((block) => ({ ...block, batch: `${block.cementPct}` }));
    const fit = fitOf({ batches: "block" }, nested);
    expect(fit.status).toBe("rank-deficient");
    expect(render(fit.message)).toContain("Fit the means of the batches");
    expect(() => fitOf({ model: "power", variance: "proportional" })).toThrow("invalid `variance`");
  });

  it("inverts the band with covariates in closed form as by search", () => {
    const fit = okOf({ covariates: ["ln age", "dry density"], at: { "dry density": 1870 } });
    const rule = { strengthMpa: 2.4, statistic: "mean", confidence: 0.95 } as const;
    const { lowPct, highPct, cementPct } = fiellerContent(fit, rule);
    near(
      strengthBands(fit, { cementPct: [cementPct] })[0].meanMpa,
      2.4,
      { rel: 1e-10, abs: 0 },
      "line",
    );
    near(
      strengthBands(fit, { cementPct: [lowPct!] })[0].meanHighMpa,
      2.4,
      { rel: 1e-9, abs: 0 },
      "low",
    );
    near(
      strengthBands(fit, { cementPct: [highPct!] })[0].meanLowMpa,
      2.4,
      { rel: 1e-9, abs: 0 },
      "high",
    );
  });

  it("inverts the weighted band, and meets the requirement at its own bound", () => {
    const fit = okOf({ variance: "proportional" });
    for (const statistic of ["mean", "prediction", "tolerance"] as const) {
      const rule = { strengthMpa: 2, statistic, confidence: 0.9, coverage: 0.9 };
      const { cementPct } = leastCement(fit, rule);
      near(strengthBound(fit, cementPct!, rule), 2, { rel: 1e-8, abs: 0 }, statistic);
      expect(contentInterval(fit, rule)!.lowPct).toBeLessThan(cementPct!);
    }
    const of = { strengthMpa: 2, statistic: "prediction" } as const;
    expect(() => fiellerContent(fit, of)).toThrow("invalid `statistic`");
  });

  it("does not care for the unit of strength, weighted or not", () => {
    const psi = FULL.map((block) => ({ ...block, strengthMpa: 145 * block.strengthMpa }));
    for (const variance of ["even", "proportional"] as const) {
      const options = { variance, covariates: ["ln age"] } as const;
      const [one, other] = [okOf(options), okOf(options, psi)];
      near(other.residualSd, 145 * one.residualSd, { rel: 1e-9, abs: 0 }, "s");
      near(other.coefficients[1].pValue, one.coefficients[1].pValue, { rel: 1e-6, abs: 0 }, "p");
    }
  });

  it("has the AICc of the normal density whose spread follows the curve", () => {
    const fit = okOf({ variance: "proportional" });
    const n = fit.blocks;
    const relative = fit.points.map(({ fittedMpa }) => fittedMpa / fit.basis.reference);
    const residuals = fit.points.map(({ residualMpa }, index) => residualMpa / relative[index]);
    const variance = residuals.reduce((sum, e) => sum + e * e, 0) / n;
    const logLikelihood = residuals.reduce(
      (sum, e, index) =>
        sum -
        Math.log(relative[index] * Math.sqrt(2 * Math.PI * variance)) -
        (e * e) / (2 * variance),
      0,
    );
    near(fit.aicc, -2 * logLikelihood + 6 + 24 / (n - 4), { rel: 1e-9, abs: 0 }, "AICc");
  });

  it("leaves the shape untested where blocks of one content are no replicates", () => {
    expect(lackOfFit(okOf({ covariates: ["dry density"] })).status).toBe("other-terms");
    expect(robustStrength(okOf({ batches: "block" })).status).toBe("other-terms");
    const weighted = lackOfFit(okOf({ variance: "proportional" }));
    const { lackSumOfSquares, pureSumOfSquares } = weighted;
    const fit = okOf({ variance: "proportional" });
    const whole = fit.residualSd ** 2 * fit.degreesOfFreedom;
    near(lackSumOfSquares + pureSumOfSquares, whole, { rel: 1e-9, abs: 0 }, "weighted sums");
  });
});

describe("batches", () => {
  const nested = blocksOf(SIXTEEN).map((block, index) => ({
    ...block,
    batch: `${block.cementPct}-${index % 2}`,
    strengthMpa: block.strengthMpa + (index % 2 ? 0.4 : 0),
  }));

  it("tells batches that differ, and finds how much", () => {
    const found = batchScatter(nested, { ageDays: 28 });
    expect([found.status, found.batches]).toEqual(["ok", 8]);
    expect(found.pValue).toBeLessThan(0.05);
    expect(render(found.message)).toContain("too narrow");
    // Two levels 0.4 apart have the standard deviation 0.4/√2; the blocks' own scatter shifts it.
    near(found.betweenSdMpa, 0.4 / Math.SQRT2, { rel: 0.5, abs: 0 }, "between");
    const status = (blocks: readonly SpecimenRecord[]) =>
      batchScatter(blocks, { ageDays: 28 }).status;
    expect(status(blocksOf(SIXTEEN))).toBe("missing-batches");
    expect(status(nested.map((block) => ({ ...block, batch: `${block.cementPct}` })))).toBe(
      "one-batch-a-content",
    );
    expect(status(nested.map((block) => ({ ...block, batch: block.id })))).toBe("no-replicates");
  });

  it("parts the scatter as by hand", () => {
    const blocks = blocksOf([
      [4, 1],
      [4, 1.2],
      [4, 1.4],
      [4, 1.6],
      [6, 2],
      [6, 2.2],
      [6, 2],
      [6, 2.2],
    ]).map((block, index) => ({ ...block, batch: `M${Math.floor(index / 2)}` }));
    const found = batchScatter(blocks, { ageDays: 28 });
    // Between: 4 × 0.2² over 2 degrees; within: 8 × 0.1² over 4. For 2 and 4 degrees P(F > f) = (1 + f/2)⁻².
    near(found.fValue, 4, { rel: 1e-9, abs: 0 }, "F");
    near(found.pValue, 1 / 9, { rel: 1e-9, abs: 0 }, "p");
    near(found.withinSdMpa, Math.sqrt(0.02), { rel: 1e-9, abs: 0 }, "within");
    near(found.betweenSdMpa, Math.sqrt((0.08 - 0.02) / 2), { rel: 1e-9, abs: 0 }, "between");
  });

  it("takes means that keep excluded blocks in sight", () => {
    const means = batchMeans(
      nested.map((block, index) => (index === 0 ? { ...block, excluded: "broken" } : block)),
    );
    expect(means).toHaveLength(9);
    expect(means.filter(({ excluded }) => excluded)).toMatchObject([
      { id: "B1", excluded: "broken" },
    ]);
    near(
      means[0].strengthMpa,
      (SIXTEEN[1][1] + 0.4 + SIXTEEN[3][1] + 0.4) / 2,
      { rel: 1e-12, abs: 0 },
      "mean",
    );
  });
});

describe("residualChecks", () => {
  const contents = [4, 6, 8, 10].flatMap((content) => Array.from({ length: 6 }, () => content));
  const wave = [-1.3, -0.7, -0.2, 0.2, 0.7, 1.3];

  it("finds scatter that grows, and is content once it is weighted", () => {
    const pairs = contents.map((content, index) => {
      const mean = -1.4 + 0.5 * content;
      return [content, mean * (1 + 0.12 * wave[index % 6])];
    });
    const [, , growth] = residualChecks(fitted(pairs));
    expect(growth.status).toBe("doubt");
    expect(render(growth.message)).toContain("proportional");
    const weighted = fitStrength(blocksOf(pairs), {
      model: "linear",
      ageDays: 28,
      variance: "proportional",
    });
    expect(residualChecks(weighted)[2].status).toBe("no-doubt");
  });

  it("finds a content that scatters more, and residuals that are not normal", () => {
    const uneven = contents.map((content, index) => [
      content,
      content / 3 + (content === 6 ? 0.5 : 0.05) * wave[index % 6],
    ]);
    expect(residualChecks(fitted(uneven))[1].status).toBe("doubt");
    const odd = contents.map((content, index) => [
      content,
      content / 3 + 0.05 * wave[index % 6] + (index === 13 ? 2 : 0),
    ]);
    const [normal] = residualChecks(fitted(odd));
    expect([normal.status, normal.check]).toEqual(["doubt", "normality"]);
    const line = fitted(odd);
    const robust = robustStrength(line);
    expect(render(robust.message)).toContain("B14");
    // Two straight lines part most at an end of the contents tested.
    const apart = (pct: number) =>
      Math.abs(
        robust.coefficients[0] +
          robust.coefficients[1] * pct -
          line.coefficients[0].value -
          line.coefficients[1].value * pct,
      );
    const { contentsPct } = line;
    const ends = [contentsPct[0], contentsPct.at(-1)!];
    const further = apart(ends[0]) > apart(ends[1]) ? ends[0] : ends[1];
    near(robust.atPct, further, { rel: 1e-12, abs: 0 }, "where");
    near(robust.maxDifferenceMpa, apart(further), { rel: 1e-9, abs: 0 }, "how far");
  });

  it("says where it could not test", () => {
    const exact = [4, 6, 8, 10].map((content) => [content, content]);
    expect(residualChecks(fitted(exact)).map(({ status }) => status)).toContain("not-tested");
    expect(robustStrength(fitted(exact)).status).toBe("no-scatter");
  });
});

describe("mixed units", () => {
  const codes = (change: (block: SpecimenRecord, index: number) => Partial<SpecimenRecord>) =>
    includedSpecimens(
      {
        file: "blocks.csv",
        specimens: blocksOf(SIXTEEN).map((block, index) => ({ ...block, ...change(block, index) })),
      },
      { ageDays: 28 },
    ).findings.map(({ code, row, message }) => [
      code,
      row,
      /such as (\S+)\./.exec(render(message))?.[1],
    ]);

  it.each([
    ["psi", 145.04],
    ["kgf/cm²", 10.197],
    ["kPa", 1000],
  ])("names a strength in %s among MPa", (unit, factor) => {
    expect(
      codes((block, index) => (index === 6 ? { strengthMpa: factor * block.strengthMpa } : {})),
    ).toContainEqual(["mixed-units", 8, unit]);
    expect(
      codes((block, index) => (index === 6 ? { strengthMpa: block.strengthMpa / factor } : {})),
    ).toContainEqual(["mixed-units", 8, unit]);
  });

  it.each([
    [
      145.4,
      "Block B7 is 145 times as strong as the others: it may be written in another unit, such as psi.",
    ],
    [
      1 / 145.4,
      "The others are 145 times as strong as block B7: it may be written in another unit, such as psi.",
    ],
  ])("says in whole times how far it is off: %f", (factor, message) => {
    const specimens = blocksOf(SIXTEEN).map((block, index) => ({
      ...block,
      strengthMpa: index === 6 ? 2 * factor : 2,
    }));
    const { findings } = includedSpecimens({ file: "blocks.csv", specimens }, { ageDays: 28 });
    expect(findings.map((one) => render(one.message))).toContain(message);
  });

  it("names a content written as a fraction, and leaves a wide but true sheet alone", () => {
    expect(codes((_, index) => (index < 4 ? { cementPct: 0.04 } : {}))).toContainEqual([
      "cement-as-fraction",
      2,
      undefined,
    ]);
    expect(
      codes((block, index) =>
        index < 4 ? { cementPct: 0, strengthMpa: 0.2 * block.strengthMpa } : {},
      ),
    ).toEqual([]);
  });
});
