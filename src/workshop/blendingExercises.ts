import { formatFixed, formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { bucketExercises } from "./bucketExercises.js";
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
