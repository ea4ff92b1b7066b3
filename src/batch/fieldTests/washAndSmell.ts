import type { FieldTest } from "./fieldTest.js";

/**
 * Washing hands and smelling: clay or silt, and humus.
 *
 * @example
 * WASH_AND_SMELL.id // => "wash-and-smell"
 */
export const WASH_AND_SMELL: FieldTest = {
  id: "wash-and-smell",
  name: "Wash and smell",
  asks: "Are the fines clay or silt, and is there humus in it?",
  tools: "Bare hands without a cut, no cement on them; water; a fresh damp sample",
  steps: [
    "Smell the fresh sample; warm it in the hand and smell again.",
    "Rub it wet between the hands, then rinse.",
  ],
  readings: [
    { label: "Smell: none, musty, like a wood's floor" },
    { label: "Colour; roots or leaves seen?" },
    { label: "Rinses off: at once, with rubbing, hardly" },
  ],
  conclusions: [
    {
      seen: "Musty, dark, with roots",
      means: "Humus: do not use; it hinders the setting of cement",
      basis: "common practice",
    },
    { seen: "Topsoil, above about 0.4 m", means: "To be avoided", basis: "read" },
    { seen: "Gritty, rinses off at once", means: "Sandy", basis: "common practice" },
    { seen: "Floury, comes off with rubbing", means: "Silty", basis: "common practice" },
    { seen: "Soapy, sticks, hardly comes off", means: "Clayey", basis: "common practice" },
  ],
  doesNotTell: "Amounts, salts or sulphate: those neither smell nor feel.",
  settledBy: "Organic content and sulphate by a laboratory; liquid and plastic limit for the fines",
  source:
    "common practice, no source; topsoil above 40 cm and pH below 6 to be avoided: Minke, Building with Earth (read)",
};
