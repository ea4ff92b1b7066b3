import type { UnitSystem } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";
import { type GradingCurve, passingAtSize } from "./curve.js";

/** Sizes in mm at which one fraction ends and the next begins. */
export interface SizeBoundaries {
  readonly name: Text;
  readonly clayMm: number;
  readonly siltMm: number;
  readonly sandMm: number;
  readonly gravelMm: number;
  readonly source: Text;
}

export type BoundarySystem = "iso14688" | "bs5930" | "astm" | "usda";

/**
 * Fraction boundaries by system: clay up to `clayMm`, silt to `siltMm`, sand to `sandMm`, gravel to
 * `gravelMm`, coarser beyond. They differ: always say which system a "clay content" belongs to.
 *
 * @example
 * SIZE_BOUNDARIES.iso14688.siltMm // => 0.063
 */
export const SIZE_BOUNDARIES: Readonly<Record<BoundarySystem, SizeBoundaries>> = {
  iso14688: {
    name: say`ISO 14688-1`,
    clayMm: 0.002,
    siltMm: 0.063,
    sandMm: 2,
    gravelMm: 63,
    source: say`ISO 14688-1 as tabulated by the Auroville Earth Institute (read)`,
  },
  bs5930: {
    name: say`BS 5930`,
    clayMm: 0.002,
    siltMm: 0.063,
    sandMm: 2,
    gravelMm: 63,
    source: say`BS 5930, from memory; 0.063 mm read`,
  },
  astm: {
    name: say`ASTM D2487 sieves, clay at 0.002 mm`,
    clayMm: 0.002,
    siltMm: 0.075,
    sandMm: 4.75,
    gravelMm: 75,
    source: say`ASTM D2487, from memory: it tells silt from clay by plasticity, not by size. ASTM D422 set clay at 0.005 mm, from memory; 0.002 mm is used here`,
  },
  usda: {
    name: say`USDA`,
    clayMm: 0.002,
    siltMm: 0.05,
    sandMm: 2,
    gravelMm: 75,
    source: say`USDA texture system, from memory`,
  },
};

/**
 * The boundaries that a study's readers know: the sieves No. 200 and No. 4 of ASTM D2487 in United States units,
 * else those of ISO 14688-1.
 *
 * @example
 * boundariesOf("US") // => "astm"
 */
export function boundariesOf(units: UnitSystem): BoundarySystem {
  return units === "US" ? "astm" : "iso14688";
}

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
