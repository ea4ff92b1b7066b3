import type { CautionWork } from "../guidance/cautions.js";
import { measured } from "../quantities/format.js";
import { say, type Text } from "../words/message.js";

const mm = (value: number) => measured(value, "depth");
const metres = (value: number) => measured(1000 * value, "length");

export type FieldBasis = "read" | "memory" | "common practice";

/** What may be concluded from what is seen, and how the rule is known. */
export interface FieldConclusion {
  readonly seen: Text;
  readonly means: Text;
  readonly basis: FieldBasis;
}

/** A line of the form. */
export interface FieldReading {
  readonly label: Text;
  readonly unit?: string;
}

/** A test that needs no laboratory: what to do, write down and conclude, and what it cannot tell. */
export interface FieldTest {
  readonly id: string;
  readonly name: Text;
  /** The one question it answers. */
  readonly asks: Text;
  readonly tools: Text;
  readonly steps: readonly Text[];
  readonly readings: readonly FieldReading[];
  readonly conclusions: readonly FieldConclusion[];
  /** What people take from it and should not. */
  readonly doesNotTell: Text;
  /** The laboratory test that settles the question. */
  readonly settledBy: Text;
  /** Another test that shares a name or a look. */
  readonly notToBeMistakenFor?: Text;
  readonly source: Text;
  /** What has to be told with it: see `cautionsFor`. */
  readonly work: readonly CautionWork[];
}

/**
 * The field tests, in the order in which a soil meets them. They choose what goes to the laboratory; they
 * do not take its place. The two tests that drop a ball stand apart: one asks about moisture, one about clay.
 *
 * @example
 * FIELD_TESTS.map(({ id }) => id) // => ["wash-and-smell", "jar", "ribbon", "plastic-ball", "shrinkage-box", "ball-and-drop"]
 */
export const FIELD_TESTS: readonly FieldTest[] = [
  {
    id: "wash-and-smell",
    name: say`Wash and smell`,
    asks: say`Are the fines clay or silt, and is there humus in it?`,
    tools: say`Bare hands without a cut, no cement on them; water; a fresh damp sample`,
    steps: [
      say`Smell the fresh sample; warm it in the hand and smell again.`,
      say`Rub it wet between the hands, then rinse.`,
    ],
    readings: [
      { label: say`Smell: none, musty, like a wood's floor` },
      { label: say`Colour; roots or leaves seen?` },
      { label: say`Rinses off: at once, with rubbing, hardly` },
    ],
    conclusions: [
      {
        seen: say`Musty, dark, with roots`,
        means: say`Humus: do not use; it hinders the setting of cement`,
        basis: "common practice",
      },
      { seen: say`Topsoil, above about ${metres(0.4)}`, means: say`To be avoided`, basis: "read" },
      { seen: say`Gritty, rinses off at once`, means: say`Sandy`, basis: "common practice" },
      {
        seen: say`Floury, comes off with rubbing`,
        means: say`Silty`,
        basis: "common practice",
      },
      {
        seen: say`Soapy, sticks, hardly comes off`,
        means: say`Clayey`,
        basis: "common practice",
      },
    ],
    doesNotTell: say`Amounts, salts or sulphate: those neither smell nor feel.`,
    settledBy: say`Organic content and sulphate by a laboratory; liquid and plastic limit for the fines`,
    source: say`common practice, no source; topsoil above 40 cm and pH below 6 to be avoided: Minke, Building with Earth (read)`,
    work: [],
  },
  {
    id: "jar",
    name: say`Jar`,
    asks: say`Is there mostly sand, or mostly fines?`,
    tools: say`Straight clear jar with a lid, ruler, clean water, a pinch of salt, a watch`,
    steps: [
      say`Break the lumps, take out stones, fill a third of the jar with soil.`,
      say`Fill up with water, add the salt, leave an hour, shake hard for two minutes.`,
      say`Set down and do not move. Mark the top of the settled layer after 1 minute, 30 to 60 minutes, 24 hours.`,
    ],
    readings: [
      { label: say`Height after 1 minute: sand and coarser`, unit: "mm" },
      { label: say`Height after ____ minutes: and silt`, unit: "mm" },
      { label: say`Height after 24 hours: and clay`, unit: "mm" },
      { label: say`Water still cloudy?` },
    ],
    conclusions: [
      {
        seen: say`Nearly all settles in the first minute`,
        means: say`Few fines: it will not hold together without more binder`,
        basis: "common practice",
      },
      {
        seen: say`Little settles in the first minute`,
        means: say`Rich in fines: expect shrinkage; sand may have to be added`,
        basis: "common practice",
      },
    ],
    doesNotTell: say`The true percentages. Fine layers hold more water, so clay looks like more than it is: one text shows a loam of about 14 % clay that reads near 45 % in the jar (from memory). No measured correction was found; apply none.`,
    settledBy: say`Wet sieving and a sedimentation test (hydrometer or pipette)`,
    source: say`Times: 1 min, 30 min to 1 h, 24 h on two web pages of builders (read); both warn, as a council guide does, that it is inaccurate (read)`,
    work: ["dry-work"],
  },
  {
    id: "ribbon",
    name: say`Ribbon`,
    asks: say`How well does the plastic soil hold together?`,
    tools: say`Smooth board, ruler, water`,
    steps: [
      say`Take out all that is coarser than sand; knead with water until it does not stick to the hand.`,
      say`Roll to the thickness of a finger, press flat, and push it slowly over the edge of the board.`,
      say`Measure the piece that breaks off. Do it five times.`,
    ],
    readings: [
      { label: say`Thickness of the ribbon`, unit: "mm" },
      { label: say`Lengths that broke off, five times`, unit: "mm" },
      { label: say`Mean`, unit: "mm" },
      { label: say`Did it stick to the hand?` },
    ],
    conclusions: [
      {
        seen: say`${mm(80)} to ${mm(120)}`,
        means: say`Clay in the range often wanted`,
        basis: "memory",
      },
      {
        seen: say`50 to 150 mm (2 to 6 in)`,
        means: say`Taken as usable by one builder`,
        basis: "read",
      },
      { seen: say`Over ${mm(200)}`, means: say`Binds strongly: expect shrinkage`, basis: "read" },
      {
        seen: say`Breaks at once`,
        means: say`Little clay, or too dry: knead again`,
        basis: "common practice",
      },
    ],
    doesNotTell: say`The clay content. Thickness, moisture and the hand change the length; the limits of different texts do not agree.`,
    settledBy: say`Liquid and plastic limit`,
    notToBeMistakenFor: say`the thread rolled to ${mm(3)}, which is the plastic limit's own procedure without a scale`,
    source: say`80 to 120 mm: SAZS 724 and the code of practice behind it (from memory); 2 to 6 in: a builder's web page (read); over 20 cm: Minke, Building with Earth, in a copy with reading errors (read)`,
    work: ["dry-work"],
  },
  {
    id: "plastic-ball",
    name: say`Dropped plastic ball: binding of the soil`,
    asks: say`Does the clay of this soil bind at all, or very strongly?`,
    tools: say`Scale, ruler, tape, a flat hard floor, water`,
    steps: [
      say`Sieve out stones, add water and knead until the soil is stiff and plastic; no cement.`,
      say`Form a smooth ball of 200 g (7 oz).`,
      say`Let it fall from ${metres(2)} on the floor and measure the flattened width.`,
    ],
    readings: [
      { label: say`Mass of the ball`, unit: "g" },
      { label: say`Height of fall`, unit: "m" },
      { label: say`Flattened width`, unit: "mm" },
      { label: say`Cracks: none, few, many, fell apart` },
    ],
    conclusions: [
      {
        seen: say`Flattened to less than ${mm(50)}`,
        means: say`As stiff as this test is made for: the cracks may be compared with other soils`,
        basis: "read",
      },
      { seen: say`It falls apart`, means: say`Little clay, weak binding`, basis: "read" },
      {
        seen: say`A small ball of it, ${mm(20)} to ${mm(30)}, is crushed only with much force`,
        means: say`Rich in clay: sand may have to be added`,
        basis: "read",
      },
    ],
    doesNotTell: say`Whether a mix is moist enough to ram, or how much clay there is in percent.`,
    settledBy: say`Liquid and plastic limit, and a sedimentation test; binding force where it is asked for`,
    notToBeMistakenFor: say`the ball and drop of the moist mix, from shoulder height, which asks about its moisture`,
    source: say`Berge, The Ecology of Building Materials, after DIN 18952: 200 g, 2 m, 50 mm (read); Minke, Building with Earth, figures 2.8 and 2.9 (read, photographs not seen)`,
    work: ["dry-work"],
  },
  {
    id: "shrinkage-box",
    name: say`Long shrinkage box`,
    asks: say`How much does the soil shrink when it dries from very wet?`,
    tools: say`Smooth box ${mm(600)} × ${mm(40)} × ${mm(40)} inside, oil, ruler, shade`,
    steps: [
      say`Sieve at 5 to 6 mm (No. 4 or 1/4 in); add water until a groove in it just closes on ten taps.`,
      say`Oil the box, fill it without gaps, strike level.`,
      say`Dry in shade for 10 days, or in sun for 5. Push all pieces to one end.`,
      say`Measure the gap at the other end.`,
    ],
    readings: [
      { label: say`Length of the box inside`, unit: "mm" },
      { label: say`Gap after drying`, unit: "mm" },
      { label: say`Gap in percent of the length`, unit: "%" },
      { label: say`Humped, cracked across, or whole?` },
    ],
    conclusions: [
      {
        seen: say`Gap of 0 to ${mm(12)} in ${mm(600)}`,
        means: say`For pressed blocks, one maker's table has 1 cement to 18 soil by loose volume`,
        basis: "read",
      },
      { seen: say`${mm(12)} to ${mm(24)}`, means: say`The same table: 1 to 16`, basis: "read" },
      { seen: say`${mm(25)} to ${mm(39)}`, means: say`The same table: 1 to 14`, basis: "read" },
      { seen: say`${mm(40)} to ${mm(50)}`, means: say`The same table: 1 to 12`, basis: "read" },
      {
        seen: say`More than ${mm(50)}`,
        means: say`Outside that table: add sand and test again`,
        basis: "common practice",
      },
    ],
    doesNotTell: say`The cement of a rammed wall: the table is for pressed blocks, and an older table breaks at 15, 30, 45 and 60 mm (from memory). Nor is this gap the linear shrinkage of the laboratory, or the drying shrinkage of rammed material: never hold one against another's limit.`,
    settledBy: say`Linear shrinkage in the standard mould, and block strengths for the cement`,
    notToBeMistakenFor: say`the laboratory bar of linear shrinkage, ${mm(140)} long`,
    source: say`Nyagah, How to test your soil when making construction blocks (read); steps and days: Intermediate Technology Development Group, Technical Advice Note 2 (read)`,
    work: ["dry-work"],
  },
  {
    id: "ball-and-drop",
    name: say`Ball and drop: moisture of the mix`,
    asks: say`Is the mix moist enough, and not too moist, to ram?`,
    tools: say`A hand in a waterproof glove, a hard clean floor`,
    steps: [
      say`Take a handful of the mix as it will be rammed and squeeze it hard into a ball.`,
      say`Look at the glove: is there water on it?`,
      say`Hold the ball at shoulder height and let it fall on the floor.`,
    ],
    readings: [
      { label: say`Batch` },
      { label: say`Water on the glove?` },
      { label: say`Height of fall`, unit: "m" },
      { label: say`One lump, a few pieces, or crumbs` },
    ],
    conclusions: [
      { seen: say`No water, and it just breaks up`, means: say`Right: ram`, basis: "read" },
      { seen: say`Water on the glove`, means: say`Too wet`, basis: "read" },
      { seen: say`It stays one flattened lump`, means: say`Too wet`, basis: "common practice" },
      {
        seen: say`No ball, or it bursts into crumbs`,
        means: say`Too dry`,
        basis: "common practice",
      },
    ],
    doesNotTell: say`The moisture in percent, or the best moisture of another soil or rammer; clayey and sandy mixes break differently at their optimum.`,
    settledBy: say`Oven drying of a sample (moisture), and a compaction test with the effort of the work (optimum)`,
    notToBeMistakenFor: say`the dropped ball of plastic soil, 200 g (7 oz) from ${metres(2)}, which asks how well the clay binds`,
    source: say`Intermediate Technology Development Group, How to make stabilised soil blocks, Technical Advice Note 2: shoulder height, should just break up, no water when squeezed (read); about 1.5 m and a few pieces in NZS 4298 and SAZS 724 (from memory)`,
    work: ["wet-mix"],
  },
];
