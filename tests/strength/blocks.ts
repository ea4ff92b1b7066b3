import type { SpecimenRecord } from "../../src/lab/specimens.js";
import type { FittedStrength } from "../../src/strength/regression/curve.js";
import { fitStrength } from "../../src/strength/regression/fit.js";
import type { StrengthModel } from "../../src/strength/regression/model.js";
import { render } from "../../src/words/render.js";

/** Blocks of 28 days from pairs of content and strength; rows as in a sheet with one header row. */
export function blocksOf(pairs: readonly (readonly number[])[]): SpecimenRecord[] {
  return pairs.map(([cementPct, strengthMpa], index) => ({
    id: `B${index + 1}`,
    cementPct,
    strengthMpa,
    ageDays: 28,
    row: index + 2,
  }));
}

export function fitted(
  pairs: readonly (readonly number[])[],
  model: StrengthModel = "linear",
): FittedStrength {
  const fit = fitStrength(blocksOf(pairs), { model, ageDays: 28 });
  if (fit.status !== "ok") throw new Error(render(fit.message));
  return fit;
}

/** Invented: four contents, four blocks each, rising and flattening a little. */
export const SIXTEEN: readonly (readonly number[])[] = [
  [4, 1.42],
  [4, 1.61],
  [4, 1.55],
  [4, 1.38],
  [6, 2.31],
  [6, 2.52],
  [6, 2.22],
  [6, 2.44],
  [8, 2.98],
  [8, 3.21],
  [8, 2.87],
  [8, 3.09],
  [10, 3.55],
  [10, 3.72],
  [10, 3.41],
  [10, 3.83],
];
