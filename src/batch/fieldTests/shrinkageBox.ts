import { phrase } from "../../words/say.js";
import type { FieldTest } from "./fieldTest.js";

/**
 * A long box of wet soil left to dry: how much it shrinks.
 *
 * @example
 * SHRINKAGE_BOX.readings[0].unit // => "mm"
 */
export const SHRINKAGE_BOX: FieldTest = {
  id: "shrinkage-box",
  name: phrase`Long shrinkage box`,
  asks: phrase`How much does the soil shrink when it dries from very wet?`,
  tools: phrase`Smooth box 600 × 40 × 40 mm inside, oil, ruler, shade`,
  steps: [
    phrase`Sieve at 5 to 6 mm; add water until a groove in it just closes on ten taps.`,
    phrase`Oil the box, fill it without gaps, strike level.`,
    phrase`Dry in shade for 10 days, or in sun for 5. Push all pieces to one end.`,
    phrase`Measure the gap at the other end.`,
  ],
  readings: [
    { label: phrase`Length of the box inside`, unit: "mm" },
    { label: phrase`Gap after drying`, unit: "mm" },
    { label: phrase`Gap in percent of the length`, unit: "%" },
    { label: phrase`Humped, cracked across, or whole?` },
  ],
  conclusions: [
    {
      seen: phrase`Gap of 0 to 12 mm in 600 mm`,
      means: phrase`For pressed blocks, one maker's table has 1 cement to 18 soil by loose volume`,
      basis: "read",
    },
    { seen: phrase`12 to 24 mm`, means: phrase`The same table: 1 to 16`, basis: "read" },
    { seen: phrase`25 to 39 mm`, means: phrase`The same table: 1 to 14`, basis: "read" },
    { seen: phrase`40 to 50 mm`, means: phrase`The same table: 1 to 12`, basis: "read" },
    {
      seen: phrase`More than 50 mm`,
      means: phrase`Outside that table: add sand and test again`,
      basis: "common practice",
    },
  ],
  doesNotTell: phrase`The cement of a rammed wall: the table is for pressed blocks, and an older table breaks at 15, 30, 45 and 60 mm (from memory). Nor is this gap the linear shrinkage of the laboratory, or the drying shrinkage of rammed material: never hold one against another's limit.`,
  settledBy: phrase`Linear shrinkage in the standard mould, and block strengths for the cement`,
  notToBeMistakenFor: phrase`the laboratory bar of linear shrinkage, 140 mm long`,
  source: phrase`Nyagah, How to test your soil when making construction blocks (read); steps and days: Intermediate Technology Development Group, Technical Advice Note 2 (read)`,
};
