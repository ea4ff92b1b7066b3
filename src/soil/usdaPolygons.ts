import type { UsdaTexture } from "./usdaTexture.js";

/** A corner of a texture class: clay, silt and sand in percent. */
export type TextureCorner = readonly [number, number, number];

/**
 * Corners of the USDA texture classes, for drawing; classifying goes by the rules of `usdaTexture`.
 *
 * From memory; together they cover the triangle without gap or overlap and agree with the rules (tested).
 *
 * @example
 * USDA_POLYGONS["sandy clay"] // => [[55, 0, 45], [35, 0, 65], [35, 20, 45]]
 */
export const USDA_POLYGONS: Readonly<Record<UsdaTexture, readonly TextureCorner[]>> = {
  clay: [
    [100, 0, 0],
    [55, 0, 45],
    [40, 15, 45],
    [40, 40, 20],
    [60, 40, 0],
  ],
  "silty clay": [
    [60, 40, 0],
    [40, 40, 20],
    [40, 60, 0],
  ],
  "sandy clay": [
    [55, 0, 45],
    [35, 0, 65],
    [35, 20, 45],
  ],
  "clay loam": [
    [40, 15, 45],
    [40, 40, 20],
    [27, 53, 20],
    [27, 28, 45],
  ],
  "silty clay loam": [
    [40, 60, 0],
    [40, 40, 20],
    [27, 53, 20],
    [27, 73, 0],
  ],
  "sandy clay loam": [
    [35, 0, 65],
    [35, 20, 45],
    [27, 28, 45],
    [20, 28, 52],
    [20, 0, 80],
  ],
  loam: [
    [27, 28, 45],
    [27, 50, 23],
    [7, 50, 43],
    [7, 41, 52],
    [20, 28, 52],
  ],
  "silt loam": [
    [27, 50, 23],
    [27, 73, 0],
    [12, 88, 0],
    [12, 80, 8],
    [0, 80, 20],
    [0, 50, 50],
  ],
  silt: [
    [12, 88, 0],
    [12, 80, 8],
    [0, 80, 20],
    [0, 100, 0],
  ],
  "sandy loam": [
    [20, 0, 80],
    [20, 28, 52],
    [7, 41, 52],
    [7, 50, 43],
    [0, 50, 50],
    [0, 30, 70],
    [15, 0, 85],
  ],
  "loamy sand": [
    [15, 0, 85],
    [0, 30, 70],
    [0, 15, 85],
    [10, 0, 90],
  ],
  sand: [
    [10, 0, 90],
    [0, 15, 85],
    [0, 0, 100],
  ],
};
