import type { EarthElement } from "../batch/element.js";
import { say } from "../words/message.js";
import { byDefault, forms, group, list, optional, required } from "./groups.js";
import { isGroup, type Kind, number, oneOf, percent, quantity, shaped, text } from "./kinds.js";

/** What is to be rammed, with the name that the study gives it. */
export type ElementConfig = EarthElement & { readonly name: string };

/** From the depth of a fist to a long garden wall; thinner or longer the unit is another. */
const metres = (example: string) => quantity("m", { min: 0.05, max: 1000, example });
/** No rammed wall is thinner than a hand is long, or thicker than those of a fortress. */
const thick = (example: string) => quantity("m", { min: 0.1, max: 3, example });
/** No rammed wall stands higher. */
const high = (example: string) => quantity("m", { min: 0.1, max: 50, example });
/** Rammed depth of one filling of the form. */
const lift = (example: string) => quantity("m", { min: 0.02, max: 0.6, example });
const count = (says: string) =>
  byDefault("count", number({ whole: true, min: 1, max: 1000, example: 2 }), 1, says);
const KIND = "What is rammed.";

const opening = group({
  width: required("widthM", metres("1.2 m"), "Width."),
  height: required("heightM", metres("1.0 m"), "Height."),
  sill: optional(
    "sillM",
    quantity("m", { min: 0, max: 50, example: "0.9 m" }),
    "Height of its lower edge above the foot of the element, 0 m for a door; left out, one that is lower than the element counts as a window.",
  ),
  count: count("How many alike."),
});

const rammed = {
  name: required("name", text("East wall"), "Name as it is printed."),
  height: required("heightM", high("2.7 m"), "Height."),
  "compacted-lift": required("compactedLiftM", lift("100 mm"), "Depth of a lift after ramming."),
  waste: required(
    "wastePct",
    percent("5 %", 50),
    "Spilt, trimmed and left over, of the net amount.",
  ),
} as const;

const walled = {
  ...rammed,
  thickness: required("thicknessM", thick("400 mm"), "Thickness, of a bench its depth."),
  openings: byDefault(
    "openings",
    list(opening),
    [],
    "Windows, doors and gaps through the whole thickness.",
  ),
} as const;

const wall = group({
  kind: byDefault("kind", oneOf("wall"), "wall", KIND),
  ...walled,
  length: required("lengthM", metres("6.4 m"), "Length."),
});

const bench = group({
  kind: required("kind", oneOf("bench"), KIND),
  ...walled,
  length: required("lengthM", metres("1.8 m"), "Length."),
});

const pier = shaped(
  group({
    kind: required("kind", oneOf("pier"), KIND),
    ...rammed,
    count: count("How many alike."),
    width: required("widthM", metres("600 mm"), "One side."),
    depth: required("depthM", metres("400 mm"), "The other side."),
  }),
  "ElementConfig",
  ({ widthM, depthM, ...rest }): ElementConfig => ({
    ...rest,
    section: { shape: "rectangle", widthM, depthM },
  }),
);

const roundPier = shaped(
  group({
    kind: required("kind", oneOf("pier"), KIND),
    ...rammed,
    count: count("How many alike."),
    diameter: required("diameterM", metres("600 mm"), "Diameter."),
  }),
  "ElementConfig",
  ({ diameterM, ...rest }): ElementConfig => ({ ...rest, section: { shape: "round", diameterM } }),
);

const ring = shaped(
  group({
    kind: required("kind", oneOf("ring"), KIND),
    ...walled,
    length: required("lengthM", metres("6 m"), "Length, outside."),
    width: required("widthM", metres("4 m"), "Width, outside."),
  }),
  "ElementConfig",
  ({ lengthM, widthM, ...rest }): ElementConfig => ({
    ...rest,
    plan: { shape: "rectangle", lengthM, widthM },
  }),
);

const roundRing = shaped(
  group({
    kind: required("kind", oneOf("ring"), KIND),
    ...walled,
    diameter: required("diameterM", metres("5 m"), "Diameter, outside."),
  }),
  "ElementConfig",
  ({ diameterM, ...rest }): ElementConfig => ({ ...rest, plan: { shape: "round", diameterM } }),
);

/** One element. Without a kind it is a wall; a diameter makes a pier or a ring round. */
const element: Kind<ElementConfig> = forms(
  { wall, bench, pier, "round pier": roundPier, ring, "round ring": roundRing },
  (written) => {
    const kind = isGroup(written) ? (written.kind ?? "wall") : "wall";
    const isRound = isGroup(written) && "diameter" in written;
    if (kind === "wall" || kind === "bench") return kind;
    if (kind === "pier") return isRound ? "round pier" : "pier";
    if (kind === "ring") return isRound ? "round ring" : "ring";
    return {
      at: "kind",
      choices: ["wall", "bench", "pier", "ring"],
      message: say`This kind of element is not known.`,
    };
  },
  { type: "ElementConfig", misplaced: say`This key does not belong to this kind of element.` },
);

/** `element`: what is to be built, one element or a list of them. */
export const elements: Kind<readonly ElementConfig[]> = shaped(
  forms({ one: element, several: list(element, { max: 12, unique: "name" }) }, (written) =>
    Array.isArray(written) ? "several" : "one",
  ),
  "readonly ElementConfig[]",
  (written): readonly ElementConfig[] => ("kind" in written ? [written] : written),
);
