import { say, type Text } from "../words/message.js";

/** Something that can hurt people or spoil a wall, told beside the numbers. */
export interface Caution {
  readonly id: string;
  readonly title: Text;
  readonly text: Text;
  readonly source: Text;
  readonly basis: "read" | "memory" | "common practice";
}

/**
 * Cautions for people who ram cement-stabilised earth. They are reminders, not a safety plan.
 *
 * @example
 * CAUTIONS[0].id // => "licensed-practice"
 */
export const CAUTIONS: readonly Caution[] = [
  {
    id: "licensed-practice",
    title: say`Local code and licensed practice`,
    text: say`Many places ask for a permit and for the seal of a licensed engineer or architect before earth walls bear load. Nothing here is an approval; whether a wall may be built is for them and for the building official.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "cement-burns",
    title: say`Wet cement burns`,
    text: say`Wet cement is strongly alkaline and burns skin and eyes, often without pain at first. Wear waterproof gloves, long sleeves and goggles; rinse with plenty of water at once; see a doctor for eyes.`,
    source: say`from memory: general practice for cement work`,
    basis: "memory",
  },
  {
    id: "silica-dust",
    title: say`Silica dust`,
    text: say`Dry soil, sand and cement give off fine silica dust that damages lungs for good. Sieve and mix damp or outdoors, keep others away, wear a fitted respirator for fine dust.`,
    source: say`from memory: general practice for dusty work`,
    basis: "memory",
  },
  {
    id: "form-pressure",
    title: say`Pressure on the forms`,
    text: say`Ramming pushes forms outward harder than fresh concrete of the same lift would, and no published value of that pressure was found. Have forms, ties and braces designed for it, check them before each lift, and keep people clear of the form’s face while ramming.`,
    source: say`search for a published pressure found none; the rest from memory`,
    basis: "memory",
  },
  {
    id: "lifting",
    title: say`Lifting and vibration`,
    text: say`Bags of more than about 23 kg call for two people or a lifting aid. Pneumatic rammers shake hands and arms: take turns and breaks.`,
    source: say`from memory: general practice`,
    basis: "memory",
  },
  {
    id: "working-height",
    title: say`Work at height`,
    text: say`Walls grow past the height from which a fall does harm. Use scaffolds and guard rails; never stand on a form or on a fresh wall’s edge.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "cured-strength",
    title: say`Cured strength before loading`,
    text: say`Do not load a wall before blocks of its own mix, cured as the wall was, reached the strength asked for. Cement-stabilised earth needs damp curing; a laboratory age of 28 days is the usual measure. Block strength is not wall strength.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "wet-strength",
    title: say`Strength falls when wet`,
    text: say`Wet strength of cement-stabilised rammed earth was found near 60 % of the dry strength in one set of tests. Test soaked where a wall can get wet.`,
    source: say`Venkatarama Reddy and Prasanna Kumar, Compressive strength and elastic properties of stabilised rammed earth and masonry, abstract (read)`,
    basis: "read",
  },
  {
    id: "working-time",
    title: say`Time between mixing and ramming`,
    text: say`Cement begins to set as soon as it meets moist soil: a delay of ten hours halved the strength in one set of tests. Mix only what can be rammed at once.`,
    source: say`Venkatarama Reddy and Prasanna Kumar 2011, Cement stabilised rammed earth, Part A, abstract (read)`,
    basis: "read",
  },
  {
    id: "water-and-frost",
    title: say`Water and frost`,
    text: say`Keep rain, splash and rising damp away from the wall with a plinth, an overhang and drainage, and fresh work from frost. Blocks that pass in the laboratory say little about frost.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
];
