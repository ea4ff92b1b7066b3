import { describe, expect, it } from "vitest";
import { bandFindings } from "../../src/blend/band.js";
import { checkBlend } from "../../src/blend/check.js";
import { type BlendInput, designBlend } from "../../src/blend/design.js";
import { keepsConditions, limitRows } from "../../src/blend/limits.js";
import { type BlendMaterial, blendCurve, blendPassing } from "../../src/blend/material.js";
import { practicalParts } from "../../src/blend/parts.js";
import type { BandAim, BlendLimit } from "../../src/blend/target.js";
import { relaxLimits } from "../../src/blend/tradeoffs.js";
import { hasErrors } from "../../src/findings/finding.js";
import { createRandom, type Random } from "../../src/numerics/random.js";
import { render } from "../../src/words/render.js";
import { near } from "../strength/near.js";
import { nearestTo, randomMaterials } from "./materials.js";

const SIZES = [0.002, 0.0063, 0.02, 0.063, 0.2, 0.63, 2, 6.3];

function randomLimits(seed: number): BlendLimit[] {
  const random = createRandom(seed + 5000);
  const window = (width: number) => {
    const minPct = 60 * random.uniform();
    return { minPct, maxPct: minPct + width * random.uniform() };
  };
  return [
    { kind: "fines", ...window(25) },
    { kind: "passing", sizeMm: 2, ...window(40) },
    { kind: "cost", maxPerT: 10 + 25 * random.uniform() },
  ];
}

function problem(seed: number) {
  const materials = randomMaterials(seed, 2 + (seed % 5), SIZES);
  const points = SIZES.map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 20) ** 0.3 }));
  return { materials, limits: randomLimits(seed), target: { kind: "curve", points } } as const;
}

describe("random blends with limits", () => {
  it("are optimal within all limits, or have a conflict that is a smallest one", () => {
    let [solved, alone, together] = [0, 0, 0];
    for (let seed = 1; seed <= 300; seed += 1) {
      const input = problem(seed);
      const found = designBlend(input);
      const shares = found.shares.map(({ sharePct }) => sharePct / 100);
      if (found.status === "ok") {
        solved += 1;
        const rows = limitRows(input.materials, input.limits);
        expect(keepsConditions(input.materials, rows, shares), `seed ${seed}`).toBe(true);
        expect(found.optimalityResidual).toBeLessThan(1e-11);
        continue;
      }
      expect(found.status).toBe("infeasible");
      const conflict = found.conflict!;
      expect(conflict.minBreach.length).toBeGreaterThan(0);
      if (conflict.alone.length > 0) {
        alone += 1;
        // Each limit named is enough by itself to leave no blend.
        for (const { label, side, limit } of conflict.alone) {
          const only: BlendLimit[] = [onlySide(input.limits, render(label), side, limit)];
          expect(designBlend({ ...input, limits: only }).status, `seed ${seed}`).toBe("infeasible");
          // And a limit at the nearest value that was promised can be kept.
          const { nearest } = conflict.alone.find((of) => of.label === label && of.side === side)!;
          const slack = 1e-7 * Math.max(1, Math.abs(nearest)) * (side === "min" ? -1 : 1);
          const kept = [onlySide(input.limits, render(label), side, nearest + slack)];
          expect(designBlend({ ...input, limits: kept }).status, `seed ${seed}`).toBe("ok");
        }
        continue;
      }
      together += 1;
      expect(conflict.together.length, `seed ${seed}`).toBeGreaterThan(1);
    }
    // The problems must be of all three kinds, or the test shows nothing.
    expect(Math.min(solved, alone, together)).toBeGreaterThan(10);
  });
});

function onlySide(
  limits: readonly BlendLimit[],
  label: string,
  side: "min" | "max",
  limit: number,
): BlendLimit {
  const end = side === "min" ? { minPct: limit } : { maxPct: limit };
  if (label === "cost") return { kind: "cost", maxPerT: limit };
  if (label === "fines") return { kind: "fines", ...end };
  expect(limits.some(({ kind }) => kind === "passing")).toBe(true);
  return { kind: "passing", sizeMm: 2, ...end };
}

/** What of each material passes each size. */
function passingRows(materials: readonly BlendMaterial[]): number[][] {
  return SIZES.map((sizeMm) =>
    materials.map(({ curve }) => blendPassing(curve, sizeMm).passingPct),
  );
}

describe("random bands", () => {
  it.each(["nearest-middle", "least-cost"] as BandAim[])(
    "%s: solved, and not bettered by chance",
    (aim) => {
      for (let seed = 1; seed <= 60; seed += 1) {
        const random = createRandom(seed);
        const { materials } = problem(seed);
        const points = SIZES.map((sizeMm) => {
          const middle = 100 * (sizeMm / 20) ** 0.3;
          const half = 2 + 12 * random.uniform();
          return { sizeMm, lowPct: middle - half, highPct: middle + half };
        });
        const found = designBlend({ materials, target: { kind: "band", points, aim } });
        expect(found.status, `seed ${seed}`).toBe("ok");
        const breach = 8 * found.rmsDifferencePct ** 2;
        const rows = passingRows(materials);
        let [least, cheapest] = [Infinity, Infinity];
        for (let trial = 0; trial < 100; trial += 1) {
          const shares = randomShares(materials, random.uniform);
          const mean = (values: readonly number[]) =>
            values.reduce((sum, value, j) => sum + (shares[j] / 100) * value, 0);
          const other = points.reduce((sum, { lowPct, highPct }, i) => {
            const passing = mean(rows[i]);
            return sum + Math.max(lowPct - passing, passing - highPct, 0) ** 2;
          }, 0);
          least = Math.min(least, other);
          if (other > breach) continue;
          cheapest = Math.min(cheapest, mean(materials.map(({ costPerT }) => costPerT!)));
        }
        expect(least, `seed ${seed}`).toBeGreaterThanOrEqual(breach - 1e-5);
        if (aim === "least-cost") {
          expect(cheapest, `seed ${seed}`).toBeGreaterThanOrEqual(found.costPerT! - 1e-5);
        }
      }
    },
    60_000,
  );
});

describe("random bands with weights that cannot be kept", () => {
  it("are left by as little as a search by halved steps finds, each size by its weight", () => {
    let broken = 0;
    for (let seed = 1; seed <= 120; seed += 1) {
      const random = createRandom(seed + 900);
      const materials = randomMaterials(seed, 3, SIZES).map((material) => ({
        ...material,
        minSharePct: 0,
        maxSharePct: 100,
      }));
      const points = SIZES.map((sizeMm) => {
        const middle = 100 * (sizeMm / 20) ** (0.15 + 0.3 * random.uniform());
        const half = 5 * random.uniform();
        const weight = 0.2 + 5 * random.uniform();
        return { sizeMm, lowPct: middle - half, highPct: middle + half, weight };
      });
      const rows = passingRows(materials);
      const breach = (shares: readonly number[]) =>
        points.reduce((sum, { lowPct, highPct, weight }, i) => {
          const passing = rows[i].reduce((total, value, j) => total + shares[j] * value, 0);
          return sum + weight * Math.max(lowPct - passing, passing - highPct, 0) ** 2;
        }, 0);
      const best = searched(breach);
      const found = designBlend({ materials, target: { kind: "band", points } });
      const shares = found.shares.map(({ sharePct }) => sharePct / 100);
      expect(found.status, `seed ${seed}`).toBe("ok");
      // Shares below what can be weighed are dropped, which may cost a little.
      if (found.hardlyUsed.length + found.notUsed.length > 0) {
        expect(breach(shares), `seed ${seed}`).toBeLessThanOrEqual(best + 0.01 * (1 + best));
      } else {
        expect(Math.abs(breach(shares) - best), `seed ${seed}`).toBeLessThan(1e-4 * (1 + best));
      }
      const weights = points.reduce((sum, { weight }) => sum + weight, 0);
      near(weights * found.rmsDifferencePct ** 2, breach(shares), { rel: 1e-6, abs: 1e-6 }, "rms");
      if (best > 1) broken += 1;
    }
    expect(broken).toBeGreaterThan(60);
  });
});

/** The least value over shares of three, by steps between two of them that are halved when none helps. */
function searched(value: (shares: readonly number[]) => number): number {
  let at = [1 / 3, 1 / 3, 1 / 3];
  let least = value(at);
  for (let step = 0.25; step > 1e-9; ) {
    let better: number[] | undefined;
    for (let way = 0; way < 24; way += 1) {
      const angle = (way * Math.PI) / 12;
      const [a, b] = [step * Math.cos(angle), step * Math.sin(angle)];
      const next = [at[0] + a, at[1] + b, at[2] - a - b];
      // Back onto the simplex, so that a search along its edge is not stopped.
      const cut = next.map((share) => Math.max(0, share));
      const sum = cut.reduce((total, share) => total + share, 0);
      const inside = cut.map((share) => share / sum);
      const found = value(inside);
      if (found < least) [least, better] = [found, inside];
    }
    if (better) at = better;
    else step /= 2;
  }
  return least;
}

/** Shares within the bounds: the bounds' own mixture, then random exchanges. */
function randomShares(materials: readonly BlendMaterial[], uniform: () => number): number[] {
  const least = materials.reduce((sum, of) => sum + of.minSharePct, 0);
  const most = materials.reduce((sum, of) => sum + of.maxSharePct, 0);
  const way = (100 - least) / (most - least);
  const shares = materials.map((of) => of.minSharePct + way * (of.maxSharePct - of.minSharePct));
  for (let turn = 0; turn < 2 * shares.length; turn += 1) {
    const from = Math.floor(uniform() * shares.length);
    const to = Math.floor(uniform() * shares.length);
    if (from === to) continue;
    const room = Math.min(
      shares[from] - materials[from].minSharePct,
      materials[to].maxSharePct - shares[to],
    );
    const move = room * uniform();
    shares[from] -= move;
    shares[to] += move;
  }
  return shares;
}

describe("blendCurve", () => {
  it("passes all where all of each material passes, whatever the shares add up to in the last digit", () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const random = createRandom(seed);
      const raw = Array.from({ length: 7 }, () => random.uniform());
      const sum = raw.reduce((total, part) => total + part, 0);
      const { curve } = blendCurve(
        raw.map((part, j) => ({
          sharePct: (100 * part) / sum,
          curve: {
            points: [
              { sizeMm: 0.063, passingPct: 5 * j, origin: "sieve" as const },
              { sizeMm: 2 + j, passingPct: 100, origin: "sieve" as const },
            ],
          },
        })),
      );
      expect(curve.points.at(-1)).toMatchObject({ sizeMm: 8, passingPct: 100 });
    }
  });
});

describe("hard cases", () => {
  it("nearly the same materials: the difference does not suffer", () => {
    for (const apart of [1e-3, 1e-6, 1e-9]) {
      const [a, b, c] = randomMaterials(7, 3, SIZES).map((of) => ({
        ...of,
        minSharePct: 0,
        maxSharePct: 100,
      }));
      const twin = {
        ...a,
        id: "twin",
        curve: {
          points: a.curve.points.map((point, i) => ({
            ...point,
            passingPct: point.passingPct * (1 - apart * (i % 3)),
          })),
        },
      };
      const points = SIZES.map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 20) ** 0.3 }));
      const three = nearestTo([a, b, c], points);
      const four = nearestTo([a, b, c, twin], points);
      expect(four.status).toBe("ok");
      expect(four.optimalityResidual).toBeLessThan(1e-11);
      expect(four.rmsDifferencePct).toBeLessThanOrEqual(three.rmsDifferencePct + 1e-9);
    }
  });

  it("weights over twelve decades", () => {
    const { materials, target } = problem(11);
    const points = target.points.map((point, i) => ({ ...point, weight: 10 ** (i % 2 ? -6 : 6) }));
    const found = nearestTo(materials, points);
    expect(found.status).toBe("ok");
    expect(found.optimalityResidual).toBeLessThan(1e-11);
    near(
      found.shares.reduce((sum, { sharePct }) => sum + sharePct, 0),
      100,
      { rel: 1e-12, abs: 0 },
      "sum",
    );
  });
});

describe("any materials, target and limits", () => {
  /** Curves that start and end anywhere, some before everything passes. */
  function anyInput(random: Random): BlendInput {
    const among = <T>(values: readonly T[]): T => values[random.integer(values.length)];
    const sizes = [0.002, 0.02, 0.063, 0.2, 0.63, 2, 6.3, 20, 63];
    const materials = Array.from({ length: 1 + random.integer(4) }, (_, j): BlendMaterial => {
      const from = random.integer(5);
      const top = among([100, 100, 60 + 40 * random.uniform()]);
      let passingPct = 40 * random.uniform();
      const points = sizes
        .slice(from, from + 2 + random.integer(5))
        .map((sizeMm, i, { length }) => {
          passingPct = i === length - 1 ? top : passingPct + (top - passingPct) * random.uniform();
          return { sizeMm, passingPct, origin: "sieve" as const };
        });
      const numbers = { costPerT: 20 * random.uniform(), plasticityIndexPct: 9 };
      const shares = { minSharePct: among([0, 0, 5]), maxSharePct: among([100, 100, 60]) };
      return { id: `m${j}`, curve: { points }, ...shares, ...numbers };
    });
    const points = sizes
      .filter(() => random.uniform() < 0.4)
      .map((sizeMm) => ({ sizeMm, lowPct: 40 * random.uniform(), highPct: 100 }));
    const target = among<BlendInput["target"]>([
      { kind: "power", exponent: 0.3, topSizeMm: among([0.05, 2, 20, 100]) },
      {
        kind: "curve",
        points: points.map(({ sizeMm, lowPct }) => ({ sizeMm, passingPct: lowPct })),
      },
      { kind: "band", points, aim: among(["least-cost", "nearest-middle"] as const) },
    ]);
    const limits = among<BlendLimit[]>([
      [],
      [{ kind: "clay", maxPct: 20 }],
      [
        { kind: "fines", maxPct: 40 },
        { kind: "passing", sizeMm: among(sizes), minPct: 30 },
      ],
      [
        { kind: "plasticity-index", maxPct: 12 },
        { kind: "top-size", sizeMm: 20 },
      ],
    ]);
    return { materials, target, limits };
  }

  it("are told of, or a blend of them is worked out in every way", () => {
    const random = createRandom(77);
    let worked = 0;
    for (let run = 0; run < 600; run += 1) {
      const input = anyInput(random);
      if (hasErrors(checkBlend(input))) continue;
      const design = designBlend(input);
      for (const { rmsDifferencePct } of [design, ...relaxLimits(input, design)]) {
        expect(Number.isFinite(rmsDifferencePct), JSON.stringify(input)).toBe(true);
      }
      bandFindings(input, design);
      practicalParts(input, design, { by: "mass", maxTotal: 3 });
      const parts = design.shares.map(({ sharePct }, j) => ({
        curve: input.materials[j].curve,
        sharePct,
      }));
      if (design.status === "ok") expect(blendCurve(parts).curve.points).not.toEqual([]);
      worked += 1;
    }
    expect(worked).toBeGreaterThan(100);
  });
});
