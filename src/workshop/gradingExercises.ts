import {
  type GradingCurve,
  type GradingPoint,
  passingAtSize,
  sizeAtPassing,
} from "../grading/curve.js";
import type { GuidanceComparison } from "../guidance/comparison.js";
import { formatFixed, formatNumber, formatPlain } from "../quantities/format.js";
import { say } from "../words/message.js";
import type { ClassSoil } from "./classSoil.js";
import type { Exercise, WrongTurn } from "./exercise.js";

/**
 * The exercises from the jar to the curve and its recommendations, with answers computed from the soil of
 * the class.
 *
 * @param comparison of the same soil's curve, by `compareGuidance`.
 *
 * @example
 * const jar = { waterDepthMm: 240, sandTopMm: 60, siltTopMm: 80, clayTopMm: 100 };
 * const sieve = { dryMassG: 1000, washedDryMassG: 710, retained: [{ sizeMm: 4, massG: 0 }, { sizeMm: 2, massG: 300 }, { sizeMm: 0.063, massG: 400 }], panG: 10 };
 * const soil = classSoil({ jar, sieve });
 * const exercises = gradingExercises(soil, compareGuidance(soil.curve, GUIDANCE_ENTRIES));
 * exercises.map(({ id }) => id) // => ["jar-sand-share", "jar-clay-by-mass", "passing-2-mm", "passing-finest", "sand-share", "d60-of-the-soil", "is-d10-known", "outside-of-how-many", "what-inside-proves"]
 * exercises[2].value // => 70
 */
export function gradingExercises(soil: ClassSoil, comparison: GuidanceComparison): Exercise[] {
  return [
    ...jarExercises(soil),
    ...sieveExercises(soil),
    ...curveExercises(soil),
    ...guidanceExercises(comparison),
  ];
}

/**
 * Two exercises on the jar: the sand's share of the height, and what the clay's height says of its mass.
 *
 * @throws RangeError where the soil's curve is of no use for it. Source: `analyseJar`.
 */
function jarExercises({ jar, jarRecord }: ClassSoil): Exercise[] {
  const [sand, , clay] = jar.shares;
  const [sandMm, siltMm, wholeMm] = jarRecord.layers.map(({ topMm }) => topMm);
  const { waterDepthMm } = jarRecord;
  const mm = (value: number) => formatPlain(value);
  const whole = (value: number) => formatFixed(value, 0);
  const share = (part: number, of: number) => (100 * part) / of;
  const [less, same, more] = ["less", "the same", "more"];
  const byMass =
    clay.highPct < clay.heightSharePct ? less : clay.lowPct > clay.heightSharePct ? more : same;
  return [
    {
      kind: "number",
      id: "jar-sand-share",
      question: say`Which share of the settled height is sand and gravel?`,
      unit: "%",
      value: sand.heightSharePct,
      tolerance: { abs: 1 },
      wrongTurns: [
        {
          value: share(sandMm, waterDepthMm),
          text: say`This is the sand in percent of the depth of the water. Only what has settled counts.`,
        },
        {
          value: share(siltMm, wholeMm),
          text: say`This is sand and silt together: the silt's top stands on the sand.`,
        },
        {
          value: share(sandMm, siltMm),
          text: say`This leaves the clay out of the whole height.`,
        },
      ],
      hint: say`Height of the sand over the top of the clay, which is the whole of the settled height; times 100.`,
      worked: say`100 × ${mm(sandMm)} ÷ ${mm(wholeMm)} = ${formatFixed(sand.heightSharePct, 1)} %.`,
      why: say`By mass it may be anything from ${whole(sand.lowPct)} to ${whole(sand.highPct)} %: a height is no mass.`,
    },
    {
      kind: "choice",
      id: "jar-clay-by-mass",
      question: say`Is the clay's share of the mass less than its share of the height, the same, or more?`,
      options: [less, same, more],
      value: byMass,
      wrongTurns: [
        {
          value: same,
          text: say`That would be so if all layers were packed alike. They are not.`,
        },
        {
          value: more,
          text: say`Think of what stands between the grains of a fresh layer of clay.`,
        },
        {
          value: less,
          text: say`In this jar the heights do not decide it: look at the interval of the table.`,
        },
      ].filter(({ value }) => value !== byMass),
      hint: say`The table gives the share of the mass that each height allows.`,
      worked: say`The clay has ${whole(clay.heightSharePct)} % of the height; by mass that allows ${whole(clay.lowPct)} to ${whole(clay.highPct)} %.`,
      why: say`A fresh layer of clay is mostly water: ${whole(clay.heightSharePct)} % of the height allows ${whole(clay.lowPct)} to ${whole(clay.highPct)} % of the mass.`,
    },
  ];
}

const SAND_ENDS_MM = 2;

/**
 * Exercises on sieving: passing at 2 mm, fines with what was washed out, and sand. Those that the typed
 * sieves do not allow are left out.
 *
 * Source: `analyseSieve`, `fractions`.
 */
function sieveExercises({ sieve, sieveRecord, curve, fractions }: ClassSoil): Exercise[] {
  const { dryMassG, washedDryMassG = dryMassG, panG } = sieveRecord;
  const grams = (value: number) => formatPlain(value, 5);
  const one = (value: number) => formatFixed(value, 1);
  const exercises: Exercise[] = [];
  const at = sieve.rows.findIndex(({ sizeMm }) => sizeMm === SAND_ENDS_MM);
  const sumTo = (last: number) =>
    sieve.rows.slice(0, last + 1).reduce((sum, { retainedG }) => sum + retainedG, 0);
  if (at >= 0) {
    const { passingPct, retainedG } = sieve.rows[at];
    exercises.push({
      kind: "number",
      id: "passing-2-mm",
      question: say`How much of the dry mass passes 2 mm?`,
      unit: "%",
      value: passingPct,
      tolerance: { abs: 0.5 },
      wrongTurns: [
        {
          value: 100 * (1 - retainedG / dryMassG),
          text: say`Only what stayed on the 2 mm sieve was taken off. What stayed on the coarser sieves did not pass 2 mm either: add it up.`,
        },
        {
          value: 100 * (1 - sumTo(at) / washedDryMassG),
          text: say`This is of the mass after washing. The fines that went down the drain are soil too: divide by the mass before washing.`,
        },
      ],
      hint: say`Add what stayed on every sieve down to 2 mm, divide by the dry mass before washing, and take the rest to 100 %.`,
      worked: say`100 × (1 − ${grams(sumTo(at))} ÷ ${grams(dryMassG)}) = ${one(passingPct)} %.`,
      why: say`Passing counts everything finer, not what lies between two sieves.`,
    });
  }
  const last = sieve.rows.length - 1;
  const finest = sieve.rows[last];
  const retained = sumTo(last);
  exercises.push({
    kind: "number",
    id: "passing-finest",
    question: say`How much passes the finest sieve, ${formatPlain(finest.sizeMm)} mm?`,
    unit: "%",
    value: finest.passingPct,
    tolerance: { abs: 0.5 },
    wrongTurns: [
      {
        value: 100 * (1 - retained / washedDryMassG),
        text: say`This is of the mass after washing: nearly all fines went out with the water and were forgotten. Divide by the mass before washing.`,
      },
      {
        value: (100 * panG) / dryMassG,
        text: say`This is the pan alone. The pan holds only what the washing left behind.`,
      },
      {
        value: (100 * (dryMassG - washedDryMassG)) / dryMassG,
        text: say`This is what was washed out. The pan passed the finest sieve as well.`,
      },
      {
        value: (100 * finest.retainedG) / dryMassG,
        text: say`This is what stayed on the finest sieve, not what went through it.`,
      },
    ],
    hint: say`What stayed on all sieves together did not pass. All the rest did, with the water or into the pan.`,
    worked: say`100 × (1 − ${grams(retained)} ÷ ${grams(dryMassG)}) = ${one(finest.passingPct)} %; washed out ${grams(dryMassG - washedDryMassG)} g, in the pan ${grams(panG)} g.`,
    why: say`Of these fines ${grams(dryMassG - washedDryMassG)} g went out with the water and only ${grams(panG)} g were in the pan: without washing they would have clung to the sand.`,
  });
  const { finesPct, sandPct, boundaries } = fractions;
  if (finesPct !== undefined && sandPct !== undefined) {
    const passing = finesPct + sandPct;
    const other = [0.075, 4.75].map((sizeMm) => passingAtSize(curve, sizeMm) ?? Number.NaN);
    exercises.push({
      kind: "number",
      id: "sand-share",
      question: say`How much of the soil is sand, from ${boundaries.siltMm} to ${boundaries.sandMm} mm?`,
      unit: "%",
      value: sandPct,
      tolerance: { abs: 1 },
      wrongTurns: [
        {
          value: passing,
          text: say`This is all that passes ${boundaries.sandMm} mm, fines included: take the fines off.`,
        },
        {
          value: other[1] - other[0],
          text: say`This is sand by other boundaries, 0.075 to 4.75 mm. Both are in use: always say which.`,
        },
        {
          value: 100 - finesPct,
          text: say`This is sand and gravel together: all that is coarser than the fines.`,
        },
      ],
      hint: say`Passing at the upper boundary less passing at the lower one.`,
      worked: say`${one(passing)} − ${one(finesPct)} = ${one(sandPct)} %.`,
      why: say`With 0.075 and 4.75 mm as boundaries the same soil has ${one(other[1] - other[0])} % sand: a share without its boundaries says little.`,
    });
  }
  return exercises;
}

/**
 * Exercises on the curve: D60, where it lies between two measured points, and whether D10 is known.
 *
 * Source: `characteristicSizes`.
 */
function curveExercises({ curve, sizes }: Pick<ClassSoil, "curve" | "sizes">): Exercise[] {
  const [{ passingPct: finestPct }] = curve.points;
  const { d10, d60 } = sizes;
  return [
    ...(d60 === undefined || finestPct >= 60 ? [] : [d60Exercise(curve, d60)]),
    knownD10(finestPct, d10),
  ];
}

function d60Exercise(curve: ClassSoil["curve"], d60Mm: number): Exercise {
  const { turns, low, high } = readOffWrongly(curve, 60);
  const three = (value: number) => formatNumber(value, 3);
  return {
    kind: "number",
    id: "d60-of-the-soil",
    question: say`Read D60 off the curve: the size that 60 % of the mass passes.`,
    unit: "mm",
    value: d60Mm,
    tolerance: { rel: 0.08 },
    wrongTurns: turns,
    hint: say`Go across from 60 % to the curve and down to the axis. The axis counts in tenfold steps: half-way between 1 and 10 lies 3.2, not 5.5.`,
    worked: say`Between ${three(low.sizeMm)} mm (${formatFixed(low.passingPct, 1)} %) and ${three(high.sizeMm)} mm (${formatFixed(high.passingPct, 1)} %): ${three(low.sizeMm)} × (${three(high.sizeMm)} ÷ ${three(low.sizeMm)}) ^ ((60 − ${formatFixed(low.passingPct, 1)}) ÷ (${formatFixed(high.passingPct, 1)} − ${formatFixed(low.passingPct, 1)})) = ${three(d60Mm)} mm.`,
    why: say`The line between two points is straight on the logarithm of size: ${three(low.sizeMm)} × (${three(high.sizeMm)} ÷ ${three(low.sizeMm)}) ^ part.`,
  };
}

function knownD10(finestPct: number, d10Mm: number | undefined): Exercise {
  const value = d10Mm === undefined ? "no" : "yes";
  const percent = formatFixed(finestPct, 1);
  return {
    kind: "choice",
    id: "is-d10-known",
    question: say`Do these measurements give D10? Answer "yes" or "no".`,
    options: ["yes", "no"],
    value,
    wrongTurns:
      value === "no"
        ? [
            {
              value: "yes",
              text: say`Follow the curve to its finest measured point and read how much still passes there.`,
            },
          ]
        : [
            {
              value: "no",
              text: say`Look at the finest measured point: less than 10 % passes it.`,
            },
          ],
    hint: say`D10 is measured only where the curve comes down to 10 %.`,
    worked: say`At the finest measured size ${percent} % still pass; the answer is ${value}.`,
    why:
      value === "no"
        ? say`At the finest measured size ${percent} % still pass. To draw the curve on by hand would be to invent D10, and Cu with it.`
        : say`The curve comes down to ${percent} %, below 10 %.`,
  };
}

/** The two points that a reading lies between, and where wrong ways of reading it off end. */
export interface WrongReadings {
  readonly low: GradingPoint;
  readonly high: GradingPoint;
  readonly turns: readonly WrongTurn<number>[];
}

/**
 * The wrong ways of reading a size at a passing off a grading chart: between the lines of the axis as if
 * they stood evenly, passing taken for retained, the nearest sieve in place of the curve.
 *
 * @throws RangeError where the curve does not reach the percentage between two points.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 0, origin: "sieve" }, { sizeMm: 10, passingPct: 100, origin: "sieve" }] };
 * readOffWrongly(curve, 60).turns.map(({ value }) => value) // => [6.04, 0.631, 0.1, 10]
 */
export function readOffWrongly(curve: GradingCurve, passingPct: number): WrongReadings {
  const { points } = curve;
  const above = points.findIndex((point) => point.passingPct >= passingPct);
  if (above < 1) {
    throw new RangeError(
      `invalid \`passingPct\`: ${passingPct}; expected a percentage between two points of the curve`,
    );
  }
  const [low, high] = [points[above - 1], points[above]];
  const part = (passingPct - low.passingPct) / (high.passingPct - low.passingPct);
  const turned = sizeAtPassing(curve, 100 - passingPct);
  const nearest = say`This is a sieve's own size. The curve reaches the percentage between two sieves.`;
  return {
    low,
    high,
    turns: [
      {
        value: low.sizeMm + part * (high.sizeMm - low.sizeMm),
        text: say`This is read as if the sizes stood evenly along the axis. They stand by their logarithm: half-way between 1 and 10 lies 3.2.`,
      },
      ...(turned === undefined
        ? []
        : [
            {
              value: turned,
              text: say`This is the size that ${passingPct} % stay on: the axis was read from above. It counts what passes.`,
            },
          ]),
      { value: low.sizeMm, text: nearest },
      { value: high.sizeMm, text: nearest },
    ],
  };
}

/**
 * Two exercises on published limits: how many of the recommendations the soil is outside of, and what
 * lying inside proves.
 *
 * Source: `compareGuidance`; the second with the source that the checks themselves name.
 */
function guidanceExercises({ checks, disagreements }: GuidanceComparison): Exercise[] {
  const count = (verdict: string) => checks.filter((check) => check.verdict === verdict).length;
  const [outside, inside, incomplete] = ["outside", "inside", "incomplete"].map(count);
  const named = checks
    .filter(({ verdict }) => verdict === "outside")
    .map(({ entry }) => entry.id)
    .join(", ");
  const differ = disagreements.filter(({ verdictsDiffer }) => verdictsDiffer).length;
  return [
    {
      kind: "number",
      id: "outside-of-how-many",
      question: say`Of the ${checks.length} recommendations in the table, how many is the soil outside of?`,
      unit: "",
      value: outside,
      tolerance: { abs: 0.001 },
      wrongTurns: [
        {
          value: inside,
          text: say`That many the soil is inside of, with all that they limit.`,
        },
        {
          value: inside + incomplete,
          text: say`Those are the ones that it is not outside of. Count the others.`,
        },
        {
          value: outside + incomplete,
          text: say`Those that could not be judged, because something was not measured, count neither way.`,
        },
        {
          value: differ,
          text: say`That is how many things they find this soil both inside and outside of.`,
        },
      ],
      hint: say`One criterion outside is enough to be outside of the recommendation.`,
      worked: outside === 0 ? say`None of them.` : say`${outside} of them: ${named}.`,
      why: say`Inside of ${inside}, outside of ${outside}, and ${incomplete} ask for something that was not measured. One and the same soil: the recommendations disagree.`,
    },
    {
      kind: "choice",
      id: "what-inside-proves",
      question: say`A soil lies inside an envelope. Does that prove it suitable? Answer "yes", "no" or "only for walls".`,
      options: ["yes", "no", "only for walls"],
      value: "no",
      wrongTurns: [
        {
          value: "yes",
          text: say`Soils made to lie inside such limits did not all do well when they were tested.`,
        },
        {
          value: "only for walls",
          text: say`The limits are written for walls, and even there they prove nothing.`,
        },
      ],
      hint: say`Read the last note under the table of recommendations.`,
      worked: say`No. ${checks[0]?.caution ?? ""}`,
      why: checks[0]?.caution ?? "",
    },
  ];
}
