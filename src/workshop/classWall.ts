import { DEFAULT_BULK_DENSITIES } from "../batch/bulkDensity.js";
import { CEMENT_CARBON_FACTORS } from "../batch/carbonFactors.js";
import {
  type CementComparison,
  cementComparison,
  type SavingTrap,
  savingTrap,
} from "../batch/cementComparison.js";
import { toMassShares } from "../batch/volumeParts.js";
import type { TableBlock } from "../blocks/block.js";
import { checkPositive } from "../quantities/checkNumber.js";
import { displayUnit, displayValue, formatFixed, type UnitSystem } from "../quantities/format.js";
import { ends, fixed, numberColumn, plain, quantity, quantityColumn } from "../tables/cell.js";
import { quantityCells, tableOf } from "../tables/tableOf.js";
import { joinTexts, say, type Text } from "../words/message.js";

/** A wall on paper and what somebody would measure out for it. */
export interface ClassWall {
  readonly wallVolumeM3: number;
  /** Of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  /** Rammed, cement included. */
  readonly dryDensityKgM3: number;
  /** Of the concrete element that it stands for. */
  readonly concreteVolumeM3: number;
  /** A recipe by loose volume that somebody wrote down; not that of the study. */
  readonly parts: { readonly soil: number; readonly sand: number; readonly cement: number };
  /** Dry mass in a loose cubic metre. */
  readonly looseDryKgM3: { readonly soil: number; readonly sand: number; readonly cement: number };
}

/**
 * The cement in a wall, beside the concrete that it stands for, cement with cement and the trap beside it.
 *
 * Formula: cement = volume × dry density × c / (100 + c). The general carbon factors are used: see
 * `CEMENT_CARBON_FACTORS`.
 *
 * @throws RangeError for a number not above 0. Source: `cementComparison`, `savingTrap`.
 *
 * @example
 * const wall = { wallVolumeM3: 3.6, cementPct: 8, dryDensityKgM3: 1890, concreteVolumeM3: 2.2, parts: { soil: 7, sand: 2, cement: 1 }, looseDryKgM3: { soil: 1130, sand: 1390, cement: 1200 } };
 * const { cementKg, trap } = wallCement(wall);
 * [cementKg, trap.falseSavingPct, trap.savingPct.low] // => [504, 90.25, 18.18]
 */
export function wallCement(wall: ClassWall): {
  readonly cementKg: number;
  readonly trap: SavingTrap;
  readonly comparison: CementComparison;
} {
  const { wallVolumeM3, cementPct, dryDensityKgM3, concreteVolumeM3 } = wall;
  for (const [name, value] of Object.entries({ wallVolumeM3, cementPct, dryDensityKgM3 })) {
    checkPositive(name, value);
  }
  const cementKg = (wallVolumeM3 * dryDensityKgM3 * cementPct) / (100 + cementPct);
  return {
    cementKg,
    trap: savingTrap({ earthCementKg: cementKg, concreteVolumeM3 }),
    comparison: cementComparison({
      earthVolumeM3: wallVolumeM3,
      earthCementKg: cementKg,
      concreteVolumeM3,
      carbonFactor: CEMENT_CARBON_FACTORS[0],
    }),
  };
}

/** Kilograms as the class reads a mass: a record's own base is the gram. */
export function massIn(kilograms: number, units: UnitSystem): number {
  return displayValue(1000 * kilograms, "mass", units);
}

/** Cubic metres as the class reads a volume: m³ or yd³. */
export function volumeIn(cubicMetres: number, units: UnitSystem): number {
  return displayValue(1e6 * cubicMetres, "volume", units);
}

/** What the saving would seem to be when cement is set against whole concrete, and what it is. */
export function savingNote(wall: ClassWall, units: UnitSystem): Text {
  const { cementKg, trap } = wallCement(wall);
  const unit = displayUnit("mass", units);
  const mass = (kilograms: number) => formatFixed(massIn(kilograms, units), 0);
  const { concreteCementKg, falseSavingPct, savingPct } = trap;
  return say`${mass(cementKg)} ${unit} of cement stand where ${mass(trap.concreteMassKg)} ${unit} of concrete would have stood. To call that ${formatFixed(falseSavingPct, 0)} % less cement sets cement against stone: the concrete would have held ${mass(concreteCementKg.low)} to ${mass(concreteCementKg.high)} ${unit} of cement, so the saving is ${formatFixed(savingPct.low, 0)} to ${formatFixed(savingPct.high, 0)} %.`;
}

/** The recipe of the wall by mass. */
export function bucketsByMass({ parts, looseDryKgM3 }: Pick<ClassWall, "parts" | "looseDryKgM3">) {
  return toMassShares(
    [
      { id: "soil", parts: parts.soil, looseBulkDensityKgM3: looseDryKgM3.soil },
      { id: "sand", parts: parts.sand, looseBulkDensityKgM3: looseDryKgM3.sand },
    ],
    { parts: parts.cement, looseBulkDensityKgM3: looseDryKgM3.cement },
  );
}

/** One wall told in two ways: cement with whole concrete, and cement with cement. */
export function savingTable(wall: ClassWall, units: UnitSystem): TableBlock {
  const { cementKg, trap, comparison } = wallCement(wall);
  const mass = (kilograms: number) => formatFixed(massIn(kilograms, units), 0);
  const whole = (value: number) => formatFixed(value, 0);
  const { concreteCement } = comparison;
  return {
    kind: "table",
    caption: say`One wall, two ways of telling it`,
    columns: [
      { header: say`What is compared` },
      quantityColumn(say`Earth wall`, "mass", units),
      quantityColumn(say`Concrete wall`, "mass", units),
      numberColumn(say`Less`, "%"),
    ],
    rows: [
      [
        say`cement with whole concrete: the trap`,
        mass(cementKg),
        mass(trap.concreteMassKg),
        whole(trap.falseSavingPct),
      ],
      [
        say`cement with cement`,
        mass(cementKg),
        ends(trap.concreteCementKg, mass),
        ends(trap.savingPct, whole),
      ],
    ],
    notes: [
      say`Cement in concrete: ${concreteCement.name}; ${concreteCement.source}. Ask for the real mix.`,
    ],
  };
}

/** Carbon of the cement of both walls, and nothing else of them. */
export function wallCarbonTable(wall: ClassWall, units: UnitSystem): TableBlock {
  const { comparison } = wallCement(wall);
  const { carbonFactor, earthCementCarbonKg, concreteCementCarbonKg } = comparison;
  const mass = (kilograms: number) => formatFixed(massIn(kilograms, units), 0);
  return {
    kind: "table",
    caption: say`Carbon of the cement alone`,
    columns: [
      { header: say`Wall` },
      numberColumn(say`Carbon`, joinTexts([displayUnit("mass", units), "CO2e"], " ")),
    ],
    rows: [
      [say`earth`, ends(earthCementCarbonKg, mass)],
      [say`concrete`, ends(concreteCementCarbonKg, mass)],
    ],
    notes: [
      say`Carbon dioxide to one of cement, by mass: ${carbonFactor.name}, ${carbonFactor.low} to ${carbonFactor.high}; ${carbonFactor.source}.`,
      say`One and the same cement in both walls: low belongs with low, high with high. Sand, stone, haul, forms and steel are not in it.`,
    ],
  };
}

/**
 * What parts by loose volume are by mass: with the densities that were measured, and with the light and
 * the heavy ends of what such materials may weigh.
 *
 * Source: `toMassShares`; ends from `DEFAULT_BULK_DENSITIES`, each with its own mark.
 *
 * @example
 * const table = volumeMassTable({ parts: { soil: 7, sand: 2, cement: 1 }, looseDryKgM3: { soil: 1130, sand: 1390, cement: 1200 } });
 * renderAll(table.rows.map((row) => row.slice(4))) // => [["10.0", "11.2"], ["10.0", "6.2"], ["10.0", "17.6"]]
 */
export function volumeMassTable(
  { parts, looseDryKgM3 }: Pick<ClassWall, "parts" | "looseDryKgM3">,
  units: UnitSystem = "SI",
): TableBlock {
  const density = (kgM3: number) => quantity(kgM3, "density", units, 3);
  const general = (id: "soil" | "sand" | "cement") =>
    DEFAULT_BULK_DENSITIES.find((entry) => entry.id === id)!;
  const [soil, sand, cement] = [general("soil"), general("sand"), general("cement")];
  const cases = [
    { name: say`as measured`, ...looseDryKgM3 },
    {
      name: say`heavy soil and sand, light cement`,
      soil: soil.high,
      sand: sand.high,
      cement: cement.low,
    },
    {
      name: say`light soil and sand, heavy cement`,
      soil: soil.low,
      sand: sand.low,
      cement: cement.high,
    },
  ];
  return tableOf(
    say`${plain(parts.soil)} soil, ${plain(parts.sand)} sand, ${plain(parts.cement)} cement by loose volume`,
    cases.map((looseDryKgM3) => ({ ...looseDryKgM3, ...bucketsByMass({ parts, looseDryKgM3 }) })),
    [
      [say`Densities`, ({ name }) => name],
      quantityCells(say`Soil`, "density", units, ({ soil }) => soil),
      quantityCells(say`Sand`, "density", units, ({ sand }) => sand),
      quantityCells(say`Cement`, "density", units, ({ cement }) => cement),
      [
        numberColumn(say`Cement, of all parts`, "%"),
        ({ cementByVolumePct }) => fixed(cementByVolumePct, 1),
      ],
      [
        numberColumn(say`Cement, of the dry mass of soil and sand`, "%"),
        ({ cementPct }) => fixed(cementPct, 1),
      ],
    ],
    [soil, sand, cement].map(
      ({ name, low, high, source }) =>
        say`${name}: ${density(low)} to ${density(high)} ${displayUnit("density", units)}, ${source}.`,
    ),
  );
}
