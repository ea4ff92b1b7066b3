import { describe, expect, test } from "vitest";
import { mixCarbon } from "../../src/batch/carbon.js";
import { CEMENT_CARBON_FACTORS, MATERIAL_CARBON_FACTORS } from "../../src/batch/carbonFactors.js";
import { recipe } from "../../src/batch/recipe.js";
import { readBlock } from "../../src/blocks/kinds.js";
import { siteCarbonTable } from "../../src/tables/carbon.js";
import { render, renderAll } from "../../src/words/render.js";

const mix = (cementPct: number) =>
  recipe({
    materials: [
      { id: "soil", name: "Soil", sharePct: 70, looseBulkDensityKgM3: 1200, moisturePct: 6 },
      { id: "sand", name: "Sand", sharePct: 30, looseBulkDensityKgM3: 1500, moisturePct: 4 },
    ],
    cementPct,
    cementBulkDensityKgM3: 1200,
    targetMoisturePct: 9,
    batchDryMassKg: 1000,
  });

describe("siteCarbonTable", () => {
  const [soil, aggregate, road] = MATERIAL_CARBON_FACTORS;
  const factors = { soil, sand: aggregate, cement: CEMENT_CARBON_FACTORS[0] };
  const haul = { haulKm: { sand: 40 }, haulFactor: road };

  test("shows each factor once with source and mark", () => {
    const block = siteCarbonTable(mixCarbon(mix(8), { factors, ...haul }), "SI");
    expect(readBlock(block)).toEqual(block);
    const table = renderAll(block);
    const notes = table.notes!.join("\n");
    for (const { source } of Object.values(factors))
      expect(notes.split(render(source))).toHaveLength(2);
    expect(notes).toContain("; read)");
  });

  test("in US units is the same carbon in pounds", () => {
    const carbon = mixCarbon(mix(8), { factors });
    const [si, us] = (["SI", "US"] as const).map((units) =>
      renderAll(siteCarbonTable(carbon, units)),
    );
    expect(us.columns[1].unit).toBe("lb");
    const first = (text: string) => Number.parseFloat(text);
    expect(first(si.rows[2][1]) / first(us.rows[2][1])).toBeCloseTo(0.4536, 2);
  });

  test("leaves a dash for what has no factor and says so", () => {
    const block = siteCarbonTable(mixCarbon(mix(8), { factors: { cement: factors.cement } }), "SI");
    const table = renderAll(block);
    expect(table.rows[0]).toEqual(["Soil", "–", "–"]);
    expect(table.notes!.join()).toContain("No factor for Soil, Sand");
  });
});
