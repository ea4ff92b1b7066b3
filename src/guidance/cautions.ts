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
  /** The publication alone, where the source is one. */
  readonly citation?: Text;
  readonly basis: "abstract" | "memory" | "common practice";
}

const COMMON_PRACTICE = {
  source: say`common practice, no source`,
  basis: "common practice",
} as const;

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
    text: say`These numbers and pages are an aid for people who check them. Whether a mix may be used and a wall may be built is for a licensed engineer or architect and the building official to decide.`,
    ...COMMON_PRACTICE,
  },
  {
    id: "licensed-practice",
    work: ["standing-wall"],
    title: say`Local code and licensed practice`,
    text: say`Many jurisdictions require a permit and the seal of a licensed engineer or architect before earth walls carry load. Nothing here is an approval; whether a wall may be built is for them and the building official to decide.`,
    ...COMMON_PRACTICE,
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
    text: say`Dry soil, sand and cement give off fine silica dust that causes permanent lung damage. Sieve and mix damp or outdoors, keep others away, and wear a fitted respirator rated for fine dust.`,
    source: say`from memory: general practice for dusty work`,
    basis: "memory",
  },
  {
    id: "form-pressure",
    work: ["ramming"],
    title: say`Pressure on the forms`,
    text: say`Ramming pushes the forms outward harder than fresh concrete of the same height would, and no published value of that pressure was found. Have forms, ties and braces designed for it, check them before each lift, and keep people clear of the form’s face while ramming.`,
    source: say`no published pressure was found; the rest from memory`,
    basis: "memory",
  },
  {
    id: "lifting",
    work: ["lifting", "ramming"],
    title: say`Lifting and vibration`,
    text: say`Bags of more than about 23 kg (50 lb) call for two people or a lifting aid. Pneumatic rammers shake hands and arms: take turns and breaks.`,
    source: say`from memory: general practice`,
    basis: "memory",
  },
  {
    id: "working-height",
    work: ["ramming"],
    title: say`Work at height`,
    text: say`Walls grow past the height from which a fall does harm. Use scaffolds and guard rails; never stand on a form or on a fresh wall’s edge.`,
    ...COMMON_PRACTICE,
  },
  {
    id: "cured-strength",
    work: ["curing"],
    title: say`Cured strength before loading`,
    text: say`Do not load a wall before blocks of its own mix, cured as the wall was, have reached the required strength. Cement-stabilised earth needs damp curing; a laboratory age of 28 days is the usual measure. Block strength is not wall strength.`,
    ...COMMON_PRACTICE,
  },
  {
    id: "wet-strength",
    work: ["standing-wall"],
    title: say`Strength falls when wet`,
    text: say`In one set of tests, the wet strength of cement-stabilised rammed earth was about 60 % of its dry strength. Test soaked where a wall can get wet.`,
    ...abstractOf(
      say`Venkatarama Reddy and Prasanna Kumar (year not known), Compressive strength and elastic properties of stabilised rammed earth and masonry`,
    ),
  },
  {
    id: "working-time",
    work: ["wet-mix"],
    title: say`Time between mixing and ramming`,
    text: say`Cement begins to set as soon as it meets moist soil: a delay of ten hours halved the strength in one set of tests. Mix only what can be rammed at once.`,
    ...abstractOf(
      say`Venkatarama Reddy and Prasanna Kumar (2011), Cement stabilised rammed earth, Part A, Mater. Struct. 44, 681–693`,
    ),
  },
  {
    id: "water-and-frost",
    work: ["curing", "standing-wall"],
    title: say`Water and frost`,
    text: say`Keep rain, splash and rising damp away from the wall with a plinth, an overhang and drainage, and fresh work from frost. Blocks that pass in the laboratory say little about frost.`,
    ...COMMON_PRACTICE,
  },
  {
    id: "free-wall",
    work: ["ramming", "curing", "standing-wall"],
    title: say`A free-standing wall can fall over`,
    text: say`Until cross walls, a roof or a ring beam hold it, a wall stands by its own weight alone. Its permissible height for its thickness and the spacing of its supports are for the engineer to determine; block strength says nothing about them. Brace it, and keep people clear of where it would fall.`,
    ...COMMON_PRACTICE,
  },
  {
    id: "wind",
    work: ["ramming", "curing", "standing-wall"],
    title: say`Wind`,
    text: say`Wind acts on forms, scaffolds and free-standing walls, most of all before the wall has gained its strength. Brace them for the local wind, stop work in strong wind, and have the finished wall designed for it.`,
    ...COMMON_PRACTICE,
  },
  {
    id: "earthquake",
    work: ["standing-wall"],
    title: say`Earthquake`,
    text: say`Rammed earth is heavy and has hardly any tensile strength: in an earthquake a wall without reinforcement and ties can break and fall without warning. Where the ground may shake, a licensed engineer designs foundation, reinforcement, ring beam and connections. Nothing here takes earthquakes into account.`,
    ...COMMON_PRACTICE,
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

function abstractOf(citation: Text): Pick<Caution, "source" | "citation" | "basis"> {
  return { source: say`${citation} (abstract read)`, citation, basis: "abstract" };
}
