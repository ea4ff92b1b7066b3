import { beforeAll, describe, expect, it } from "vitest";
import * as loam from "../../src/index.js";
import { EXAMPLE_NAMES, exampleResult, type FullResult } from "../support/exampleResult.js";

function allFigures(result: FullResult): loam.Said<loam.Figure>[] {
  const { config, materials, blend, compaction } = result;
  if (!compaction) throw new Error("the examples have a compaction test");
  return loam.renderAll([
    loam.gradingChart("Grading", materials),
    loam.modelChart("Model", materials[0].curve, materials[0].models as loam.ChosenModel),
    loam.compactionChart("Compaction", compaction, config.units),
    loam.sharesChart("Shares", config.materials, blend),
    loam.blendChart("Blend", blend, loam.guidanceBand(result.guidance[0].check.entry)),
    loam.strengthChart("Strength", result),
  ]) as loam.Said<loam.Figure>[];
}

describe.each(EXAMPLE_NAMES)("the figures of %s", (name) => {
  let result: FullResult;
  let figures: loam.Said<loam.Figure>[];
  beforeAll(async () => {
    result = await exampleResult(name);
    figures = allFigures(result);
  });

  it("have words made from their numbers", () => {
    for (const { title, altText } of figures) {
      expect(altText.startsWith(title)).toBe(true);
      expect(altText.length, title).toBeGreaterThan(80);
      expect(altText).toMatch(/\d/);
      expect(altText).not.toMatch(/NaN|undefined|null|Infinity/);
    }
    const least = result.strength.leastCement.cementPct as number;
    expect(figures[5].altText).toContain(`${least.toFixed(2)} % cement`);
  });

  it("are plain JSON with as many y as x", () => {
    for (const { data, title } of figures) {
      expect(JSON.parse(JSON.stringify(data))).toEqual(data);
      for (const trace of data as { x: unknown[]; y: unknown[] }[]) {
        expect(trace.y.length, title).toBe(trace.x.length);
        expect(trace.x.length, title).toBeGreaterThan(0);
      }
    }
  });

  it("never tell two curves apart by colour alone", () => {
    const lines = (figures[0].data as { line: { color: string; dash: string } }[]).map(
      ({ line }) => line,
    );
    expect(new Set(lines.map(({ color }) => color)).size).toBe(lines.length);
    expect(new Set(lines.map(({ dash }) => dash)).size).toBe(lines.length);
  });

  it("are drawn", { timeout: 60_000 }, async () => {
    for (const figure of figures) {
      const svg = await loam.renderSvg(figure);
      expect(svg).toContain('role="img"');
      expect(svg).toContain(`<title`);
      expect(svg.length).toBeGreaterThan(5000);
    }
  });
});
