import { describe, expect, it } from "vitest";
import { gradingResidualsChart } from "../../src/figures/grading/modelChart.js";
import { plasticityChart } from "../../src/figures/plasticityChart.js";
import { renderSvg } from "../../src/figures/svg/renderSvg.js";
import { textureTriangle } from "../../src/figures/textureTriangle.js";
import { fitGrading } from "../../src/grading/models/fit.js";
import { createRandom } from "../../src/numerics/random.js";
import { plasticityGroup } from "../../src/soil/classification/uscs.js";
import { USDA_POLYGONS, usdaTexture } from "../../src/soil/classification/usdaTexture.js";
import { renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";

interface Trace {
  readonly name?: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
}

const traces = (figure: { readonly data: readonly object[] }) => figure.data as Trace[];
const SAMPLE = { name: "Site soil", liquidLimitPct: 61, plasticityIndexPct: 20 };

describe("plasticityChart", () => {
  it("says in words where a sample lies, and shows it whole", () => {
    const figure = renderAll(plasticityChart("Plasticity", [SAMPLE]));
    expect(figure.altText).toContain("group MH, 9.9 points below the A-line");
    const high = plasticityChart("Plasticity", [
      { name: "Bentonite", liquidLimitPct: 310, plasticityIndexPct: 230 },
    ]);
    const { xaxis, yaxis } = high.layout as Record<string, { range: readonly number[] }>;
    expect([xaxis.range[1], yaxis.range[1]].every((end, i) => end > [310, 230][i])).toBe(true);
    expect(() => plasticityChart("Plasticity", [])).toThrow("invalid `samples`");
  });

  it("draws the A-line through the points of its formula", () => {
    const line = traces(renderAll(plasticityChart("Plasticity", [SAMPLE]))).find(
      ({ name }) => name === "A-line",
    )!;
    line.x.forEach((liquid, i) => {
      expect(line.y[i]).toBeCloseTo(0.73 * (liquid - 20), 9);
    });
  });

  it("names each group within its own borders", () => {
    const { annotations } = plasticityChart("Plasticity", [SAMPLE]).layout as {
      readonly annotations: readonly { text: string; x: number; y: number }[];
    };
    expect(annotations.map(({ text }) => text)).toEqual(["CL", "CH", "ML", "MH", "CL-ML"]);
    for (const { text, x, y } of annotations) {
      expect(plasticityGroup({ liquidLimitPct: x, plasticityIndexPct: y }).group).toBe(text);
    }
  });

  it("borders the strip of CL-ML at 4 and 7, between the U-line and the A-line, and ML from MH at 50", () => {
    const all = traces(renderAll(plasticityChart("Plasticity", [SAMPLE])));
    const [fifty, four, seven] = all.filter(({ name }) => name === undefined);
    // U-line: PI = 0.9 (LL − 8); A-line: PI = 0.73 (LL − 20). At LL 50 the U-line stands at 37.8.
    expect([fifty.x, fifty.y]).toEqual([
      [50, 50],
      [0, expect.closeTo(37.8, 9)],
    ]);
    for (const [strip, index] of [
      [four, 4],
      [seven, 7],
    ] as const) {
      expect(strip.y).toEqual([index, index]);
      expect(0.9 * (strip.x[0] - 8)).toBeCloseTo(index, 9);
      expect(0.73 * (strip.x[1] - 20)).toBeCloseTo(index, 9);
    }
  });
});

describe("textureTriangle", () => {
  it("its corners agree with the rules at random points, each in one class", () => {
    const random = createRandom(8);
    const inside = (name: keyof typeof USDA_POLYGONS, clay: number, silt: number) => {
      const corners = USDA_POLYGONS[name];
      let within = false;
      corners.forEach(([c1, s1], i) => {
        const [c0, s0] = corners[(i + corners.length - 1) % corners.length];
        if (c1 > clay !== c0 > clay && silt < ((s0 - s1) * (clay - c1)) / (c0 - c1) + s1)
          within = !within;
      });
      return within;
    };
    for (let count = 0; count < 5000; count++) {
      const [a, b] = [100 * random.uniform(), 100 * random.uniform()];
      const [clayPct, siltPct] = [Math.min(a, b), Math.abs(a - b)];
      const names = (Object.keys(USDA_POLYGONS) as (keyof typeof USDA_POLYGONS)[]).filter((name) =>
        inside(name, clayPct, siltPct),
      );
      expect(names).toEqual([
        usdaTexture({ sandPct: 100 - clayPct - siltPct, siltPct, clayPct }).texture,
      ]);
    }
  });

  it("puts pure clay at the top, pure silt at the right, pure sand at the left", () => {
    const at = (sandPct: number, siltPct: number, clayPct: number) => {
      const figure = textureTriangle("Texture", [
        { name: "s", parts: { sandPct, siltPct, clayPct } },
      ]);
      const { x, y } = traces(figure).at(-1)!;
      return [x[0], Math.round(y[0])];
    };
    expect([at(0, 0, 100), at(0, 100, 0), at(100, 0, 0)]).toEqual([
      [50, 87],
      [100, 0],
      [0, 0],
    ]);
  });

  it("draws resampled parts behind the sample and names the class in words", async () => {
    const parts = { sandPct: 30, siltPct: 40, clayPct: 30 };
    const figure = renderAll(
      textureTriangle("Texture", [{ name: "Site soil", parts, resampled: [parts, parts] }]),
    );
    expect(traces(figure).at(-2)!.name).toContain("within its reading errors");
    expect(figure.altText).toContain("clay loam");
    expect(await renderSvg(figure)).toContain("silty");
  });
});

describe("gradingResidualsChart", () => {
  const curve = curveOf([0.063, 8], [0.25, 30], [1, 48], [4, 80], [16, 100]);
  const fit = fitGrading(curve, "weibull");

  it("shows measured less fitted and names the worst point", () => {
    const figure = renderAll(gradingResidualsChart("Residuals", [fit]));
    const { x, y } = traces(figure).at(-1)!;
    fit.fitted.forEach(({ sizeMm, measuredPct, fittedPct }, i) => {
      expect([x[i], y[i]]).toEqual([sizeMm, measuredPct - fittedPct]);
    });
    const worst = fit.fitted.reduce((a, b) =>
      Math.abs(b.measuredPct - b.fittedPct) > Math.abs(a.measuredPct - a.fittedPct) ? b : a,
    );
    expect(figure.altText).toContain(
      `points at ${worst.sizeMm < 1 ? worst.sizeMm : worst.sizeMm.toFixed(1)}`,
    );
    expect(() => gradingResidualsChart("Residuals", [])).toThrow("invalid `fits`");
  });
});
