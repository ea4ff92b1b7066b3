import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sandToAdd } from "../../src/blend/sandToAdd.js";
import { render } from "../../src/words/render.js";

const SOIL_DENSITY = { low: 1000, middle: 1200, high: 1400 };
const SAND_DENSITY = { low: 1400, middle: 1500, high: 1600 };
const mixOf = (
  soil: readonly [number, number],
  sand: readonly [number, number],
  targetPct: number,
  batchDryMassKg = 10,
) =>
  sandToAdd({
    soil: {
      name: "Soil",
      finesPct: { low: soil[0], high: soil[1] },
      looseDensityKgM3: SOIL_DENSITY,
    },
    sand: {
      name: "Sand",
      finesPct: { low: sand[0], high: sand[1] },
      looseDensityKgM3: SAND_DENSITY,
    },
    targetPct,
    batchDryMassKg,
  });

describe("sandToAdd", () => {
  it("as worked out by hand", () => {
    // (40 − 30) / (30 − 2) and (60 − 30) / (30 − 6); in the middle (50 − 30) / (30 − 4).
    const { status, byMass, byVolume, batch, message } = mixOf([40, 60], [2, 6], 30, 46);
    expect(status).toBe("ok");
    expect(byMass!.low).toBeCloseTo(10 / 28, 9);
    expect(byMass!.middle).toBeCloseTo(20 / 26, 9);
    expect(byMass!.high).toBeCloseTo(30 / 24, 9);
    expect(byVolume!.low).toBeCloseTo(((10 / 28) * 1000) / 1600, 9);
    expect(byVolume!.middle).toBeCloseTo(((20 / 26) * 1200) / 1500, 9);
    expect(byVolume!.high).toBeCloseTo(((30 / 24) * 1400) / 1400, 9);
    // 46 kg in the ratio 26 to 20.
    expect([batch!.soilKg, batch!.sandKg]).toEqual([expect.closeTo(26, 9), expect.closeTo(20, 9)]);
    expect(batch!.soilL).toEqual({
      low: expect.closeTo(26000 / 1400, 6),
      middle: expect.closeTo(26000 / 1200, 6),
      high: expect.closeTo(26, 6),
    });
    expect(batch!.finesPct.low).toBeCloseTo((26 * 40 + 20 * 2) / 46, 9);
    expect(batch!.finesPct.high).toBeCloseTo((26 * 60 + 20 * 6) / 46, 9);
    expect(render(message)).toContain("0.36 to 1.3 parts of Sand to one part of Soil");
  });

  it("none, perhaps none, and none that helps", () => {
    expect(mixOf([20, 30], [0, 2], 30)).toMatchObject({ status: "already" });
    expect(mixOf([20, 30], [0, 2], 30).batch).toBeUndefined();
    expect(mixOf([20, 50], [0, 0], 30)).toMatchObject({ status: "perhaps", byMass: { low: 0 } });
    // At most (50 − 30) / 30, in the middle (35 − 30) / 30.
    expect(render(mixOf([20, 50], [0, 0], 30).message)).toBe(
      "For 30 % fines, up to 0.67 parts of Sand to one part of Soil by dry mass, and perhaps none: the fines content of the soil is not known more precisely. Start with 0.17.",
    );
    const asItIs = mixOf([20, 36], [0, 0], 30);
    expect(asItIs).toMatchObject({ status: "perhaps", byMass: { middle: 0 } });
    expect(render(asItIs.message)).toMatch(/^Try Soil as it is/);
    expect(mixOf([40, 60], [10, 30], 30)).toMatchObject({ status: "unreachable" });
    const known = mixOf([49.9, 50.1], [0, 0], 30);
    expect(render(known.message)).toBe(
      "For 30 % fines, 0.67 parts of Sand to one part of Soil by dry mass.",
    );
  });

  it("holds every mix that the ranges of soil and sand leave open", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, part, part, part, (a, b, c, f, s) => {
        const [low, high] = [35 + 20 * a, 60 + 40 * b];
        const [sandLow, sandHigh] = [5 * c, 5 * c + 5];
        const { byMass } = mixOf([low, high], [sandLow, sandHigh], 30);
        const fines = low + f * (high - low);
        const sandFines = sandLow + s * (sandHigh - sandLow);
        const needed = (fines - 30) / (30 - sandFines);
        expect(needed).toBeGreaterThanOrEqual(byMass!.low - 1e-9);
        expect(needed).toBeLessThanOrEqual(byMass!.high + 1e-9);
      }),
    );
  });

  it("makes a batch of any size, and refuses none", () => {
    expect(mixOf([40, 60], [0, 0], 30, 0.5).batch!.dryMassKg).toBe(0.5);
    expect(() => mixOf([40, 60], [0, 0], 30, 0)).toThrow("`batchDryMassKg`: 0");
    expect(() => mixOf([40, 101], [0, 0], 30)).toThrow(RangeError);
  });
});
