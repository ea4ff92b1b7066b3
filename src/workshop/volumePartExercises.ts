import { toMassShares } from "../batch/toMassShares.js";
import { formatFixed, formatPlain } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { Exercise } from "./exercise.js";
import type { ClassWall } from "./wallCement.js";

/**
 * Exercises on parts by volume: cement in percent of all parts, and the same parts by mass.
 *
 * Source: `toMassShares`.
 */
export function volumePartExercises({
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
