import { bench, describe } from "vitest";
import { designBlend } from "../../src/blend/design.js";
import type { BlendMaterial } from "../../src/blend/material.js";
import { practicalParts } from "../../src/blend/parts.js";
import { robustBlend, robustness } from "../../src/blend/robustness.js";
import { createRandom } from "../../src/numerics/random.js";

const random = createRandom(4);
const sizesMm = Array.from({ length: 20 }, (_, i) => 0.002 * 40_000 ** (i / 19));
const materials = [0.01, 0.3, 1, 5, 20].map((middle, j): BlendMaterial => {
  const slope = 1 + random.uniform();
  const points = sizesMm.map((sizeMm) => ({
    sizeMm,
    passingPct: 100 / (1 + (middle / sizeMm) ** slope),
    origin: "sieve" as const,
  }));
  points[19].passingPct = 100;
  return { id: `m${j}`, curve: { points }, minSharePct: 0, maxSharePct: 100, costPerT: 10 * j };
});
const points = sizesMm.map((sizeMm) => ({ sizeMm, passingPct: 100 * (sizeMm / 80) ** 0.35 }));
const band = points.map(({ sizeMm, passingPct }) => ({
  sizeMm,
  lowPct: Math.max(0, passingPct - 6),
  highPct: Math.min(100, passingPct + 6),
}));
const variation = materials.map(({ id }) => ({ id, finesPlusMinusPct: 3 }));
const four = {
  materials: materials.slice(0, 4),
  target: { kind: "curve", points: points.slice(0, 18) },
} as const;
const design = designBlend(four);

describe("blend", () => {
  bench("nearest to a curve, 5 materials by 20 sizes", () => {
    designBlend({ materials, target: { kind: "curve", points } });
  });

  bench("band, then least cost, 5 materials by 20 sizes", () => {
    designBlend({ materials, target: { kind: "band", points: band, aim: "least-cost" } });
  });

  bench("power curve fitted in exponent and top size", () => {
    const [exponent, topSizeMm] = [
      { min: 0.2, max: 0.6 },
      { min: 40, max: 80 },
    ];
    designBlend({ materials, target: { kind: "power", exponent, topSizeMm, sizesMm } });
  });

  bench("robustness, 10 000 draws, 5 materials by 20 sizes", () => {
    robustness({ materials, sharesPct: [20, 20, 20, 20, 20], band, variation });
  });

  bench(
    "robust blend, 5 materials by 20 sizes",
    () => {
      robustBlend({ materials, band, variation });
    },
    { iterations: 3, time: 100 },
  );

  bench("whole parts up to 24 for 4 materials", () => {
    practicalParts(four, design, { by: "mass", maxTotal: 24 });
  });
});
