import { checkPositive } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { type Recipe, type RecipeLine, recipe, usedLines } from "./recipe.js";

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
export function weighOut(asked: Recipe, stepKg: number): WeighedBatch {
  checkPositive("stepKg", stepKg);
  const round = (mass: number) => Math.round(mass / stepKg) * stepKg;
  const parts = usedLines(asked);
  const weighed = parts.map(({ moistMassKg }) => round(moistMassKg));
  const waterKg = round(asked.water.toAddKg);
  const lost = parts.filter((_, index) => weighed[index] === 0);
  const batch = lost.length > 0 ? null : weighedRecipe(asked, weighed);
  const lines = parts.map(({ id, name, moistMassKg, sharePct: askedPct }, index): WeighedLine => {
    const sharePct = batch && usedLines(batch)[index].sharePct;
    const changePct = sharePct === null ? null : sharePct - askedPct;
    return { id, name, exactKg: moistMassKg, weighedKg: weighed[index], sharePct, changePct };
  });
  if (!batch) {
    return {
      status: "too-coarse",
      message: say`The scale's step of ${stepKg} kg is too coarse for ${joinTexts(lost.map(({ name }) => name))}: make the batch larger or use a finer scale.`,
      lines,
      waterKg,
      batch,
      cementPct: null,
      cementChangePct: null,
    };
  }
  const maxChange = Math.max(...lines.map(({ changePct }) => Math.abs(changePct!)));
  return {
    status: "ok",
    message: say`Weighed to ${stepKg} kg the batch holds ${formatFixed(batch.cementPct, 2)} % cement; the recipe asks for ${asked.cementPct} %. No share moves by more than ${formatFixed(maxChange, 2)} points.`,
    lines,
    waterKg,
    batch,
    cementPct: batch.cementPct,
    cementChangePct: batch.cementPct - asked.cementPct,
  };
}

/**
 * The recipe with other moist masses of the same materials, the cement last: densities and moistures stay,
 * shares, cement content, volumes and water follow.
 */
function weighedRecipe(from: Recipe, moistMassesKg: readonly number[]): Recipe {
  const { materials, cement, targetMoisturePct, moistureOf } = from;
  const dryMassesKg = usedLines(from).map(
    ({ dryMassKg, moistMassKg }, index) => moistMassesKg[index] * (dryMassKg / moistMassKg),
  );
  const soilKg = materials.reduce((sum, _, index) => sum + dryMassesKg[index], 0);
  const densityOf = ({ dryMassKg, looseVolumeL }: RecipeLine) =>
    looseVolumeL === null || dryMassKg === 0 ? undefined : (1000 * dryMassKg) / looseVolumeL;
  const batch = recipe({
    materials: materials.map((line, index) => ({
      id: line.id,
      name: line.name,
      sharePct: (100 * dryMassesKg[index]) / soilKg,
      looseBulkDensityKgM3: densityOf(line),
      moisturePct: 100 * (line.moistMassKg / line.dryMassKg - 1),
    })),
    cementPct: (100 * (dryMassesKg[materials.length] ?? 0)) / soilKg,
    cementBulkDensityKgM3: densityOf(cement),
    targetMoisturePct,
    moistureOf,
    batchDryMassKg: soilKg,
  });
  // What was said of the densities holds for these volumes too.
  const ofDensities = from.findings.filter(({ code }) => code !== "materials-too-wet");
  const tooWet = batch.findings.filter(({ code }) => code === "materials-too-wet");
  return { ...batch, findings: [...ofDensities, ...tooWet] };
}
