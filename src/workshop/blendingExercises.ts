import { toMassShares } from "../batch/volumeParts.js";
import type { BucketChange } from "../blend/parts.js";
import { formatFixed, formatNumber, formatPlain } from "../quantities/format.js";
import { say } from "../words/message.js";
import type { ClassBlend } from "./classBlend.js";
import type { Exercise } from "./exercise.js";

/**
 * The exercises on blending: sand by hand, shares, the misfit as a root mean square, buckets and mass,
 * and the miscount that does most harm.
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const target = { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 30 }, { sizeMm: 0.5, passingPct: 70 }] };
 * const exercises = blendingExercises(classBlend({ materials, target, looseDryDensityKgM3: [1200, 1500] }));
 * exercises.slice(0, 2).map(({ id, value }) => [id, value]) // => [["sand-to-one-of-soil", 0.3333], ["soil-share", 75]]
 */
export function blendingExercises(blend: ClassBlend): Exercise[] {
  return [...handExercises(blend), misfitExercise(blend), ...bucketExercises(blend)];
}

function handExercises({ finesPct, targetFinesPct, byHand }: ClassBlend): Exercise[] {
  const [soilPct, sandPct] = finesPct;
  const ratio = byHand.sandToOneOfSoil as number;
  const soilShare = byHand.soilSharePct as number;
  const one = (value: number) => formatFixed(value, 1);
  const three = (value: number) => formatNumber(value, 3);
  const sum = say`(${one(soilPct)} − ${one(targetFinesPct)}) ÷ (${one(targetFinesPct)} − ${one(sandPct)}) = ${three(ratio)}`;
  return [
    {
      kind: "number",
      id: "sand-to-one-of-soil",
      question: say`The soil has ${one(soilPct)} % fines, the sand ${one(sandPct)} %. How many parts of sand to one of soil, by dry mass, give ${one(targetFinesPct)} %?`,
      unit: "",
      value: ratio,
      tolerance: { rel: 0.03 },
      wrongTurns: [
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
      worked: say`${sum}.`,
      why: say`Excess over room: ${sum}.`,
    },
    {
      kind: "number",
      id: "soil-share",
      question: say`Which share of that blend is soil?`,
      unit: "%",
      value: soilShare,
      tolerance: { abs: 1 },
      wrongTurns: [
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

function misfitExercise({ handDesign }: ClassBlend): Exercise {
  const sorted = [...handDesign.points].sort(
    (a, b) => Math.abs(b.differencePct) - Math.abs(a.differencePct),
  );
  // A large, a middling and a small one: like ones would have the same mean with and without squares.
  const places = [0, Math.floor(sorted.length / 2), sorted.length - 2];
  const points = sorted.filter((_, index) => places.includes(index));
  const off = points.map(({ differencePct }) => differencePct);
  const squares = off.reduce((sum, value) => sum + value ** 2, 0);
  const value = Math.sqrt(squares / off.length);
  const one = (number: number) => formatFixed(number, 1);
  const list = off.map(one).join(say` and `);
  const sum = off.map((number) => say`(${one(number)})²`).join(" + ");
  return {
    kind: "number",
    id: "misfit-by-hand",
    question: say`At ${off.length} sizes the blend by hand is off by ${list} points. What is the root mean square of these?`,
    unit: "",
    value,
    tolerance: { rel: 0.02 },
    wrongTurns: [
      {
        value: off.reduce((total, number) => total + Math.abs(number), 0) / off.length,
        text: say`This is the mean without signs. Least squares counts the squares, so that one large miss weighs more than several small ones.`,
      },
      // All to one side, nothing cancels: it is the mean without signs then.
      ...(Math.min(...off) < 0 && Math.max(...off) > 0
        ? [
            {
              value: off.reduce((total, number) => total + number, 0) / off.length,
              text: say`This is the plain mean: differences above and below the target cancel in it.`,
            },
          ]
        : []),
      { value: squares / off.length, text: say`The root is still to be drawn.` },
      { value: Math.sqrt(squares), text: say`The sum was not divided by the count of sizes.` },
      {
        value: squares,
        text: say`This is the sum of squares: divide by the count, then draw the root.`,
      },
    ],
    hint: say`Square each, take the mean of the squares, draw the root.`,
    worked: say`√((${sum}) ÷ ${off.length}) = ${one(value)} points.`,
    why: say`Over all ${handDesign.points.length} sizes it is ${one(handDesign.rmsDifferencePct)} points.`,
  };
}

/** The bucket recipe of the exercise: soil, then sand. */
const BUCKETS = [3, 1] as const;

/**
 * Exercises on buckets: what buckets of soil and sand are by mass, and which miscount takes the blend
 * furthest from its target. The second is left out where no whole-number recipe was found.
 *
 * Source: `toMassShares`, `bucketSensitivity`.
 */
function bucketExercises({
  materials,
  looseDryDensityKgM3,
  parts,
  changes,
}: ClassBlend): Exercise[] {
  const [soilKgM3, sandKgM3] = looseDryDensityKgM3;
  const [soilBuckets, sandBuckets] = BUCKETS;
  const sandShare = (soil: number, sand: number) =>
    toMassShares(
      [
        { id: "soil", parts: soilBuckets, looseBulkDensityKgM3: soil },
        { id: "sand", parts: sandBuckets, looseBulkDensityKgM3: sand },
      ],
      { parts: 0, looseBulkDensityKgM3: 1000 },
    ).materials[1].sharePct;
  const value = sandShare(soilKgM3, sandKgM3);
  const kg = (number: number) => formatPlain(number);
  const byMass: Exercise = {
    kind: "number",
    id: "sand-by-mass",
    question: say`${soilBuckets} buckets of soil (${kg(soilKgM3)} kg/m³ dry, loose) and ${sandBuckets} of sand (${kg(sandKgM3)} kg/m³): which share of the dry mass is sand?`,
    unit: "%",
    value,
    tolerance: { abs: 0.5 },
    wrongTurns: [
      {
        value: sandShare(1, 1),
        text: say`This is the share of the buckets, by volume. A bucket of sand does not weigh as much as a bucket of soil.`,
      },
      {
        value: sandShare(sandKgM3, soilKgM3),
        text: say`The two densities were exchanged.`,
      },
      {
        value: (100 * sandBuckets * sandKgM3) / (soilBuckets * soilKgM3),
        text: say`This is sand to soil. A share is a part of the whole.`,
      },
    ],
    hint: say`Turn each into mass: buckets times density. Then the sand's part of the sum.`,
    worked: say`100 × ${sandBuckets} × ${kg(sandKgM3)} ÷ (${soilBuckets} × ${kg(soilKgM3)} + ${sandBuckets} × ${kg(sandKgM3)}) = ${formatFixed(value, 1)} %.`,
    why: say`One bucket in ${soilBuckets + sandBuckets} is ${formatFixed(value, 1)} % here. With other densities it is another share: weigh a full bucket of each.`,
  };
  const worst = changes.reduce<BucketChange | undefined>(
    (most, change) => (most && most.rmsDifferencePct >= change.rmsDifferencePct ? most : change),
    undefined,
  );
  if (parts.status !== "ok" || !worst) return [byMass];
  const used = materials.filter(({ id }) => changes.some((change) => change.id === id));
  const optionOf = ({ id, change }: Pick<BucketChange, "id" | "change">) =>
    `${id} ${change > 0 ? "+1" : "-1"}`;
  const points = (number: number) => formatFixed(number, 1);
  return [
    byMass,
    {
      kind: "choice",
      id: "worst-miscount",
      question: say`Which miscount of one bucket takes the blend furthest from its target? The recipe is ${used
        .map((material) => {
          const count = parts.materials.find(({ id }) => id === material.id)?.parts ?? 0;
          return `${count} ${material.id}`;
        })
        .join(", ")}.`,
      options: changes.map(optionOf),
      value: optionOf(worst),
      wrongTurns: changes
        .filter((change) => change !== worst)
        .map((change) => ({
          value: optionOf(change),
          text: say`That one leaves the blend ${points(change.rmsDifferencePct)} points from the target. Another is worse.`,
        })),
      hint: say`One bucket of few matters more than one of many.`,
      worked: say`${optionOf(worst)}: ${points(worst.rmsDifferencePct)} points from the target, in place of ${points(parts.rmsDifferencePct)}.`,
      why: say`It takes the blend from ${points(parts.rmsDifferencePct)} to ${points(worst.rmsDifferencePct)} points. Count that material aloud.`,
    },
  ];
}
