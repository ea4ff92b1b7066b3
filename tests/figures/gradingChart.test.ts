import { wcagContrast } from "culori";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Figure } from "../../src/figures/figure.js";
import { guidanceBand, modelBand, uncertaintyBand } from "../../src/figures/grading/band.js";
import { gradingChart } from "../../src/figures/grading/gradingChart.js";
import { modelChart } from "../../src/figures/grading/modelChart.js";
import { placeLabels } from "../../src/figures/placeLabels.js";
import { QUIET } from "../../src/figures/style.js";
import { renderSvg } from "../../src/figures/svg/renderSvg.js";
import { characteristicSizes } from "../../src/grading/characteristics.js";
import { passingAtSize } from "../../src/grading/curve.js";
import { type BoundarySystem, SIZE_BOUNDARIES } from "../../src/grading/fractions.js";
import { chooseModel } from "../../src/grading/models/modelChoice.js";
import { resampleGrading } from "../../src/grading/uncertainty/fitBand.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { render, renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly fill?: string;
  readonly fillcolor?: string;
  readonly fillpattern?: { readonly shape: string };
  readonly line: { readonly dash: string; readonly color: string };
  readonly marker: { readonly symbol: string };
}
interface Layout {
  readonly xaxis: { readonly range: readonly number[]; readonly tickvals: readonly number[] };
  readonly shapes: readonly { readonly x0: number }[];
  readonly annotations: readonly { readonly text: string; readonly x: number }[];
}
const parts = (figure: Figure) => {
  const { data, layout, altText } = renderAll(figure);
  return { data: data as readonly Trace[], layout: layout as Layout, altText };
};

const CURVE = curveOf(
  [0.0015, 4],
  [0.004, 14],
  [0.02, 27],
  [0.063, 38],
  [0.5, 66],
  [4, 92],
  [20, 100],
);
const SOIL = { name: "Site soil", curve: CURVE };
const envelope = (name: string, lowPct: number) => ({
  name,
  points: [0.002, 0.063, 2, 20].map((sizeMm, at) => ({
    sizeMm,
    lowPct: lowPct + 20 * at,
    highPct: lowPct + 20 * at + 15,
  })),
});

describe("gradingChart", () => {
  it("turns the axis round and nothing else", () => {
    const fine = gradingChart("Grading", [SOIL], [], { direction: "fine-to-coarse" });
    const coarse = gradingChart("Grading", [SOIL], [], { direction: "coarse-to-fine" });
    expect(coarse.data).toEqual(fine.data);
    const [a, b] = [parts(fine).layout, parts(coarse).layout];
    expect(b.xaxis.range).toEqual([...a.xaxis.range].reverse());
    expect({ ...b, xaxis: { ...b.xaxis, range: a.xaxis.range } }).toEqual(a);
    expect(gradingChart("Grading", [SOIL])).toEqual(fine);
    const [left, right] = [fine, coarse].map((figure) => parts(figure).altText);
    expect(left).toMatch(/^Grading\. .+, fine at the left; fractions by ISO 14688-1\. Site soil: /);
    expect(right).toContain(", coarse at the left;");
  });

  it.each(Object.keys(SIZE_BOUNDARIES) as BoundarySystem[])(
    "draws the boundaries of %s, names the fractions between them and ticks them",
    (boundaries) => {
      const { clayMm, siltMm, sandMm } = SIZE_BOUNDARIES[boundaries];
      const figure = gradingChart("Grading", [SOIL], [], { boundaries });
      const { layout, altText } = parts(figure);
      expect(layout.shapes.map(({ x0 }) => x0)).toEqual([clayMm, siltMm, sandMm]);
      expect(layout.annotations.map(({ text }) => text)).toEqual([
        "clay",
        "silt",
        "sand",
        "gravel",
      ]);
      const silt = layout.annotations[1];
      expect(10 ** silt.x).toBeGreaterThan(clayMm);
      expect(10 ** silt.x).toBeLessThan(siltMm);
      expect(layout.xaxis.tickvals).toEqual(expect.arrayContaining([clayMm, siltMm, sandMm]));
      expect(altText).toContain(render(SIZE_BOUNDARIES[boundaries].name));
    },
  );

  it("leaves room above 100 % for the names of the fractions, which point at nothing", () => {
    const { layout } = renderAll(gradingChart("G", [SOIL], [], { sieves: "iso565" }));
    const { yaxis, annotations } = layout as {
      readonly yaxis: { readonly range: readonly number[]; readonly tickvals: readonly number[] };
      readonly annotations: readonly { readonly showarrow: boolean }[];
    };
    expect(yaxis.range).toEqual([0, 112]);
    expect(yaxis.tickvals).toEqual([0, 20, 40, 60, 80, 100]);
    expect(annotations.some(({ showarrow }) => showarrow)).toBe(false);
  });

  it("marks standard sieves where they are asked for, at their openings", () => {
    const sieves = (series: "astm" | "iso565") => {
      const { layout } = parts(gradingChart("G", [SOIL], [], { sieves: series }));
      return layout.annotations
        .slice(4)
        .map(({ text, x }) => [text, Number((10 ** x).toPrecision(4))]);
    };
    // Up to 26 mm, where the chart ends.
    expect(sieves("astm")).toEqual([
      ["3/4 in", 19],
      ["3/8 in", 9.5],
      ["No. 4", 4.75],
      ["No. 10", 2],
      ["No. 20", 0.85],
      ["No. 40", 0.425],
      ["No. 60", 0.25],
      ["No. 100", 0.15],
      ["No. 200", 0.075],
    ]);
    expect(sieves("iso565").map(([, size]) => size)).toEqual([
      16, 8, 4, 2, 1, 0.5, 0.25, 0.125, 0.063,
    ]);
    const { layout } = parts(gradingChart("G", [SOIL], [], { sieves: "iso565" }));
    expect(layout.shapes.slice(3).map(({ x0 }) => x0)).toEqual([
      16, 8, 4, 2, 1, 0.5, 0.25, 0.125, 0.063,
    ]);
    expect(parts(gradingChart("G", [SOIL])).layout.annotations).toHaveLength(4);
  });

  it("marks D10, D30 and D60 on the curve, as computed, and names them", () => {
    const figure = gradingChart("Grading", [SOIL], [], { markSizesOf: [0] });
    const { data, layout, altText } = parts(figure);
    const { d10, d30, d60 } = characteristicSizes(CURVE);
    expect(data.at(-1)).toMatchObject({ x: [d10, d30, d60], y: [10, 30, 60] });
    expect(layout.annotations.slice(-3).map(({ x }) => 10 ** x)).toEqual(
      [d10, d30, d60].map((size) => expect.closeTo(size as number, 9)),
    );
    expect(altText).toContain("; D10 0.0027 mm, D30 ");
    const short = curveOf([0.063, 38], [2, 80], [20, 100]);
    const { data: few } = parts(
      gradingChart("G", [{ name: "s", curve: short }], [], { markSizesOf: [0] }),
    );
    expect(few.at(-1)?.y).toEqual([60]);
    expect(() => gradingChart("G", [SOIL], [], { markSizesOf: [1] })).toThrow(
      "invalid `markSizesOf`: 1; expected 0 to below 1",
    );
  });

  it("tells several envelopes apart by hatching and marks, and still takes a single band", () => {
    const bands = ["A", "B", "C", "D"].map((name, at) => envelope(name, 4 * at));
    const filled = parts(gradingChart("G", [SOIL], bands)).data.filter(({ fill }) => fill);
    expect(new Set(filled.map(({ fillpattern }) => fillpattern?.shape)).size).toBe(4);
    expect(new Set(filled.map(({ marker }) => marker.symbol)).size).toBe(4);
    expect(new Set(filled.map(({ line }) => line.color)).size).toBe(4);
    // Derived ones have dashes of their own.
    const derived = parts(
      gradingChart(
        "G",
        [SOIL],
        bands.map((band) => ({ ...band, derived: true })),
      ),
    ).data.filter(({ fill }) => fill);
    expect(new Set([...filled, ...derived].map(({ line }) => line.dash)).size).toBe(5);
    expect(gradingChart("G", [SOIL], bands[0])).toEqual(gradingChart("G", [SOIL], [bands[0]]));
  });

  it("draws a recommendation at a single size as a bar, since an area would not be seen", () => {
    const single = GUIDANCE_ENTRIES.find(({ points, derived }) => points.length === 1 && !derived);
    const band = guidanceBand(single!)!;
    const [bar] = parts(gradingChart("G", [SOIL], band)).data as unknown as {
      readonly error_y: { readonly array: readonly number[] };
    }[];
    const [{ lowPct, highPct }] = band.points;
    expect(bar.error_y.array).toEqual([(highPct - lowPct) / 2]);
  });

  it("is drawn with its hatching", async () => {
    const svg = await renderSvg(
      renderAll(gradingChart("G", [SOIL], [envelope("A", 0), envelope("B", 9)])),
    );
    expect(svg).toContain("<pattern");
  });
});

describe("the bands of doubt", () => {
  const spread = CURVE.points.map(({ sizeMm }, at) => ({ sizeMm, sdPct: 0.2 + 0.3 * at }));

  it("hold the curve at every size and stay within 0 and 100", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 40, noNaN: true }), { minLength: 7, maxLength: 7 }),
        (sds) => {
          const { points } = uncertaintyBand(
            "s",
            CURVE,
            spread.map(({ sizeMm }, at) => ({ sizeMm, sdPct: sds[at] })),
          );
          for (const [at, { sizeMm, lowPct, highPct }] of points.entries()) {
            const passing = passingAtSize(CURVE, sizeMm)!;
            expect(lowPct).toBeLessThanOrEqual(passing);
            expect(highPct).toBeGreaterThanOrEqual(passing);
            expect(lowPct).toBe(Math.max(0, passing - 1.96 * sds[at]));
            expect(highPct).toBe(Math.min(100, passing + 1.96 * sds[at]));
          }
        },
      ),
    );
  });

  it("take the colour of the curve that they are about", () => {
    const band = uncertaintyBand("s", CURVE, spread, 1);
    const other = { name: "other", curve: CURVE };
    const { data } = parts(gradingChart("G", [SOIL, other], band));
    expect(data[1].fillcolor).toBe("rgba(1,98,156,0.28)");
    expect(() => uncertaintyBand("s", CURVE, [{ sizeMm: 0.0001, sdPct: 1 }])).toThrow(
      "invalid `spread`: 0.0001 mm",
    );
  });

  it("of a model hold its fitted line", () => {
    const models = chooseModel(CURVE, ["lognormal", "weibull"]);
    const { fit } = models.ranking[0];
    const sizesMm = CURVE.points.map(({ sizeMm }) => sizeMm);
    const found = resampleGrading(fit, { sizesMm, seed: 4, resamples: 60 });
    const { data } = parts(modelChart("M", CURVE, models, [modelBand("fit", found)]));
    found.forEach(({ lowPct, highPct }, at) => {
      expect([data[1].y[at], data[0].y[at]]).toEqual([lowPct, highPct]);
    });
    const middle = found[3];
    expect(middle.fittedPct).toBeGreaterThan(middle.lowPct);
    expect(middle.fittedPct).toBeLessThan(middle.highPct);
  });
});

describe("placeLabels", () => {
  const part = fc.double({ min: 0.05, max: 0.95, noNaN: true });
  const plots = [
    { widthPx: 400, heightPx: 170 },
    { widthPx: 920, heightPx: 400 },
  ];
  const label = { widthPx: 70, heightPx: 15 };

  it("lays no label on another at either size, wherever up to six points are", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(part, part), { minLength: 1, maxLength: 6 }), (points) => {
        const anchors = points.map(([x, y]) => ({ x, y, ...label }));
        const ways = placeLabels(anchors, [], plots);
        for (const { widthPx, heightPx } of plots) {
          const at = ways.map(({ rightPx, upPx }, i) => [
            anchors[i].x * widthPx + rightPx,
            anchors[i].y * heightPx + upPx,
          ]);
          at.forEach(([x, y], i) => {
            for (const [u, v] of at.slice(i + 1)) {
              const apart = Math.abs(x - u) >= label.widthPx || Math.abs(y - v) >= label.heightPx;
              expect(apart).toBe(true);
            }
          });
        }
      }),
    );
  });

  it("keeps a label within the plot and off a line that has room beside it", () => {
    const line = Array.from({ length: 101 }, (_, step) => ({ x: step / 100, y: step / 100 }));
    const [way] = placeLabels([{ x: 0.5, y: 0.5, ...label }], line, plots);
    for (const { widthPx, heightPx } of plots) {
      const under = line.filter(
        ({ x, y }) =>
          Math.abs((x - 0.5) * widthPx - way.rightPx) < label.widthPx / 2 &&
          Math.abs((y - 0.5) * heightPx - way.upPx) < label.heightPx / 2,
      );
      expect(under).toEqual([]);
    }
    const [edge] = placeLabels([{ x: 0.99, y: 0.01, ...label }], [], plots);
    expect(edge.rightPx).toBeLessThan(0);
    expect(edge.upPx).toBeGreaterThan(0);
  });
});

it("quiet letters can be read on white", () => {
  // WCAG 2.2, success criterion 1.4.3 (text contrast), from memory: 4.5 : 1.
  expect(wcagContrast(QUIET.letters, "#ffffff")).toBeGreaterThanOrEqual(4.5);
});
