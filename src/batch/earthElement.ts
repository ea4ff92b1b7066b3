import type { WallOpening } from "./wallElement.js";

interface RammedElement {
  readonly heightM: number;
  /** Depth of a lift after ramming. */
  readonly compactedLiftM: number;
  /** Spilt, trimmed and left over, percent of the net amount. */
  readonly wastePct: number;
}

/** A straight wall or a bench: `thicknessM` is its depth from front to back. */
export interface StraightElement extends RammedElement {
  readonly kind: "wall" | "bench";
  readonly lengthM: number;
  readonly thicknessM: number;
  readonly openings?: readonly WallOpening[];
}

/** Piers that are all the same: rectangular by two sides, or round by a diameter. */
export interface PierElement extends RammedElement {
  readonly kind: "pier";
  readonly section:
    | { readonly shape: "rectangle"; readonly widthM: number; readonly depthM: number }
    | { readonly shape: "round"; readonly diameterM: number };
  /** Default 1. */
  readonly count?: number;
}

/** A closed ring of wall, measured outside: four walls with corners, or a circle. */
export interface RingElement extends RammedElement {
  readonly kind: "ring";
  readonly plan:
    | { readonly shape: "rectangle"; readonly lengthM: number; readonly widthM: number }
    | { readonly shape: "round"; readonly diameterM: number };
  readonly thicknessM: number;
  readonly openings?: readonly WallOpening[];
}

/** Something to ram, in metres. */
export type EarthElement = StraightElement | PierElement | RingElement;
