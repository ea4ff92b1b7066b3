import { passingAtSize } from "../grading/passingAtSize.js";
import { formatFixed, formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { ClassSoil } from "./classSoil.js";
import type { Exercise } from "./exercise.js";

const SAND_ENDS_MM = 2;

/**
 * Exercises on sieving: passing at 2 mm, fines with what was washed out, and sand. Those that the typed
 * sieves do not allow are left out.
 *
 * Source: `analyseSieve`, `fractions`.
 */
export function sieveExercises({ sieve, sieveRecord, curve, fractions }: ClassSoil): Exercise[] {
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
