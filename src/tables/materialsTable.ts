import type { StudyConfig } from "../study/studyConfig.js";
import { say, sayOf } from "../words/say.js";
import { BLANK, fixed, numberColumn, plain, quantity, quantityColumn } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/** The materials as the user entered them. */
export function materialsTable({ materials, units, currency }: StudyConfig): TableBlock {
  const priced = materials.some(({ price }) => price);
  return {
    kind: "table",
    caption: say`Materials, as entered`,
    columns: [
      { header: say`Material` },
      { header: say`Role` },
      quantityColumn(say`Particle density`, "density", units),
      quantityColumn(say`Loose bulk density, dry`, "density", units),
      numberColumn(say`Moisture`, "%"),
      numberColumn(say`Share allowed`, "%"),
      ...(priced ? [numberColumn(say`Price`, currency)] : []),
    ],
    rows: materials.map((material) => [
      material.name,
      sayOf(material.role),
      quantity(material.particleDensityKgM3, "density", units, 4),
      quantity(material.looseBulkDensityKgM3, "density", units, 4),
      fixed(material.moisturePct, 1),
      say`${plain(material.minSharePct)} to ${plain(material.maxSharePct)}`,
      ...(priced ? [material.price?.written ?? BLANK] : []),
    ]),
    notes: [say`Shares are percent of the dry mass of all soil and aggregate, cement excluded.`],
  };
}

/** Test methods with standard and edition, as the user entered them. */
export function methodsTable({ methods }: StudyConfig): TableBlock {
  return {
    kind: "table",
    caption: say`Test methods, as entered`,
    columns: [{ header: say`Test` }, { header: say`Standard` }, { header: say`Edition` }],
    rows: methods.map(({ test, standard, edition }) => [
      test,
      standard,
      edition ?? say`not stated`,
    ]),
  };
}
