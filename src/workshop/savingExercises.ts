import { toMassShares } from "../batch/volumeParts.js";
import { formatFixed, formatPlain } from "../quantities/format.js";
import { say } from "../words/message.js";
import { type ClassWall, wallCement } from "./classWall.js";
import type { ChoiceExercise, Exercise } from "./exercise.js";

/**
 * The exercises on cement saved: cement in the wall, the honest saving, carbon, and parts by volume
 * against mass.
 *
 * @throws RangeError as `wallCement`. Source: `savingTrap`, `cementComparison`, `toMassShares`.
 *
 * @example
 * const wall = { wallVolumeM3: 3.6, cementPct: 8, dryDensityKgM3: 1890, concreteVolumeM3: 2.2, parts: { soil: 7, sand: 2, cement: 1 }, looseDryKgM3: { soil: 1130, sand: 1390, cement: 1200 } };
 * savingExercises(wall).map(({ id, value }) => [id, value]) // => [["cement-in-the-wall", 504], ["cement-saved", 22.1], ["carbon-follows-cement", "the same"], ["cement-by-volume", 10], ["cement-by-mass", 11.2]]
 */
export function savingExercises(wall: ClassWall): Exercise[] {
  const { wallVolumeM3, cementPct, dryDensityKgM3, concreteVolumeM3 } = wall;
  const { cementKg, trap, comparison } = wallCement(wall);
  const { low, high } = trap.savingPct;
  const sameVolume = comparison.concreteCement;
  const savingOf = (kilograms: number) => 100 * (1 - cementKg / kilograms);
  const whole = (value: number) => formatFixed(value, 0);
  const plain = (value: number) => formatPlain(value);
  const bothMiddle = (low + high) / 2;
  return [
    {
      kind: "number",
      id: "cement-in-the-wall",
      question: say`${plain(wallVolumeM3)} m³ of wall, ${plain(dryDensityKgM3)} kg/m³ dry with its cement, ${plain(cementPct)} % cement of the dry mass of soil and aggregate. How much cement?`,
      unit: "kg",
      value: cementKg,
      tolerance: { rel: 0.01 },
      wrongTurns: [
        {
          value: (wallVolumeM3 * dryDensityKgM3 * cementPct) / 100,
          text: say`The percentage was taken of everything. It is of soil and aggregate alone: divide by 100 plus the percentage.`,
        },
        {
          value: (dryDensityKgM3 * cementPct) / (100 + cementPct),
          text: say`This is for one cubic metre.`,
        },
      ],
      hint: say`Of 100 + ${plain(cementPct)} kg of dry wall, ${plain(cementPct)} kg are cement.`,
      worked: say`${plain(wallVolumeM3)} × ${plain(dryDensityKgM3)} × ${plain(cementPct)} ÷ (100 + ${plain(cementPct)}) = ${whole(cementKg)} kg.`,
      why: say`That is ${whole(cementKg / wallVolumeM3)} kg in each cubic metre of wall.`,
    },
    {
      kind: "number",
      id: "cement-saved",
      question: say`An all-concrete wall would take ${plain(concreteVolumeM3)} m³, with ${plain(sameVolume.low)} to ${plain(sameVolume.high)} kg of cement in a cubic metre. How much less cement does the earth wall hold? Below zero where it holds more.`,
      unit: "%",
      value: bothMiddle,
      between: { low, high },
      tolerance: { abs: 1 },
      wrongTurns: [
        {
          value: trap.falseSavingPct,
          text: say`This is the trap: cement was set against whole concrete, and most of that is stone and sand.`,
        },
        {
          value: savingOf((wallVolumeM3 * (sameVolume.low + sameVolume.high)) / 2),
          text: say`Both walls were taken as equally thick. The concrete one has its own volume.`,
        },
        {
          value: 100 - bothMiddle,
          text: say`This is what the earth wall holds, in percent of the concrete's cement. The saving is the rest.`,
        },
      ],
      hint: say`First the cement in the concrete: its volume times kg in a cubic metre. Then cement against cement.`,
      worked: say`${plain(concreteVolumeM3)} × ${plain(sameVolume.low)} to ${plain(sameVolume.high)} = ${whole(trap.concreteCementKg.low)} to ${whole(trap.concreteCementKg.high)} kg; 100 × (1 − ${whole(cementKg)} ÷ that) = ${whole(low)} to ${whole(high)} %.`,
      why: trap.text,
    },
    carbonExercise(),
    ...volumePartExercises(wall),
  ];
}

function carbonExercise(): ChoiceExercise {
  return {
    kind: "choice",
    id: "carbon-follows-cement",
    question: say`Both walls are made with the same cement. Is the saving in carbon of cement, in percent, smaller than that in cement, the same, or larger? Answer "smaller", "the same" or "larger".`,
    options: ["smaller", "the same", "larger"],
    value: "the same",
    wrongTurns: [
      {
        value: "smaller",
        text: say`The factor is that of one and the same cement: it stands above and below the line.`,
      },
      {
        value: "larger",
        text: say`The factor is that of one and the same cement: it stands above and below the line.`,
      },
    ],
    hint: say`Multiply both by the same factor and divide.`,
    worked: say`100 × (1 − factor × cement ÷ (factor × cement in the concrete)): the factor cancels.`,
    why: say`The factor cancels, in percent; in kilograms its range matters. Aggregate, haul and what else differs are no part of this.`,
  };
}

/**
 * Exercises on parts by volume: cement in percent of all parts, and the same parts by mass.
 *
 * Source: `toMassShares`.
 */
function volumePartExercises({
  parts,
  looseDryKgM3,
}: Pick<ClassWall, "parts" | "looseDryKgM3">): Exercise[] {
  const { soil, sand, cement } = parts;
  const shares = toMassShares(
    [
      { id: "soil", parts: soil, looseBulkDensityKgM3: looseDryKgM3.soil },
      { id: "sand", parts: sand, looseBulkDensityKgM3: looseDryKgM3.sand },
    ],
    { parts: cement, looseBulkDensityKgM3: looseDryKgM3.cement },
  );
  const { cementPct, cementOfAllPct, cementByVolumePct } = shares;
  const one = (value: number) => formatFixed(value, 1);
  const plain = (value: number) => formatPlain(value);
  const total = soil + sand + cement;
  const soilKg = soil * looseDryKgM3.soil;
  const sandKg = sand * looseDryKgM3.sand;
  const cementKg = cement * looseDryKgM3.cement;
  const toSoil = (100 * cement) / (soil + sand);
  return [
    {
      kind: "number",
      id: "cement-by-volume",
      question: say`${plain(soil)} buckets of soil, ${plain(sand)} of sand, ${plain(cement)} of cement: cement in percent of all buckets?`,
      unit: "%",
      value: cementByVolumePct,
      tolerance: { abs: 0.2 },
      wrongTurns: [
        {
          value: toSoil,
          text: say`This is cement to soil and sand. Asked is cement in all buckets, its own counted.`,
        },
        {
          value: (100 * cement) / soil,
          text: say`This is cement to soil alone: the sand was left out.`,
        },
        {
          value: cementPct,
          text: say`This is by mass. Count buckets only.`,
        },
      ],
      hint: say`How many buckets are there in all?`,
      worked: say`100 × ${plain(cement)} ÷ ${plain(total)} = ${one(cementByVolumePct)} %.`,
      why: say`It says nothing of the mass yet: that depends on how heavy each bucket is.`,
    },
    {
      kind: "number",
      id: "cement-by-mass",
      question: say`The same buckets hold, dry and loose, soil ${plain(looseDryKgM3.soil)}, sand ${plain(looseDryKgM3.sand)}, cement ${plain(looseDryKgM3.cement)} kg/m³. Cement in percent of the dry mass of soil and sand?`,
      unit: "%",
      value: cementPct,
      tolerance: { abs: 0.15 },
      wrongTurns: [
        {
          value: cementByVolumePct,
          text: say`This is the share of the buckets. A bucket of each weighs something else.`,
        },
        {
          value: toSoil,
          text: say`This is buckets to buckets. Weigh them.`,
        },
        {
          value: cementOfAllPct,
          text: say`This is of everything, cement counted. A cement content is of the dry mass of soil and aggregate alone.`,
        },
        {
          value: (100 * cementKg) / soilKg,
          text: say`The sand was left out of what the cement is compared with.`,
        },
      ],
      hint: say`Mass of each: buckets times density. Then cement over soil and sand together.`,
      worked: say`100 × ${plain(cementKg)} ÷ (${plain(soilKg)} + ${plain(sandKg)}) = ${one(cementPct)} %.`,
      why: say`${one(cementByVolumePct)} % of the buckets is ${one(cementPct)} % by mass with these densities, and something else with others.`,
    },
  ];
}
