import type { BlendDesign } from "./blendResult.js";
import type { BlendInput } from "./designBlend.js";
import { powerTarget } from "./powerTarget.js";
import { passingMatrix, resolveTarget, type SizedAims, targetSizes } from "./resolveTarget.js";

/** The aims that a design was held against, with the exponent and top size that it found. */
export function blendAims({ target, materials }: BlendInput, design: BlendDesign): SizedAims {
  if (target.kind !== "power") return resolveTarget(target, materials);
  const sizesMm = targetSizes(target, materials);
  const { exponent, topSizeMm } = design.target;
  const line = powerTarget(exponent!, topSizeMm!, sizesMm).map(({ passingPct }) => passingPct);
  return {
    sizesMm,
    passing: passingMatrix(materials, sizesMm),
    weights: sizesMm.map(() => 1),
    lowPct: line,
    highPct: line,
    second: null,
  };
}
