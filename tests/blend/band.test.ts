import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bandFindings, bandStates } from "../../src/blend/band.js";
import { designBlend } from "../../src/blend/design.js";
import { blendPassing } from "../../src/blend/material.js";
import { createRandom } from "../../src/numerics/random.js";
import { render } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";
import { randomMaterials } from "./materials.js";

const CLAY = { name: "Clay", curve: curveOf([0.002, 30], [0.063, 60], [2, 100]) };
const SAND = { name: "Sand", curve: curveOf([0.063, 2], [0.5, 50], [2, 100]) };
const GRAVEL = { name: "Gravel", curve: curveOf([2, 0], [8, 40], [16, 95]) };

describe("bandStates", () => {
  it("says where, by how much and by which part, as worked out by hand", () => {
    // 0.063 mm: 0.4 × 60 + 0.6 × 2 = 25.2; 2 mm: 100.
    const parts = [
      { ...CLAY, sharePct: 40 },
      { ...SAND, sharePct: 60 },
    ];
    const [fines, middle, top] = bandStates(parts, [
      { sizeMm: 0.063, lowPct: 5, highPct: 20 },
      { sizeMm: 0.5, lowPct: 60, highPct: 90 },
      { sizeMm: 2, lowPct: 100, highPct: 100 },
    ]);
    expect(fines.passingPct).toBeCloseTo(25.2, 9);
    expect(fines.outsidePct).toBeCloseTo(5.2, 9);
    // 0.4 (60 − 20) and 0.6 (2 − 20).
    expect(fines.broughtPct).toEqual([expect.closeTo(16, 9), expect.closeTo(-10.8, 9)]);
    expect(fines.cause).toBe("Clay");
    expect(middle).toMatchObject({ outsidePct: 0, broughtPct: [] });
    expect(middle.cause).toBeUndefined();
    expect(top.outsidePct).toBe(0);
  });

  it("below a band the part with too little to pass causes it; a part without a share does not", () => {
    const [state] = bandStates(
      [
        { ...CLAY, sharePct: 20 },
        { ...GRAVEL, sharePct: 0 },
        { ...SAND, sharePct: 80 },
      ],
      [{ sizeMm: 0.063, lowPct: 20, highPct: 40 }],
    );
    // 0.2 × 60 + 0.8 × 2 = 13.6.
    expect(state.outsidePct).toBeCloseTo(-6.4, 9);
    expect(state.broughtPct).toEqual([
      expect.closeTo(8, 9),
      expect.closeTo(0, 9),
      expect.closeTo(-14.4, 9),
    ]);
    expect(state.cause).toBe("Sand");
  });

  it("leaves out sizes beyond a curve that does not reach 100 %", () => {
    const band = [8, 31.5].map((sizeMm) => ({ sizeMm, lowPct: 0, highPct: 100 }));
    const sizes = (parts: Parameters<typeof bandStates>[0]) =>
      bandStates(parts, band).map(({ sizeMm }) => sizeMm);
    expect(sizes([{ ...GRAVEL, sharePct: 100 }])).toEqual([8]);
    expect(sizes([{ ...SAND, sharePct: 100 }])).toEqual([8, 31.5]);
    expect(
      sizes([
        { ...SAND, sharePct: 100 },
        { ...GRAVEL, sharePct: 0 },
      ]),
    ).toEqual([8, 31.5]);
  });

  it("what the parts bring adds up to the distance, whatever the blend", () => {
    const size = fc.constantFrom(0.002, 0.063, 0.2, 1, 4);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        size,
        fc.double({ min: 0, max: 90, noNaN: true }),
        (seed, sizeMm, lowPct) => {
          const materials = randomMaterials(seed, 4, [0.002, 0.063, 1, 8]);
          const random = createRandom(seed);
          const raw = materials.map(() => random.uniform());
          const sum = raw.reduce((a, b) => a + b, 0);
          const parts = materials.map(({ id, curve }, j) => ({
            name: id,
            curve,
            sharePct: (100 * raw[j]) / sum,
          }));
          const [state] = bandStates(parts, [{ sizeMm, lowPct, highPct: lowPct + 5 }]);
          const passing = parts.reduce(
            (total, { curve, sharePct }) =>
              total + (sharePct / 100) * blendPassing(curve, sizeMm).passingPct,
            0,
          );
          expect(state.passingPct).toBeCloseTo(passing, 9);
          const nearest = Math.min(Math.max(passing, lowPct), lowPct + 5);
          expect(state.outsidePct).toBeCloseTo(passing - nearest, 6);
          expect(state.broughtPct.reduce((a, b) => a + b, 0)).toBeCloseTo(state.outsidePct, 6);
        },
      ),
    );
  });
});

describe("bandFindings", () => {
  it("names the material that keeps the best blend out of the band", () => {
    const input = {
      materials: [
        { id: "a", ...CLAY, minSharePct: 60, maxSharePct: 100 },
        { id: "b", ...SAND, minSharePct: 0, maxSharePct: 100 },
      ],
      target: {
        kind: "band" as const,
        points: [{ sizeMm: 0.063, lowPct: 5, highPct: 20 }],
      },
    };
    const [found, ...others] = bandFindings(input, designBlend(input));
    expect(others).toEqual([]);
    // 0.6 × 60 + 0.4 × 2 = 36.8.
    expect(render(found.message)).toBe(
      "At 0.063 mm the best blend passes 36.8 %, 17 points outside the band; Clay causes most of it.",
    );
    expect(render(found.remedy!)).toContain("of which less passes 0.063 mm");
    const power = { ...input, target: { kind: "power" as const, exponent: 0.3, topSizeMm: 2 } };
    expect(bandFindings(power, designBlend(power))).toEqual([]);
  });
});
