import type { StudyConfig } from "../study/studyConfig.js";
import { BLANK, fixed, numberColumn, plain, quantity, quantityColumn } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/** The materials as the user entered them. */
export function materialsTable({ materials, units, currency }: StudyConfig): TableBlock {
  const priced = materials.some(({ price }) => price);
  return {
    kind: "table",
    caption: "Materials, as entered",
    columns: [
      { header: "Material" },
      { header: "Role" },
      quantityColumn("Particle density", "density", units),
      quantityColumn("Loose bulk density, dry", "density", units),
      numberColumn("Moisture", "%"),
      numberColumn("Share allowed", "%"),
      ...(priced ? [numberColumn("Price", currency)] : []),
    ],
    rows: materials.map((material) => [
      material.name,
      material.role,
      quantity(material.particleDensityKgM3, "density", units, 4),
      quantity(material.looseBulkDensityKgM3, "density", units, 4),
      fixed(material.moisturePct, 1),
      `${plain(material.minSharePct)} to ${plain(material.maxSharePct)}`,
      ...(priced ? [material.price?.written ?? BLANK] : []),
    ]),
    notes: ["Shares are percent of the dry mass of all soil and aggregate, cement excluded."],
  };
}

/** Test methods with standard and edition, as the user entered them. */
export function methodsTable({ methods }: StudyConfig): TableBlock {
  return {
    kind: "table",
    caption: "Test methods, as entered",
    columns: [{ header: "Test" }, { header: "Standard" }, { header: "Edition" }],
    rows: methods.map(({ test, standard, edition }) => [test, standard, edition ?? "not stated"]),
  };
}
