import { phrase } from "../../words/say.js";
import type { FieldTest } from "./fieldTest.js";

/**
 * A roll pushed over an edge until it breaks: how plastic the soil is.
 *
 * @example
 * RIBBON_TEST.readings.length // => 4
 */
export const RIBBON_TEST: FieldTest = {
  id: "ribbon",
  name: phrase`Ribbon`,
  asks: phrase`How well does the plastic soil hold together?`,
  tools: phrase`Smooth board, ruler, water`,
  steps: [
    phrase`Take out all that is coarser than sand; knead with water until it does not stick to the hand.`,
    phrase`Roll to the thickness of a finger, press flat, and push it slowly over the edge of the board.`,
    phrase`Measure the piece that breaks off. Do it five times.`,
  ],
  readings: [
    { label: phrase`Thickness of the ribbon`, unit: "mm" },
    { label: phrase`Lengths that broke off, five times`, unit: "mm" },
    { label: phrase`Mean`, unit: "mm" },
    { label: phrase`Did it stick to the hand?` },
  ],
  conclusions: [
    { seen: phrase`80 to 120 mm`, means: phrase`Clay in the range often wanted`, basis: "memory" },
    {
      seen: phrase`50 to 150 mm (2 to 6 in)`,
      means: phrase`Taken as usable by one builder`,
      basis: "read",
    },
    { seen: phrase`Over 200 mm`, means: phrase`Binds strongly: expect shrinkage`, basis: "read" },
    {
      seen: phrase`Breaks at once`,
      means: phrase`Little clay, or too dry: knead again`,
      basis: "common practice",
    },
  ],
  doesNotTell: phrase`The clay content. Thickness, moisture and the hand change the length; the limits of different texts do not agree.`,
  settledBy: phrase`Liquid and plastic limit`,
  notToBeMistakenFor: phrase`the thread rolled to 3 mm, which is the plastic limit's own procedure without a scale`,
  source: phrase`80 to 120 mm: SAZS 724 and the code of practice behind it (from memory); 2 to 6 in: a builder's web page (read); over 20 cm: Minke, Building with Earth, on a garbled mirror (read)`,
};
