import type { GradingCurve } from "../grading/gradingCurve.js";
import { createRandom } from "../numerics/random.js";
import { type ClassSystem, type CurveLimits, classifyCurve } from "./classifyCurve.js";

export interface ClassLikelihood {
  /** Class, or `not classified`. */
  readonly label: string;
  /** Share of the resampled soils that fall there, 0 to 1. */
  readonly share: number;
}

/** Consistency with its standard errors. */
export interface DoubtfulLimits extends CurveLimits {
  readonly liquidLimitErrorPct?: number;
  readonly plasticityIndexErrorPct?: number;
}

/**
 * How likely each class of a soil is, given how its curve and limits could have come out.
 *
 * Each of the resampled curves (from `resampleReadings`) is classified, with limits drawn from normal
 * errors about the measured ones. The shares hold the doubt that went in: stated reading errors, not
 * how well the sample stands for the heap.
 *
 * @param seed of the drawn limits; default 1.
 * @returns most likely first; shares add up to 1.
 * @throws RangeError without curves or for a negative error.
 *
 * @example
 * const curve = (fines) => ({ points: [{ sizeMm: 0.075, passingPct: fines, origin: "sieve" }, { sizeMm: 4.75, passingPct: 90, origin: "sieve" }, { sizeMm: 75, passingPct: 100, origin: "sieve" }] });
 * const limits = { liquidLimitPct: 30, plasticityIndexPct: 15 };
 * classLikelihoods([48, 49, 49, 51].map(curve), "uscs", limits) // => [{ label: "SC", share: 0.75 }, { label: "CL", share: 0.25 }]
 */
export function classLikelihoods(
  curves: readonly GradingCurve[],
  system: ClassSystem,
  limits: DoubtfulLimits = {},
  seed = 1,
): ClassLikelihood[] {
  if (curves.length === 0) throw new RangeError("invalid `curves`: 0; expected at least 1");
  const { liquidLimitErrorPct = 0, plasticityIndexErrorPct = 0, ...measured } = limits;
  for (const [name, value] of Object.entries({ liquidLimitErrorPct, plasticityIndexErrorPct })) {
    if (!(value >= 0)) throw new RangeError(`invalid \`${name}\`: ${value}; expected 0 or more`);
  }
  const random = createRandom(seed);
  const counts = new Map<string, number>();
  for (const curve of curves) {
    const liquidError = liquidLimitErrorPct * random.normal();
    // The index is the liquid limit less the plastic one: what moves the first moves the second too.
    const rest = Math.sqrt(Math.max(0, plasticityIndexErrorPct ** 2 - liquidLimitErrorPct ** 2));
    const indexError =
      (rest > 0 ? liquidError : 0) + (rest > 0 ? rest : plasticityIndexErrorPct) * random.normal();
    const moved = (value: number | undefined, error: number) =>
      value === undefined ? undefined : Math.max(0, value + error);
    const { label = "not classified" } = classifyCurve(curve, system, {
      ...measured,
      liquidLimitPct: moved(measured.liquidLimitPct, liquidError),
      plasticityIndexPct: moved(measured.plasticityIndexPct, indexError),
    });
    counts.set(label, (counts.get(label) ?? 0) + 1);
  }
  return [...counts]
    .map(([label, count]) => ({ label, share: count / curves.length }))
    .sort((x, y) => y.share - x.share || (x.label < y.label ? -1 : 1));
}
