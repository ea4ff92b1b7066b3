import { describe, expect, it } from "vitest";
import { compactionChart } from "../../src/figures/compactionChart.js";
import { textureTriangle } from "../../src/figures/textureTriangle.js";
import { analyseCompaction } from "../../src/soil/compaction/compactionTest.js";
import { moistureWindow } from "../../src/soil/compaction/moistureWindow.js";
import { airVoidsDensity } from "../../src/soil/compaction/phaseRelations.js";
import { moistureWindowTable } from "../../src/tables/soil.js";
import { renderAll } from "../../src/words/render.js";

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly error_x?: { readonly array: readonly number[] };
}

const record = (points: readonly (readonly [number, number])[]) => ({
  file: "c.csv",
  mouldVolumeCm3: 1000,
  points: points.map(([waterContentPct, moistMassG], index) => ({
    waterContentPct,
    moistMassG,
    row: index + 5,
  })),
});
const GOOD = [
  [6.5, 1872],
  [8.7, 1966],
  [10.6, 2043],
  [12.2, 2068],
  [14.4, 1996],
] as const;
/** Near enough to a parabola for the least-squares fit to be chosen, which has intervals. */
const SMOOTH = [
  [7, 1878],
  [9, 1988],
  [11, 2055],
  [13, 2061],
  [15, 2019],
] as const;
const named = (figure: { readonly data: readonly object[] }, name: string) =>
  (figure.data as readonly Trace[]).filter((trace) => trace.name.includes(name));

describe("compactionChart", () => {
  const analysis = analyseCompaction(record(GOOD), { particleDensityKgM3: 2650 });
  const chart = renderAll(compactionChart("Compaction", analysis, "SI"));

  it.each([
    ["zero air voids", 0],
    ["5 % air voids", 5],
    ["10 % air voids", 10],
  ])("draws %s where the formula has it", (name, airPct) => {
    const line = (chart.data as readonly Trace[]).find((trace) => trace.name.startsWith(name))!;
    expect(line.x.length).toBeGreaterThan(10);
    line.x.forEach((water, at) => {
      expect(line.y[at]).toBeCloseTo(airVoidsDensity(water, 2650, airPct), 6);
    });
  });

  it("names each of them by a number on its line, above what is compacted", () => {
    const { layout } = chart as unknown as {
      readonly layout: {
        readonly yaxis: { readonly range: readonly [number, number] };
        readonly annotations: readonly { text: string; x: number; y: number; yanchor: string }[];
      };
    };
    const [bottom, top] = layout.yaxis.range;
    const height = 0.11 * (top - bottom);
    const compacted = [...named(chart, "fitted curve"), ...named(chart, "test")];
    expect(layout.annotations.map(({ text }) => text)).toEqual(["0 %", "5 %", "10 %"]);
    for (const { text, x, y, yanchor } of layout.annotations) {
      expect(y).toBeCloseTo(airVoidsDensity(x, 2650, Number.parseFloat(text)), 6);
      // the line of zero air voids ends within a label's height of the top: its label hangs below it
      const [low, high] = yanchor === "bottom" ? [y, y + height] : [y - height, y];
      expect(yanchor, text).toBe(text === "0 %" ? "top" : "bottom");
      expect(high, text).toBeLessThanOrEqual(top + 1e-9);
      const near = compacted.flatMap((trace) =>
        trace.y.filter((_, at) => Math.abs(trace.x[at] - x) < 1),
      );
      expect(near.length, text).toBeGreaterThan(0);
      expect(Math.max(...near), text).toBeLessThan(low);
    }
    expect(named(chart, "lines of 0, 5 and 10 % air voids")).toHaveLength(1);
  });

  it("has no line of air voids without a particle density", () => {
    const plain = renderAll(compactionChart("C", analyseCompaction(record(GOOD)), "SI"));
    expect(plain.altText).toMatch(
      /^C\. 5 points from 6\.5 to 14\.4 % water\. The fitted curve peaks at 11\.\d % water with a dry density of 18\d\d kg\/m³\./,
    );
    expect(named(plain, "air")).toEqual([]);
  });

  it("shades the window of moisture and gives the optimum its intervals", () => {
    const analysis = analyseCompaction(record(SMOOTH), { particleDensityKgM3: 2650 });
    const chart = renderAll(compactionChart("Compaction", analysis, "SI"));
    const window = moistureWindow(analysis)!;
    const [shade] = named(chart, "98 % of the maximum");
    expect([Math.min(...shade.x), Math.max(...shade.x)]).toEqual([
      window.driestPct,
      window.wettestPct,
    ]);
    const [optimum] = named(chart, "optimum");
    const [low, high] = analysis.peak!.optimumInterval95!;
    expect(optimum.error_x!.array[0]).toBeCloseTo((high - low) / 2, 9);
    const [narrow] = named(
      renderAll(compactionChart("C", analysis, "SI", 99.5)),
      "99.5 % of the maximum",
    );
    expect(Math.min(...narrow.x)).toBeGreaterThan(window.driestPct);
    const { items } = renderAll(moistureWindowTable(analysis, "SI")!);
    expect(items[2].value).toBe(`${window.wettestPct.toFixed(1)} %`);
  });

  it("marks points above zero air voids, and says whether the fit left them out", () => {
    const low = { particleDensityKgM3: 2350 };
    const kept = analyseCompaction(record(GOOD), low);
    const above = kept.points.filter(({ airVoidsPct }) => airVoidsPct! < 0);
    expect(above.length).toBeGreaterThan(0);
    const [mark] = named(renderAll(compactionChart("C", kept, "SI")), "above zero air voids");
    expect(mark.x).toEqual(above.map(({ waterContentPct }) => waterContentPct));

    const rejected = analyseCompaction(record(GOOD), { ...low, rejectAboveZeroAir: true });
    const figure = renderAll(compactionChart("C", rejected, "SI"));
    const [out] = named(figure, "left out of the fit");
    expect(out.x).toEqual(
      rejected.points.flatMap((point) => (point.rejected ? [point.waterContentPct] : [])),
    );
    expect(figure.altText).toContain("was left out of the fit");
    const shown = [...named(figure, "test")].flatMap(({ x }) => x);
    expect(shown.length).toBe(rejected.points.length);
  });

  it("of points without a peak draws them and no curve", () => {
    const rising = analyseCompaction(record(GOOD.slice(0, 3)));
    const figure = renderAll(compactionChart("C", rising, "US"));
    expect(figure.data).toHaveLength(1);
    expect(figure.altText).toContain("show no peak");
    expect(moistureWindowTable(rising, "US")).toBeUndefined();
  });
});

describe("textureTriangle with resampled parts", () => {
  it("says how many of them fall into each class", () => {
    const at = (sandPct: number) => ({ sandPct, siltPct: 85 - sandPct, clayPct: 15 });
    const figure = renderAll(
      textureTriangle("Texture", [
        { name: "Soil", parts: at(50), resampled: [at(49), at(50), at(51), at(54)] },
        { name: "Blend", parts: at(60) },
      ]),
    );
    // Sand above 52 % with this clay is a sandy loam.
    expect(figure.altText).toContain("Within its reading errors: loam 75 %, sandy loam 25 %.");
    expect((figure.data as readonly Trace[]).at(-1)!.name).toBe("Blend");
  });
});
