import type { WeighedBatch } from "../batch/weighOut.js";
import type { UnitSystem } from "../quantities/displayUnits.js";
import { formatFixed } from "../quantities/formatNumber.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { fixed } from "./cell.js";

const POUND_KG = 0.45359237;

/** Hundredths: what a bench scale shows. */
export function trialMass(kilograms: number, units: UnitSystem): string {
  return units === "SI"
    ? say`${formatFixed(kilograms, 2)} kg`
    : say`${formatFixed(kilograms / POUND_KG, 2)} lb`;
}

/** How the trial and the full batch hang together. */
export function trialText({ mix, config }: StudyResult, trial: WeighedBatch): string {
  if (!mix || !trial.batch) return say`Trial batch: ${trial.message}`;
  const mass = trialMass(trial.batch.dryMassKg, config.units);
  const times = fixed(mix.recipe.dryMassKg / trial.batch.dryMassKg, 1);
  const change = fixed(trial.cementChangePct ?? 0, 2);
  return say`Trial batch of ${mass} dry soil and aggregate; the study's batch is ${times} times that. Its scale changes the cement by ${change} points: scale the recipe, not these rounded masses.`;
}
