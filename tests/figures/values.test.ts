import { describe, expect, it } from "vitest";
import { blendChart, robustnessChart, sharesChart } from "../../src/figures/blend/blendChart.js";
import { frontierChart, ternaryChart } from "../../src/figures/blend/tradeoffCharts.js";
import { compactionChart } from "../../src/figures/compactionChart.js";
import { type Figure, withoutTitle } from "../../src/figures/figure.js";
import { guidanceBand } from "../../src/figures/grading/band.js";
import { gradingChart } from "../../src/figures/grading/gradingChart.js";
import { plasticityChart } from "../../src/figures/plasticityChart.js";
import {
  lotsChart,
  operatingCharacteristicChart,
} from "../../src/figures/strength/controlCharts.js";
import { residualsChart, strengthChart } from "../../src/figures/strength/strengthChart.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";

interface Trace {
  readonly name?: string;
  readonly x: readonly unknown[];
  readonly y: readonly unknown[];
  readonly text?: readonly string[];
  readonly mode?: string;
  readonly fill?: string;
  readonly line?: { readonly dash?: string };
  readonly base?: readonly number[];
  readonly error_x?: { readonly array: readonly number[] };
  readonly error_y?: { readonly array: readonly number[]; readonly arrayminus?: readonly number[] };
}
interface Layout {
  readonly title: { readonly text: string };
  readonly width: number;
  readonly height: number;
  readonly xaxis: {
    readonly range: readonly number[];
    readonly title: { readonly text: string };
    readonly minor: { readonly tickvals: readonly number[] };
  };
  readonly yaxis: {
    readonly range: readonly number[];
    readonly title: { readonly text: string };
    readonly ticktext: readonly string[];
  };
  readonly shapes: readonly { readonly x0: number; readonly y0: number }[];
  readonly annotations: readonly { readonly text: string; readonly y: number }[];
}
const drawn = (figure: Figure) => {
  const { data, layout, altText } = renderAll(figure);
  return { data: data as readonly Trace[], layout: layout as Layout, altText };
};
/** 1 psi = 6.894757 kPa (NIST SP 811 App. B, from memory). */
const PSI = 0.006894757293168;
const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 6));

describe("envelopes", () => {
  const curve = { name: "Soil", curve: curveOf([0.063, 20], [2, 60], [20, 100]) };
  const points = [
    { sizeMm: 0.063, lowPct: 11, highPct: 22 },
    { sizeMm: 2, lowPct: 44, highPct: 66 },
  ];

  it("are filled between an upper and a lower edge, in that order", () => {
    const [upper, lower] = drawn(gradingChart("G", [curve], { name: "A", points })).data;
    expect([upper.y, lower.y]).toEqual([
      [22, 66],
      [11, 44],
    ]);
    expect([upper.x, lower.x]).toEqual([
      [0.063, 2],
      [0.063, 2],
    ]);
    expect([upper.fill, lower.fill]).toEqual([undefined, "tonexty"]);
    expect([upper.line?.dash, lower.line?.dash]).toEqual(["solid", "solid"]);
    expect(upper.mode).toBe("lines+markers");
  });

  it("that were derived have dashed edges and say so", () => {
    const entry = GUIDANCE_ENTRIES.find((one) => one.derived && one.points.length > 1)!;
    const band = guidanceBand(entry)!;
    const { data } = drawn(gradingChart("G", [curve], band));
    expect(data[0].line?.dash).not.toBe("solid");
    expect(data[1].name).toContain("derived by us from fraction limits");
    expect(data[0].y).toEqual(entry.points.map(({ highPct }) => highPct));
    const published = GUIDANCE_ENTRIES.find(
      (one) => !one.derived && !one.own && one.points.length > 1,
    )!;
    expect(drawn(gradingChart("G", [curve], guidanceBand(published)!)).data[1].name).toContain(
      "as published",
    );
  });

  it("stand on fine lines at 1 to 9 of each decade", () => {
    const { tickvals } = drawn(gradingChart("G", [curve])).layout.xaxis.minor;
    expect(tickvals.filter((size) => size >= 0.01 && size < 0.1)).toEqual(
      near([0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09]),
    );
    expect(tickvals[0]).toBe(0.001);
  });
});

describe("a figure's layout", () => {
  it("holds title and size, which a page with a caption takes away", () => {
    const figure = gradingChart("My grading", [{ name: "S", curve: curveOf([1, 50], [2, 100]) }]);
    const { layout } = drawn(figure);
    expect(layout.title.text).toBe("My grading");
    expect([layout.width, layout.height]).toEqual([720, 450]);
    const bare = withoutTitle(figure.layout) as { legend: { y: number } };
    expect(Object.keys(bare)).not.toEqual(expect.arrayContaining(["title"]));
    expect(bare).not.toHaveProperty("width");
    expect(bare).not.toHaveProperty("height");
    expect(bare.legend.y).toBe(1);
  });
});

describe("figures of the blend", () => {
  const materials = [
    { id: "a", name: "Gravel", minSharePct: 10, maxSharePct: 70 },
    { id: "b", name: "Gravel", minSharePct: 0, maxSharePct: 30 },
  ] as never;

  it("shares are bars; two materials of one name keep a row each", () => {
    const shares = [
      { id: "b", sharePct: 22.26 },
      { id: "a", sharePct: 77.74 },
    ];
    const { data, layout, altText } = drawn(sharesChart("S", materials, { shares } as never));
    expect([data[0].x, data[0].y]).toEqual([
      [77.74, 22.26],
      ["a", "b"],
    ]);
    expect(layout.yaxis.ticktext).toEqual(["Gravel", "Gravel"]);
    expect(layout.xaxis).toMatchObject({ range: [0, 124], tickvals: [0, 20, 40, 60, 80, 100] });
    // The allowed range as its middle and its half.
    expect([data[1].x, data[1].error_x?.array]).toEqual([
      [40, 15],
      [30, 15],
    ]);
    expect(layout.annotations.map(({ text, y }) => [text, y])).toEqual([
      ["77.7 %", "a"],
      ["22.3 %", "b"],
    ]);
    expect(altText).toBe(
      "S. Gravel: 77.7 % (allowed 10 to 70 %); Gravel: 22.3 % (allowed 0 to 30 %).",
    );
  });

  it("the blend against its target; against a band there is no target line", () => {
    const blend = {
      curve: curveOf([0.063, 21], [20, 100]),
      points: [{ sizeMm: 0.063, targetPct: 17, blendPct: 21, differencePct: 4 }],
      target: { kind: "power", topSizeMm: 20 },
    };
    const { data } = drawn(blendChart("B", blend as never));
    expect(data.map(({ name, x, y }) => [name, x, y])).toEqual([
      ["blend", [0.063, 20], [21, 100]],
      ["target", [0.063, 20], [17, 100]],
    ]);
    const band = { ...blend, target: { kind: "band", topSizeMm: null } };
    expect(drawn(blendChart("B", band as never)).data.map(({ name }) => name)).toEqual(["blend"]);
  });

  it("robustness: allowed from low to high, the median between the 5th and 95th", () => {
    const point = {
      sizeMm: 0.063,
      lowPct: 12,
      highPct: 25,
      p05Pct: 14,
      medianPct: 17,
      p95Pct: 22,
      insideProbability: 0.934,
    };
    const found = { points: [point], insideProbability: 0.91, worst: point, draws: 500 };
    const { data, layout } = drawn(robustnessChart("R", found as never));
    expect([data[0].base, data[0].y]).toEqual([[12], [13]]);
    expect([data[1].y, data[1].error_y?.array, data[1].error_y?.arrayminus]).toEqual([
      [17],
      [5],
      [3],
    ]);
    expect(layout.annotations[0].text).toBe("93.4 %");
  });

  it("map: a, b and c are the shares in their order; crosses break a limit", () => {
    const point = (sharesPct: number[], rmsDifferencePct: number, allowed: boolean) => ({
      sharesPct,
      rmsDifferencePct,
      allowed,
    });
    const best = point([60, 30, 10], 2, true);
    const map = { points: [best, point([10, 20, 70], 9, true), point([5, 90, 5], 4, false)], best };
    const { data, altText } = drawn(ternaryChart("M", map as never, ["A", "B", "C"]));
    const marks = data as unknown as { name: string; a: number[]; b: number[]; c: number[] }[];
    expect(marks.map(({ name, a, b, c }) => [name, a, b, c])).toEqual([
      ["breaks a limit", [5], [90], [5]],
      ["up to 2.50 points", [60], [30], [10]],
      ["more than 8.00 points", [10], [20], [70]],
      ["best blend", [60], [30], [10]],
    ]);
    expect(altText).toContain("2 of 3 blends");
    const line = drawn(
      frontierChart(
        "F",
        [{ value: 55, rmsDifferencePct: 2.5, sharesPct: [55, 45] }] as never,
        "Soil",
        ["A", "B"],
      ),
    );
    expect([line.data[0].x, line.data[0].y]).toEqual([[55], [2.5]]);
    expect(line.altText).toContain("at 55.0 the difference is 2.50 points (A 55.0 %, B 45.0 %)");
  });
});

describe("figures of a soil", () => {
  it("plasticity: index on liquid limit with half intervals", () => {
    const sample = {
      name: "S",
      liquidLimitPct: 40,
      plasticityIndexPct: 21,
      liquidLimitInterval95: [38, 42.4],
      plasticityIndexInterval95: [20, 23],
    } as const;
    const { data } = drawn(plasticityChart("P", [sample]));
    const mark = data.at(-1)!;
    expect([mark.x, mark.y]).toEqual([[40], [21]]);
    expect(mark.error_x?.array).toEqual(near([2.2]));
    expect(mark.error_y?.array).toEqual(near([1.5]));
    const uLine = data.find(({ name }) => name?.startsWith("U-line"))!;
    // PI = 0.9 (LL − 8).
    uLine.x.forEach((liquid, at) => {
      expect(uLine.y[at]).toBeCloseTo(0.9 * ((liquid as number) - 8), 6);
    });
  });

  it("compaction in lb/ft³: water across, dry density up, optimum with its intervals", () => {
    const test = {
      points: [
        { waterContentPct: 8, dryDensityKgM3: 1800 },
        { waterContentPct: 12, dryDensityKgM3: 1850 },
      ],
      curve: [
        { waterContentPct: 8, dryDensityKgM3: 1800 },
        { waterContentPct: 10, dryDensityKgM3: 1900 },
        { waterContentPct: 12, dryDensityKgM3: 1850 },
      ],
      zeroAirVoids: [],
      peak: {
        optimumWaterPct: 10,
        maximumDryDensityKgM3: 1900,
        optimumInterval95: [9.4, 10.8],
        maximumInterval95: [1880, 1920],
        method: "quadratic",
      },
      alternatives: [],
    };
    const { data, layout } = drawn(compactionChart("C", test as never, "US"));
    const named = (name: string) => data.find((trace) => trace.name === name)!;
    // 1800 kg/m³ × 0.3048³ / 0.45359237
    const pcf = (kgM3: number) => (kgM3 * 0.3048 ** 3) / 0.45359237;
    expect(named("test").x).toEqual([8, 12]);
    expect(named("test").y).toEqual(near([pcf(1800), pcf(1850)]));
    const optimum = named("optimum with 95 % intervals");
    expect([optimum.x, optimum.y]).toEqual([[10], near([pcf(1900)])]);
    expect(optimum.error_x?.array).toEqual(near([0.7]));
    expect(optimum.error_y?.array).toEqual(near([pcf(20)]));
    expect(layout.yaxis.title.text).toBe("Dry density (lb/ft³)");
    expect(layout.xaxis.title.text).toBe("Water content (% of dry mass)");
  });
});

describe("figures of strength", () => {
  const band = (cementPct: number, psi: number) => ({
    cementPct,
    meanMpa: psi * PSI,
    meanLowMpa: (psi - 10) * PSI,
    meanHighMpa: (psi + 12) * PSI,
    lowerBoundMpa: {
      mean: (psi - 5) * PSI,
      prediction: (psi - 50) * PSI,
      tolerance: (psi - 90) * PSI,
    },
  });
  const specimen = (
    id: string,
    cementPct: number,
    psi: number,
    ageDays: number,
    excluded?: string,
  ) => ({
    id,
    cementPct,
    ageDays,
    strengthMpa: psi * PSI,
    excluded,
  });
  const result = {
    config: {
      units: "US",
      strength: {
        requirement: {
          ageDays: 28,
          statistic: "prediction",
          confidence: 0.95,
          strengthMpa: 300 * PSI,
        },
      },
    },
    strength: {
      bands: [band(4, 250), band(8, 450)],
      fit: { line: "mean", ageDays: 28 },
      specimens: [
        specimen("A", 4, 255, 28),
        specimen("B", 8, 333, 7),
        specimen("C", 8, 111, 28, "cracked"),
      ],
      leastCement: { cementPct: 6.123 },
    },
  };

  it("each line holds its own numbers in the unit of the axis", () => {
    const { data, layout, altText } = drawn(strengthChart("S", result as never) as Figure);
    expect(data.map(({ name, x, y }) => [name, x, y])).toEqual([
      ["", [4, 8], near([262, 462])],
      ["band of the mean", [4, 8], near([240, 440])],
      ["mean at 28 d", [4, 8], near([250, 450])],
      ["prediction bound (one further block)", [4, 8], near([200, 400])],
      ["28 d", [4], near([255])],
      ["7 d", [8], near([333])],
      ["excluded", [8], near([111])],
    ]);
    expect(data.at(-1)?.text).toEqual(["C, excluded: cracked"]);
    expect(layout.shapes.map(({ x0, y0 }) => [x0, y0])).toEqual([
      [0, expect.closeTo(300, 6)],
      [6.123, 0],
    ]);
    expect(layout.annotations.map(({ text }) => text)).toEqual([
      "required 300 psi",
      "least cement 6.12 %",
    ]);
    expect(altText).toContain("from 250 psi at 4 % to 450 psi at 8 % cement");
    expect(altText).toContain("from 6.12 % cement");
  });

  it("residuals: studentised on fitted, the far ones named", () => {
    const point = (id: string, fitted: number, studentised: number | null) => ({
      id,
      fittedMpa: fitted,
      studentised,
    });
    const fit = {
      ageDays: 28,
      points: [point("A", 2, -2.4), point("B", 3, 1.1), point("C", 4, null)],
    };
    const { data, layout, altText } = drawn(residualsChart("R", fit as never, "SI"));
    expect([data[0].x, data[0].y, data[0].text]).toEqual([
      [2, 3],
      [-2.4, 1.1],
      ["A", ""],
    ]);
    expect(layout.shapes.map(({ y0 }) => y0)).toEqual([0, 2, -2]);
    expect(altText).toContain("1 lie beyond plus or minus 2: A. The largest is −2.4, of block A");
  });

  it("lots: centre, limits and what is required, all within the axis", () => {
    const lot = (label: string, valueMpa: number, signals: string[] = []) => ({
      label,
      valueMpa,
      signals,
    });
    const chart = {
      kind: "means",
      message: "Look at L2.",
      centreMpa: 2.5,
      lowMpa: 2.1,
      highMpa: 2.9,
      points: [lot("L1", 2.4), lot("L2", 3.1, ["outside-limits"])],
    };
    const { data, layout, altText } = drawn(lotsChart("L", chart as never, "SI", 1.5));
    expect(data.map(({ name, x, y, text }) => [name, x, y, text])).toEqual([
      ["lots", ["L1"], [2.4], [""]],
      ["lots with a signal", ["L2"], [3.1], ["outside the limits"]],
    ]);
    expect(layout.annotations.map(({ text, y }) => [text, y])).toEqual([
      ["centre", 2.5],
      ["lower limit", 2.1],
      ["upper limit", 2.9],
      ["required", 1.5],
    ]);
    expect(layout.shapes.map(({ y0 }) => y0)).toEqual([2.5, 2.1, 2.9, 1.5]);
    // From 1.5 to 3.1, and a twelfth or so beyond on each side.
    expect(layout.yaxis.range).toEqual(near([1.5 - 0.128, 3.1 + 0.128]));
    expect(altText).toBe(
      "Control chart of 2 lots (means). Centre 2.50 MPa, limits 2.10 MPa and 2.90 MPa. Required: 1.50 MPa. Look at L2.",
    );
    const high = drawn(lotsChart("L", chart as never, "SI", 4)).layout.yaxis.range;
    expect(high[1]).toBeGreaterThan(4);
  });

  it("acceptance: the poor lot at its risk, the good one at what is left", () => {
    const rule = { kind: "mean-less-ks", blocks: 5, requiredMpa: 2, factor: 1 } as const;
    const risks = {
      builderRisk: 0.05,
      ownerRisk: 0.2,
      goodMeanMpa: 2.7,
      poorMeanMpa: 2.25,
      message: "",
    };
    const named = { ...risks, producerRisk: risks.builderRisk, consumerRisk: risks.ownerRisk };
    const { data } = drawn(
      operatingCharacteristicChart("O", rule, named as never, { sdMpa: 0.3, units: "SI" }),
    );
    expect([data[1].x, data[1].y, data[1].text]).toEqual([
      [2.25, 2.7],
      [20, 95],
      ["rejectable", "acceptable"],
    ]);
    const y = data[0].y as number[];
    for (const [at, value] of y.entries())
      if (at > 0) expect(value).toBeGreaterThanOrEqual(y[at - 1] - 1e-9);
    expect([y[0] < 10, y.at(-1)! > 95]).toEqual([true, true]);
  });
});
