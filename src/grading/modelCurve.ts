import { powerOf } from "../numerics/powerOf.js";
import type { GradingCurve } from "./gradingCurve.js";
import type { GradingModelName } from "./models/gradingModel.js";
import { GRADING_MODELS } from "./models/gradingModels.js";

/**
 * A model's curve as points, so that everything that reads a measured curve can read it: evenly spaced
 * on the logarithm of size.
 *
 * @param steps default 60 steps between the two sizes.
 * @throws RangeError where the sizes are not positive and increasing, or the model is not known.
 *
 * @example
 * modelCurve("power", [16, 0.25], { fromMm: 1, toMm: 16, steps: 1 }).points.map(({ passingPct }) => passingPct) // => [50, 100]
 */
export function modelCurve(
  name: GradingModelName,
  values: readonly number[],
  {
    fromMm,
    toMm,
    steps = 60,
  }: { readonly fromMm: number; readonly toMm: number; readonly steps?: number },
): GradingCurve {
  const model = GRADING_MODELS[name];
  if (!model) throw new RangeError(`invalid \`name\`: ${name}; expected a grading model`);
  if (!(fromMm > 0 && toMm > fromMm && toMm < Infinity)) {
    throw new RangeError(`invalid \`fromMm\`: ${fromMm} to ${toMm}; expected above 0, rising`);
  }
  return {
    points: Array.from({ length: steps + 1 }, (_, step) => {
      const sizeMm = step === steps ? toMm : fromMm * powerOf(toMm / fromMm, step / steps);
      const passingPct = Math.min(100, Math.max(0, model.evaluate(sizeMm, values)));
      return { sizeMm, passingPct, origin: "sieve" as const };
    }),
  };
}
