import { phrase } from "../words/say.js";
import { PRETREATMENT_FACTS } from "./pretreatment.js";
import type { CellRule, SheetLayout } from "./sheetLayout.js";

/** Most lines of a calibration: a straight scale needs two. */
export const MOST_MARKS = 6;

const length = (key: string, name: string): CellRule => ({
  ...{ key, names: [name], kind: "number", dimension: "length", positive: true },
});

const MARKS = Array.from({ length: MOST_MARKS }, (_, index): CellRule[] => [
  { key: `mark${index}Reading`, names: [`calibration ${index + 1} reading`], kind: "number" },
  length(`mark${index}DepthMm`, `calibration ${index + 1} depth`),
  length(`mark${index}ToNeckMm`, `calibration ${index + 1} to neck`),
]).flat();

/** What a hydrometer sheet may hold. */
export const HYDROMETER_LAYOUT: SheetLayout = {
  title: phrase`hydrometer sheet`,
  facts: [
    { key: "hydrometer", names: ["hydrometer"], kind: "text", required: true },
    {
      ...{ key: "dryMassG", names: ["dry mass"], kind: "number", dimension: "mass" },
      ...{ required: true, positive: true },
    },
    { key: "separatingSizeMm", names: ["separating sieve"], kind: "sieve", required: true },
    {
      ...{ key: "meniscusCorrection", names: ["meniscus correction"], kind: "number" },
      ...{ required: true, min: 0 },
    },
    { key: "dispersant", names: ["dispersant correction"], kind: "number", min: 0 },
    {
      ...{ key: "calibrationC", names: ["calibration temperature"], kind: "number" },
      ...{ dimension: "temperature", min: 10, max: 30 },
    },
    ...PRETREATMENT_FACTS,
    ...MARKS,
    length("bulbLengthMm", "bulb length"),
    {
      ...{ key: "bulbVolumeCm3", names: ["bulb volume"], kind: "number" },
      ...{ dimension: "volume", positive: true },
    },
    length("cylinderDiameterMm", "cylinder inner diameter"),
  ],
  columns: [
    {
      ...{ key: "timeMin", names: ["time"], kind: "number", dimension: "duration" },
      ...{ required: true, positive: true },
    },
    { key: "reading", names: ["reading"], kind: "number", required: true, min: 0 },
    { key: "control", names: ["control"], kind: "number" },
    {
      ...{ key: "temperatureC", names: ["temperature"], kind: "number" },
      ...{ dimension: "temperature", required: true, min: 5, max: 40 },
    },
  ],
};
