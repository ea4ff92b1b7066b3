import { describe, expect, it } from "vitest";
import type { FittedStrength } from "../../src/strength/regression/curve.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { aspectTable, characteristicTable } from "../../src/tables/characteristicStrength.js";
import { qualityChecksTable, qualityPlanTable, siteBlocksTable } from "../../src/tables/quality.js";
import {
  bandsTable,
  leastCementTable,
  modelsTable,
  regressionTable,
  specimensTable,
  statisticName,
  strengthChecksTable,
} from "../../src/tables/strength.js";
import { trialDifferencesTable, trialsTable } from "../../src/tables/trialBlocks.js";
import { render } from "../../src/words/render.js";
import { headsOf, itemsOf, notesOf, rowsOf } from "../support/blockText.js";

// 1 psi = 6.894757 kPa (NIST SP 811 App. B, from memory).
const PSI = 0.006894757293168;

const FIT = {
  model: "linear",
  formula: "f = a + b c",
  ageDays: 28,
  line: "mean",
  blocks: 12,
  contentsPct: [4, 6, 10],
  confidence: 0.95,
  degreesOfFreedom: 10,
  residualSd: 0.2345,
  rSquared: 0.8766,
  leaveOneOutErrorMpa: 0.2567,
  coefficients: [
    { name: "a", value: 1.2345, standardError: 0.1111, low: 0.987, high: 1.482, pValue: 0.0045 },
    { name: "b", value: 0.3456, standardError: 0.0222, low: 0.296, high: 0.395, pValue: 0.0001 },
  ],
  points: [
    {
      id: "B1",
      cementPct: 4,
      residualMpa: -0.126,
      leverage: 0.2346,
      studentised: 1.236,
      cooksDistance: 0.0456,
    },
  ],
  covariates: [],
  batches: [],
  basis: { variance: "even", reference: 1 },
} as unknown as FittedStrength;

const LACK = {
  fValue: 3.456,
  pValue: 0.0456,
  lackDegreesOfFreedom: 2,
  pureDegreesOfFreedom: 9,
  message: "No lack of fit.",
} as never;

describe("tables of the regression", () => {
  it("value, standard error, low, high, p", () => {
    const table = regressionTable(FIT, LACK);
    expect(headsOf(table)).toEqual([
      "Coefficient",
      "Value",
      "Standard error",
      "95 % interval, low",
      "high",
      "p",
    ]);
    expect(rowsOf(table)).toEqual([
      ["a", "1.234", "0.11", "0.987", "1.48", "0.0045"],
      ["b", "0.3456", "0.022", "0.296", "0.395", "< 0.001"],
    ]);
    expect(notesOf(table)).toEqual([
      "f = a + b c, with f in MPa and c in percent. 12 blocks, 10 degrees of freedom, residual standard deviation 0.234 MPa, R² 0.877, leave-one-out error 0.257 MPa.",
      "Lack of fit against replicates: F = 3.46 on 2 and 9 degrees of freedom, p = 0.046. No lack of fit.",
    ]);
    expect(render(table.caption)).toBe("Regression of strength on cement content at 28 days");
  });

  it("in psi: a curve of strengths by the unit, one of logarithms in its intercept alone", () => {
    const [a, b] = rowsOf(regressionTable(FIT, LACK, "US"));
    // 145.0377 psi in a MPa, by definition of pound and inch.
    expect([a[1], b[1]]).toEqual(["179.0", "50.13"]);
    const median = { ...FIT, line: "median" } as never;
    const [lnA, slope] = rowsOf(regressionTable(median, LACK, "US"));
    expect([lnA[1], slope[1]]).toEqual([(1.234 + Math.log(145.0377)).toFixed(3), "0.3456"]);
    expect(lnA[5]).toBe("–");
    expect(slope[5]).toBe("< 0.001");
  });

  it("says what else stands in it, and that it was weighted", () => {
    const fit = {
      ...FIT,
      line: "median",
      covariates: [
        { kind: "ln age", at: Math.log(56) },
        { kind: "dry density", at: 1905 },
        { kind: "moisture at test", at: 3.5 },
      ],
      batches: ["M1", "M2"],
      basis: { variance: "proportional", reference: 2.345 },
    } as unknown as FittedStrength;
    const table = regressionTable(fit, LACK);
    expect(render(table.caption)).toContain("Weighted regression");
    expect(notesOf(table)[0]).toContain("residual standard deviation 0.234 ln MPa");
    expect(notesOf(regressionTable(fit, LACK, "US"))[2]).toContain("dry density 118.9 lb/ft³");
    expect(notesOf(table).slice(2)).toEqual([
      "The curve is that at age 56 d, dry density 1905 kg/m³, moisture at test 3.5 %.",
      "The curve is that of the average of 2 batches; a further batch may lie above or below it. The level of batch M2 is what makes the sum zero.",
      "The scatter is taken as proportional to strength; the standard deviation given is that at 2.35 MPa.",
    ]);
  });

  it("bounds without a requirement are said to be at the usual confidence", () => {
    const notes = (required?: boolean) => notesOf(bandsTable([], "SI", { required }))[0];
    expect(notes()).toContain("confidence of the requirement");
    expect(notes(false)).toContain("95 % confidence, as the study states no requirement");
  });

  it("mean and its three lower bounds, in their order and unit", () => {
    const at = {
      cementPct: 6,
      meanMpa: 300 * PSI,
      lowerBoundMpa: { mean: 280 * PSI, prediction: 250 * PSI, tolerance: 210 * PSI },
    };
    const table = bandsTable([at] as never, "US");
    expect(headsOf(table)).toEqual([
      "Cement [%]",
      "Mean [psi]",
      "Lower bound of the mean [psi]",
      "Prediction bound (one further block) [psi]",
      "Tolerance bound (exceeded by 95 % of blocks) [psi]",
    ]);
    expect(rowsOf(table)).toEqual([["6", "300", "280", "250", "210"]]);
  });

  it("blocks with density before strength, and residuals with their sign", () => {
    const block = {
      id: "B1",
      batch: "M3",
      cementPct: 4,
      ageDays: 28,
      dryDensityKgM3: 1888.4,
      strengthMpa: 2.345,
      row: 3,
    };
    const out = { id: "B2", cementPct: 6, ageDays: 7, strengthMpa: 1.1, row: 4 };
    const table = specimensTable(
      [block, { ...out, excluded: "cracked", remark: "wet" }] as never,
      FIT,
      "SI",
    );
    expect(headsOf(table)).toEqual([
      "Block",
      "Batch",
      "Cement [%]",
      "Age [d]",
      "Dry density [kg/m³]",
      "Strength [MPa]",
      "Measured less fitted [MPa]",
      "Remark",
    ]);
    expect(rowsOf(table)).toEqual([
      ["B1", "M3", "4", "28", "1888", "2.35", "−0.13", ""],
      ["B2", "–", "6", "7", "–", "1.10", "–", "Excluded: cracked; wet"],
    ]);
  });

  it("models by rank, and checks by their p", () => {
    const forms = {
      models: [
        {
          model: "linear",
          rank: 2,
          aiccDifference: 3.456,
          leaveOneOutErrorMpa: 0.2346,
          lackOfFitPValue: 0.0123,
        },
        {
          model: "power",
          rank: null,
          aiccDifference: null,
          leaveOneOutErrorMpa: null,
          lackOfFitPValue: null,
        },
      ],
      message: "Linear.",
    } as never;
    const table = modelsTable(forms);
    expect(headsOf(table)).toEqual([
      "Model",
      "Rank",
      "AICc less the best",
      "Leave-one-out error [MPa]",
      "p of lack of fit",
    ]);
    expect(rowsOf(table)).toEqual([
      ["linear", "2", "3.5", "0.235", "0.012"],
      ["power", "–", "–", "–", "–"],
    ]);
    const checks = strengthChecksTable(
      [
        {
          check: "normality",
          test: "Shapiro-Wilk",
          statistic: 0.9763,
          pValue: 0.4321,
          message: "Normal.",
        },
      ] as never,
      { message: "No outliers." } as never,
    );
    expect(headsOf(checks)).toEqual(["Check", "Test", "Statistic", "p", "What it says"]);
    expect(rowsOf(checks)).toEqual([
      ["normality", "Shapiro-Wilk", "0.976", "0.43", "Normal."],
      ["outliers", "robust fit (Huber)", "–", "–", "No outliers."],
    ]);
  });

  it("characteristic strength by rule, with its factor before it", () => {
    const rule = { name: "EN 1990", source: "Annex D", basis: "memory" };
    const table = characteristicTable(
      [
        {
          rule,
          factor: 2.336,
          valueMpa: 1.876,
          status: "ok",
          message: "",
          blocks: 5,
          meanMpa: 2.4,
          sdMpa: 0.22,
        },
        {
          rule,
          factor: null,
          valueMpa: null,
          status: "few",
          message: "Too few.",
          blocks: 5,
          meanMpa: 2.4,
          sdMpa: 0.22,
        },
      ] as never,
      "SI",
    );
    expect(headsOf(table)).toEqual(["Rule", "Factor", "Characteristic [MPa]", "Source", "Mark"]);
    expect(rowsOf(table)).toEqual([
      ["EN 1990", "2.34", "1.88", "Annex D", "from memory"],
      ["EN 1990. Too few.", "–", "–", "Annex D", "from memory"],
    ]);
    expect(notesOf(table)[0]).toContain("5 blocks, mean 2.40, standard deviation 0.220");
  });

  it("proportions: measured before corrected", () => {
    const table = aspectTable(
      [
        {
          block: { id: "B1" },
          corrected: {
            ratio: 1.456,
            uncorrectedMpa: 2.46,
            factor: 0.8765,
            correctedMpa: 2.156,
            table: { name: "T", source: "S" },
          },
        },
      ] as never,
      "SI",
    );
    expect(headsOf(table)).toEqual([
      "Block",
      "Height over thickness",
      "Measured [MPa]",
      "Factor",
      "Corrected [MPa]",
    ]);
    expect(rowsOf(table)).toEqual([["B1", "1.46", "2.46", "0.876", "2.16"]]);
    expect(notesOf(table)[0]).toBe("T: S.");
  });
});

describe("the least cement", () => {
  const result = (interval: object | null, strength: object = {}) =>
    ({
      config: {
        units: "SI",
        strength: {
          requirement: {
            strengthMpa: 2.4,
            ageDays: 28,
            statistic: "tolerance",
            confidence: 0.9,
            basis: "Code 1",
          },
        },
      },
      strength: {
        fit: FIT,
        models: { message: "Linear is enough." },
        ...strength,
        leastCement: {
          message: "Enough from 7.12 %.",
          cementPct: 7.1234,
          roundUpToPct: 0.5,
          batchablePct: 7.5,
          boundAtBatchableMpa: 2.512,
          lineAtBatchableMpa: 3.126,
          lineContentPct: 5.432,
          interval,
        },
      },
    }) as unknown as StudyResult;
  const interval = {
    lowPct: 4.567,
    highPct: 6.789,
    lowOpen: false,
    highOpen: true,
    confidence: 0.9,
    method: "fieller",
  };

  it("bound and fitted strength at the content are not mixed up", () => {
    expect(itemsOf(leastCementTable(result(interval)))).toMatchObject({
      Required: "2.40 MPa at 28 days",
      "To be met by": "the 95 % / 90 % tolerance bound (exceeded by 95 % of blocks)",
      "Basis (as entered)": "Code 1",
      "Tested contents": "4 to 10 %; nothing is extrapolated",
      "Least content": "7.12 %",
      "Rounded up to steps of 0.5 %": "7.5 %",
      "Bound at that content": "2.51 MPa",
      "Fitted mean at that content": "3.13 MPa",
      "Content at which the mean alone would meet it": "5.43 %",
      "Content at which 95 % of blocks just reach the requirement":
        "from 4.57 % to 6.79 % or more, with 90 % confidence",
    });
    const others = itemsOf(
      leastCementTable(
        result(interval, {
          specimens: [{ id: "L13", excluded: "a corner broke off" }],
          leastCementOfOthers: [
            { without: ["L25", "L26"], withBack: [], cementPct: 6.234, batchablePct: 6.25 },
            { without: [], withBack: ["L13"], cementPct: null, batchablePct: null },
          ],
        }),
      ),
    );
    expect(others["Without L25, L26, far from the others"]).toBe("6.23 %, rounded up 6.25 %");
    expect(others["With L13 put back (excluded: a corner broke off)"]).toBe(
      "none of the tested contents",
    );
    const none = itemsOf(leastCementTable(result(null)));
    expect(none["Content at which 95 % of blocks just reach the requirement"]).toBe(
      "none of the tested contents",
    );
  });

  it("says each bound with its confidence", () => {
    expect(render(statisticName("mean", 0.95))).toBe(
      "the lower bound of the mean strength, with 95 % confidence",
    );
    expect(render(statisticName("prediction", 0.99))).toBe(
      "the prediction bound (one further block), with 99 % probability",
    );
  });
});

describe("quality control", () => {
  const lot = {
    label: "L1",
    strengthsMpa: [2, 2.5, 3.3],
    judgement: { status: "rejected", meanMpa: 2.6, sdMpa: 0.656, minMpa: 2, steps: ["Stop."] },
  };
  const quality = {
    lots: 6,
    blocks: 48,
    blocksALot: 8,
    agesDays: [7, 28],
    rule: { kind: "mean-and-least", blocks: 3, meanMpa: 2.8, minMpa: 2.1 },
    ruleMessage: "By the code.",
    scatterMpa: 0.31,
    scatterBasis: "entered",
    densityChecks: 12,
    site: {
      lots: [lot],
      chart: {
        message: "Five lots.",
        points: [{ label: "L1", signals: ["run-of-eight", "outside-limits"] }],
      },
      otherAges: 4,
      excluded: [{ id: "B9", reason: "cracked" }],
    },
  };
  const config = {
    units: "SI",
    elements: [{ name: "Wall" }],
    strength: { requirement: { ageDays: 28, strengthMpa: 2 } },
    quality: {
      lot: { kind: "days", days: 2, batchesADay: 9 },
      spareBlocks: 2,
      densityChecks: 2,
      basis: "Code 2",
    },
  };

  it("mean, standard deviation and minimum of a lot, with its signals in words", () => {
    const table = siteBlocksTable({ config, quality } as never);
    expect(headsOf(table)).toEqual([
      "Lot",
      "Blocks",
      "Mean [MPa]",
      "Standard deviation [MPa]",
      "Minimum [MPa]",
      "Outcome",
      "Signal of the control chart",
    ]);
    expect(rowsOf(table)).toEqual([
      [
        "L1",
        "3",
        "2.60",
        "0.656",
        "2.00",
        "does not meet the rule",
        "eight in a row on one side, outside the limits",
      ],
    ]);
    expect(notesOf(table)).toEqual([
      "By the code.",
      "Five lots.",
      "4 blocks of other ages stand in the annex and are not judged.",
      "Block B9 was left out: cracked",
      "Step 1: Stop.",
    ]);
  });

  it("the plan counts lots, blocks of a lot and blocks in all", () => {
    expect(itemsOf(qualityPlanTable({ config, quality } as never))).toMatchObject({
      "Size of a lot": "what is made in 2 working days of 9 batches",
      "Lots in the element": "6",
      "Blocks per lot": "3 at each age (7, 28 days), 2 kept spare: 8",
      "Blocks in all": "48",
      "Scatter assumed for the risks": "standard deviation 0.310 MPa, as entered",
      "Density checks": "2 per lot, 12 in all",
      "Basis (as entered)": "Code 2",
    });
    const volume = {
      ...config,
      quality: { ...config.quality, lot: { kind: "volume", volumeM3: 5 } },
    };
    // A plan that was not entered, or not worked out, is none.
    const unasked = { ...config, quality: undefined };
    expect(qualityPlanTable({ config: unasked, quality } as never).kind).toBe("note");
    expect(qualityPlanTable({ config } as never).kind).toBe("note");
    expect(itemsOf(qualityPlanTable({ config: volume, quality } as never))["Size of a lot"]).toBe(
      "5.00 m³ rammed",
    );
  });

  it("the checks hold the tolerances of the mix", () => {
    const mix = {
      recipe: {
        materials: [{ id: "soil", name: "Soil", sharePct: 100, dryMassKg: 100 }],
        cement: { name: "Cement" },
        cementPct: 8,
      },
      water: { window: { moisturePct: { low: 9.06, high: 11.04 }, targetMoisturePct: 10 } },
      density: { valueKgM3: 1900, lowKgM3: 1850, highKgM3: 1950 },
      quantities: { compactedLiftM: 0.1 },
    };
    const stated = {
      ...config,
      materials: [{ id: "soil", name: "Soil", moisturePct: 6 }],
      cement: { name: "Cement" },
      batchDryMassKg: 120,
      elements: [{ ...config.elements[0], compactedLiftM: 0.1 }],
    };
    const table = qualityChecksTable({
      config: stated,
      quality,
      mix,
      strength: { leastCement: { cementPct: 7.2 } },
    } as never);
    const accepted = Object.fromEntries(rowsOf(table).map(([check, , value]) => [check, value]));
    expect(headsOf(table)).toEqual(["Check", "How often", "Accepted", "If not"]);
    expect(accepted["Compacted lift thickness"]).toBe("80.0 mm to 120 mm");
    expect(accepted["Dry density, rammed"]).toBe("at least 1850 kg/m³");
    expect(accepted["Cement in a batch"]).toBe("7.60 to 8.40 %");
    expect(accepted["Moisture at compaction"]).toBe("9.1 to 11.0 %");
  });
});

describe("trials", () => {
  it("a trial with its colour, and differences to one decimal", () => {
    const trial = {
      id: "T1",
      row: 2,
      mix: "A",
      texture: "fine",
      edges: "sharp",
      thicknessMm: 25,
      munsell: "10YR 5/4",
      lab: { l: 51.234, a: 8.763, b: 22.1 },
      dryToConstantMass: true,
    };
    const table = trialsTable([trial, { id: "T2", mix: "B", dryToConstantMass: false, row: 3 }]);
    expect(rowsOf(table)).toEqual([
      [
        "T1",
        "A",
        "fine",
        "sharp",
        "10YR 5/4, L* a* b* 51.2 8.76 22.1",
        "25 mm, dry to constant mass",
      ],
      ["T2", "B", "–", "–", "–", "not known to be dry"],
    ]);
    const block = {
      id: "L1",
      cracks: "a hairline",
      colour: "light brown",
      photograph: "photos/L1.jpg",
      seenBy: "the laboratory",
      seenOn: "2026-06-12",
      remark: "rings",
      row: 2,
    };
    expect(rowsOf(trialsTable([{ ...trial, colour: "tan" }]))[0][4]).toBe(
      "tan, 10YR 5/4, L* a* b* 51.2 8.76 22.1",
    );
    const whole = trialsTable([block, { id: "L2", seenOn: "2026-06-13", row: 3 }]);
    // What nobody wrote down has no column.
    expect(headsOf(whole)).toEqual([
      "Trial",
      "Cracks",
      "Colour",
      "Sample",
      "Seen by, on",
      "Remark",
    ]);
    expect(rowsOf(whole)).toEqual([
      [
        "L1",
        "a hairline",
        "light brown",
        "not known to be dry",
        "the laboratory, 2026-06-12, photos/L1.jpg",
        "rings",
      ],
      ["L2", "–", "–", "not known to be dry", "2026-06-13", "–"],
    ]);
    const differences = trialDifferencesTable([
      { one: "T1", other: "T2", deltaE: 3.46, words: "seen side by side" },
    ] as never);
    expect(rowsOf(differences)).toEqual([["T1", "T2", "3.5", "seen side by side"]]);
    expect(rowsOf(differences, "es")[0][3]).not.toBe("seen side by side");
    expect(rowsOf(trialsTable([trial], "US"))[0][5]).toBe("0.984 in, dry to constant mass");
  });
});
