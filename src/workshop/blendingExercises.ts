import { mean, rootMeanSquare, sum } from "simple-statistics";
import type { BucketChange } from "../blend/parts.js";
import { displayUnit, displayValue, formatPlain, type UnitSystem } from "../quantities/format.js";
import { joinTexts, say } from "../words/message.js";
import type { ClassBlend } from "./classBlend.js";
import { answerable, type Exercise, one, three } from "./exercise.js";

/**
 * The exercises on blending: sand by hand, shares, the misfit as a root mean square, buckets and mass,
 * and the miscount that does most harm. The last is left out where no whole-number recipe was found.
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const target = { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 30 }, { sizeMm: 0.5, passingPct: 70 }] };
 * const exercises = blendingExercises(classBlend({ materials, target, looseDryDensityKgM3: [1200, 1500] }));
 * exercises.slice(0, 2).map(({ id, value }) => [id, value]) // => [["sand-to-one-of-soil", 0.3333], ["soil-share", 75]]
 */
export function blendingExercises(blend: ClassBlend, units: UnitSystem = "SI"): Exercise[] {
  return answerable([
    ...handRows(blend),
    misfitRow(blend),
    bucketRow(blend, units),
    ...miscountRows(blend),
  ]);
}

function handRows({ finesPct, finesMm, targetFinesPct, byHand }: ClassBlend): Exercise[] {
  const [soilPct, sandPct] = finesPct;
  const ratio = byHand.sandToOneOfSoil ?? Number.NaN;
  const soilShare = byHand.soilSharePct ?? Number.NaN;
  const balance = say`(${one(soilPct)} − ${one(targetFinesPct)}) ÷ (${one(targetFinesPct)} − ${one(sandPct)}) = ${three(ratio)}`;
  return [
    {
      kind: "number",
      id: "sand-to-one-of-soil",
      question: say`The soil has ${one(soilPct)} % fines (below ${formatPlain(finesMm)} mm), the sand ${one(sandPct)} %. How many parts of sand to one of soil, by dry mass, give ${one(targetFinesPct)} %?`,
      recalls: {
        id: "passing-finest",
        told: one(soilPct),
        question: (number) =>
          say`The soil has the fines (below ${formatPlain(finesMm)} mm) that you found in ${number}, the sand ${one(sandPct)} %. How many parts of sand to one of soil, by dry mass, give ${one(targetFinesPct)} %?`,
      },
      unit: "",
      value: ratio,
      tolerance: { rel: 0.03 },
      mistakes: [
        {
          value: (soilPct - targetFinesPct) / targetFinesPct,
          text: say`The fines that the sand itself brings were left out: it is not clean.`,
        },
        {
          value: targetFinesPct / soilPct,
          text: say`This is the target over the soil's fines: near the share of soil in the blend, not sand to one of soil.`,
        },
        {
          value: (soilPct - targetFinesPct) / 100,
          text: say`This is the difference as a fraction. Ask how many points one part of sand can take up.`,
        },
        {
          value: 1 - soilShare / 100,
          text: say`This is sand in the whole blend. Asked is sand to one part of soil.`,
        },
      ],
      hint: say`One part of soil is so many points above the target, one part of sand so many below it. They must balance.`,
      worked: say`${balance}.`,
      why: say`Excess over room: ${balance}.`,
    },
    {
      kind: "number",
      id: "soil-share",
      question: say`Which share of that blend is soil?`,
      unit: "%",
      value: soilShare,
      tolerance: { abs: 1 },
      mistakes: [
        {
          value: 100 * ratio,
          text: say`This is the sand to one of soil, times 100. A share is a part of the whole.`,
        },
        {
          value: 100 - 100 * ratio,
          text: say`The sand was taken off the soil. It is added to it: one part of soil in so many parts of all.`,
        },
      ],
      hint: say`One part of soil, and the whole is one part more than the sand.`,
      worked: say`100 ÷ (1 + ${three(ratio)}) = ${one(soilShare)} %.`,
      why: say`Ratios and shares are mixed up more often than anything else here: one part in ${three(1 + ratio)} parts.`,
    },
  ];
}

function misfitRow({ handDesign }: ClassBlend): Exercise {
  const sorted = [...handDesign.points].sort(
    (a, b) => Math.abs(b.differencePct) - Math.abs(a.differencePct),
  );
  // A large, a middling and a small one: like ones would have the same mean with and without squares.
  const places = [0, Math.floor(sorted.length / 2), sorted.length - 2];
  const off = sorted
    .filter((_, index) => places.includes(index))
    .map(({ differencePct }) => differencePct);
  const value = rootMeanSquare(off);
  const squares = joinTexts(
    off.map((difference) => say`(${one(difference)})²`),
    " + ",
  );
  return {
    kind: "number",
    id: "misfit-by-hand",
    question: say`At ${off.length} sizes the blend by hand is off by these points: ${joinTexts(off.map(one), "; ")}. What is their root mean square?`,
    unit: "",
    value,
    tolerance: { rel: 0.02 },
    mistakes: [
      {
        value: mean(off.map(Math.abs)),
        text: say`This is the mean without signs. Least squares counts the squares, so that one large miss weighs more than several small ones.`,
      },
      {
        // All to one side, nothing cancels: it is the mean without signs then.
        value: Math.min(...off) < 0 && Math.max(...off) > 0 ? mean(off) : Number.NaN,
        text: say`This is the plain mean: differences above and below the target cancel in it.`,
      },
      { value: value ** 2, text: say`The root is still to be drawn.` },
      {
        value: value * Math.sqrt(off.length),
        text: say`The sum was not divided by the count of sizes.`,
      },
      {
        value: sum(off.map((difference) => difference ** 2)),
        text: say`This is the sum of squares: divide by the count, then draw the root.`,
      },
    ],
    hint: say`Square each, take the mean of the squares, draw the root.`,
    worked: say`√((${squares}) ÷ ${off.length}) = ${one(value)} points.`,
    why: say`Over all ${handDesign.points.length} sizes it is ${one(handDesign.rmsDifferencePct)} points.`,
  };
}

/** The bucket recipe of the exercise: soil, then sand. */
const [SOIL_BUCKETS, SAND_BUCKETS] = [3, 1];

function bucketRow({ looseDryDensityKgM3 }: ClassBlend, units: UnitSystem): Exercise {
  const unit = displayUnit("density", units);
  const [soilKgM3, sandKgM3] = looseDryDensityKgM3.map((density) =>
    Number(formatPlain(displayValue(density, "density", units)).number),
  );
  const sandShare = (soil: number, sand: number) =>
    (100 * SAND_BUCKETS * sand) / (SOIL_BUCKETS * soil + SAND_BUCKETS * sand);
  const value = sandShare(soilKgM3, sandKgM3);
  return {
    kind: "number",
    id: "sand-by-mass",
    question: say`${SOIL_BUCKETS} buckets of soil (${formatPlain(soilKgM3)} ${unit} dry, loose) and ${SAND_BUCKETS} of sand (${formatPlain(sandKgM3)} ${unit}): which share of the dry mass is sand?`,
    unit: "%",
    value,
    tolerance: { abs: 0.5 },
    mistakes: [
      {
        value: sandShare(1, 1),
        text: say`This is the share of the buckets, by volume. A bucket of sand does not weigh as much as a bucket of soil.`,
      },
      {
        value: sandShare(sandKgM3, soilKgM3),
        text: say`The two densities were exchanged.`,
      },
      {
        value: (100 * SAND_BUCKETS * sandKgM3) / (SOIL_BUCKETS * soilKgM3),
        text: say`This is sand to soil. A share is a part of the whole.`,
      },
    ],
    hint: say`Turn each into mass: buckets times density. Then the sand's part of the sum.`,
    worked: say`100 × ${SAND_BUCKETS} × ${formatPlain(sandKgM3)} ÷ (${SOIL_BUCKETS} × ${formatPlain(soilKgM3)} + ${SAND_BUCKETS} × ${formatPlain(sandKgM3)}) = ${one(value)} %.`,
    why: say`One bucket in ${SOIL_BUCKETS + SAND_BUCKETS} is ${one(value)} % here. With other densities it is another share: weigh a full bucket of each.`,
  };
}

/** Its options are the buckets of the class's own materials, so they are made, not written. */
function miscountRows({ materials, names, parts, changes }: ClassBlend): Exercise[] {
  if (parts.status !== "ok" || changes.length === 0) return [];
  const worst = changes.reduce((most, change) =>
    most.rmsDifferencePct >= change.rmsDifferencePct ? most : change,
  );
  const nameOf = (id: string) => names[materials.findIndex((material) => material.id === id)];
  const recipe = parts.materials
    .filter((line) => line.parts > 0)
    .map((line) => say`${line.parts} ${nameOf(line.id)}`);
  const keyOf = ({ id, change }: BucketChange) => `${id} ${change > 0 ? "+1" : "-1"}`;
  const textOf = ({ id, change }: BucketChange) => `${nameOf(id)} ${change > 0 ? "+1" : "-1"}`;
  return [
    {
      kind: "choice",
      id: "worst-miscount",
      question: say`Which miscount of one bucket takes the blend furthest from its target? The recipe is ${joinTexts(recipe)}.`,
      options: changes.map((change) => ({ key: keyOf(change), text: textOf(change) })),
      value: keyOf(worst),
      mistakes: changes.map((change) => ({
        value: keyOf(change),
        text: say`That one leaves the blend ${one(change.rmsDifferencePct)} points from the target. Another is worse.`,
      })),
      hint: say`One bucket of few matters more than one of many.`,
      worked: say`${textOf(worst)}: ${one(worst.rmsDifferencePct)} points from the target, in place of ${one(parts.rmsDifferencePct)}.`,
      why: say`It takes the blend from ${one(parts.rmsDifferencePct)} to ${one(worst.rmsDifferencePct)} points. Count that material aloud.`,
    },
  ];
}
