import { phrase } from "../../words/say.js";
import type { FieldTest } from "./fieldTest.js";

/**
 * A ball of plastic soil dropped from two metres: how well the clay binds.
 *
 * @example
 * PLASTIC_BALL.conclusions[0].basis // => "read"
 */
export const PLASTIC_BALL: FieldTest = {
  id: "plastic-ball",
  name: phrase`Dropped plastic ball: binding of the soil`,
  asks: phrase`Does the clay of this soil bind at all, or very strongly?`,
  tools: phrase`Scale, ruler, tape, a flat hard floor, water`,
  steps: [
    phrase`Sieve out stones, add water and knead until the soil is stiff and plastic; no cement.`,
    phrase`Form a smooth ball of 200 g.`,
    phrase`Let it fall from 2 m on the floor and measure the flattened width.`,
  ],
  readings: [
    { label: phrase`Mass of the ball`, unit: "g" },
    { label: phrase`Height of fall`, unit: "m" },
    { label: phrase`Flattened width`, unit: "mm" },
    { label: phrase`Cracks: none, few, many, fell apart` },
  ],
  conclusions: [
    {
      seen: phrase`Flattened to less than 50 mm`,
      means: phrase`As stiff as this test is made for: the cracks may be compared with other soils`,
      basis: "read",
    },
    { seen: phrase`It falls apart`, means: phrase`Little clay, weak binding`, basis: "read" },
    {
      seen: phrase`A small ball of it, 20 to 30 mm, is crushed only with much force`,
      means: phrase`Rich in clay: sand may have to be added`,
      basis: "read",
    },
  ],
  doesNotTell: phrase`Whether a mix is moist enough to ram, or how much clay there is in percent.`,
  settledBy: phrase`Liquid and plastic limit, and a sedimentation test; binding force where it is asked for`,
  notToBeMistakenFor: phrase`the ball and drop of the moist mix, from shoulder height, which asks about its moisture`,
  source: phrase`Berge, The Ecology of Building Materials, after DIN 18952: 200 g, 2 m, 50 mm (read); Minke, Building with Earth, figures 2.8 and 2.9 (read, photographs not seen)`,
};
