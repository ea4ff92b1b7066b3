import { phrase } from "../../words/say.js";
import type { FieldTest } from "./fieldTest.js";

/**
 * Layers in a shaken jar: a first look at sand against fines.
 *
 * @example
 * JAR_TEST.id // => "jar"
 */
export const JAR_TEST: FieldTest = {
  id: "jar",
  name: phrase`Jar`,
  asks: phrase`Is there mostly sand, or mostly fines?`,
  tools: phrase`Straight clear jar with a lid, ruler, clean water, a pinch of salt, a watch`,
  steps: [
    phrase`Break the lumps, take out stones, fill a third of the jar with soil.`,
    phrase`Fill up with water, add the salt, leave an hour, shake hard for two minutes.`,
    phrase`Set down and do not move. Mark the top of the settled layer after 1 minute, 30 to 60 minutes, 24 hours.`,
  ],
  readings: [
    { label: phrase`Height after 1 minute: sand and coarser`, unit: "mm" },
    { label: phrase`Height after ____ minutes: and silt`, unit: "mm" },
    { label: phrase`Height after 24 hours: and clay`, unit: "mm" },
    { label: phrase`Water still cloudy?` },
  ],
  conclusions: [
    {
      seen: phrase`Nearly all settles in the first minute`,
      means: phrase`Few fines: it will not hold together without more binder`,
      basis: "common practice",
    },
    {
      seen: phrase`Little settles in the first minute`,
      means: phrase`Rich in fines: expect shrinkage; sand may have to be added`,
      basis: "common practice",
    },
  ],
  doesNotTell: phrase`The true percentages. Fine layers hold more water, so clay looks like more than it is: one text shows a loam of about 14 % clay that reads near 45 % in the jar (from memory). No measured correction was found; apply none.`,
  settledBy: phrase`Wet sieving and a sedimentation test (hydrometer or pipette)`,
  source: phrase`Times: 1 min, 30 min to 1 h, 24 h on two web pages of builders (read); both warn, as a council guide does, that it is inaccurate (read)`,
};
