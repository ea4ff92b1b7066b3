import { formatFixed, formatPlain } from "../quantities/format.js";
import { say } from "../words/message.js";
import { type ClassWall, wallCement } from "./classWall.js";
import { answerable, type Exercise } from "./exercise.js";

/**
 * The exercises on cement saved: cement in the wall, the honest saving, carbon, and parts by volume
 * against mass.
 *
 * @throws RangeError as `wallCement`. Source: `savingTrap`, `cementComparison`, `toMassShares`.
 *
 * @example
 * const wall = { wallVolumeM3: 3.6, cementPct: 8, dryDensityKgM3: 1890, concreteVolumeM3: 2.2, parts: { soil: 7, sand: 2, cement: 1 }, looseDryKgM3: { soil: 1130, sand: 1390, cement: 1200 } };
 * savingExercises(wall).map(({ id, value }) => [id, value]) // => [["cement-in-the-wall", 504], ["cement-saved", 22.1], ["carbon-follows-cement", "same"], ["cement-by-volume", 10], ["cement-by-mass", 11.2]]
 */
export function savingExercises(wall: ClassWall): Exercise[] {
  return answerable([...cementRows(wall), CARBON_ROW, ...volumePartRows(wall)]);
}

const one = (value: number) => formatFixed(value, 1);
const whole = (value: number) => formatFixed(value, 0);
const plain = (value: number) => formatPlain(value);

/** Cement in the wall, and the honest saving beside the trap. */
function cementRows(wall: ClassWall): Exercise[] {
  const { wallVolumeM3, cementPct, dryDensityKgM3, concreteVolumeM3 } = wall;
  const { cementKg, trap, comparison } = wallCement(wall);
  const { low, high } = trap.savingPct;
  const middle = (low + high) / 2;
  const content = comparison.concreteCement;
  const sameVolumeKg = (wallVolumeM3 * (content.low + content.high)) / 2;
  return [
    {
      kind: "number",
      id: "cement-in-the-wall",
      question: say`${plain(wallVolumeM3)} m³ of wall, ${plain(dryDensityKgM3)} kg/m³ dry with its cement, ${plain(cementPct)} % cement of the dry mass of soil and aggregate. How much cement?`,
      unit: "kg",
      value: cementKg,
      tolerance: { rel: 0.01 },
      mistakes: [
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
      question: say`An all-concrete wall would take ${plain(concreteVolumeM3)} m³, with ${plain(content.low)} to ${plain(content.high)} kg of cement in a cubic metre. How much less cement does the earth wall hold? Below zero where it holds more.`,
      unit: "%",
      value: middle,
      between: { low, high },
      tolerance: { abs: 1 },
      mistakes: [
        {
          value: trap.falseSavingPct,
          text: say`This is the trap: cement was set against whole concrete, and most of that is stone and sand.`,
        },
        {
          value: 100 * (1 - cementKg / sameVolumeKg),
          text: say`Both walls were taken as equally thick. The concrete one has its own volume.`,
        },
        {
          value: 100 - middle,
          text: say`This is what the earth wall holds, in percent of the concrete's cement. The saving is the rest.`,
        },
      ],
      hint: say`First the cement in the concrete: its volume times kg in a cubic metre. Then cement against cement.`,
      worked: say`${plain(concreteVolumeM3)} × ${plain(content.low)} to ${plain(content.high)} = ${whole(trap.concreteCementKg.low)} to ${whole(trap.concreteCementKg.high)} kg; 100 × (1 − ${whole(cementKg)} ÷ that) = ${whole(low)} to ${whole(high)} %.`,
      why: trap.text,
    },
  ];
}

const CANCELS = say`The factor is that of one and the same cement: it stands above and below the line.`;

const CARBON_ROW: Exercise = {
  kind: "choice",
  id: "carbon-follows-cement",
  question: say`Both walls are made with the same cement. Is the saving in carbon of cement, in percent, smaller than that in cement, the same, or larger? Answer "smaller", "the same" or "larger".`,
  options: [
    { key: "smaller", text: say`smaller` },
    { key: "same", text: say`the same` },
    { key: "larger", text: say`larger` },
  ],
  value: "same",
  mistakes: [
    { value: "smaller", text: CANCELS },
    { value: "larger", text: CANCELS },
  ],
  hint: say`Multiply both by the same factor and divide.`,
  worked: say`100 × (1 − factor × cement ÷ (factor × cement in the concrete)): the factor cancels.`,
  why: say`The factor cancels, in percent; in kilograms its range matters. Aggregate, haul and what else differs are no part of this.`,
};

/** Cement in percent of all parts by volume, and the same parts by mass. */
function volumePartRows({
  parts: { soil, sand, cement },
  looseDryKgM3,
}: Pick<ClassWall, "parts" | "looseDryKgM3">): Exercise[] {
  const total = soil + sand + cement;
  const soilKg = soil * looseDryKgM3.soil;
  const sandKg = sand * looseDryKgM3.sand;
  const cementKg = cement * looseDryKgM3.cement;
  const byVolumePct = (100 * cement) / total;
  const byMassPct = (100 * cementKg) / (soilKg + sandKg);
  const toSoilPct = (100 * cement) / (soil + sand);
  return [
    {
      kind: "number",
      id: "cement-by-volume",
      question: say`${plain(soil)} buckets of soil, ${plain(sand)} of sand, ${plain(cement)} of cement: cement in percent of all buckets?`,
      unit: "%",
      value: byVolumePct,
      tolerance: { abs: 0.2 },
      mistakes: [
        {
          value: toSoilPct,
          text: say`This is cement to soil and sand. Asked is cement in all buckets, its own counted.`,
        },
        {
          value: (100 * cement) / soil,
          text: say`This is cement to soil alone: the sand was left out.`,
        },
        {
          value: byMassPct,
          text: say`This is by mass. Count buckets only.`,
        },
      ],
      hint: say`How many buckets are there in all?`,
      worked: say`100 × ${plain(cement)} ÷ ${plain(total)} = ${one(byVolumePct)} %.`,
      why: say`It says nothing of the mass yet: that depends on how heavy each bucket is.`,
    },
    {
      kind: "number",
      id: "cement-by-mass",
      question: say`The same buckets hold, dry and loose, soil ${plain(looseDryKgM3.soil)}, sand ${plain(looseDryKgM3.sand)}, cement ${plain(looseDryKgM3.cement)} kg/m³. Cement in percent of the dry mass of soil and sand?`,
      unit: "%",
      value: byMassPct,
      // Narrow, so that buckets to buckets is told apart from mass to mass.
      tolerance: { abs: 0.05 },
      mistakes: [
        {
          value: byVolumePct,
          text: say`This is the share of the buckets. A bucket of each weighs something else.`,
        },
        {
          value: toSoilPct,
          text: say`This is buckets to buckets. Weigh them.`,
        },
        {
          value: (100 * cementKg) / (soilKg + sandKg + cementKg),
          text: say`This is of everything, cement counted. A cement content is of the dry mass of soil and aggregate alone.`,
        },
        {
          value: (100 * cementKg) / soilKg,
          text: say`The sand was left out of what the cement is compared with.`,
        },
      ],
      hint: say`Mass of each: buckets times density. Then cement over soil and sand together.`,
      worked: say`100 × ${plain(cementKg)} ÷ (${plain(soilKg)} + ${plain(sandKg)}) = ${one(byMassPct)} %.`,
      why: say`${one(byVolumePct)} % of the buckets is ${one(byMassPct)} % by mass with these densities, and something else with others.`,
    },
  ];
}
