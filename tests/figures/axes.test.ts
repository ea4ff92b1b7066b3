import { describe, expect, it } from "vitest";
import { robustnessChart } from "../../src/figures/blend/blendChart.js";
import { ternaryChart } from "../../src/figures/blend/tradeoffCharts.js";
import { compactionChart } from "../../src/figures/compactionChart.js";
import type { Figure } from "../../src/figures/figure.js";
import { gradingResidualsChart } from "../../src/figures/grading/modelChart.js";
import { guidanceRangesChart, guidanceRangesCharts } from "../../src/figures/guidanceRanges.js";
import { plasticityChart } from "../../src/figures/plasticityChart.js";
import {
  lotsChart,
  operatingCharacteristicChart,
} from "../../src/figures/strength/controlCharts.js";
import { residualsChart, strengthChart } from "../../src/figures/strength/strengthChart.js";
import { svgPathPoints } from "../../src/figures/svg/geometry.js";
import { textureTriangle } from "../../src/figures/textureTriangle.js";
import { WATER_KG_M3 } from "../../src/soil/compaction/phaseRelations.js";
import type { Text } from "../../src/words/message.js";
import { render } from "../../src/words/render.js";

interface Drawn {
  readonly x: readonly number[];
  readonly y: readonly number[];
}
const drawn = ({ data }: Figure) => data as readonly Drawn[];
const rangesOf = ({ layout }: Figure) => {
  const { xaxis, yaxis } = layout as Record<string, { readonly range?: readonly number[] }>;
  return [xaxis.range, yaxis.range];
};
const close = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

describe("the axes leave room about what is drawn", () => {
  it("of a plasticity chart: to the next ten, and half of one more", () => {
    const ranges = (liquidLimitPct: number, plasticityIndexPct: number) =>
      rangesOf(plasticityChart("Plasticity", [{ name: "A", liquidLimitPct, plasticityIndexPct }]));
    expect(ranges(40, 21)).toEqual([
      [0, 80],
      [0, 50],
    ]);
    expect(ranges(75, 45)).toEqual([
      [0, 80],
      [0, 50],
    ]);
    expect(ranges(76, 46)).toEqual([
      [0, 90],
      [0, 60],
    ]);
    // A-line 0.73 (LL − 20) from PI 4 to the right edge, U-line 0.9 (LL − 8) from LL 16 to the top.
    const sample = { name: "A", liquidLimitPct: 40, plasticityIndexPct: 21 };
    const [aLine, uLine] = drawn(plasticityChart("Plasticity", [sample]));
    expect([aLine.x, aLine.y]).toEqual([close([20 + 4 / 0.73, 80]), close([4, 43.8])]);
    expect([uLine.x, uLine.y]).toEqual([close([16, 8 + 50 / 0.9]), close([7.2, 50])]);
  });

  it("of a texture triangle: 20, 40, 60 and 80 % beside each edge, clay upwards, silt to the right", () => {
    const parts = { clayPct: 20, siltPct: 30, sandPct: 50 };
    const { annotations } = textureTriangle("Texture", [{ name: "A", parts }]).layout as {
      readonly annotations: readonly { text: unknown; x: number; y: number }[];
    };
    const marks = annotations.filter(({ text }) => typeof text === "string");
    const high = Math.sqrt(3) / 2;
    expect(marks.map(({ text, x, y }) => [text, x, y])).toEqual(
      [20, 40, 60, 80].flatMap((pct) => [
        [`${pct}`, ...close([pct / 2 - 2.5, high * pct])],
        [`${pct}`, ...close([pct + (100 - pct) / 2 + 5, high * (100 - pct) + 2])],
        [`${pct}`, ...close([100 - pct, -4.4])],
      ]),
    );
  });

  it("of a compaction chart: a quarter of the range below, and up to the line of zero air voids", () => {
    const range = (wettestKgM3?: number) => {
      const at = (waterContentPct: number, dryDensityKgM3: number) => ({
        waterContentPct,
        dryDensityKgM3,
      });
      const zeroAirVoids = wettestKgM3 === undefined ? [] : [at(5, 2400), at(20, wettestKgM3)];
      const analysis = { points: [at(8, 1800), at(12, 2000)], curve: [], zeroAirVoids };
      return rangesOf(compactionChart("Compaction", analysis as never, "SI"))[1];
    };
    expect([range(), range(1900), range(2150), range(2500)]).toEqual([
      [1750, 2100],
      [1750, 2100],
      [1750, 2175],
      [1750, 2200],
    ]);
    // The number of a line stands where it comes 11 % of the frame below the top: at 2061.5 of 1750 to 2100.
    // 1 / (1 / 2650 + w / 1000): 2065 at 10.7 % of water, 2060 at 10.8 %.
    const line = [8, 10.7, 10.8, 12].map((waterContentPct) => ({
      waterContentPct,
      dryDensityKgM3: 1 / (1 / 2650 + waterContentPct / 100 / WATER_KG_M3),
    }));
    const points = [1800, 2000].map((dryDensityKgM3) => ({ waterContentPct: 8, dryDensityKgM3 }));
    const labelled = { points, curve: [], zeroAirVoids: line } as never;
    const { annotations } = compactionChart("Compaction", labelled, "SI").layout as {
      readonly annotations: readonly object[];
    };
    expect(annotations[0]).toMatchObject({ x: 10.8, xanchor: "left" });
    const peak = { optimumWaterPct: 11, maximumDryDensityKgM3: 2000, method: "reported" };
    const highestPoint = { waterContentPct: 11, dryDensityKgM3: 2000 };
    const lone = { points: [], curve: [], zeroAirVoids: [], peak, highestPoint };
    expect(rangesOf(compactionChart("Compaction", lone as never, "SI"))[1]).toEqual([1900, 2200]);
  });

  it("of a chart of lots: a twelfth or so about the outermost mark, and four tenths for the names", () => {
    const points = [2.4, 2.6, 2.5, 2.4, 3].map((valueMpa, index) => ({
      label: `L${index}`,
      valueMpa,
      signals: [],
    }));
    const chart = {
      points,
      kind: "individuals",
      message: "",
      centreMpa: 2.5,
      lowMpa: 2,
      highMpa: 3,
    };
    const [x, y] = rangesOf(lotsChart("Lots", chart as never, "SI", 1));
    expect(x).toEqual([-0.5, 6.5]);
    expect(y).toEqual(close([1 - 0.16, 3 + 0.16]));
    const alike = {
      ...chart,
      points: points.slice(0, 1),
      centreMpa: null,
      lowMpa: null,
      highMpa: null,
    };
    expect(rangesOf(lotsChart("Lots", alike as never, "SI", 2.4))[1]).toEqual(
      close([2.208, 2.592]),
    );
  });

  it("of an operating characteristic: two and a half deviations below, one and a half above", () => {
    const rule = { kind: "mean-less-ks", blocks: 5, requiredMpa: 2, factor: 1 } as const;
    const risks = {
      poorMeanMpa: 2,
      goodMeanMpa: 3,
      ownerRisk: 0.1,
      builderRisk: 0.05,
      message: "",
    };
    const ends = (sdMpa: number) => {
      const figure = operatingCharacteristicChart("Lots", rule, risks as never, {
        sdMpa,
        units: "SI",
      });
      const [curve, marks] = drawn(figure);
      const half = curve.x[curve.y.findIndex((percent) => percent >= 50)];
      expect(render(figure.altText)).toContain(`accepted at about ${half.toFixed(2)} MPa.`);
      expect([marks.x, marks.y]).toEqual([[2, 3], close([10, 95])]);
      return [curve.x[0], curve.x[60]];
    };
    expect(ends(0.2)).toEqual(close([1.5, 3.3]));
    expect(ends(1)).toEqual(close([0.05, 4.5]));
  });

  it("of residuals: half a unit beyond 2, or beyond the largest", () => {
    const ranges = (studentised: readonly number[]) => {
      const points = studentised.map((value, index) => ({
        id: `B${index}`,
        fittedMpa: 2,
        studentised: value,
      }));
      return rangesOf(residualsChart("Residuals", { ageDays: 28, points } as never, "SI"))[1];
    };
    expect([ranges([1, -1]), ranges([3, -2.5])]).toEqual([
      [-2.5, 2.5],
      [-3, 3.5],
    ]);
    const fitted = (measuredPct: number) => ({
      title: "power",
      fitted: [0.1, 10].map((sizeMm) => ({ sizeMm, measuredPct, fittedPct: 50 })),
    });
    const grading = rangesOf(gradingResidualsChart("Residuals", [fitted(54)] as never));
    expect(grading[0]).toEqual(close([Math.log10(0.075), Math.log10(13.5)]));
    expect(grading[1]).toEqual(close([-4.6, 4.6]));
    expect(rangesOf(gradingResidualsChart("R", [fitted(50.2)] as never))[1]).toEqual(
      close([-0.575, 0.575]),
    );
  });

  it("of recommended ranges: a seventh beyond the highest, to 100 at the most", () => {
    const top = (measuredPct: number | undefined, highPct: number | undefined) => {
      const sides = [{ id: "a", source: "A", lowPct: 20, highPct, verdict: "inside" }];
      const figure = guidanceRangesChart("Clay", { what: "clay", measuredPct, sides } as never);
      return rangesOf(figure)[0];
    };
    expect([top(30, 40), top(60, 40), top(undefined, undefined), top(30, 95)]).toEqual([
      [0, expect.closeTo(46, 9)],
      [0, expect.closeTo(69, 9)],
      [0, expect.closeTo(23, 9)],
      [0, 100],
    ]);
  });

  it("of a blend's robustness: the share stands above the higher bar, within the frame", () => {
    const points = [40, 80, 99].map((highPct, index) => ({
      sizeMm: index + 1,
      lowPct: 10,
      highPct,
      p05Pct: 20,
      medianPct: 30,
      p95Pct: 60,
      insideProbability: 0.9,
    }));
    const figure = robustnessChart("Loads", {
      points,
      insideProbability: 0.8,
      worst: points[0],
      draws: 10,
    } as never);
    const { annotations } = figure.layout as { readonly annotations: readonly { y: number }[] };
    expect(annotations.map(({ y }) => y)).toEqual([64, 84, 103]);
  });
});

describe("marks and words on their limits", () => {
  const NAMES = ["Soil", "Sand", "Gravel"] as const;

  it("a map of three: nearer by 1.25, 2 and 4 times the best, or a point where the best is nearer", () => {
    const classes = (best: number, others: readonly number[]) => {
      const points = [best, ...others].map((rmsDifferencePct) => ({
        rmsDifferencePct,
        allowed: true,
        sharesPct: [50, 30, 20],
      }));
      const map = { points, best: points[0] };
      const data = ternaryChart("Map", map as never, NAMES).data as readonly {
        readonly name: Text;
        readonly a: readonly number[];
      }[];
      return data.slice(0, -1).map(({ name, a }) => `${render(name)}: ${a.length}`);
    };
    expect(classes(2, [2.5, 2.51, 4, 4.01, 8, 8.01])).toEqual([
      "up to 2.50 points: 2",
      "up to 4.00 points: 2",
      "up to 8.00 points: 2",
      "more than 8.00 points: 1",
    ]);
    expect(classes(0.2, [1.25, 2])).toEqual(["up to 1.25 points: 2", "up to 2.00 points: 1"]);
  });

  it("the least cement is named on the side with more room", () => {
    const label = (cementPct: number) => {
      const band = {
        meanMpa: 2,
        meanLowMpa: 1.8,
        meanHighMpa: 2.2,
        lowerBoundMpa: { prediction: 1.5 },
      };
      const strength = {
        bands: [4, 10].map((content) => ({ ...band, cementPct: content })),
        specimens: [],
        fit: { line: "mean", ageDays: 28 },
        leastCement: { cementPct },
      };
      const result = { config: { units: "SI", strength: {} }, strength };
      const { layout } = strengthChart("Strength", result as never) as Figure;
      const { annotations } = layout as { readonly annotations: readonly object[] };
      return annotations;
    };
    expect(label(6.9)).toMatchObject([{ x: 6.9, xanchor: "left", xshift: 3 }]);
    expect(label(7.1)).toMatchObject([{ x: 7.1, xanchor: "right", xshift: -3 }]);
  });

  it("two sources are told by a sentence, three by a chart; nothing that was not measured", () => {
    const side = { id: "a", source: "A", lowPct: 5, highPct: 20, verdict: "inside" };
    const disagreement = (what: string, sources: number, measuredPct?: number) => ({
      what,
      measuredPct,
      sides: Array.from({ length: sources }, (_, index) => ({ ...side, id: `${index}` })),
    });
    const comparison = {
      disagreements: [
        disagreement("clay", 2, 9),
        disagreement("silt", 3, 9),
        disagreement("sand", 3),
      ],
    };
    const titles = guidanceRangesCharts(comparison as never, "Soil").map(({ title }) =>
      render(title),
    );
    expect(titles).toEqual(["Recommended silt and Soil"]);
  });

  it("a point above zero air voids is told with its water content, and whether the fit left it out", () => {
    const at = (waterContentPct: number, more: object = {}) => ({
      waterContentPct,
      dryDensityKgM3: 2000,
      ...more,
    });
    const points = [at(8.04), at(12.34, { airVoidsPct: -0.5 }), at(14.16, { rejected: true })];
    const analysis = { points, curve: [], zeroAirVoids: [] };
    const said = render(compactionChart("Compaction", analysis as never, "SI").altText);
    expect(said).toBe(
      "Compaction. 3 points from 8.0 to 14.2 % water. The points show no peak. The point at 12.3 % lies above zero air voids. The point at 14.2 % lies above zero air voids and was left out of the fit.",
    );
  });
});

it("a smooth curve goes on from the control point of the one before, mirrored", () => {
  const points = svgPathPoints("M0 0 C0 10 10 10 10 0 S20 -10 20 0");
  // Bézier at one half: (P0 + 3 P1 + 3 P2 + P3) / 8, with P1 = (10, −10).
  expect([points[12], points[24], points[36], points[48]]).toEqual([
    close([5, 7.5]),
    [10, 0],
    close([15, -7.5]),
    [20, 0],
  ]);
});
