import type { FieldTest } from "./fieldTest.js";

/**
 * A roll pushed over an edge until it breaks: how plastic the soil is.
 *
 * @example
 * RIBBON_TEST.readings.length // => 4
 */
export const RIBBON_TEST: FieldTest = {
  id: "ribbon",
  name: "Ribbon",
  asks: "How well does the plastic soil hold together?",
  tools: "Smooth board, ruler, water",
  steps: [
    "Take out all that is coarser than sand; knead with water until it does not stick to the hand.",
    "Roll to the thickness of a finger, press flat, and push it slowly over the edge of the board.",
    "Measure the piece that breaks off. Do it five times.",
  ],
  readings: [
    { label: "Thickness of the ribbon", unit: "mm" },
    { label: "Lengths that broke off, five times", unit: "mm" },
    { label: "Mean", unit: "mm" },
    { label: "Did it stick to the hand?" },
  ],
  conclusions: [
    { seen: "80 to 120 mm", means: "Clay in the range often wanted", basis: "memory" },
    { seen: "50 to 150 mm (2 to 6 in)", means: "Taken as usable by one builder", basis: "read" },
    { seen: "Over 200 mm", means: "Binds strongly: expect shrinkage", basis: "read" },
    {
      seen: "Breaks at once",
      means: "Little clay, or too dry: knead again",
      basis: "common practice",
    },
  ],
  doesNotTell:
    "The clay content. Thickness, moisture and the hand change the length; the limits of different texts do not agree.",
  settledBy: "Liquid and plastic limit",
  notToBeMistakenFor:
    "the thread rolled to 3 mm, which is the plastic limit's own procedure without a scale",
  source:
    "80 to 120 mm: SAZS 724 and the code of practice behind it (from memory); 2 to 6 in: a builder's web page (read); over 20 cm: Minke, Building with Earth, on a garbled mirror (read)",
};
