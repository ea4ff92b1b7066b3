import { describe, expect, it } from "vitest";
import { blendByHand } from "../../src/blend/byHand.js";
import { designBlend } from "../../src/blend/design.js";
import { type BlendMaterial, blendCurve } from "../../src/blend/material.js";
import type { BlendLimit } from "../../src/blend/target.js";
import { type GradingCurve, passingAtSize } from "../../src/grading/curve.js";
import { fractions } from "../../src/grading/fractions.js";
import { render } from "../../src/words/render.js";
import published from "../reference/blendCases.json" with { type: "json" };
import { near } from "../strength/near.js";
import { curve, nearestTo } from "./materials.js";

function materialsOf(of: (typeof published.cases)[number]): BlendMaterial[] {
  return of.passingPct.map((passing, j) => {
    const points = of.sizesMm.map((size, i) => [size, passing[i]] as const);
    const own = curve(...points.sort(([a], [b]) => a - b));
    return { id: `m${j}`, curve: own, minSharePct: 0, maxSharePct: 100 };
  });
}

describe("published blends", () => {
  it.each(published.cases.map((of) => [of.id, of] as const))("%s: forward", (_, of) => {
    const parts = materialsOf(of).map(({ curve: own }, j) => ({
      curve: own,
      sharePct: of.sharesPct[j],
    }));
    const { curve: blended } = blendCurve(parts);
    of.sizesMm.forEach((size, i) => {
      near(
        passingAtSize(blended, size),
        of.blendPct[i],
        { rel: 0, abs: of.tolerancePct },
        `${size} mm`,
      );
    });
  });

  it.each(
    published.cases
      .filter(({ sizesMm, passingPct }) => sizesMm.length >= passingPct.length)
      .map((of) => [of.id, of] as const),
  )("%s: shares found again from the printed blend", (_, of) => {
    const target = of.sizesMm.map((sizeMm, i) => ({ sizeMm, passingPct: of.blendPct[i] }));
    const found = nearestTo(materialsOf(of), target);
    expect(found.status).toBe("ok");
    expect(found.optimalityResidual).toBeLessThan(1e-12);
    found.shares.forEach(({ sharePct, id }, j) => {
      // What is printed to a tenth of a point settles the shares to about half a point.
      near(sharePct, of.sharesPct[j], { rel: 0, abs: 1e-6 + 4 * of.tolerancePct }, id);
    });
  });

  it("two aggregates: the specification allows 27.47 to 45.05 % of the first", () => {
    const { limits, aggregate1SharePct } = published.twoAggregatesSpecification;
    const [first, second] = materialsOf(published.cases[1]);
    const windows = limits.map((limit): BlendLimit => ({ kind: "passing", ...limit }));
    const extreme = (siteSoil: "first" | "second") =>
      designBlend({
        materials: [
          { ...first, siteSoil: siteSoil === "first" },
          { ...second, siteSoil: siteSoil === "second" },
        ],
        target: {
          kind: "band",
          points: [{ sizeMm: 12.5, lowPct: 0, highPct: 100 }],
          aim: "most-site-soil",
        },
        limits: windows,
      });
    const [most, least] = [extreme("first"), extreme("second")];
    near(most.shares[0].sharePct, aggregate1SharePct[1], { rel: 0, abs: 0.006 }, "most");
    near(least.shares[0].sharePct, aggregate1SharePct[0], { rel: 0, abs: 0.006 }, "least");
    const sizes = (of: typeof most) => of.limits.filter(({ active }) => active);
    expect(sizes(most).map(({ label, side }) => [render(label), side])).toEqual([
      ["passing 2.36 mm", "max"],
    ]);
    expect(sizes(least).map(({ label, side }) => [render(label), side])).toEqual([
      ["passing 2.36 mm", "min"],
    ]);
  });
});

/**
 * US Army Corps of Engineers (2000), graded base course of two soils, as reproduced by Burroughs (2001), thesis,
 * University of New South Wales, table 2.5 and figure 2.4 (read there; the manual is public domain, from memory):
 * 21 to 44 % of the finer soil meets the envelope. Only the two sizes that decide are taken. The coarser soil's
 * passing at 0.425 mm is printed as a dash; 5 % is from memory of the manual and agrees with the figure.
 */
describe("a road base of two soils", () => {
  const soil = (id: string, ...points: [size: number, passing: number][]): BlendMaterial => ({
    id,
    curve: curve(...points),
    minSharePct: 0,
    maxSharePct: 100,
  });
  const fine = soil("A", [0.075, 33], [0.425, 52], [25, 100]);
  const coarse = soil("B", [0.075, 1], [0.425, 5], [25, 100]);
  const limits: BlendLimit[] = [
    { kind: "passing", sizeMm: 0.425, minPct: 15, maxPct: 30 },
    { kind: "passing", sizeMm: 0.075, minPct: 5, maxPct: 15 },
  ];
  const most = (siteSoil: "A" | "B") =>
    designBlend({
      materials: [fine, coarse].map((each) => ({ ...each, siteSoil: each.id === siteSoil })),
      target: {
        kind: "band",
        points: [{ sizeMm: 0.425, lowPct: 0, highPct: 100 }],
        aim: "most-site-soil",
      },
      limits,
    });

  it("may have 21.28 to 43.75 % of the finer one, as the sieves No. 40 and No. 200 decide", () => {
    const [high, low] = [most("A"), most("B")];
    near(high.shares[0].sharePct, 43.75, { rel: 0, abs: 1e-6 }, "most");
    near(low.shares[0].sharePct, 21.2766, { rel: 0, abs: 1e-4 }, "least");
    const active = (of: typeof high) =>
      of.limits.filter((limit) => limit.active).map(({ label, side }) => [render(label), side]);
    expect(active(high)).toEqual([["passing 0.075 mm", "max"]]);
    expect(active(low)).toEqual([["passing 0.425 mm", "min"]]);
  });
});

describe("the two-material closed form", () => {
  it("shares out by fineness modulus as published, each of two definitions by its name", () => {
    const { coarse, fine, target, fineOfTotalPct, fineToCoarsePct } = published.finenessModulus;
    const found = blendByHand({ soilPct: coarse, sandPct: fine, targetPct: target });
    near(found.sandSharePct, fineOfTotalPct, { rel: 0, abs: 0.005 }, "of the total");
    near(100 * found.sandToOneOfSoil!, fineToCoarsePct, { rel: 0, abs: 0.005 }, "of the coarse");
  });
});

describe("the field rule (check values: common practice, no source)", () => {
  const EXACT = { rel: 1e-12, abs: 1e-12 };
  it("brings 37 % fines to 25 % with 0.48 parts of clean sand", () => {
    const found = blendByHand({ soilPct: 37, targetPct: 25 });
    near(found.sandToOneOfSoil, 0.48, EXACT, "sand to one of soil");
    expect(render(found.steps.at(-1)!)).toContain("= 25.0 %");
  });

  it("says what seven of that soil to two of sand is, without and with one of cement", () => {
    const fines = (of: readonly [number, number][]) =>
      of.reduce((sum, [parts, pct]) => sum + parts * pct, 0) /
      of.reduce((sum, [parts]) => sum + parts, 0);
    const soil = curve([0.063, 37], [6.3, 100]);
    const sand = curve([0.063, 0], [4, 100]);
    const blended = blendCurve([
      { curve: soil, sharePct: 700 / 9 },
      { curve: sand, sharePct: 200 / 9 },
    ]);
    near(passingAtSize(blended.curve, 0.063), 28.8, { rel: 0, abs: 0.05 }, "of soil and sand");
    near(
      fines([
        [9, passingAtSize(blended.curve, 0.063)!],
        [1, 0],
      ]),
      25.9,
      { rel: 0, abs: 0.05 },
      "of all ten",
    );
  });

  it("agrees with the solver wherever a blend is asked for", () => {
    for (let soilPct = 20; soilPct <= 80; soilPct += 7) {
      for (let sandPct = 0; sandPct <= 12; sandPct += 4) {
        const targetPct = sandPct + 0.4 * (soilPct - sandPct);
        const hand = blendByHand({ soilPct, targetPct, sandPct });
        const materials = [soilPct, sandPct].map((fines, j) => ({
          id: `m${j}`,
          curve: curve([0.063, fines], [2, 100]),
          minSharePct: 0,
          maxSharePct: 100,
        }));
        const solved = nearestTo(materials, [{ sizeMm: 0.063, passingPct: targetPct }]);
        near(hand.soilSharePct, solved.shares[0].sharePct, { rel: 1e-10, abs: 0 }, "soil");
      }
    }
  });

  it("says when sand does not help", () => {
    expect(blendByHand({ soilPct: 20, targetPct: 25 }).status).toBe("already");
    expect(blendByHand({ soilPct: 40, targetPct: 25, sandPct: 30 }).status).toBe("unreachable");
    expect(() => blendByHand({ soilPct: Number.NaN, targetPct: 25 })).toThrow(RangeError);
  });
});

describe("shares that add up to 100 but for rounding", () => {
  const whole = (finesPct: number): GradingCurve => ({
    points: [
      { sizeMm: 0.063, passingPct: finesPct, origin: "sieve" },
      { sizeMm: 2, passingPct: 60, origin: "sieve" },
      { sizeMm: 20, passingPct: 100, origin: "sieve" },
    ],
  });

  it.each([
    [14, 55, 31],
    [100 / 3, 100 / 3, 100 / 3],
    [0.1, 0.2, 99.7],
  ])("%d, %d and %d percent keep the gravel", (...shares) => {
    const { curve } = blendCurve(
      shares.map((sharePct, index) => ({ curve: whole(10 * index), sharePct })),
    );
    expect(curve.points.at(-1)!.passingPct).toBe(100);
    const { gravelPct, cobblesPct } = fractions(curve);
    expect(gravelPct).toBeCloseTo(40, 9);
    expect(cobblesPct).toBe(0);
  });
});
