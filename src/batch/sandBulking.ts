import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { checkAbove } from "./checkAmount.js";

export interface SandBulking {
  readonly status: "ok" | "reversed";
  /** How much more room the damp sand takes than the same sand dry, percent: `bulkingPct` of a recipe. */
  readonly bulkingPct: number | null;
  readonly message: string;
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
export function sandBulking(of: {
  readonly dampHeight: number;
  readonly floodedHeight: number;
}): SandBulking {
  checkAbove("dampHeight", of.dampHeight);
  checkAbove("floodedHeight", of.floodedHeight);
  const bulkingPct = 100 * (of.dampHeight / of.floodedHeight - 1);
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
