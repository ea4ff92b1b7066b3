import { phrase } from "../../words/say.js";
import type { FieldTest } from "./fieldTest.js";

/**
 * Washing hands and smelling: clay or silt, and humus.
 *
 * @example
 * WASH_AND_SMELL.id // => "wash-and-smell"
 */
export const WASH_AND_SMELL: FieldTest = {
  id: "wash-and-smell",
  name: phrase`Wash and smell`,
  asks: phrase`Are the fines clay or silt, and is there humus in it?`,
  tools: phrase`Bare hands without a cut, no cement on them; water; a fresh damp sample`,
  steps: [
    phrase`Smell the fresh sample; warm it in the hand and smell again.`,
    phrase`Rub it wet between the hands, then rinse.`,
  ],
  readings: [
    { label: phrase`Smell: none, musty, like a wood's floor` },
    { label: phrase`Colour; roots or leaves seen?` },
    { label: phrase`Rinses off: at once, with rubbing, hardly` },
  ],
  conclusions: [
    {
      seen: phrase`Musty, dark, with roots`,
      means: phrase`Humus: do not use; it hinders the setting of cement`,
      basis: "common practice",
    },
    { seen: phrase`Topsoil, above about 0.4 m`, means: phrase`To be avoided`, basis: "read" },
    { seen: phrase`Gritty, rinses off at once`, means: phrase`Sandy`, basis: "common practice" },
    {
      seen: phrase`Floury, comes off with rubbing`,
      means: phrase`Silty`,
      basis: "common practice",
    },
    {
      seen: phrase`Soapy, sticks, hardly comes off`,
      means: phrase`Clayey`,
      basis: "common practice",
    },
  ],
  doesNotTell: phrase`Amounts, salts or sulphate: those neither smell nor feel.`,
  settledBy: phrase`Organic content and sulphate by a laboratory; liquid and plastic limit for the fines`,
  source: phrase`common practice, no source; topsoil above 40 cm and pH below 6 to be avoided: Minke, Building with Earth (read)`,
};
