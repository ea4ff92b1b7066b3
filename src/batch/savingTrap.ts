import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { CONCRETE_CEMENT_CONTENT, type SourcedRange } from "./carbonFactors.js";
import type { Between } from "./cementComparison.js";
import { checkAbove, checkNotBelow } from "./checkAmount.js";

export interface SavingTrap {
  readonly concreteMassKg: number;
  readonly concreteCementKg: Between;
  /** Cement against whole concrete: the number that deceives. */
  readonly falseSavingPct: number;
  /** Cement against cement, low first; below zero where the earth holds more. */
  readonly savingPct: Between;
  /** For a reader who has not met the trap. */
  readonly text: string;
}

/**
 * Shows what becomes of a cement saving when cement is set against whole concrete by mistake.
 *
 * A wall with 300 kg of cement, against 2 m³ of concrete of 2350 kg/m³, seems to save 94 %: 300 kg
 * stands where 4700 kg stood. But most of those 4700 kg are stone and sand. At 280 to 310 kg of cement in
 * each cubic metre the concrete held 560 to 620 kg of cement, and the saving is 46 to 52 %.
 *
 * Formulas: false = 100 (1 − cement / concrete mass); true = 100 (1 − cement / cement in the concrete).
 *
 * @param of.concreteDensityKgM3 default 2350 (common practice, no source).
 * @param of.concreteCement default `CONCRETE_CEMENT_CONTENT`, from memory.
 * @throws RangeError for a volume or density not above 0 or a mass below 0. Source: own arithmetic.
 *
 * @example
 * const trap = savingTrap({ earthCementKg: 300, concreteVolumeM3: 2 });
 * trap.falseSavingPct // => 93.6
 * trap.savingPct // => { low: 46.4, high: 51.6 }
 */
export function savingTrap(of: {
  readonly earthCementKg: number;
  readonly concreteVolumeM3: number;
  readonly concreteDensityKgM3?: number;
  readonly concreteCement?: SourcedRange;
}): SavingTrap {
  const { earthCementKg, concreteVolumeM3, concreteDensityKgM3 = 2350 } = of;
  const { concreteCement = CONCRETE_CEMENT_CONTENT } = of;
  checkNotBelow("earthCementKg", earthCementKg);
  checkAbove("concreteVolumeM3", concreteVolumeM3);
  checkAbove("concreteDensityKgM3", concreteDensityKgM3);
  const concreteMassKg = concreteVolumeM3 * concreteDensityKgM3;
  const low = concreteVolumeM3 * concreteCement.low;
  const high = concreteVolumeM3 * concreteCement.high;
  const saved = (kilograms: number) => 100 * (1 - earthCementKg / kilograms);
  const savingPct = { low: saved(low), high: saved(high) };
  const whole = (value: number) => formatFixed(value, 0).replace("-", "−");
  return {
    concreteMassKg,
    concreteCementKg: { low, high },
    falseSavingPct: saved(concreteMassKg),
    savingPct,
    text: say`${whole(earthCementKg)} kg of cement stand where ${whole(concreteMassKg)} kg of concrete would have stood. To call that ${whole(saved(concreteMassKg))} % less cement sets cement against stone: the concrete would have held ${whole(low)} to ${whole(high)} kg of cement, so the saving is ${whole(savingPct.low)} to ${whole(savingPct.high)} %.`,
  };
}
