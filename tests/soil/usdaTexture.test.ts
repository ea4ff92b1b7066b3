import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  USDA_POLYGONS,
  type UsdaTexture,
  usdaTexture,
} from "../../src/soil/classification/usdaTexture.js";
import { renderAll } from "../../src/words/render.js";
import cases from "../reference/soilWorkedExamples.json" with { type: "json" };

/** Vertices (clay, silt, sand) of the triangle's classes; from memory, an independent form of the same rules. */
const POLYGONS: Record<UsdaTexture, readonly (readonly [number, number])[]> = {
  clay: [
    [100, 0],
    [55, 0],
    [40, 15],
    [40, 40],
    [60, 40],
  ],
  "silty clay": [
    [60, 40],
    [40, 40],
    [40, 60],
  ],
  "sandy clay": [
    [55, 0],
    [35, 0],
    [35, 20],
  ],
  "clay loam": [
    [40, 15],
    [40, 40],
    [27, 53],
    [27, 28],
  ],
  "silty clay loam": [
    [40, 60],
    [40, 40],
    [27, 53],
    [27, 73],
  ],
  "sandy clay loam": [
    [35, 0],
    [35, 20],
    [27, 28],
    [20, 28],
    [20, 0],
  ],
  loam: [
    [27, 28],
    [27, 50],
    [7, 50],
    [7, 41],
    [20, 28],
  ],
  "silt loam": [
    [27, 50],
    [27, 73],
    [12, 88],
    [12, 80],
    [0, 80],
    [0, 50],
  ],
  silt: [
    [12, 88],
    [12, 80],
    [0, 80],
    [0, 100],
  ],
  "sandy loam": [
    [20, 0],
    [20, 28],
    [7, 41],
    [7, 50],
    [0, 50],
    [0, 30],
    [15, 0],
  ],
  "loamy sand": [
    [15, 0],
    [0, 30],
    [0, 15],
    [10, 0],
  ],
  sand: [
    [10, 0],
    [0, 15],
    [0, 0],
  ],
};

function inside(
  clay: number,
  silt: number,
  polygon: readonly (readonly [number, number])[],
): boolean {
  let odd = false;
  polygon.forEach(([c1, s1], index) => {
    const [c0, s0] = polygon.at(index - 1)!;
    if (s0 > silt !== s1 > silt && clay < c0 + ((silt - s0) / (s1 - s0)) * (c1 - c0)) odd = !odd;
  });
  return odd;
}

describe("usdaTexture", () => {
  it.each(["usda-1", "usda-3", "usda-5"] as const)("%s", (id) => {
    const { input, published } = cases[id];
    expect(
      usdaTexture({ sandPct: input.sand, siltPct: input.silt, clayPct: input.clay }).texture,
    ).toBe(published.texture);
  });

  it("agrees with the polygons of the triangle everywhere off their edges", () => {
    const pct = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(pct, pct, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const [clay, silt] = [100 * low, 100 * (high - low)];
        const near = [-1e-6, 1e-6].flatMap((dc) =>
          [-1e-6, 1e-6].map((ds) => [clay + dc, silt + ds]),
        );
        const names = near.map(
          ([c, s]) => Object.entries(POLYGONS).find(([, polygon]) => inside(c, s, polygon))?.[0],
        );
        // On an edge of a class, or of the triangle.
        if (new Set(names).size > 1 || names[0] === undefined) return;
        expect(
          usdaTexture({ clayPct: clay, siltPct: silt, sandPct: 100 - clay - silt }).texture,
        ).toBe(names[0]);
      }),
      { numRuns: 3000, examples: [[0.2, 0.6]] },
    );
  });

  it("is drawn with the same corners, each adding up to 100", () => {
    const withSand = Object.entries(POLYGONS).map(([texture, corners]) => [
      texture,
      corners.map(([clay, silt]) => [clay, silt, 100 - clay - silt]),
    ]);
    expect(USDA_POLYGONS).toEqual(Object.fromEntries(withSand));
  });

  it("agrees with the drawn classes at every percent", () => {
    // Quarter and half points keep clear of every edge.
    for (let clay = 0.5; clay < 100; clay += 1) {
      for (let silt = 0.25; clay + silt < 100; silt += 1) {
        const drawn = Object.entries(POLYGONS).find(([, polygon]) => inside(clay, silt, polygon));
        const parts = { clayPct: clay, siltPct: silt, sandPct: 100 - clay - silt };
        expect(usdaTexture(parts).texture, `clay ${clay}, silt ${silt}`).toBe(drawn?.[0]);
      }
    }
  });

  it("puts gravelly in front from 15 % gravel", () => {
    const parts = { sandPct: 60, siltPct: 25, clayPct: 15 };
    expect(usdaTexture({ ...parts, gravelPct: 14.9 }).name).toBe("sandy loam");
    const gravelly = usdaTexture({ ...parts, gravelPct: 15 });
    expect(gravelly.name).toBe("gravelly sandy loam");
    expect(renderAll(gravelly.path)).toEqual([
      "Of the part under 2 mm: 60.0 % sand, 25.0 % silt, 15.0 % clay.",
      expect.stringMatching(/^First rule that fits: .+: sandy loam\.$/),
      "15.0 % of the whole is coarser than 2 mm: gravelly.",
    ]);
  });

  it("refuses parts that do not add up", () => {
    expect(() => usdaTexture({ sandPct: 60, siltPct: 25, clayPct: 25 })).toThrow("invalid sum");
    expect(() => usdaTexture({ sandPct: 60, siltPct: 45, clayPct: -5 })).toThrow(
      "invalid `clayPct`: -5",
    );
  });
});
