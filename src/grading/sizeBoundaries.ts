import { phrase } from "../words/say.js";
/** Sizes in mm at which one fraction ends and the next begins. */
export interface SizeBoundaries {
  readonly name: string;
  readonly clayMm: number;
  readonly siltMm: number;
  readonly sandMm: number;
  readonly gravelMm: number;
  readonly source: string;
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
    name: phrase`ISO 14688-1`,
    clayMm: 0.002,
    siltMm: 0.063,
    sandMm: 2,
    gravelMm: 63,
    source: phrase`ISO 14688-1 as tabulated by the Auroville Earth Institute (read)`,
  },
  bs5930: {
    name: phrase`BS 5930`,
    clayMm: 0.002,
    siltMm: 0.063,
    sandMm: 2,
    gravelMm: 63,
    source: phrase`BS 5930, from memory; 0.063 mm read`,
  },
  astm: {
    name: phrase`ASTM D2487 sieves, clay at 0.002 mm`,
    clayMm: 0.002,
    siltMm: 0.075,
    sandMm: 4.75,
    gravelMm: 75,
    source: phrase`ASTM D2487, from memory: it tells silt from clay by plasticity, not by size. ASTM D422 set clay at 0.005 mm, from memory; 0.002 mm is used here`,
  },
  usda: {
    name: phrase`USDA`,
    clayMm: 0.002,
    siltMm: 0.05,
    sandMm: 2,
    gravelMm: 75,
    source: phrase`USDA texture system, from memory`,
  },
};
