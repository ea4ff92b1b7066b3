import { describe, expect, it } from "vitest";
import { bandFindings } from "../../src/blend/band.js";
import { checkBlend } from "../../src/blend/check.js";
import { type BlendInput, designBlend } from "../../src/blend/design.js";
import { type BlendMaterial, blendCurve } from "../../src/blend/material.js";
import { render } from "../../src/words/render.js";
import { curve, GRAVEL, SAND, SOIL, THREE } from "./materials.js";

const POWER = { kind: "power", exponent: 0.3, topSizeMm: 20 } as const;
const found = (input: BlendInput) =>
  checkBlend(input).map(({ code, severity }) => [code, severity]);
const withSoil = (soil: Partial<BlendMaterial>): BlendInput => ({
  materials: [{ ...SOIL, ...soil }, SAND, GRAVEL],
  target: POWER,
});

describe("a material whose finest sieve is coarser than those of the others", () => {
  const until = (finestMm: number, passingPct: number): BlendInput => ({
    materials: [SOIL, SAND, { ...GRAVEL, curve: curve([finestMm, passingPct], [20, 100]) }],
    target: POWER,
  });

  it("is told where finer sizes of the target are not compared", () => {
    const told = checkBlend(until(4.75, 6)).filter(({ code }) => /starts-late/.test(code));
    expect(told.map(({ severity, message }) => [severity, render(message)])).toEqual([
      [
        "warning",
        "The finest sieve of gravel, 4.75 mm, passes 6.00 %: the blend is held against its target from that size up only, though other materials were measured down to 0.0630 mm.",
      ],
    ]);
  });

  it("is none where hardly a size is left out, or the sizes are given", () => {
    expect(found(until(0.125, 1))).toEqual([]);
    const sized = { ...POWER, sizesMm: [4.75, 8, 16] };
    expect(found({ ...until(4.75, 2), target: sized })).toEqual([]);
  });
});

describe("bad input of a blend", () => {
  it("is quiet about good input", () => {
    expect(checkBlend({ materials: THREE, target: POWER })).toEqual([]);
    const limits = [
      { kind: "clay", maxPct: 0.5 },
      { kind: "fines", minPct: 20, maxPct: 20 },
    ] as const;
    expect(checkBlend({ materials: THREE, target: POWER, limits })).toEqual([]);
    // Flat, from 0 to 100, each share at its ends.
    const flat = { curve: curve([0.063, 0], [0.425, 0], [2, 100], [20, 100]) };
    expect(found(withSoil({ ...flat, minSharePct: 100, maxSharePct: 100 }))).toEqual([]);
  });

  it.each([
    ["no material", { materials: [], target: POWER }, "blend-no-material"],
    ["no curve", withSoil({ curve: { points: [] } }), "blend-no-curve"],
    [
      "NaN in a curve",
      withSoil({ curve: curve([0.063, Number.NaN], [2, 100]) }),
      "blend-bad-curve",
    ],
    ["above 100", withSoil({ curve: curve([0.063, 50], [2, 100.5]) }), "blend-bad-curve"],
    ["below 0", withSoil({ curve: curve([0.063, -0.5], [2, 100]) }), "blend-bad-curve"],
    ["a size of 0", withSoil({ curve: curve([0, 5], [2, 100]) }), "blend-bad-curve"],
    ["one size twice", withSoil({ curve: curve([2, 95], [2, 100]) }), "blend-bad-curve"],
    ["a share below 0", withSoil({ minSharePct: -1 }), "blend-bad-share"],
    ["a share above 100", withSoil({ maxSharePct: 101 }), "blend-bad-share"],
    [
      "an exponent of 0",
      { materials: THREE, target: { ...POWER, exponent: { min: 0, max: 0.5 } } },
      "blend-bad-target",
    ],
    [
      "an exponent above 1",
      { materials: THREE, target: { ...POWER, exponent: { min: 0.3, max: 1.1 } } },
      "blend-bad-target",
    ],
    [
      "top sizes the wrong way round",
      { materials: THREE, target: { ...POWER, topSizeMm: { min: 20, max: 10 } } },
      "blend-bad-target",
    ],
    ...[
      { sizeMm: 0, passingPct: 20 },
      { sizeMm: 1, passingPct: Number.NaN },
      { sizeMm: 1, passingPct: 20, weight: -1 },
      { sizeMm: 1, lowPct: 30, highPct: 20 },
    ].map(
      (point) =>
        [
          `a target's point ${JSON.stringify(point)}`,
          {
            materials: THREE,
            target: { kind: "lowPct" in point ? "band" : "curve", points: [point] },
          },
          "blend-bad-target",
        ] as const,
    ),
    ["a falling curve", withSoil({ curve: curve([0.063, 50], [2, 40]) }), "blend-bad-curve"],
    ["a share that is none", withSoil({ minSharePct: Number.NaN }), "blend-bad-share"],
    ["crossed bounds", withSoil({ minSharePct: 60, maxSharePct: 40 }), "blend-bad-share"],
    [
      "smallest shares above 100",
      {
        materials: [SOIL, { ...SAND, minSharePct: 60 }, { ...GRAVEL, minSharePct: 50 }],
        target: POWER,
      },
      "blend-shares-exclude",
    ],
    [
      "largest shares below 100",
      {
        materials: [
          { ...SOIL, maxSharePct: 60 },
          { ...SAND, maxSharePct: 30 },
        ],
        target: POWER,
      },
      "blend-shares-exclude",
    ],
    [
      "one id twice",
      { materials: [SOIL, SAND, { ...GRAVEL, id: "sand" }], target: POWER },
      "blend-duplicate",
    ],
    [
      "a plasticity limit without a test",
      {
        ...withSoil({ plasticityIndexPct: undefined }),
        limits: [{ kind: "plasticity-index", maxPct: 10 }],
      },
      "blend-missing-property",
    ],
    [
      "a carbon limit without a factor",
      { ...withSoil({ carbonKgPerT: undefined }), limits: [{ kind: "carbon", maxKgPerT: 9 }] },
      "blend-missing-property",
    ],
    ...[
      ["least-cost", "costPerT"],
      ["least-carbon", "carbonKgPerT"],
    ].map(
      ([aim, key]) =>
        [
          `${aim} without ${key}`,
          {
            ...withSoil({ [key]: undefined }),
            target: { kind: "band", aim, points: [{ sizeMm: 0.063, lowPct: 10, highPct: 30 }] },
          },
          "blend-missing-property",
        ] as const,
    ),
    [
      "a limit that is none",
      { ...withSoil({}), limits: [{ kind: "clay", minPct: Number.NaN }] },
      "blend-bad-limit",
    ],
    [
      "a window the wrong way round",
      { ...withSoil({}), limits: [{ kind: "clay", minPct: 20, maxPct: 10 }] },
      "blend-bad-limit",
    ],
    [
      "NaN in the target",
      { materials: THREE, target: { ...POWER, exponent: Number.NaN } },
      "blend-bad-target",
    ],
    [
      "a target without sizes",
      { materials: THREE, target: { kind: "curve", points: [] } },
      "blend-bad-target",
    ],
    [
      "a limit at a coarse end that was not measured",
      {
        ...withSoil({ curve: curve([0.002, 20], [0.063, 40], [2, 90]) }),
        limits: [{ kind: "passing", sizeMm: 10, minPct: 60 }],
      },
      "blend-curve-ends-early",
    ],
    [
      "a target at nothing but sizes that were not measured",
      {
        ...withSoil({ curve: curve([0.002, 20], [0.063, 40], [2, 90]) }),
        target: { kind: "curve", points: [{ sizeMm: 10, passingPct: 80 }] },
      },
      "blend-curve-ends-early",
    ],
    [
      "a clay limit on a soil without a hydrometer",
      {
        ...withSoil({ curve: curve([0.063, 45], [2, 85], [20, 100]) }),
        limits: [{ kind: "clay", maxPct: 10 }],
      },
      "blend-extrapolated",
    ],
  ] as const)("is told: %s", (_, input, code) => {
    expect(found(input as BlendInput)).toContainEqual([code, "error"]);
  });

  it("holds fine targets too against the coarse end of a curve", () => {
    const fine = { ...SOIL, curve: curve([0.002, 22], [0.063, 45], [0.5, 80]) };
    const target = {
      kind: "curve",
      points: [0.063, 0.8].map((sizeMm) => ({ sizeMm, passingPct: 50 })),
    } as const;
    expect(found({ materials: [fine, SAND], target }).map(([code]) => code)).toContain(
      "blend-curve-ends-early",
    );
  });

  it("is no finding where it does no harm", () => {
    expect(found({ materials: [SOIL, SAND, { ...SAND, id: "other" }], target: POWER })).toEqual([
      ["blend-duplicate", "warning"],
    ]);
    // Silt ends at 0.063 mm, which this curve reaches.
    const fine = { ...SOIL, curve: curve([0.002, 20], [0.065, 90]) };
    const silt = { materials: [fine], limits: [{ kind: "silt", maxPct: 80 }] } as const;
    const target = { kind: "curve", points: [{ sizeMm: 0.02, passingPct: 60 }] } as const;
    expect(found({ ...silt, target })).toEqual([]);
    // A washed sand without a hydrometer cannot be wrong by more than its 3 %.
    const withClay = (sand: BlendMaterial) =>
      checkBlend({
        materials: [SOIL, sand],
        target: POWER,
        limits: [{ kind: "clay", maxPct: 15 }],
      });
    expect(withClay(SAND)).toEqual([]);
    const dirty = curve([0.063, 5.1], [2, 100]);
    const [only] = withClay({ ...SAND, curve: dirty });
    expect(only).toMatchObject({ code: "blend-extrapolated", severity: "error", value: "sand" });
    expect(render(only.message)).toContain("32 times coarser than the 0.00200 mm");
  });

  it("holds a blend against its target as far as every curve goes, and tells how far", () => {
    const short = { ...withSoil({ curve: curve([0.002, 20], [0.063, 40], [2, 90]) }) };
    const told = checkBlend(short).filter(({ code }) => code === "blend-curve-ends-early");
    expect(told.map(({ severity, value }) => [severity, value])).toEqual([["note", "soil"]]);
    const design = designBlend(short);
    expect(design.status).toBe("ok");
    const sizes = design.points.map(({ sizeMm }) => sizeMm);
    expect(Math.max(...sizes)).toBe(2);
    const parts = design.shares.map(({ sharePct }, index) => ({
      curve: short.materials[index].curve,
      sharePct,
    }));
    expect(blendCurve(parts).curve.points.at(-1)?.sizeMm).toBe(2);
  });

  it("refuses shares that are fractions of one", () => {
    const parts = [0.7, 0.3].map((sharePct) => ({ curve: SAND.curve, sharePct }));
    expect(() => blendCurve(parts)).toThrow(
      "invalid `sum of the shares`: 1; expected percent that sum to 100",
    );
  });

  it("tells what a target leaves open, and where the best blend still leaves the band", () => {
    const fat = curve([0.002, 51.4], [0.063, 80], [2, 100]);
    const sand = curve([0.063, 1], [0.5, 30], [2, 100]);
    const material = (id: string, own: BlendMaterial["curve"]): BlendMaterial => ({
      id,
      curve: own,
      minSharePct: 0,
      maxSharePct: 100,
    });
    const materials = [material("clay", fat), material("sand", sand)];
    const band = [
      { sizeMm: 0.002, lowPct: 5, highPct: 15 },
      { sizeMm: 0.063, lowPct: 20, highPct: 45 },
    ];
    const open: BlendInput = { materials, target: { kind: "band", points: band } };
    expect(checkBlend(open).map(({ code, value }) => [code, value])).toEqual([
      ["blend-target-gap", "0.002 to 0.063 mm"],
      ["blend-target-gap", "0.063 to 2 mm"],
    ]);
    expect(
      checkBlend({ ...open, limits: [{ kind: "passing", sizeMm: 0.4, minPct: 30 }] }).map(
        ({ value }) => value,
      ),
    ).toEqual(["0.002 to 0.063 mm"]);
    expect(bandFindings(open, designBlend(open))).toEqual([]);
    // Sizes just ten times apart are near enough: 0.2 and 2 mm here.
    const ten = [...band, { sizeMm: 0.2, lowPct: 20, highPct: 60 }];
    expect(
      checkBlend({ ...open, target: { kind: "band", points: ten } }).map(({ value }) => value),
    ).toEqual(["0.002 to 0.063 mm"]);
    // At least 35 % of this clay: 18.1 % is finer than 0.002 mm, whatever the rest is.
    const bound = [{ ...materials[0], minSharePct: 35 }, materials[1]];
    const missed: BlendInput = { ...open, materials: bound };
    const [found, ...others] = bandFindings(missed, designBlend(missed));
    expect(others).toEqual([]);
    expect(found).toMatchObject({ severity: "warning", value: "0.002 mm" });
    expect(render(found.message)).toContain("passes 18.1 %, 3.1 points outside");
    expect(render(found.expected)).toBe("5 to 15 %");
  });

  it("tells all at once", () => {
    const codes = checkBlend({
      materials: [
        { ...SOIL, minSharePct: 70, plasticityIndexPct: undefined },
        { ...SAND, id: "soil", minSharePct: 40 },
      ],
      target: POWER,
      limits: [
        { kind: "plasticity-index", maxPct: 10 },
        { kind: "fines", minPct: -1 },
      ],
    }).map(({ code }) => code);
    expect(new Set(codes)).toEqual(
      new Set([
        "blend-shares-exclude",
        "blend-duplicate",
        "blend-bad-limit",
        "blend-missing-property",
      ]),
    );
  });

  it("throws where it is handed on all the same", () => {
    expect(() => designBlend({ materials: [], target: POWER })).toThrow(RangeError);
    expect(() => designBlend(withSoil({ curve: { points: [] } }))).toThrow(/no points/);
    expect(() => designBlend({ materials: THREE, target: POWER, maxMaterials: 0 })).toThrow(
      /maxMaterials/,
    );
    const withPower = (target: object) => () =>
      designBlend({ materials: THREE, target: { ...POWER, ...target } });
    expect(withPower({ exponent: { min: 0, max: 0.5 } })).toThrow("invalid `exponent`: 0 to 0.5");
    expect(withPower({ topSizeMm: { min: 20, max: 10 } })).toThrow("invalid `topSizeMm`: 20 to 10");
  });
});
