import { sum } from "simple-statistics";
import { passingAtSize, sizeAtPassing } from "../grading/curve.js";
import { SIZE_BOUNDARIES } from "../grading/fractions.js";
import type { JarAnalysis } from "../grading/sedimentation/jar.js";
import type { GuidanceComparison } from "../guidance/comparison.js";
import type { JarRecord } from "../lab/jar.js";
import { powerOf } from "../numerics/powerOf.js";
import { formatPlain } from "../quantities/format.js";
import { joinTexts, say } from "../words/message.js";
import type { ClassSoil } from "./classSoil.js";
import { answerable, type Exercise, one, three, whole, YES_OR_NO } from "./exercise.js";

/**
 * The exercises from the jar to the curve and its recommendations, with answers computed from the soil of
 * the class. Those that its jar and its sieves do not allow are left out.
 *
 * @param comparison of the same soil's curve, by `compareGuidance`.
 *
 * @example
 * const row = (sizeMm, retainedG, row) => ({ sizeMm, retainedG, label: String(sizeMm), row });
 * const sieve = { file: "class.csv", dryMassG: 1000, washedDryMassG: 710, splits: [], rows: [row(4, 0, 5), row(2, 300, 6), row(0.063, 400, 7)], panG: 10 };
 * const soil = classSoil({ sieve });
 * const exercises = gradingExercises(soil, compareGuidance(soil.curve, GUIDANCE_ENTRIES));
 * exercises.map(({ id }) => id) // => ["passing-2-mm", "passing-finest", "sand-share", "d60-of-the-soil", "is-d10-known", "outside-of-how-many", "what-inside-proves"]
 * exercises[0].value // => 70
 */
export function gradingExercises(soil: ClassSoil, comparison: GuidanceComparison): Exercise[] {
  const { jar, jarRecord } = soil;
  return answerable([
    ...(jar && jarRecord ? jarRows(jar, jarRecord) : []),
    passing2Row(soil),
    finestRow(soil),
    ...fractionRows(soil),
    ...curveRows(soil),
    ...guidanceRows(comparison),
  ]);
}

const grams = (value: number) => formatPlain(value, 5);

function jarRows({ shares }: JarAnalysis, jarRecord: JarRecord): Exercise[] {
  const [sand, , clay] = shares;
  const [sandMm, siltMm, wholeMm] = jarRecord.layers.map(({ topMm }) => topMm);
  return [
    {
      kind: "number",
      id: "jar-sand-share",
      question: say`The tops stand at ${formatPlain(sandMm)} mm (sand), ${formatPlain(siltMm)} mm (silt) and ${formatPlain(wholeMm)} mm (clay). Which share of the settled height is sand and gravel?`,
      unit: "%",
      value: sand.heightSharePct,
      tolerance: { abs: 1 },
      mistakes: [
        {
          value: (100 * sandMm) / jarRecord.waterDepthMm,
          text: say`This is the sand in percent of the depth of the water. Only what has settled counts.`,
        },
        {
          value: (100 * siltMm) / wholeMm,
          text: say`This is sand and silt together: the silt's top stands on the sand.`,
        },
        {
          value: (100 * sandMm) / siltMm,
          text: say`This leaves the clay out of the whole height.`,
        },
      ],
      hint: say`Height of the sand over the top of the clay, which is the whole of the settled height; times 100.`,
      worked: say`100 × ${formatPlain(sandMm)} ÷ ${formatPlain(wholeMm)} = ${one(sand.heightSharePct)} %.`,
      why: say`By mass it may be anything from ${whole(sand.lowPct)} to ${whole(sand.highPct)} %: a height is no mass.`,
    },
    {
      kind: "choice",
      id: "jar-clay-by-mass",
      question: say`Is the clay's share of the mass less than its share of the height, the same, or more?`,
      options: [
        { key: "less", text: say`less` },
        { key: "same", text: say`the same` },
        { key: "more", text: say`more` },
      ],
      value: besideInterval(clay.heightSharePct, clay),
      mistakes: [
        {
          value: "same",
          text: say`That would be so if all layers were packed alike. They are not.`,
        },
        {
          value: "more",
          text: say`Think of what stands between the grains of a fresh layer of clay.`,
        },
        {
          value: "less",
          text: say`In this jar the heights do not decide it: the mass that they allow may be as large as that.`,
        },
      ],
      hint: say`What fills the room between the grains of a layer that has just settled?`,
      worked: say`The clay has ${whole(clay.heightSharePct)} % of the height; by mass that allows ${whole(clay.lowPct)} to ${whole(clay.highPct)} %.`,
      why: say`A fresh layer of clay is mostly water: ${whole(clay.heightSharePct)} % of the height allows ${whole(clay.lowPct)} to ${whole(clay.highPct)} % of the mass.`,
    },
  ];
}

/** Where an interval lies beside a value. */
function besideInterval(
  value: number,
  { lowPct, highPct }: { readonly lowPct: number; readonly highPct: number },
): "less" | "same" | "more" {
  if (highPct < value) return "less";
  return lowPct > value ? "more" : "same";
}

const SAND_ENDS_MM = 2;

/** Without a value where no sieve of 2 mm was used. */
function passing2Row({ sieve: { rows }, sieveRecord }: ClassSoil): Exercise {
  const { dryMassG, washedDryMassG = Number.NaN } = sieveRecord;
  const at = rows.findIndex(({ sizeMm }) => sizeMm === SAND_ENDS_MM);
  const { passingPct, retainedG } = rows[at] ?? { passingPct: Number.NaN, retainedG: Number.NaN };
  const downTo2G = sum(rows.slice(0, at + 1).map((row) => row.retainedG));
  return {
    kind: "number",
    id: "passing-2-mm",
    question: say`Of ${grams(dryMassG)} g, ${grams(downTo2G)} g stayed on 2 mm and the coarser sieves. How much of the dry mass passes 2 mm?`,
    unit: "%",
    value: passingPct,
    tolerance: { abs: 0.5 },
    mistakes: [
      {
        value: 100 * (1 - retainedG / dryMassG),
        text: say`Only what stayed on the 2 mm sieve was taken off. What stayed on the coarser sieves did not pass 2 mm either: add it up.`,
      },
      {
        value: 100 * (1 - downTo2G / washedDryMassG),
        text: say`This is of the mass after washing. The fines that went down the drain are soil too: divide by the mass before washing.`,
      },
    ],
    hint: say`Divide what stayed by the dry mass before washing, and take the rest to 100 %.`,
    worked: say`100 × (1 − ${grams(downTo2G)} ÷ ${grams(dryMassG)}) = ${one(passingPct)} %.`,
    why: say`Passing counts everything finer, not what lies between two sieves.`,
  };
}

function finestRow({ sieve, sieveRecord }: ClassSoil): Exercise {
  const { dryMassG, washedDryMassG, panG } = sieveRecord;
  const finest = sieve.rows[sieve.rows.length - 1];
  const onAllG = sum(sieve.rows.map(({ retainedG }) => retainedG));
  // Without washing there are no mistakes about it.
  const washedG = washedDryMassG ?? Number.NaN;
  const washedOutG = dryMassG - washedG;
  const lostG = (washedDryMassG ?? dryMassG) - onAllG - panG;
  const where =
    washedDryMassG === undefined
      ? say`the sample was not washed, in the pan ${grams(panG)} g, not recovered ${grams(lostG)} g`
      : say`washed out ${grams(washedOutG)} g, in the pan ${grams(panG)} g, not recovered ${grams(lostG)} g`;
  return {
    kind: "number",
    id: "passing-finest",
    question: say`Of ${grams(dryMassG)} g dry before washing, ${grams(onAllG)} g stayed on all sieves together. How much passes the finest sieve, ${formatPlain(finest.sizeMm)} mm?`,
    unit: "%",
    value: finest.passingPct,
    tolerance: { abs: 0.5 },
    mistakes: [
      {
        value: 100 * (1 - onAllG / washedG),
        text: say`This is of the mass after washing: nearly all fines went out with the water and were forgotten. Divide by the mass before washing.`,
      },
      {
        value: (100 * panG) / dryMassG,
        text: say`This is the pan alone. The pan holds only what the washing left behind.`,
      },
      {
        value: (100 * washedOutG) / dryMassG,
        text: say`This is what was washed out. The pan passed the finest sieve as well.`,
      },
      {
        value: (100 * finest.retainedG) / dryMassG,
        text: say`This is what stayed on the finest sieve, not what went through it.`,
      },
    ],
    hint: say`What stayed on all sieves together did not pass. All the rest did, with the water or into the pan.`,
    worked: say`100 × (1 − ${grams(onAllG)} ÷ ${grams(dryMassG)}) = ${one(finest.passingPct)} %; ${where}.`,
    why:
      washedDryMassG === undefined
        ? say`The sample was not washed: more fines than that cling to the sand, and nobody has weighed them.`
        : say`Of these fines ${grams(washedOutG)} g went out with the water and only ${grams(panG)} g were in the pan: without washing they would have clung to the sand.`,
  };
}

function fractionRows({ curve, fractions }: ClassSoil): Exercise[] {
  const { finesPct = Number.NaN, sandPct = Number.NaN, boundaries } = fractions;
  const passing = finesPct + sandPct;
  const { iso14688, astm } = SIZE_BOUNDARIES;
  const other = boundaries.siltMm === astm.siltMm ? iso14688 : astm;
  const [low, high] = [other.siltMm, other.sandMm].map(
    (sizeMm) => passingAtSize(curve, sizeMm) ?? Number.NaN,
  );
  return [
    {
      kind: "number",
      id: "sand-share",
      question: say`How much of the soil is sand, between ${boundaries.siltMm} and ${boundaries.sandMm} mm? Work out what passes both, or read it off the curve.`,
      unit: "%",
      value: sandPct,
      tolerance: { abs: 1.5 },
      mistakes: [
        {
          value: passing,
          text: say`This is all that passes ${boundaries.sandMm} mm, fines included: take the fines off.`,
        },
        {
          value: high - low,
          text: say`This is sand by other boundaries, ${other.siltMm} to ${other.sandMm} mm. Both are in use: always say which.`,
        },
        {
          value: 100 - finesPct,
          text: say`This is sand and gravel together: all that is coarser than the fines.`,
        },
      ],
      hint: say`Passing at the upper boundary less passing at the lower one.`,
      worked: say`${one(passing)} − ${one(finesPct)} = ${one(sandPct)} %.`,
      why: Number.isFinite(high - low)
        ? say`With ${other.siltMm} and ${other.sandMm} mm as boundaries the same soil has ${one(high - low)} % sand: a share without its boundaries says little.`
        : say`A share without its boundaries says little.`,
    },
  ];
}

const NOWHERE = { sizeMm: Number.NaN, passingPct: Number.NaN };

/** D60 between its two measured points, and whether D10 is known. */
function curveRows({ curve, sizes }: ClassSoil): Exercise[] {
  const { points } = curve;
  const above = points.findIndex(({ passingPct }) => passingPct >= 60);
  const [low, high] = above < 1 ? [NOWHERE, NOWHERE] : [points[above - 1], points[above]];
  const part = (60 - low.passingPct) / (high.passingPct - low.passingPct);
  const d60Mm = low.sizeMm * powerOf(high.sizeMm / low.sizeMm, part);
  const nearest = say`This is a sieve's own size. The curve reaches the percentage between two sieves.`;
  const finest = one(points[0].passingPct);
  const known = sizes.d10 !== undefined;
  return [
    {
      kind: "number",
      id: "d60-of-the-soil",
      question: say`Read D60 off the curve: the size that 60 % of the mass passes.`,
      unit: "mm",
      value: d60Mm,
      tolerance: { rel: 0.08 },
      mistakes: [
        {
          value: low.sizeMm + part * (high.sizeMm - low.sizeMm),
          text: say`This is read as if the sizes stood evenly along the axis. They stand by their logarithm: half-way between 1 and 10 lies 3.2.`,
        },
        {
          value: sizeAtPassing(curve, 40) ?? Number.NaN,
          text: say`This is the size that 60 % stay on: the axis was read from above. It counts what passes.`,
        },
        { value: low.sizeMm, text: nearest },
        { value: high.sizeMm, text: nearest },
      ],
      hint: say`Go across from 60 % to the curve and down to the axis. The axis counts in tenfold steps: half-way between 1 and 10 lies 3.2, not 5.5.`,
      worked: say`Between ${three(low.sizeMm)} mm (${one(low.passingPct)} %) and ${three(high.sizeMm)} mm (${one(high.passingPct)} %): ${three(low.sizeMm)} × (${three(high.sizeMm)} ÷ ${three(low.sizeMm)}) ^ ((60 − ${one(low.passingPct)}) ÷ (${one(high.passingPct)} − ${one(low.passingPct)})) = ${three(d60Mm)} mm.`,
      why: say`The line between two points is straight on the logarithm of size: ${three(low.sizeMm)} × (${three(high.sizeMm)} ÷ ${three(low.sizeMm)}) ^ part.`,
    },
    {
      kind: "choice",
      id: "is-d10-known",
      question: say`Do these measurements give D10, the size that 10 % of the mass passes?`,
      options: YES_OR_NO,
      value: known ? "yes" : "no",
      mistakes: [
        {
          value: "yes",
          text: say`Follow the curve to its finest measured point and read how much still passes there.`,
        },
        {
          value: "no",
          text: say`Look at the finest measured point: less than 10 % passes it.`,
        },
      ],
      hint: say`D10 is measured only where the curve comes down to 10 %.`,
      worked: known
        ? say`At the finest measured size only ${finest} % pass: it is known.`
        : say`At the finest measured size ${finest} % still pass: it is not known.`,
      why: known
        ? say`The curve comes down to ${finest} %, below 10 %.`
        : say`At the finest measured size ${finest} % still pass. To draw the curve on by hand would be to invent D10, and Cu with it.`,
    },
  ];
}

/** How many of the recommendations the soil is outside of, and what lying inside proves. */
function guidanceRows({ checks, disagreements }: GuidanceComparison): Exercise[] {
  const count = (verdict: string) => checks.filter((check) => check.verdict === verdict).length;
  const [outside, inside, incomplete] = ["outside", "inside", "incomplete"].map(count);
  const named = checks.flatMap(({ verdict, entry }) => (verdict === "outside" ? entry.title : []));
  const caution = checks[0]?.caution ?? "";
  return [
    {
      kind: "number",
      id: "outside-of-how-many",
      question: say`Of the ${checks.length} recommendations in the table, how many is the soil outside of?`,
      unit: "",
      value: outside,
      tolerance: { abs: 0.001 },
      mistakes: [
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
          value: disagreements.filter(({ verdictsDiffer }) => verdictsDiffer).length,
          text: say`That is how many things they find this soil both inside and outside of.`,
        },
      ],
      hint: say`One criterion outside is enough to be outside of the recommendation.`,
      worked:
        outside === 0 ? say`None of them.` : say`${outside} of them: ${joinTexts(named, "; ")}.`,
      why: say`Inside of ${inside}, outside of ${outside}, and ${incomplete} ask for something that was not measured. One and the same soil: the recommendations disagree.`,
    },
    {
      kind: "choice",
      id: "what-inside-proves",
      question: say`A soil lies inside an envelope. Does that prove it suitable?`,
      options: [...YES_OR_NO, { key: "walls", text: say`only for walls` }],
      value: "no",
      mistakes: [
        {
          value: "yes",
          text: say`Soils made to lie inside such limits did not all do well when they were tested.`,
        },
        {
          value: "walls",
          text: say`The limits are written for walls, and even there they prove nothing.`,
        },
      ],
      hint: say`Who drew the envelope, for which earth, and what did they test?`,
      worked: say`It does not. ${caution}`,
      why: caution,
    },
  ];
}
