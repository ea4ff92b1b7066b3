import { describe, expect, it } from "vitest";
import type { CompactionRecord } from "../../src/lab/compaction.js";
import { classifyAashto } from "../../src/soil/classification/aashto.js";
import { classifyBs5930 } from "../../src/soil/classification/bs5930.js";
import { classifyIso14688 } from "../../src/soil/classification/iso14688.js";
import { classifyUscs } from "../../src/soil/classification/uscs.js";
import { usdaTexture } from "../../src/soil/classification/usdaTexture.js";
import { analyseCompaction } from "../../src/soil/compaction/compactionTest.js";
import { consistencyLimits } from "../../src/soil/consistency/limits.js";
import type { Text } from "../../src/words/message.js";
import { renderAll } from "../../src/words/render.js";

/** A-line at 42.26: 0.73 · 22.26 = 16.25. */
const clay = { liquidLimitPct: 42.26, plasticityIndexPct: 20.14 };
const loam = { gravelPct: 10.26, sandPct: 49.51, finesPct: 40.23 };
const sand = { gravelPct: 10.26, sandPct: 86.51, finesPct: 3.23, cu: 7.123, cc: 1.456 };
const said = ({ path }: { readonly path: readonly Text[] }) => renderAll(path);

describe("the numbers of a path of decisions", () => {
  it("of ASTM D2487", () => {
    expect(said(classifyUscs({ ...loam, ...clay }))).toEqual([
      "40.2 % fines, less than 50 %: coarse-grained.",
      "10.3 % gravel does not exceed 49.5 % sand: sand.",
      "Fines above 12 %: named by the fines. LL 42.3 is below 50; PI 20.1 lies on or above the A-line (16.2) and is above 7: CL.",
    ]);
    expect(said(classifyUscs(sand)).slice(2)).toEqual([
      "Cu 7.12, Cc 1.46: Cu 6 or more and Cc 1 to 3, well-graded.",
      "Fines below 5 %: clean.",
    ]);
    const gravel = { ...sand, gravelPct: 86.51, sandPct: 10.26, cu: 3.987 };
    expect(said(classifyUscs(gravel)).slice(1, 3)).toEqual([
      "86.5 % gravel exceeds 10.3 % sand: gravel.",
      "Cu 3.99, Cc 1.46: not both Cu 4 or more and Cc 1 to 3, poorly graded.",
    ]);
    const fine = { gravelPct: 5.06, sandPct: 20.02, finesPct: 74.92 };
    // 0.73 · 34.56 = 25.23.
    const silt = { liquidLimitPct: 54.56, plasticityIndexPct: 3.46 };
    expect(said(classifyUscs({ ...fine, ...silt }))).toEqual([
      "74.9 % fines, 50 % or more: fine-grained.",
      "LL 54.6 is 50 or more; PI 3.5 lies below the A-line (25.2): MH.",
    ]);
  });

  it("of BS 5930", () => {
    expect(said(classifyBs5930({ ...loam, ...clay }))).toEqual([
      "40.2 % fines, 35 % or more: fine soil.",
      "PI 20.1 lies on or above the A-line (16.2): C; LL 42.3: intermediate plasticity, I.",
      "Fines below 65 %: sandy.",
    ]);
    expect(said(classifyBs5930(sand)).slice(0, 3)).toEqual([
      "3.2 % fines, below 35 %: coarse soil.",
      "10.3 % gravel does not exceed 86.5 % sand: sand.",
      "Cu 7.1, Cc 1.46: well-graded, W.",
    ]);
    expect(said(classifyBs5930({ ...sand, cu: 5.96 }))[2]).toBe("Cu 6.0, Cc 1.46: uniform, Pu.");
    expect(said(classifyBs5930({ ...sand, cc: 3.456 }))[2]).toBe(
      "Cu 7.1, Cc 3.46: a gap in the grading, Pg.",
    );
  });

  it("of ISO 14688-2", () => {
    // 4.01 of 40.23 is 9.97 %.
    expect(said(classifyIso14688({ ...loam, clayPct: 4.01 }))).toEqual([
      "10.3 % gravel, 49.5 % sand, 40.2 % fines.",
      "Fines of 40 % or more, clay 10.0 % of them.",
      "saSi: sandy silt.",
    ]);
    const coarse = { gravelPct: 10.26, sandPct: 69.51, finesPct: 20.23, clayPct: 2.04 };
    // 2.04 of 20.23 is 10.08 %.
    expect(said(classifyIso14688(coarse))).toEqual([
      "10.3 % gravel, 69.5 % sand, 20.2 % fines.",
      "Fines below 40 %; sand is not exceeded by gravel.",
      "Clay is 10.1 % of the fines: silty.",
      "siSa: silty sand.",
    ]);
  });

  it("of AASHTO M 145", () => {
    // (40 − 35)(0.2 + 0.005 (35 − 40)) + 0.01 (40 − 15)(17 − 10) = 0.875 + 1.75 = 2.625;
    // the older form 0.2 · 5 + 0.01 · 25 · 7 = 2.75.
    const given = { passing2Pct: 90.4, passing0425Pct: 60.6, passing0075Pct: 40.4 };
    const limits = { liquidLimitPct: 35.4, plasticityIndexPct: 16.6 };
    expect(said(classifyAashto({ ...given, ...limits }))).toEqual([
      "Passing 2 mm 90 %, 0.425 mm 61 %, 0.075 mm 40 %.",
      "LL 35, PI 17.",
      "36 % fines or more, LL up to 40 and PI 11 or more: A-6.",
      "Group index 2.63, rounded 3, by the present formula without caps.",
    ]);
    // 0.875 + 0.01 · 25 · 6 = 2.375 against 1 + 1.5 = 2.5.
    const older = { ...limits, plasticityIndexPct: 15.6 };
    expect(said(classifyAashto({ ...given, ...older })).at(-1)).toBe(
      "The older form, still in print, caps its terms and would give 3.",
    );
  });

  it("of the USDA", () => {
    const parts = { sandPct: 40.16, siltPct: 39.52, clayPct: 20.32, gravelPct: 20.26 };
    expect(said(usdaTexture(parts))).toEqual([
      "Of the part under 2 mm: 40.2 % sand, 39.5 % silt, 20.3 % clay.",
      "First rule that fits: clay below 27, silt 28 or more, sand up to 52: loam.",
      "20.3 % of the whole is coarser than 2 mm: gravelly.",
    ]);
  });
});

/** Dry densities as the laboratory reports them. */
function compaction(
  points: readonly (readonly [waterContentPct: number, dryDensityKgM3: number])[],
  reported?: CompactionRecord["reported"],
  particleDensityKgM3?: number,
) {
  const record = {
    file: "c.csv",
    points: points.map(([waterContentPct, dryDensityKgM3], index) => ({
      waterContentPct,
      dryDensityKgM3,
      row: index + 2,
    })),
    reported,
  };
  return renderAll(analyseCompaction(record, { particleDensityKgM3 }).findings);
}

const top = (water: number) => 2000 - 6 * (water - 9.7) ** 2;
const WATERS = [6, 8, 10, 12, 14] as const;
const PARABOLA = WATERS.map((water) => [water, top(water)] as const);

describe("the numbers of a finding on compaction", () => {
  it("a reported top against the points", () => {
    const about = (optimumWaterPct: number, maximumDryDensityKgM3: number) =>
      compaction(PARABOLA, { optimumWaterPct, maximumDryDensityKgM3 });
    expect(about(11.69, 2059)).toEqual([]);
    expect(about(7.71, 1941)).toEqual([]);
    expect(about(11.74, 1939.4)).toMatchObject([
      {
        code: "reported-against-points",
        value: "11.7 %",
        message: "The sheet reports 11.7 % for the peak, but its points give 9.7 %.",
        expected: "an optimum within 2 points of it (common practice, no source)",
      },
      {
        value: "1939 kg/m³",
        message: "The sheet reports 1939 kg/m³ for the peak, but its points give 2000 kg/m³.",
        expected: "a density within 3 % of it (common practice, no source)",
      },
    ]);
  });

  it("points and a top that leave no room for their water", () => {
    // At 9.7 %: 2400 / (1 + 0.097 · 2.4) = 1947; at 10 %: 2400 / 1.24 = 1935.
    const found = compaction(PARABOLA, undefined, 2400);
    const [point] = found.filter(({ row }) => row === 4);
    expect(point).toMatchObject({
      code: "above-zero-air-voids",
      value: "1999 kg/m³ at 10.0 %",
      expected: "at most 1935 kg/m³ for particles of 2400 kg/m³",
    });
    expect(found.find(({ code }) => code === "optimum-above-zero-air-voids")).toMatchObject({
      value: "2000 kg/m³ at 9.7 %",
      expected: "at most 1947 kg/m³ for particles of 2400 kg/m³",
    });
  });

  it("methods that part", () => {
    // Least squares on u = −2 to 2: c = Σ(u² − 2) y / 14 = −75, b = Σ u y / 10 = −19, a = 1786 + 150, so
    // u = −0.127 and 1937.2; through the middle three: u = 5/30 and 1900 + 25/60.
    expect(
      compaction([
        [8, 1680],
        [9, 1880],
        [10, 1900],
        [11, 1890],
        [12, 1580],
      ]),
    ).toMatchObject([
      {
        code: "compaction-methods-differ",
        value: "9.9 %, 1937 kg/m³",
        message:
          "The quadratic gives a different peak from the three-point parabola (10.2 %, 1900 kg/m³).",
        expected:
          "peaks within 10 % of the optimum and 35 kg/m³ of each other: single-operator repeatability (AASHTO T 99, from memory)",
      },
    ]);
  });

  it("a peak off every point", () => {
    // On u = −3, −2, 2, 3: c = (1700 − 1795) / 5 = −19, a = 1795 + 76 = 1871, and b hardly moves it.
    expect(
      compaction([
        [7, 1700],
        [8, 1800],
        [12, 1790],
        [13, 1700],
      ]),
    ).toMatchObject([
      {
        code: "compaction-peak-off-reading",
        value: "1871 kg/m³",
        message:
          "The peak by the quadratic lies 71 kg/m³ above the highest point that was measured.",
        expected: "within 35 kg/m³ of it: single-operator repeatability (AASHTO T 99, from memory)",
      },
    ]);
  });

  it("a side with one point", () => {
    expect(compaction(PARABOLA.slice(1))).toMatchObject([
      {
        code: "compaction-one-sided",
        row: 2,
        value: "1 drier",
        message: "Fewer than two points lie on the dry side of the optimum.",
      },
    ]);
  });

  it("points without a top", () => {
    const rising = WATERS.map((water) => [water, 1700 + 20 * water] as const);
    expect(compaction(rising)).toMatchObject([
      { code: "no-compaction-peak", row: 6, value: "5 points" },
    ]);
  });
});

describe("the numbers of a finding on limits", () => {
  it("one point of the cup", () => {
    const { findings } = consistencyLimits({
      file: "l.csv",
      liquidLimitMethod: "cup",
      liquidLimitPoints: [{ measure: 22, waterContentPct: 40, row: 3 }],
      plasticLimitPoints: [],
      nonPlastic: false,
    });
    expect(renderAll(findings)).toMatchObject([
      { code: "one-point-liquid-limit", row: 3, value: "22 blows", expected: "at least 3 points" },
    ]);
  });

  it("limits the wrong way round", () => {
    const { findings } = consistencyLimits({
      file: "l.csv",
      liquidLimitPoints: [],
      plasticLimitPoints: [],
      nonPlastic: false,
      reported: { liquidLimitPct: 20.26, plasticLimitPct: 24.52 },
    });
    expect(renderAll(findings)).toMatchObject([
      { code: "limits-reported" },
      { code: "limits-crossed", value: "LL 20.3, PI −4.3" },
    ]);
  });
});
