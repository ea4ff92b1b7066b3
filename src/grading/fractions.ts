import type { GradingCurve } from "./gradingCurve.js";
import { passingAtSize } from "./passingAtSize.js";
import { type BoundarySystem, SIZE_BOUNDARIES, type SizeBoundaries } from "./sizeBoundaries.js";

/** Percent of the dry mass; `undefined` where a boundary lies outside the measured curve. */
export interface Fractions {
  readonly boundaries: SizeBoundaries;
  readonly clayPct?: number;
  readonly siltPct?: number;
  /** Silt and clay together. */
  readonly finesPct?: number;
  readonly sandPct?: number;
  readonly gravelPct?: number;
  /** Coarser than gravel. */
  readonly cobblesPct?: number;
}

/**
 * Splits a curve into clay, silt, sand and gravel by the boundaries of a named system.
 *
 * @param system default `iso14688`: 0.002, 0.063, 2 and 63 mm.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.063, passingPct: 30, origin: "sieve" }, { sizeMm: 2, passingPct: 80, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] };
 * const { clayPct, finesPct, sandPct, gravelPct, cobblesPct } = fractions(curve, "iso14688");
 * [clayPct, finesPct, sandPct, gravelPct, cobblesPct] // => [undefined, 30, 50, 20, 0]
 */
export function fractions(curve: GradingCurve, system: BoundarySystem = "iso14688"): Fractions {
  const boundaries = SIZE_BOUNDARIES[system];
  const { clayMm, siltMm, sandMm, gravelMm } = boundaries;
  const [clay, silt, sand, gravel] = [clayMm, siltMm, sandMm, gravelMm].map((sizeMm) =>
    passingAtSize(curve, sizeMm),
  );
  return {
    boundaries,
    clayPct: clay,
    siltPct: between(clay, silt),
    finesPct: silt,
    sandPct: between(silt, sand),
    gravelPct: between(sand, gravel),
    cobblesPct: between(gravel, 100),
  };
}

function between(fine: number | undefined, coarse: number | undefined): number | undefined {
  return fine === undefined || coarse === undefined ? undefined : coarse - fine;
}
