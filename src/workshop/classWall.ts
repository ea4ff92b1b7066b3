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
import { fixed, numberColumn, plain } from "../tables/cell.js";
import { say } from "../words/message.js";

/** A wall on paper and what a crew would measure out for it. */
export interface ClassWall {
  readonly wallVolumeM3: number;
  /** Of the dry mass of soil and aggregate. */
  readonly cementPct: number;
  /** Rammed, cement included. */
  readonly dryDensityKgM3: number;
  /** Of the concrete element that it stands for. */
  readonly concreteVolumeM3: number;
  /** By loose volume. */
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
export function volumeMassTable({
  parts,
  looseDryKgM3,
}: Pick<ClassWall, "parts" | "looseDryKgM3">): TableBlock {
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
  return {
    kind: "table",
    caption: say`${plain(parts.soil)} soil, ${plain(parts.sand)} sand, ${plain(parts.cement)} cement by loose volume`,
    columns: [
      { header: say`Densities` },
      numberColumn(say`Soil`, "kg/m³"),
      numberColumn(say`Sand`, "kg/m³"),
      numberColumn(say`Cement`, "kg/m³"),
      numberColumn(say`Cement, of all parts`, "%"),
      numberColumn(say`Cement, of the dry mass of soil and sand`, "%"),
    ],
    rows: cases.map((densities) => {
      const { cementPct, cementByVolumePct } = toMassShares(
        [
          { id: "soil", parts: parts.soil, looseBulkDensityKgM3: densities.soil },
          { id: "sand", parts: parts.sand, looseBulkDensityKgM3: densities.sand },
        ],
        { parts: parts.cement, looseBulkDensityKgM3: densities.cement },
      );
      return [
        densities.name,
        plain(densities.soil),
        plain(densities.sand),
        plain(densities.cement),
        fixed(cementByVolumePct, 1),
        fixed(cementPct, 1),
      ];
    }),
    notes: [soil, sand, cement].map(
      ({ name, low, high, source }) => say`${name}: ${low} to ${high} kg/m³, ${source}.`,
    ),
  };
}
