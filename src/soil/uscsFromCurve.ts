import { characteristicSizes } from "../grading/characteristicSizes.js";
import type { GradingCurve } from "../grading/gradingCurve.js";
import { passingAtSize } from "../grading/passingAtSize.js";
import type { UscsInput } from "./uscsInput.js";

/**
 * The grading part of what the unified classification asks for, read off a curve: everything coarser
 * than 75 mm is left out and the rest is taken as 100.
 *
 * @returns `undefined` where the curve does not reach 0.075 or 4.75 mm, or does not pass 75 mm.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.075, passingPct: 20, origin: "sieve" }, { sizeMm: 4.75, passingPct: 70, origin: "sieve" }, { sizeMm: 75, passingPct: 100, origin: "sieve" }] };
 * const { gravelPct, sandPct, finesPct } = uscsFromCurve(curve);
 * [gravelPct, sandPct, finesPct] // => [30, 50, 20]
 */
export function uscsFromCurve(
  curve: GradingCurve,
): Pick<UscsInput, "gravelPct" | "sandPct" | "finesPct" | "cu" | "cc"> | undefined {
  const [fines, sand, whole] = [0.075, 4.75, 75].map((size) => passingAtSize(curve, size));
  if (fines === undefined || sand === undefined || !whole) return undefined;
  const part = (pct: number) => (100 * pct) / whole;
  const under75 = {
    points: curve.points
      .filter(({ sizeMm }) => sizeMm <= 75)
      .map((point) => ({ ...point, passingPct: Math.min(100, part(point.passingPct)) })),
  };
  const { cu, cc } = characteristicSizes(under75);
  return {
    gravelPct: part(whole - sand),
    sandPct: part(sand - fines),
    finesPct: part(fines),
    ...(cu === undefined ? {} : { cu }),
    ...(cc === undefined ? {} : { cc }),
  };
}
