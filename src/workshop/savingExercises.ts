import { displayUnit, displayValue, formatPlain, type UnitSystem } from "../quantities/format.js";
import { convertFromBase } from "../quantities/units.js";
import { say } from "../words/message.js";
import { bucketsByMass, type ClassWall, massIn, volumeIn, wallCement } from "./classWall.js";
import { answerable, type Exercise, one, whole } from "./exercise.js";

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
export function savingExercises(wall: ClassWall, units: UnitSystem = "SI"): Exercise[] {
  return answerable([
    ...cementRows(wall, units),
    CARBON_ROW,
    byVolumeRow(wall),
    byMassRow(wall, units),
  ]);
}

/** The wall in the units of the class, with four digits: what is asked is worked from what is told. */
function inUnits(wall: ClassWall, units: UnitSystem) {
  const us = units === "US";
  const told = (value: number) => Number(formatPlain(value).number);
  const mass = (kilograms: number) => massIn(kilograms, units);
  const cubicFeet = (cubicMetres: number) => convertFromBase(1e6 * cubicMetres, "ft3", "volume");
  return {
    volume: told(us ? cubicFeet(wall.wallVolumeM3) : wall.wallVolumeM3),
    volumeUnit: us ? "ft³" : "m³",
    density: told(displayValue(wall.dryDensityKgM3, "density", units)),
    densityUnit: displayUnit("density", units),
    mass,
    massUnit: displayUnit("mass", units),
    concrete: told(volumeIn(wall.concreteVolumeM3, units)),
    concreteUnit: displayUnit("volume", units),
    // pounds in a cubic yard in the United States
    content: (kgM3: number) => told(mass(kgM3) / volumeIn(1, units)),
    loose: (kgM3: number) => told(displayValue(kgM3, "density", units)),
  };
}

/** Cement in the wall, and the honest saving beside the trap. */
function cementRows(wall: ClassWall, units: UnitSystem): Exercise[] {
  const { wallVolumeM3, cementPct } = wall;
  const { cementKg, trap, comparison } = wallCement(wall);
  const told = inUnits(wall, units);
  const { mass, massUnit: unit, volume, volumeUnit, density, densityUnit } = told;
  const { low, high } = trap.savingPct;
  const middle = (low + high) / 2;
  const { concreteCement: content } = comparison;
  const sameVolumeKg = (wallVolumeM3 * (content.low + content.high)) / 2;
  const [least, most] = [content.low, content.high].map((end) => formatPlain(told.content(end)));
  const [lowMass, highMass] = [trap.concreteCementKg.low, trap.concreteCementKg.high].map((end) =>
    whole(mass(end)),
  );
  return [
    {
      kind: "number",
      id: "cement-in-the-wall",
      question: say`${formatPlain(volume)} ${volumeUnit} of wall, ${formatPlain(density)} ${densityUnit} dry with its cement, ${formatPlain(cementPct)} % cement of the dry mass of soil and aggregate. How much cement?`,
      recalls: {
        id: "cement-to-weigh-out",
        told: formatPlain(cementPct),
        question: (number) =>
          say`${formatPlain(volume)} ${volumeUnit} of wall, ${formatPlain(density)} ${densityUnit} dry with its cement, with the cement content that you found in ${number}, of the dry mass of soil and aggregate. How much cement?`,
      },
      unit,
      value: mass(cementKg),
      tolerance: { rel: 0.01 },
      mistakes: [
        {
          value: mass((cementKg * (100 + cementPct)) / 100),
          text: say`The percentage was taken of everything. It is of soil and aggregate alone: divide by 100 plus the percentage.`,
        },
        {
          value: mass(cementKg) / volume,
          text: say`This is for one ${volumeUnit}.`,
        },
      ],
      hint: say`Of 100 + ${formatPlain(cementPct)} ${unit} of dry wall, ${formatPlain(cementPct)} ${unit} are cement.`,
      worked: say`${formatPlain(volume)} × ${formatPlain(density)} × ${formatPlain(cementPct)} ÷ (100 + ${formatPlain(cementPct)}) = ${whole(mass(cementKg))} ${unit}.`,
      why: say`That is ${one(mass(cementKg) / volume)} ${unit} in each ${volumeUnit} of wall.`,
    },
    {
      kind: "number",
      id: "cement-saved",
      question: say`An all-concrete wall would take ${formatPlain(told.concrete)} ${told.concreteUnit}, with ${least} to ${most} ${unit} of cement in each ${told.concreteUnit}. How much less cement does the earth wall of the question before hold? (Negative if it holds more.)`,
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
      hint: say`First the cement in the concrete: its volume times ${unit} in each ${told.concreteUnit}. Then cement against cement.`,
      worked: say`${formatPlain(told.concrete)} × ${least} to ${most} = ${lowMass} to ${highMass} ${unit}; 100 × (1 − ${whole(mass(cementKg))} ÷ that) = ${whole(low)} to ${whole(high)} %.`,
      why: say`Set against the mass of the whole concrete it would have seemed ${whole(trap.falseSavingPct)} %. Cement with cement it is ${whole(low)} to ${whole(high)} %.`,
    },
  ];
}

const CANCELS = say`The factor is that of one and the same cement: it stands above and below the line.`;

const CARBON_ROW: Exercise = {
  kind: "choice",
  id: "carbon-follows-cement",
  question: say`Both walls are made with the same cement. Is the saving in carbon of cement, in percent, smaller than that in cement, the same, or larger?`,
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

/** Buckets that somebody wrote down, as cement in percent of them all. */
function byVolumeRow(wall: ClassWall): Exercise {
  const { soil, sand, cement } = wall.parts;
  const { cementByVolumePct, cementPct } = bucketsByMass(wall);
  return {
    kind: "number",
    id: "cement-by-volume",
    question: say`${formatPlain(soil)} buckets of soil, ${formatPlain(sand)} of sand, ${formatPlain(cement)} of cement: cement in percent of all buckets?`,
    unit: "%",
    value: cementByVolumePct,
    tolerance: { abs: 0.2 },
    mistakes: [
      {
        value: (100 * cement) / (soil + sand),
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
    worked: say`100 × ${formatPlain(cement)} ÷ ${formatPlain(soil + sand + cement)} = ${one(cementByVolumePct)} %.`,
    why: say`It says nothing of the mass yet: that depends on how heavy each bucket is.`,
  };
}

/** The same buckets, as cement in percent by mass. */
function byMassRow(wall: ClassWall, units: UnitSystem): Exercise {
  const { soil, sand, cement } = wall.parts;
  const { loose, densityUnit } = inUnits(wall, units);
  const [ofSoil, ofSand, ofCement] = [
    wall.looseDryKgM3.soil,
    wall.looseDryKgM3.sand,
    wall.looseDryKgM3.cement,
  ].map(loose);
  const soilKg = soil * ofSoil;
  const sandKg = sand * ofSand;
  const cementKg = cement * ofCement;
  const { cementByVolumePct: byVolumePct, cementPct: byMassPct } = bucketsByMass(wall);
  const toSoilPct = (100 * cement) / (soil + sand);
  return {
    kind: "number",
    id: "cement-by-mass",
    question: say`${formatPlain(soil)} buckets of soil (${formatPlain(ofSoil)} ${densityUnit} dry, loose), ${formatPlain(sand)} of sand (${formatPlain(ofSand)} ${densityUnit}) and ${formatPlain(cement)} of cement (${formatPlain(ofCement)} ${densityUnit}): cement in percent of the dry mass of soil and sand?`,
    unit: "%",
    value: byMassPct,
    // Well below the step from buckets to mass.
    tolerance: { abs: 0.15 },
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
    worked: say`100 × ${formatPlain(cementKg)} ÷ (${formatPlain(soilKg)} + ${formatPlain(sandKg)}) = ${one(byMassPct)} %.`,
    why: say`${one(byVolumePct)} % of the buckets is ${one(byMassPct)} % by mass with these densities, and something else with others.`,
  };
}
