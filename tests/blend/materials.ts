import type { BlendDesign } from "../../src/blend/description.js";
import { designBlend } from "../../src/blend/design.js";
import type { BlendMaterial, TargetPoint } from "../../src/blend/material.js";
import type { GradingCurve } from "../../src/grading/curve.js";
import { createRandom } from "../../src/numerics/random.js";

export function curve(...points: readonly (readonly [number, number])[]): GradingCurve {
  return {
    points: points.map(([sizeMm, passingPct]) => ({ sizeMm, passingPct, origin: "sieve" })),
  };
}

/** Made-up materials: a clayey soil of the site, a sand, a gravel. */
export const SOIL: BlendMaterial = {
  id: "soil",
  siteSoil: true,
  costPerT: 2,
  carbonKgPerT: 1,
  plasticityIndexPct: 18,
  linearShrinkagePct: 9,
  curve: curve([0.002, 22], [0.063, 45], [0.425, 70], [2, 85], [20, 100]),
  minSharePct: 0,
  maxSharePct: 100,
};
export const SAND: BlendMaterial = {
  id: "sand",
  costPerT: 20,
  carbonKgPerT: 5,
  plasticityIndexPct: 0,
  linearShrinkagePct: 0,
  curve: curve([0.063, 3], [0.425, 45], [2, 95], [4, 100]),
  minSharePct: 0,
  maxSharePct: 100,
};
export const GRAVEL: BlendMaterial = {
  id: "gravel",
  costPerT: 25,
  carbonKgPerT: 6,
  plasticityIndexPct: 0,
  linearShrinkagePct: 0,
  curve: curve([0.063, 1], [0.425, 3], [2, 8], [8, 50], [20, 100]),
  minSharePct: 0,
  maxSharePct: 100,
};
export const THREE = [SOIL, SAND, GRAVEL] as const;

/** Random gradings with random bounds that leave room for shares that sum to 100. */
export function randomMaterials(seed: number, count: number, sizesMm: readonly number[]) {
  const random = createRandom(seed);
  return Array.from({ length: count }, (_, j): BlendMaterial => {
    const middle = 10 ** (-2 + 3 * random.uniform());
    const slope = 0.5 + 2 * random.uniform();
    const points = sizesMm.map((sizeMm) => ({
      sizeMm,
      passingPct: 100 / (1 + (middle / sizeMm) ** slope),
      origin: "sieve" as const,
    }));
    return {
      id: `m${j}`,
      curve: { points },
      minSharePct: (random.uniform() * 60) / count,
      maxSharePct: Math.min(100, (100 * (1 + 2 * random.uniform())) / count),
      costPerT: 40 * random.uniform(),
    };
  });
}

/** The blend nearest to a curve, with no limits but the materials' own. */
export function nearestTo(
  materials: readonly BlendMaterial[],
  points: readonly TargetPoint[],
): BlendDesign {
  return designBlend({ materials, target: { kind: "curve", points } });
}
