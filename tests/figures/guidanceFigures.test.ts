import { describe, expect, it } from "vitest";
import type { Figure } from "../../src/figures/figure.js";
import { guidanceBand } from "../../src/figures/grading/band.js";
import { gradingChart } from "../../src/figures/grading/gradingChart.js";
import { guidanceRangesChart, guidanceRangesCharts } from "../../src/figures/guidanceRanges.js";
import { compareGuidance } from "../../src/guidance/comparison.js";
import { envelopeEntry } from "../../src/guidance/entry.js";
import { powerEnvelope } from "../../src/guidance/envelope.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";

const entry = (id: string) => GUIDANCE_ENTRIES.find((each) => each.id === id)!;
const SOIL = curveOf([0.002, 18], [0.063, 40], [2, 80], [25, 100]);

interface Trace {
  readonly type: string;
  readonly mode?: string;
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly unknown[];
  readonly base: readonly number[];
  readonly fill?: string;
  readonly line: { readonly dash: string };
  readonly marker: { readonly pattern: { readonly shape: string } };
}
const said = (figure: Figure) => {
  const { data, layout, altText, title } = renderAll(figure);
  return {
    data: data as readonly Trace[],
    layout: layout as Record<string, never>,
    altText,
    title,
  };
};

describe("guidanceBand", () => {
  it("says in the legend what each kind of envelope is and how it is known", () => {
    const own = envelopeEntry({
      file: "sheets/envelope.csv",
      title: "Our pit",
      source: "trial walls",
      points: [0.063, 2, 20].map((sizeMm, at) => ({
        sizeMm,
        lowPct: 9 * at,
        highPct: 20 * at,
        row: 1,
      })),
    });
    const legend = (of: Parameters<typeof guidanceBand>[0]) =>
      said(gradingChart("G", [{ name: "Soil", curve: SOIL }], guidanceBand(of, SOIL))).data[1];
    expect(legend(entry("usace-road-base")).name).toBe(
      "US Army Corps of Engineers 2000 (secondary citation)<br>percent passing as published",
    );
    expect(legend(powerEnvelope(19)).name).toBe(
      "Austroads 1998 (secondary citation)<br>computed by us from the exponents",
    );
    expect(legend(entry("walker-2005")).name).toBe(
      "Walker 2005 (from memory; not read)<br>derived by us from fraction limits",
    );
    expect(legend(entry("fdot-sand-clay")).name).toBe(
      "Florida DOT (secondary citation)<br>percent passing as published<br>of what passes 2 mm",
    );
    expect(legend(own).name).toBe("Our pit<br>the study's own");
    expect(legend(powerEnvelope(19, [0.2, 0.3])).name).toContain(
      "<br>exponents of the study's own",
    );
    // An edge is dashed only where we derived it, and marked only where a size was stated.
    expect(["usace-road-base", "walker-2005"].map((id) => legend(entry(id)).line.dash)).toEqual([
      "solid",
      "dash",
    ]);
    expect(legend(entry("walker-2005")).mode).toBe("lines+markers");
    expect(legend(powerEnvelope(19)).mode).toBe("lines");
    expect(legend(powerEnvelope(19)).fill).toBe("tonexty");
  });
});

describe("guidanceRangesCharts", () => {
  const ids = ["walker-2005", "keable-sazs-ars", "hb195", "morel-clay"];
  const comparison = compareGuidance(SOIL, ids.map(entry));
  const [clay, ...others] = guidanceRangesCharts(comparison, "Site soil").map(said);

  it("one for each quantity that three sources limit differently", () => {
    expect([clay, ...others].map(({ title }) => title)).toEqual([
      "Recommended clay (up to 0.002 mm) and Site soil",
      "Recommended silt (0.002 to 0.063 mm) and Site soil",
      "Recommended sand and gravel (above 0.063 mm) and Site soil",
    ]);
  });

  it("draws each range, those that the soil leaves hatched, and the measured value across them", () => {
    const [inside, outside, line] = clay.data;
    expect(inside).toMatchObject({
      name: "measured value inside",
      y: ["walker-2005", "hb195"],
      base: [5, 0],
      x: [15, 20],
      marker: { pattern: { shape: "" } },
    });
    expect(outside).toMatchObject({
      name: "measured value outside",
      y: ["keable-sazs-ars", "morel-clay"],
      base: [5, 5],
      x: [10, 10],
      marker: { pattern: { shape: "/" } },
    });
    expect(line.name).toBe("measured 18.0 %");
    expect(clay.layout).toMatchObject({
      shapes: [{ x0: 18, x1: 18, yref: "paper" }],
      xaxis: {
        range: [0, 23],
        title: { text: "clay (up to 0.002 mm) (%)<br>* from memory, not read" },
      },
      yaxis: {
        categoryarray: ids,
        ticktext: ["Walker 2005*", "Keable 2001*", "Walker 2002*", "Morel"],
      },
      height: 140 + 26 * 4,
    });
    expect(clay.altText).toBe(
      "Recommended clay (up to 0.002 mm) and Site soil. clay (up to 0.002 mm), measured 18.0 %. Walker 2005: 5 to 20 % (inside); Keable 2001: 5 to 15 % (outside); Walker 2002: 0 to 20 % (inside); Morel: 5 to 15 % (outside).",
    );
  });

  it("keeps an open range within the chart, and shows what was not measured", () => {
    const two = ["is-2110", "keable-sazs-ars", "craterre-pise"].map(entry);
    const noFines = curveOf([0.1, 38], [2, 80], [25, 100]);
    const unmeasured = compareGuidance(noFines, [...two, entry("hb195")]);
    expect(guidanceRangesCharts(unmeasured, "Soil")).toEqual([]);
    const { data, layout, altText } = said(
      guidanceRangesChart("Soil", unmeasured.disagreements[0]),
    );
    expect(data.map(({ name }) => name)).toEqual(["recommended"]);
    expect(layout).toMatchObject({ shapes: [] });
    expect(altText).toContain(", not measured. ");
    const open = said(
      guidanceRangesCharts(
        {
          checks: [],
          disagreements: [
            {
              what: "liquid limit",
              measuredPct: 30,
              sides: [
                { id: "a", source: "A", lowPct: 25, verdict: "inside" },
                { id: "b", source: "B", highPct: 45, verdict: "inside" },
                { id: "c", source: "C", lowPct: 10, highPct: 20, verdict: "outside" },
              ],
              verdictsDiffer: true,
              irreconcilable: true,
              text: "",
            },
          ],
        },
        "Soil",
      )[0],
    );
    const top = 1.15 * 45;
    expect(open.data[0]).toMatchObject({ base: [25, 0], x: [expect.closeTo(top - 25, 9), 45] });
    expect(open.layout).toMatchObject({ xaxis: { title: { text: "liquid limit (%)" } } });
  });
});
