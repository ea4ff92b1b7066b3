import { checkPositive } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import type { SourcedRange } from "../quantities/sourcedRange.js";
import { say, type Text } from "../words/message.js";

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
    name: say`Dug soil, lumps broken, damp`,
    unit: "kg/m3",
    valueKgM3: 1200,
    low: 1000,
    high: 1450,
    source: say`from memory: order of magnitude of earthwork tables`,
    basis: "memory",
  },
  {
    id: "sand",
    name: say`Damp sand, loose`,
    unit: "kg/m3",
    valueKgM3: 1400,
    low: 1200,
    high: 1600,
    source: say`from memory: order of magnitude of aggregate tables`,
    basis: "memory",
  },
  {
    id: "gravel",
    name: say`Gravel, loose`,
    unit: "kg/m3",
    valueKgM3: 1500,
    low: 1350,
    high: 1650,
    source: say`from memory: order of magnitude of aggregate tables`,
    basis: "memory",
  },
  {
    id: "cement",
    name: say`Portland cement, poured loosely`,
    unit: "kg/m3",
    valueKgM3: 1200,
    low: 830,
    high: 1650,
    source: say`range read on several pages (loose 830 to 1650; a full US bag is 94 lb in 1 ft³, 1506 kg/m³); the value within it from memory`,
    basis: "read",
  },
];

export interface SandBulking {
  readonly status: "ok" | "reversed";
  /** How much more room the damp sand takes than the same sand dry, percent: `bulkingPct` of a recipe. */
  readonly bulkingPct: number | null;
  readonly message: Text;
}

/**
 * Reads the flooding test: a vessel is filled loosely with damp sand, the sand is put back under water,
 * and its height read again. Flooded sand settles to about the room that dry sand takes.
 *
 * Formula: bulking = 100 (damp height / flooded height − 1). Any one unit of height or volume.
 *
 * @returns status `reversed` and null where the flooded sand stands higher than the damp: a misreading,
 * or a material with swelling fines, for which the test does not serve.
 * @throws RangeError for a height not above 0. Source: common practice, no source; bulking is greatest
 * near 4 to 6 % moisture (secondary texts, read).
 *
 * @example
 * sandBulking({ dampHeight: 200, floodedHeight: 160 }).bulkingPct // => 25
 */
export function sandBulking(reading: {
  readonly dampHeight: number;
  readonly floodedHeight: number;
}): SandBulking {
  const { dampHeight, floodedHeight } = reading;
  checkPositive("dampHeight", dampHeight);
  checkPositive("floodedHeight", floodedHeight);
  const bulkingPct = 100 * (dampHeight / floodedHeight - 1);
  if (bulkingPct < 0) {
    return {
      status: "reversed",
      bulkingPct: null,
      message: say`The flooded sand stands higher than the damp: read both heights again.`,
    };
  }
  return {
    status: "ok",
    bulkingPct,
    message: say`A bucket of this damp sand holds ${formatFixed(100 - 10000 / (100 + bulkingPct), 0)} % less dry sand than a bucket of it dry.`,
  };
}
