import type { FieldTest } from "./fieldTest.js";

/**
 * A ball of plastic soil dropped from two metres: how well the clay binds.
 *
 * @example
 * PLASTIC_BALL.conclusions[0].basis // => "read"
 */
export const PLASTIC_BALL: FieldTest = {
  id: "plastic-ball",
  name: "Dropped plastic ball: binding of the soil",
  asks: "Does the clay of this soil bind at all, or very strongly?",
  tools: "Scale, ruler, tape, a flat hard floor, water",
  steps: [
    "Sieve out stones, add water and knead until the soil is stiff and plastic; no cement.",
    "Form a smooth ball of 200 g.",
    "Let it fall from 2 m on the floor and measure the flattened width.",
  ],
  readings: [
    { label: "Mass of the ball", unit: "g" },
    { label: "Height of fall", unit: "m" },
    { label: "Flattened width", unit: "mm" },
    { label: "Cracks: none, few, many, fell apart" },
  ],
  conclusions: [
    {
      seen: "Flattened to less than 50 mm",
      means: "As stiff as this test is made for: the cracks may be compared with other soils",
      basis: "read",
    },
    { seen: "It falls apart", means: "Little clay, weak binding", basis: "read" },
    {
      seen: "A small ball of it, 20 to 30 mm, is crushed only with much force",
      means: "Rich in clay: sand may have to be added",
      basis: "read",
    },
  ],
  doesNotTell: "Whether a mix is moist enough to ram, or how much clay there is in percent.",
  settledBy:
    "Liquid and plastic limit, and a sedimentation test; binding force where it is asked for",
  notToBeMistakenFor:
    "the ball and drop of the moist mix, from shoulder height, which asks about its moisture",
  source:
    "Berge, The Ecology of Building Materials, after DIN 18952: 200 g, 2 m, 50 mm (read); Minke, Building with Earth, figures 2.8 and 2.9 (read, photographs not seen)",
};
