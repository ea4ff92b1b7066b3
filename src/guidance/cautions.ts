import { say, type Text } from "../words/message.js";

/**
 * What people do when a caution holds: `any` stands on every page and card; `dry-work` is sieving, crushing,
 * sweeping and mixing of dry soil; `wet-mix` is any touch of a mix with cement; `lifting` is bags, forms and
 * blocks; `curing` is the weeks after ramming; `standing-wall` is all that a wall meets from then on.
 */
export type CautionWork =
  | "any"
  | "dry-work"
  | "wet-mix"
  | "ramming"
  | "lifting"
  | "curing"
  | "standing-wall";

/** Something that can hurt people or spoil a wall, told beside the numbers. */
export interface Caution {
  readonly id: string;
  readonly work: readonly CautionWork[];
  readonly title: Text;
  readonly text: Text;
  readonly source: Text;
  readonly basis: "abstract" | "memory" | "common practice";
}

/**
 * Cautions for people who ram cement-stabilised earth. They are reminders, not a safety plan.
 *
 * @example
 * CAUTIONS[0].id // => "no-approval"
 */
export const CAUTIONS: readonly Caution[] = [
  {
    id: "no-approval",
    work: ["any"],
    title: say`Nothing here is an approval`,
    text: say`These numbers and pages are an aid for people who check them. Whether a mix may be used and a wall may be built is for a licensed engineer or architect and for the building official.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "licensed-practice",
    work: ["standing-wall"],
    title: say`Local code and licensed practice`,
    text: say`Many places ask for a permit and for the seal of a licensed engineer or architect before earth walls bear load. Nothing here is an approval; whether a wall may be built is for them and for the building official.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "cement-burns",
    work: ["wet-mix"],
    title: say`Wet cement burns`,
    text: say`Wet cement is strongly alkaline and burns skin and eyes, often without pain at first. Wear waterproof gloves, long sleeves and goggles; rinse with plenty of water at once; see a doctor for eyes.`,
    source: say`from memory: general practice for cement work`,
    basis: "memory",
  },
  {
    id: "silica-dust",
    work: ["dry-work"],
    title: say`Silica dust`,
    text: say`Dry soil, sand and cement give off fine silica dust that damages lungs for good. Sieve and mix damp or outdoors, keep others away, wear a fitted respirator for fine dust.`,
    source: say`from memory: general practice for dusty work`,
    basis: "memory",
  },
  {
    id: "form-pressure",
    work: ["ramming"],
    title: say`Pressure on the forms`,
    text: say`Ramming pushes forms outward harder than fresh concrete of the same lift would, and no published value of that pressure was found. Have forms, ties and braces designed for it, check them before each lift, and keep people clear of the form’s face while ramming.`,
    source: say`search for a published pressure found none; the rest from memory`,
    basis: "memory",
  },
  {
    id: "lifting",
    work: ["lifting", "ramming"],
    title: say`Lifting and vibration`,
    text: say`Bags of more than about 23 kg call for two people or a lifting aid. Pneumatic rammers shake hands and arms: take turns and breaks.`,
    source: say`from memory: general practice`,
    basis: "memory",
  },
  {
    id: "working-height",
    work: ["ramming"],
    title: say`Work at height`,
    text: say`Walls grow past the height from which a fall does harm. Use scaffolds and guard rails; never stand on a form or on a fresh wall’s edge.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "cured-strength",
    work: ["curing"],
    title: say`Cured strength before loading`,
    text: say`Do not load a wall before blocks of its own mix, cured as the wall was, reached the strength asked for. Cement-stabilised earth needs damp curing; a laboratory age of 28 days is the usual measure. Block strength is not wall strength.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "wet-strength",
    work: ["standing-wall"],
    title: say`Strength falls when wet`,
    text: say`Wet strength of cement-stabilised rammed earth was found near 60 % of the dry strength in one set of tests. Test soaked where a wall can get wet.`,
    source: say`Venkatarama Reddy and Prasanna Kumar, Compressive strength and elastic properties of stabilised rammed earth and masonry (abstract read)`,
    basis: "abstract",
  },
  {
    id: "working-time",
    work: ["wet-mix"],
    title: say`Time between mixing and ramming`,
    text: say`Cement begins to set as soon as it meets moist soil: a delay of ten hours halved the strength in one set of tests. Mix only what can be rammed at once.`,
    source: say`Venkatarama Reddy and Prasanna Kumar (2011), Cement stabilised rammed earth, Part A (abstract read)`,
    basis: "abstract",
  },
  {
    id: "water-and-frost",
    work: ["curing", "standing-wall"],
    title: say`Water and frost`,
    text: say`Keep rain, splash and rising damp away from the wall with a plinth, an overhang and drainage, and fresh work from frost. Blocks that pass in the laboratory say little about frost.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "free-wall",
    work: ["ramming", "curing", "standing-wall"],
    title: say`A free wall can fall over`,
    text: say`Until cross walls, a roof or a ring beam hold it, a wall stands by its own weight alone. How high it may be for its thickness and how far apart its supports may stand is the engineer’s to say; the strength of blocks does not tell. Brace it, and keep people clear of where it would fall.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "wind",
    work: ["ramming", "curing", "standing-wall"],
    title: say`Wind`,
    text: say`Wind pushes on forms, scaffolds and free walls, most of all before the wall has its strength. Brace them for the wind of the place, stop work in strong wind, and have the finished wall designed for it.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
  {
    id: "earthquake",
    work: ["standing-wall"],
    title: say`Earthquake`,
    text: say`Rammed earth is heavy and bears hardly any tension: in an earthquake a wall without reinforcement and ties can break and fall without warning. Where the ground may shake, a licensed engineer designs foundation, reinforcement, ring beam and connections. Nothing here has looked at it.`,
    source: say`common practice, no source`,
    basis: "common practice",
  },
];

/**
 * The cautions that hold for some work, those of every page first, each once.
 *
 * @example
 * cautionsFor("dry-work", "wet-mix").map(({ id }) => id) // => ["no-approval", "cement-burns", "silica-dust", "working-time"]
 */
export function cautionsFor(...work: readonly CautionWork[]): Caution[] {
  const held = new Set<CautionWork>(["any", ...work]);
  return CAUTIONS.filter((caution) => caution.work.some((each) => held.has(each)));
}
