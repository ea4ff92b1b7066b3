import { describe, expect, it } from "vitest";
import type { TableBlock } from "../../src/blocks/block.js";
import {
  lotsChart,
  operatingCharacteristicChart,
} from "../../src/figures/strength/controlCharts.js";
import { strengthByAgeChart } from "../../src/figures/strength/strengthByAge.js";
import { residualsChart } from "../../src/figures/strength/strengthChart.js";
import { renderSvg } from "../../src/figures/svg/renderSvg.js";
import { createRandom } from "../../src/numerics/random.js";
import { correctAspectRatio } from "../../src/strength/aspectRatio.js";
import {
  CHARACTERISTIC_RULES,
  characteristicStrength,
} from "../../src/strength/characteristicStrength.js";
import { acceptanceRisks } from "../../src/strength/control/acceptance.js";
import { controlChart } from "../../src/strength/control/controlChart.js";
import { type FitStrengthOptions, fitStrength } from "../../src/strength/regression/fit.js";
import { lackOfFit } from "../../src/strength/regression/lackOfFit.js";
import { compareModels } from "../../src/strength/regression/modelComparison.js";
import { residualChecks } from "../../src/strength/regression/residuals.js";
import { robustStrength } from "../../src/strength/regression/robustFit.js";
import { compareTrials } from "../../src/strength/trials.js";
import { aspectTable, characteristicTable } from "../../src/tables/characteristicStrength.js";
import {
  modelsTable,
  regressionTable,
  strengthByAgeTable,
  strengthChecksTable,
} from "../../src/tables/strength.js";
import { trialDifferencesTable, trialsTable } from "../../src/tables/trialBlocks.js";
import { render, renderAll } from "../../src/words/render.js";
import { blocksOf, fitted, SIXTEEN } from "../strength/blocks.js";

const random = createRandom(4);
const lots = Array.from({ length: 20 }, (_, lot) => ({
  label: `L${lot + 1}`,
  strengthsMpa: [1, 2, 3, 4].map(() => 2.5 + 0.2 * random.normal() - (lot === 14 ? 0.9 : 0)),
}));
const fit = fitted(
  SIXTEEN.map(([content, strength], index) => [content, strength + (index === 9 ? 0.8 : 0)]),
);
const chart = controlChart(lots);
const rule = { kind: "mean-and-least", blocks: 5, meanMpa: 2.07, minMpa: 1.72 } as const;
const risks = acceptanceRisks(rule, { sdMpa: 0.25 });
const figures = renderAll([
  residualsChart("Residuals", fit, "SI"),
  lotsChart("Lots", chart, "SI", 2),
  operatingCharacteristicChart("Acceptance", rule, risks, { sdMpa: 0.25, units: "US" }),
]);

describe("figures", () => {
  it("tell in words what they show", () => {
    const [residuals, control, acceptance] = figures.map(({ altText }) => altText);
    expect(residuals).toContain("1 lie beyond plus or minus 2: B10.");
    expect(control).toContain("Control chart of 20 lots (means)");
    expect(control).toContain("L15");
    expect(acceptance).toContain("psi");
    expect(acceptance).toContain("is rejected in");
  });

  it("draw, with their labels in the picture", async () => {
    for (const [index, figure] of figures.entries()) {
      const svg = await renderSvg(figure);
      expect(svg).toContain(["B10", "lots with a signal", "acceptable"][index]);
    }
  }, 30_000);

  it("stay plain data", () => {
    for (const figure of figures) expect(JSON.parse(JSON.stringify(figure))).toEqual(figure);
  });
});

describe("tables", () => {
  const block = { ...blocksOf(SIXTEEN)[0], heightMm: 200, widthMm: 100 };
  const corrected = correctAspectRatio(
    { strengthMpa: block.strengthMpa, heightMm: 200, thicknessMm: 100 },
    "nzs4298",
  );
  const trials = [
    { id: "A", mix: "invented", lab: { l: 60, a: 10, b: 20 }, dryToConstantMass: true, row: 2 },
    { id: "B", mix: "invented", lab: { l: 52, a: 12, b: 22 }, row: 3 },
  ];
  const strengths = [2.5, 2.8, 3.2, 3.1];
  const rules = CHARACTERISTIC_RULES.map(({ id }) => characteristicStrength(strengths, id));
  const tables = renderAll<TableBlock[]>([
    strengthChecksTable(residualChecks(fit), robustStrength(fit)),
    modelsTable(compareModels(blocksOf(SIXTEEN), { ageDays: 28 })),
    characteristicTable(rules, "SI"),
    aspectTable([{ block, corrected }], "SI"),
    trialsTable(trials),
    trialDifferencesTable(compareTrials(trials)),
  ]);

  it("have a cell for each column and no number that is none", () => {
    for (const { caption, columns, rows, notes } of tables) {
      expect(rows.length, caption).toBeGreaterThan(0);
      for (const row of rows) expect(row.length, caption).toBe(columns.length);
      expect([...rows.flat(), ...(notes ?? [])].join(" "), caption).not.toMatch(
        /NaN|undefined|Infinity|null/,
      );
    }
  });

  it("show every rule with its mark, and the measured strength", () => {
    const { rows } = renderAll(characteristicTable(rules, "SI"));
    expect(rows.map((row) => row[4])).toContain("from memory");
    expect(rows[0].slice(1, 3)).toEqual(["2.63", "2.07"]);
    expect(renderAll(aspectTable([{ block, corrected }], "SI")).rows[0].slice(2)).toEqual([
      "1.42",
      "0.775",
      "1.10",
    ]);
  });
});

describe("strength by age", () => {
  const at = (ageDays: number, meanMpa: number, blocksMeanMpa: number | null) => ({
    ageDays,
    meanMpa,
    meanLowMpa: meanMpa - 0.1,
    meanHighMpa: meanMpa + 0.3,
    predictionLowMpa: meanMpa - 0.4,
    predictionHighMpa: meanMpa + 0.5,
    blocks: blocksMeanMpa === null ? 0 : 4,
    blocksMeanMpa,
  });
  const found = {
    status: "ok" as const,
    message: "by age",
    cementPct: 6,
    ages: [at(7, 1, null), at(28, 2, 2.1)],
  };

  it("is drawn at its ages, with the band each way and the blocks where there are any", async () => {
    const figure = renderAll(strengthByAgeChart("Strength and age", found, "SI"));
    const [curve, blocks] = figure.data as Record<string, unknown>[];
    expect([curve.x, curve.y]).toEqual([
      [7, 28],
      [1, 2],
    ]);
    const { array, arrayminus } = curve.error_y as Record<string, number[]>;
    for (const high of array) expect(high).toBeCloseTo(0.3, 9);
    for (const low of arrayminus) expect(low).toBeCloseTo(0.1, 9);
    expect([blocks.x, blocks.y]).toEqual([[28], [2.1]]);
    expect(figure.altText).toBe(
      "Strength and age. At 6 % cement. 7 days: 1.00 MPa, between 0.900 MPa and 1.30 MPa. 28 days: 2.00 MPa, between 1.90 MPa and 2.30 MPa.",
    );
    expect(figure.layout).toMatchObject({ xaxis: { type: "log", ticktext: ["7", "28"] } });
    expect(await renderSvg(figure)).toContain("Age (days)");
    const none = { ...found, status: "no-fit" as const };
    expect(() => strengthByAgeChart("", none, "SI")).toThrow("`found.status`: no-fit");
  });

  it("is told in a table, in the units of the study", () => {
    const table = renderAll(strengthByAgeTable(found, "US")) as TableBlock;
    expect(table.rows).toEqual([
      ["7", "145", "131", "189", "87.0", "218", "0", "–"],
      ["28", "290", "276", "334", "232", "363", "4", "305"],
    ]);
    expect(table.caption).toBe("Strength by age at 6 % cement");
    expect(strengthByAgeTable({ ...found, status: "no-fit" }, "SI").kind).toBe("note");
  });
});

describe("the regression's table", () => {
  it("says where the curve stands among covariates and batches", () => {
    const blocks = blocksOf(SIXTEEN).map((block, index) => ({
      ...block,
      batch: `M${index % 3}`,
      dryDensityKgM3: 1850 + ((index * 37) % 90),
    }));
    const notes = (options: Partial<FitStrengthOptions>) => {
      const found = fitStrength(blocks, { model: "linear", ageDays: 28, ...options });
      if (found.status !== "ok") throw new Error(render(found.message));
      const table = renderAll(regressionTable(found, lackOfFit(found)));
      expect(table.rows.flat().join(" ")).not.toMatch(/NaN|undefined/);
      return table.notes?.slice(2).join(" ");
    };
    expect(notes({})).toBe("");
    expect(notes({ covariates: ["dry density"], at: { "dry density": 1880 } })).toContain(
      "dry density 1880 kg/m³",
    );
    expect(notes({ batches: "block" })).toContain("average of 3 batches");
    expect(notes({ variance: "proportional" })).toContain("proportional to strength");
  });

  it("compares forms under the same covariates and spread", () => {
    const { models } = compareModels(blocksOf(SIXTEEN), { ageDays: 28, variance: "proportional" });
    expect(models.map(({ fit: one }) => one.status)).toEqual(["ok", "ok", "ok", "ok"]);
    const power = models.find(({ model }) => model === "power")!;
    const linear = models.find(({ model }) => model === "linear")!;
    const alone = fitStrength(blocksOf(SIXTEEN), {
      model: "linear",
      ageDays: 28,
      variance: "proportional",
    });
    expect(linear.aicc).toBe(alone.status === "ok" ? alone.aicc : null);
    // Both judge the same strengths as densities in MPa, so they lie near each other.
    expect(Math.abs(power.aicc! - linear.aicc!)).toBeLessThan(40);
  });
});
