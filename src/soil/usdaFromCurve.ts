import { fractions } from "../grading/fractions.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import { passingAtSize } from "../grading/passingAtSize.js";
import type { UsdaParts } from "./usdaTexture.js";

/**
 * Sand, silt and clay of the part under 2 mm, read off a curve with the gravel left out.
 *
 * Formula: part' = part / (passing at 2 mm / 100); the gravel stays as a word in front of the class
 * (gravel correction: San Joaquin County 600101 p. 251, read). Sand 2 to 0.05 mm, clay under 0.002 mm.
 *
 * @returns `undefined` where the curve does not reach 0.002 or 2 mm, or nothing passes 2 mm.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 16, origin: "sedimentation" }, { sizeMm: 0.05, passingPct: 48, origin: "sedimentation" }, { sizeMm: 2, passingPct: 80, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] };
 * usdaFromCurve(curve) // => { sandPct: 40, siltPct: 40, clayPct: 20, gravelPct: 20 }
 */
export function usdaFromCurve(curve: GradingCurve): UsdaParts | undefined {
  const { clayPct, siltPct, sandPct } = fractions(curve, "usda");
  const fine = passingAtSize(curve, 2);
  if (clayPct === undefined || siltPct === undefined || sandPct === undefined || !fine) {
    return undefined;
  }
  const part = (pct: number) => (100 * pct) / fine;
  return {
    sandPct: part(sandPct),
    siltPct: part(siltPct),
    clayPct: part(clayPct),
    gravelPct: 100 - fine,
  };
}
