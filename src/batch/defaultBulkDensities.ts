import { phrase } from "../words/say.js";
import type { SourcedRange } from "./carbonFactors.js";

/** A general loose bulk density: a value to go on with, and how far off it may be. */
export interface DefaultBulkDensity extends SourcedRange {
  readonly id: "soil" | "sand" | "gravel" | "cement";
  readonly valueKgM3: number;
}

/**
 * Dry mass in a loose volume where nobody has measured it yet. Volumes from these may be off by a fifth or
 * more: a bucket, a scale and ten minutes give a better value.
 *
 * @example
 * DEFAULT_BULK_DENSITIES.find(({ id }) => id === "cement").valueKgM3 // => 1200
 */
export const DEFAULT_BULK_DENSITIES: readonly DefaultBulkDensity[] = [
  {
    id: "soil",
    name: phrase`Dug soil, lumps broken, damp`,
    unit: "kg/m3",
    valueKgM3: 1200,
    low: 1000,
    high: 1450,
    source: phrase`from memory: order of magnitude of earthwork tables`,
    basis: "memory",
  },
  {
    id: "sand",
    name: phrase`Damp sand, loose`,
    unit: "kg/m3",
    valueKgM3: 1400,
    low: 1200,
    high: 1600,
    source: phrase`from memory: order of magnitude of aggregate tables`,
    basis: "memory",
  },
  {
    id: "gravel",
    name: phrase`Gravel, loose`,
    unit: "kg/m3",
    valueKgM3: 1500,
    low: 1350,
    high: 1650,
    source: phrase`from memory: order of magnitude of aggregate tables`,
    basis: "memory",
  },
  {
    id: "cement",
    name: phrase`Portland cement, poured loosely`,
    unit: "kg/m3",
    valueKgM3: 1200,
    low: 830,
    high: 1650,
    source: phrase`range read on several pages (loose 830 to 1650; a full US bag is 94 lb in 1 ft³, 1506 kg/m³); the value within it from memory`,
    basis: "read",
  },
];
