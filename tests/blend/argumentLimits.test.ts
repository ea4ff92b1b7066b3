import { describe, expect, it } from "vitest";
import { blendByHand } from "../../src/blend/byHand.js";
import { checkBlend } from "../../src/blend/check.js";
import { type BlendInput, designBlend } from "../../src/blend/design.js";
import { type BlendMaterial, blendCurve, blendPassing } from "../../src/blend/material.js";
import { bucketSensitivity, practicalParts } from "../../src/blend/parts.js";
import { robustness } from "../../src/blend/robustness.js";
import { sandToAdd } from "../../src/blend/sandToAdd.js";
import { powerTarget } from "../../src/blend/target.js";
import { blendFrontier, ternaryMap } from "../../src/blend/tradeoffs.js";
import { render } from "../../src/words/render.js";
import { holdArguments } from "../support/argumentLimits.js";
import { curve, GRAVEL, SAND, SOIL, THREE } from "./materials.js";

const INPUT: BlendInput = {
  materials: [SOIL, SAND],
  target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 20 }] },
};
const DESIGN = designBlend(INPUT);
const three = { ...INPUT, materials: THREE };
const byMass = { by: "mass", maxTotal: 3 } as const;
const byVolume = (density: number, bulking = 0) =>
  practicalParts(INPUT, DESIGN, {
    maxTotal: 3,
    looseDryDensityKgM3: [1200, density],
    bulkingPct: [0, bulking],
  });
const robust = (change: object, variation: object = {}) =>
  robustness({
    materials: [SOIL, SAND],
    sharesPct: [50, 50],
    band: [{ sizeMm: 0.063, lowPct: 10, highPct: 30 }],
    variation: [{ id: "soil", ...variation }],
    draws: 20,
    ...change,
  });
const short = curve([0.063, 10], [2, 90]);
const shared = (sharePct: number) => blendCurve([{ curve: SAND.curve, sharePct }]);
const rough = (low: number) => ({ low, middle: 1500, high: 1600 });
const mixed = (finesPct: readonly [number, number], lowDensity = 1400, batchDryMassKg = 10) =>
  sandToAdd({
    soil: {
      name: "Soil",
      finesPct: { low: finesPct[0], high: finesPct[1] },
      looseDensityKgM3: rough(lowDensity),
    },
    sand: { name: "Sand", finesPct: { low: 0, high: 0 }, looseDensityKgM3: rough(1400) },
    targetPct: 30,
    batchDryMassKg,
  });

holdArguments([
  ["exponent", (value) => powerTarget(value, 20, [1]), [1e-3, 1], [0, 1.01]],
  ["topSizeMm", (value) => powerTarget(0.5, value, [1]), [1e-3], [0]],
  ["sizesMm[1]", (value) => powerTarget(0.5, 20, [1, value]), [1e-3], [0]],
  ["sizeMm", (value) => blendPassing(short, value), [1e-6, 0.063, 2], [2.01, 100]],
  ["sum of the shares", shared, [99.51, 100, 100.49], [99.5, 100.5]],
  ["soilPct", (value) => blendByHand({ soilPct: value, targetPct: 30 }), [0, 100], [-0.1, 100.1]],
  ["targetPct", (value) => blendByHand({ soilPct: 40, targetPct: value }), [0, 100], [-0.1, 100.1]],
  ["low", (value) => mixed([40, 60], value), [1e-3], [0]],
  ["batchDryMassKg", (value) => mixed([40, 60], 1400, value), [1e-3], [0]],
  [
    "maxTotal",
    (value) => practicalParts(INPUT, DESIGN, { ...byMass, maxTotal: value }),
    [1],
    [0, 1.5],
  ],
  ["looseDryDensityKgM3[1]", (value) => byVolume(value), [1e-3], [0, Infinity, NaN]],
  ["bulkingPct[1]", (value) => byVolume(1500, value), [0, 99.9], [-0.1, 100]],
  ["draws", (draws) => robust({ draws }), [1], [0, 1.5, 1_000_001]],
  ["steps", (steps) => ternaryMap(three, steps), [2, 100], [1, 2.5, 101]],
  ["steps", (steps) => blendFrontier(INPUT, "cost", steps), [2], [1, 2.5]],
  ["maxMaterials", (maxMaterials) => designBlend({ ...INPUT, maxMaterials }), [1, 9], [0, 1.5]],
]);

describe("lists of arguments", () => {
  it("have one number, 0 or more, for each material", () => {
    expect(() => robust({ sharesPct: [0, 100] })).not.toThrow();
    for (const sharesPct of [[50], [50, -1]]) {
      expect(() => robust({ sharesPct })).toThrow(
        `invalid \`sharesPct\`: [${sharesPct}]; expected 2 numbers, 0 or more`,
      );
    }
    expect(() => bucketSensitivity(INPUT, DESIGN, [1], [1, 1])).toThrow("invalid `parts`: [1]");
    expect(() => bucketSensitivity(INPUT, DESIGN, [1, 1], [1, -1])).toThrow(
      "invalid `massShares`: [1,-1]",
    );
    // No part less than none, and no batch of nothing.
    const changes = bucketSensitivity(INPUT, DESIGN, [1, 0], [1, 1]);
    expect(changes.map(({ id, change }) => [id, change])).toEqual([
      ["soil", 1],
      ["sand", 1],
    ]);
  });

  it("vary by nothing or more, fines by 100 points at most", () => {
    for (const variation of [
      { finesPlusMinusPct: 0 },
      { finesPlusMinusPct: 100 },
      { batchingPlusMinusPct: 0 },
    ]) {
      expect(() => robust({}, variation)).not.toThrow();
    }
    expect(() => robust({}, { finesPlusMinusPct: 100.1 })).toThrow(
      "invalid `variation[0]`: 100.1, 0;",
    );
    expect(() => robust({}, { finesPlusMinusPct: -0.1 })).toThrow(
      "invalid `variation[0]`: -0.1, 0;",
    );
    expect(() => robust({}, { batchingPlusMinusPct: -0.1 })).toThrow(
      "invalid `variation[0]`: 0, -0.1;",
    );
    expect(() => robust({ band: [] })).toThrow("invalid `band`: []");
  });

  it("of a design are refused by place and value", () => {
    const shares = (minSharePct: number, maxSharePct: number) => () =>
      designBlend({ ...INPUT, materials: [SOIL, { ...SAND, minSharePct, maxSharePct }] });
    expect(shares(0, 100)).not.toThrow();
    expect(shares(40, 40)).not.toThrow();
    for (const [min, max] of [
      [-1, 50],
      [50, 40],
      [50, 101],
    ]) {
      expect(shares(min, max)).toThrow(
        `invalid \`materials[1].sharePct\`: ${min} to ${max}; expected 0 to 100, smallest first`,
      );
    }
    const forced = { ...INPUT, materials: THREE.map((of) => ({ ...of, minSharePct: 10 })) };
    expect(() => designBlend({ ...forced, maxMaterials: 2 })).toThrow(
      "invalid `maxMaterials`: 2; expected a whole number from 3",
    );
    const points = [
      { sizeMm: 0.063, lowPct: 10, highPct: 10 },
      { sizeMm: 2, lowPct: 50, highPct: 49 },
    ];
    expect(() => designBlend({ ...INPUT, target: { kind: "band", points } })).toThrow(
      "invalid `target.points[1]`: 50 to 49; expected the lower value first",
    );
    const priceless = { ...INPUT, materials: [SOIL, { ...SAND, costPerT: undefined }] };
    const limits = [{ kind: "cost", maxPerT: 20 }] as const;
    expect(() => designBlend({ ...priceless, limits })).toThrow(
      "invalid `costPerT` of sand: undefined; expected a number, as a limit asks for it",
    );
    const target = { kind: "band", points: points.slice(0, 1), aim: "least-cost" } as const;
    expect(() => designBlend({ ...priceless, target })).toThrow(
      "as the aim least-cost asks for it",
    );
  });
});

describe("what is told of a blend, on its limits", () => {
  const told = (materials: readonly BlendMaterial[], more: Partial<BlendInput> = {}) =>
    checkBlend({ ...INPUT, materials, ...more }).map(({ code }) => code);
  const finest = (sizeMm: number, passingPct: number) => ({
    ...SAND,
    curve: curve([sizeMm, passingPct], [4, 100]),
  });

  it("a curve may be read to a fifth of its finest size, or farther with 5 % finer", () => {
    const points = [0.05, 0.4, 2].map((sizeMm) => ({ sizeMm, passingPct: 50 }));
    const read = (sand: BlendMaterial) =>
      told([SOIL, sand], { target: { kind: "curve", points } }).filter((code) =>
        /extra/.test(code),
      );
    expect(read(finest(0.25, 20))).toEqual([]);
    expect(read(finest(0.2501, 20))).toEqual(["blend-extrapolated"]);
    expect(read(finest(0.5, 5))).toEqual([]);
    expect(read(finest(0.5, 5.1))).toEqual(["blend-extrapolated"]);
  });

  it("finest sieves may be five times apart", () => {
    const target = { kind: "power", exponent: 0.3, topSizeMm: 20 } as const;
    const late = (sizeMm: number) =>
      told([SOIL, finest(sizeMm, 4)], { target }).filter((code) => /late/.test(code));
    expect(late(0.315)).toEqual([]);
    expect(late(0.316)).toEqual(["blend-curve-starts-late"]);
  });

  it("materials that differ by 10 points in an open stretch are alike there", () => {
    const between = (passingPct: number) => ({
      ...GRAVEL,
      curve: curve([0.063, 20], [0.63, passingPct], [6.3, 100]),
    });
    const gaps = (passingPct: number) =>
      told([between(40), { ...between(passingPct), id: "other" }], {
        target: {
          kind: "curve",
          points: [0.063, 6.3].map((sizeMm) => ({ sizeMm, passingPct: 50 })),
        },
      }).filter((code) => /gap/.test(code));
    expect(gaps(50)).toEqual([]);
    expect(gaps(50.1)).toEqual(["blend-target-gap"]);
  });

  it("sizes of a target may be ten times apart", () => {
    const other = { ...GRAVEL, id: "other", curve: curve([0.063, 20], [0.63, 90], [6.3, 100]) };
    const gaps = (toMm: number) =>
      told([GRAVEL, other], {
        target: {
          kind: "curve",
          points: [0.2, toMm, 6.3].map((sizeMm) => ({ sizeMm, passingPct: 50 })),
        },
      }).filter((code) => /gap/.test(code));
    expect(gaps(2)).toEqual([]);
    expect(gaps(2.1)).toEqual(["blend-target-gap"]);
  });

  it("nothing may be a limit of what passes", () => {
    const limited = (maxPct: number) =>
      told([SOIL, SAND], { limits: [{ kind: "passing", sizeMm: 0.063, maxPct }] }).filter((code) =>
        /bad-limit/.test(code),
      );
    expect(limited(0)).toEqual([]);
    expect(limited(-0.1)).toEqual(["blend-bad-limit"]);
  });

  it("beyond the coarsest sieve on which something stayed a target leaves nothing open", () => {
    const short = { ...SOIL, curve: curve([0.063, 40], [2, 90]) };
    const sand = { ...SAND, curve: curve([0.063, 3], [2, 80], [4, 100]) };
    const between = (...sizesMm: readonly number[]) =>
      checkBlend({
        materials: [short, sand],
        target: {
          kind: "curve",
          points: sizesMm.map((sizeMm) => ({ sizeMm, passingPct: 50 })),
        },
      }).map(({ code, value }) => `${code} ${value}`);
    const ends = "blend-curve-ends-early soil";
    expect(between(0.063, 0.4, 2, 50)).toEqual([ends]);
    expect(between(0.063, 50)).toEqual([ends, "blend-target-gap 0.063 to 2 mm"]);
    expect(between(0.063, 1.9)).toEqual(["blend-target-gap 0.063 to 1.9 mm"]);
  });

  it("a limit on clay asks nothing of coarser sizes", () => {
    const clayey = { ...SOIL, curve: curve([0.002, 30], [0.02, 97]) };
    const input: BlendInput = {
      materials: [clayey],
      target: { kind: "curve", points: [{ sizeMm: 0.02, passingPct: 90 }] },
      limits: [{ kind: "clay", maxPct: 40 }],
    };
    expect(checkBlend(input)).toEqual([]);
    expect(designBlend(input).limits.map(({ value }) => value)).toEqual([30]);
    const silt = { ...input, limits: [{ kind: "silt", maxPct: 90 }] as const };
    expect(checkBlend(silt).map(({ code }) => code)).toEqual(["blend-curve-ends-early"]);
  });

  it("as many materials may be forced as may go in, and shares may add up to just 100", () => {
    const forced = [SOIL, SAND].map((of) => ({ ...of, minSharePct: 50 }));
    expect(told(forced, { maxMaterials: 2 })).toEqual([]);
    expect(told(forced, { maxMaterials: 1 })).toEqual(["too-many-forced-materials"]);
    const little = [SOIL, SAND].map((of) => ({ ...of, minSharePct: 0.5 }));
    expect(told(little, { maxMaterials: 1 })).toEqual(["too-many-forced-materials"]);
    expect(told([forced[0], { ...SAND, minSharePct: 50.1 }])).toEqual(["blend-shares-exclude"]);
    const held = (max: number) => [
      { ...SOIL, maxSharePct: 50 },
      { ...SAND, maxSharePct: max },
    ];
    expect([told(held(50)), told(held(49.9))]).toEqual([[], ["blend-shares-exclude"]]);
  });

  it("fines known to a tenth of the sand that they ask for need no words", () => {
    // (F − 30) / 30 at F of 50 ± 1: 0.6333 to 0.7, a tenth of 0.6667 apart.
    const words = (plusMinus: number) => render(mixed([50 - plusMinus, 50 + plusMinus]).message);
    expect(words(0.99)).toBe("For 30 % fines, 0.67 parts of Sand to one part of Soil by dry mass.");
    expect(words(1.01)).toContain("0.63 to 0.70 parts of Sand");
  });
});
