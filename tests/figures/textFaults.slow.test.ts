import { beforeAll, describe, expect, it } from "vitest";
import type { DrawableFigure } from "../../src/figures/svg/renderSvg.js";
import * as loam from "../../src/index.js";
import { exampleResult } from "../support/exampleResult.js";
import { textFaults } from "../support/textFaults.js";

/** A telephone's screen. */
const NARROW_PX = 390;

/** Every figure of a study that has all of its sheets. */
function figuresOf(result: loam.StudyResult): (loam.Figure | loam.NoteBlock)[] {
  const { config, materials, blend, compaction, strength, quality } = result;
  if (!blend || !compaction || !strength || !quality?.rule || !quality.risks || !quality.site) {
    throw new Error("the example has all of its sheets");
  }
  const { units } = config;
  const [soil, second, third] = materials;
  const models = soil.models as loam.ChosenModel;
  const { fit } = models.ranking[0];
  const sizesMm = soil.curve.points.map(({ sizeMm }) => sizeMm);
  const band = loam.modelBand(fit.title, loam.resampleGrading(fit, { sizesMm, seed: 1 }));
  const blended = [{ name: "Blend", curve: blend.curve }];
  const input = loam.blendInputOf(result);
  const three = { ...input, materials: input.materials.slice(0, 3) };
  const bandOf = (id: string) => {
    const entry = loam.GUIDANCE_ENTRIES.find((each) => each.id === id) as loam.GuidanceEntry;
    return loam.guidanceBand(entry, blend.curve) as loam.ChartBand;
  };
  const doubt = loam.uncertaintyBand("Blend", blend.curve, result.blendSpread ?? []);
  const plastic = materials.flatMap(({ name, limits }) =>
    limits?.liquidLimitPct === undefined || limits.plasticityIndexPct === undefined
      ? []
      : [
          {
            name,
            liquidLimitPct: limits.liquidLimitPct,
            plasticityIndexPct: limits.plasticityIndexPct,
          },
        ],
  );
  return [
    loam.gradingChart("Grading of the materials", materials),
    loam.gradingChart("Doubt", blended, [bandOf("walker-2005"), doubt], { markSizesOf: [0] }),
    loam.gradingChart("US sieves", blended, [], {
      markSizesOf: [0],
      sieves: "astm",
      boundaries: "astm",
    }),
    loam.gradingChart("ISO sieves", blended, [], {
      markSizesOf: [0],
      sieves: "iso565",
      boundaries: "usda",
    }),
    loam.gradingChart(
      "Envelopes",
      blended,
      ["usace-road-base", "power-19mm", "fdot-sand-clay"].map(bandOf),
    ),
    loam.blendChart("Blend", blend, bandOf("walker-2005")),
    loam.sharesChart("Shares", config.materials, blend),
    loam.frontierChart(
      "Frontier",
      loam.blendFrontier(input, "site-soil", 5),
      "Site soil (% of dry mass)",
      materials.map(({ name }) => name),
    ),
    loam.ternaryChart("Three", loam.ternaryMap(three), [soil.name, second.name, third.name]),
    ...(blend.robustness ? [loam.robustnessChart("Variation", blend.robustness)] : []),
    loam.modelChart("Model", soil.curve, models, [band]),
    loam.gradingResidualsChart(
      "Residuals",
      models.ranking.slice(0, 3).map((each) => each.fit),
    ),
    ...loam.guidanceRangesCharts(result.guidanceComparison as loam.GuidanceComparison, "the blend"),
    loam.plasticityChart("Plasticity", plastic),
    loam.textureTriangle("Textures", result.textures ?? []),
    loam.compactionChart("Compaction", compaction, units),
    loam.strengthChart("Strength", result),
    loam.residualsChart("Left over", strength.fit, units),
    loam.operatingCharacteristicChart("Acceptance", quality.rule, quality.risks, {
      sdMpa: quality.scatterMpa,
      units,
      seed: 1,
    }),
    loam.lotsChart(
      "Lots",
      quality.site.chart,
      units,
      config.strength.requirement?.strengthMpa as number,
    ),
  ];
}

const made = exampleResult("reading-room").then(figuresOf);

it("numbers along axes have the reader's decimal sign, which in Mexico is a point", async () => {
  const figures = await made;
  const fractionsOf = async (locale: loam.Locale) => {
    const [acceptance, lots] = loam.renderAll(
      figures.slice(-2),
      locale,
    ) as readonly DrawableFigure[];
    const drawn = (await loam.renderSvg(acceptance)) + (await loam.renderSvg(lots));
    return Array.from(drawn.matchAll(/>(\d[.,]\d+)</g), ([, number]) => number);
  };
  const english = await fractionsOf("en");
  expect(english).toEqual(expect.arrayContaining(["1.2", "2.4"]));
  expect(await fractionsOf("es")).toEqual(english.map((number) => number.replace(".", ",")));
  expect(await fractionsOf("es-MX")).toEqual(english);
});

describe.each(["en", "es"] as const)("the figures of an example, in %s", (language) => {
  let figures: loam.Said<loam.Figure>[];
  beforeAll(async () => {
    figures = loam.renderAll(await made, language) as loam.Said<loam.Figure>[];
  });

  it("have no letters over letters, nor outside, with the title in the layout", async () => {
    expect(figures.length).toBeGreaterThan(20);
    for (const figure of figures) expect(await textFaults(figure), figure.title).toEqual([]);
  });

  it("nor on a telephone, where the caption stands beside them", async () => {
    for (const figure of figures) {
      const { height } = figure.layout as { readonly height: number };
      const faults = await textFaults(figure, { width: NARROW_PX, height });
      expect(faults, figure.title).toEqual([]);
    }
  });
});

it("letters over letters are noticed", async () => {
  const letters = (text: string, x: number) => ({ text, x, y: 1, showarrow: false });
  const layout = {
    width: 300,
    height: 200,
    margin: { l: 20, r: 20, t: 20, b: 20 },
    xaxis: { range: [0, 3], visible: false },
    yaxis: { visible: false },
    annotations: [
      letters("one word", 1),
      letters("another", 1.1),
      { ...letters("outside", 1), xref: "paper", xanchor: "left" },
    ],
  };
  const data = [{ type: "scatter", x: [1], y: [1] }];
  expect(await textFaults({ data, layout })).toEqual([
    "“one word” lies over “another”",
    "“outside” leaves the figure",
  ]);
});
