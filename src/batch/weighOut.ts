import { checkPositive } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { type Recipe, type RecipeLine, usedLines } from "./recipe.js";
import { rebuildRecipe } from "./scaleRecipe.js";

export interface WeighedLine {
  readonly id: string;
  readonly name: Text;
  /** What the recipe asks for, as shovelled. */
  readonly exactKg: number;
  /** What the scale will show. */
  readonly weighedKg: number;
  /** Of the dry mass of soil and aggregate, as weighed. Null where the scale is too coarse. */
  readonly sharePct: number | null;
  /** Against the recipe, percentage points. */
  readonly changePct: number | null;
}

export interface WeighedBatch {
  /** `too-coarse`: a part would be weighed as nothing, or without soil: take a finer scale or a larger batch. */
  readonly status: "ok" | "too-coarse";
  readonly message: Text;
  readonly lines: readonly WeighedLine[];
  readonly waterKg: number;
  /** As weighed; null when the scale is too coarse. Scale the recipe, not this, to another size. */
  readonly batch: Recipe | null;
  /** Of the dry mass of soil and aggregate, as weighed, and its change in points. */
  readonly cementPct: number | null;
  readonly cementChangePct: number | null;
  readonly maxShareChangePct: number | null;
}

/**
 * Rounds each mass of a batch to the step of a scale and says what that does to the mix: a small trial
 * batch on a coarse scale is another mix.
 *
 * Formula: weighed = step × round(mass / step), of damp materials, dry cement and water to add.
 *
 * @param stepKg what the scale shows at the least, for example 0.01.
 * @throws RangeError for a step not above 0. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1200, moisturePct: 0 }];
 * const trial = recipe({ materials, cementPct: 7.5, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 5 });
 * const weighed = weighOut(trial, 0.1);
 * [weighed.cementPct, weighed.cementChangePct] // => [8, 0.5]
 */
export function weighOut(recipe: Recipe, stepKg: number): WeighedBatch {
  checkPositive("stepKg", stepKg);
  const round = (mass: number) => Math.round(mass / stepKg) * stepKg;
  const parts = usedLines(recipe);
  const weighed = new Map(parts.map((line) => [line.id, round(line.moistMassKg)]));
  const waterKg = round(recipe.water.toAddKg);
  const lost = parts.filter(({ id }) => weighed.get(id) === 0);
  if (lost.length > 0) {
    const lines = parts.map((line): WeighedLine => {
      const { id, name, moistMassKg } = line;
      return {
        id,
        name,
        exactKg: moistMassKg,
        weighedKg: weighed.get(id)!,
        sharePct: null,
        changePct: null,
      };
    });
    return {
      status: "too-coarse",
      message: say`The scale's step of ${stepKg} kg is too coarse for ${joinTexts(lost.map(({ name }) => name))}: make the batch larger or use a finer scale.`,
      lines,
      waterKg,
      batch: null,
      cementPct: null,
      cementChangePct: null,
      maxShareChangePct: null,
    };
  }
  const dryOf = (line: RecipeLine) =>
    line.dryMassKg === 0 ? 0 : weighed.get(line.id)! * (line.dryMassKg / line.moistMassKg);
  const batch = rebuildRecipe(recipe, dryOf);
  const now = [...batch.materials, batch.cement];
  const lines = parts.map((line): WeighedLine => {
    const { sharePct } = now.find(({ id }) => id === line.id)!;
    return {
      id: line.id,
      name: line.name,
      exactKg: line.moistMassKg,
      weighedKg: weighed.get(line.id)!,
      sharePct,
      changePct: sharePct - line.sharePct,
    };
  });
  const maxChange = Math.max(...lines.map(({ changePct }) => Math.abs(changePct!)));
  return {
    status: "ok",
    message: say`Weighed to ${stepKg} kg the batch holds ${formatFixed(batch.cementPct, 2)} % cement; the recipe asks for ${recipe.cementPct} %. No share moves by more than ${formatFixed(maxChange, 2)} points.`,
    lines,
    waterKg,
    batch,
    cementPct: batch.cementPct,
    cementChangePct: batch.cementPct - recipe.cementPct,
    maxShareChangePct: maxChange,
  };
}
