import type { Dimension } from "../quantities/units.js";
import { phrase } from "../words/say.js";
import type { CellRule, SheetLayout } from "./sheetLayout.js";

const measured = (key: string, name: string, dimension: Dimension): CellRule => ({
  key,
  names: [name],
  kind: "number",
  dimension,
  positive: true,
});
const moisture = (key: string, ...names: string[]): CellRule => ({
  ...{ key, names, kind: "number", dimension: "ratio", min: 0, max: 60 },
});
const looseDensity = (key: string, ...names: string[]): CellRule => ({
  ...{ key, names, kind: "number", dimension: "density", min: 300, max: 3000 },
});
const text = (key: string, ...names: string[]): CellRule => ({ key, names, kind: "text" });

/** Facts and columns of a block sheet. */
export const SPECIMEN_LAYOUT: SheetLayout = {
  title: phrase`block sheet`,
  facts: [
    looseDensity("cementLooseDensityKgM3", "cement loose density"),
    looseDensity("soilLooseDensityKgM3", "soil loose density"),
    moisture("soilMoisturePct", "soil moisture"),
  ],
  columns: [
    { key: "id", names: ["block", "specimen"], kind: "text", required: true },
    text("batch", "batch"),
    {
      ...{ key: "cementPct", names: ["cement"], kind: "number", dimension: "ratio" },
      ...{ min: 0, max: 30 },
    },
    measured("cementParts", "cement parts", "number"),
    measured("soilParts", "soil parts", "number"),
    { ...measured("ageDays", "age", "age"), required: true },
    text("shape", "shape"),
    measured("lengthMm", "length", "length"),
    measured("widthMm", "width", "length"),
    measured("diameterMm", "diameter", "length"),
    measured("heightMm", "height", "length"),
    measured("loadKn", "load", "force"),
    measured("strengthMpa", "strength", "stress"),
    measured("massG", "mass", "mass"),
    measured("dryDensityKgM3", "dry density", "density"),
    moisture("moisturePct", "moisture"),
    moisture("makingMoisturePct", "moisture at making"),
    moisture("testMoisturePct", "moisture at test"),
    measured("crushingOrder", "crushing order", "number"),
    text("excluded", "excluded"),
    text("remark", "remark", "remarks"),
  ],
};
