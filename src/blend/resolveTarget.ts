import type { BlendMaterial } from "./blendMaterial.js";
import { blendPassing } from "./blendPassing.js";
import type { BandAim, BlendTarget } from "./blendTarget.js";
import { comparisonSizes } from "./comparisonSizes.js";
import type { BlendAims } from "./solveBlend.js";

/** A target as numbers: one value a size. */
export interface SizedAims extends BlendAims {
  readonly sizesMm: readonly number[];
}

/** The sizes at which a target is held. */
export function targetSizes(target: BlendTarget, materials: readonly BlendMaterial[]): number[] {
  if (target.kind !== "power") return target.points.map(({ sizeMm }) => sizeMm);
  const { topSizeMm, sizesMm } = target;
  const top = typeof topSizeMm === "number" ? topSizeMm : topSizeMm.max;
  return sizesMm
    ? [...sizesMm]
    : comparisonSizes(
        materials.map(({ curve }) => curve),
        top,
      );
}

/** Every target but a power curve, whose exponent and top size are numbers first. */
export function resolveTarget(
  target: Exclude<BlendTarget, { kind: "power" }>,
  materials: readonly BlendMaterial[],
): SizedAims {
  if (target.points.length === 0) {
    throw new RangeError("invalid `target`: []; expected at least one size");
  }
  const sizesMm = target.points.map(({ sizeMm }) => sizeMm);
  const base = {
    sizesMm,
    passing: passingMatrix(materials, sizesMm),
    weights: target.points.map(({ weight }) => weight ?? 1),
    second: null,
  };
  if (target.kind === "curve") {
    const line = target.points.map(({ passingPct }) => passingPct);
    return { ...base, lowPct: line, highPct: line };
  }
  target.points.forEach(({ lowPct, highPct }, index) => {
    if (!(lowPct <= highPct)) {
      throw new RangeError(
        `invalid \`target.points[${index}]\`: ${lowPct} to ${highPct}; expected the lower value first`,
      );
    }
  });
  if (target.kind === "band-middle") {
    const middle = target.points.map(({ lowPct, highPct }) => (lowPct + highPct) / 2);
    return { ...base, lowPct: middle, highPct: middle };
  }
  return {
    ...base,
    lowPct: target.points.map(({ lowPct }) => lowPct),
    highPct: target.points.map(({ highPct }) => highPct),
    second: aimValues(target.aim ?? "nearest-middle", materials),
  };
}

/** Sizes by materials, percent. */
export function passingMatrix(
  materials: readonly BlendMaterial[],
  sizesMm: readonly number[],
): number[][] {
  return sizesMm.map((sizeMm) =>
    materials.map(({ curve }) => blendPassing(curve, sizeMm).passingPct),
  );
}

function aimValues(aim: BandAim, materials: readonly BlendMaterial[]): number[] | null {
  if (aim === "nearest-middle") return null;
  if (aim === "most-site-soil") return materials.map(({ siteSoil }) => (siteSoil ? 0 : 1));
  const key = aim === "least-cost" ? "costPerT" : "carbonKgPerT";
  return materials.map((material) => {
    const value = material[key];
    if (value === undefined || !Number.isFinite(value)) {
      throw new RangeError(
        `invalid \`${key}\` of ${material.id}: ${value}; expected a number, as the aim ${aim} asks for it`,
      );
    }
    return value;
  });
}
