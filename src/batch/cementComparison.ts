import { checkNotNegative, checkPositive } from "../quantities/checkNumber.js";
import { formatFixed } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import type { SourcedRange } from "../quantities/sourcedRange.js";
import { say, type Text } from "../words/message.js";
import { bothEnds } from "./account.js";
import { CONCRETE_CEMENT_CONTENT } from "./carbonFactors.js";

export interface CementComparison {
  /** In the earth wall, per cubic metre. */
  readonly earthCementKgM3: number;
  readonly earthCementKg: number;
  readonly concreteCementKg: Interval;
  /** Cement in the earth wall in percent of the cement in the concrete element. */
  readonly cementPctOfConcrete: Interval;
  /** From cement alone. */
  readonly earthCementCarbonKg: Interval;
  readonly concreteCementCarbonKg: Interval;
  readonly carbonFactor: SourcedRange;
  readonly concreteCement: SourcedRange;
  readonly statement: Text;
}

/**
 * Compares the cement in an earth wall with the cement in an all-concrete element: cement with cement,
 * and carbon of cement with carbon of cement.
 *
 * The trap: to set the mass of cement in the earth (say 140 kg/m³) against the mass of whole concrete
 * (2400 kg/m³) and call it a saving of nineteen twentieths. Most of concrete is stone. Set cement against
 * cement, and 8 % in the earth is near half of what a plain concrete holds; and a rammed-earth wall is
 * often thicker than the concrete element that it stands for, which eats the difference: give the
 * concrete element its own volume.
 *
 * Formulas: kg = volume × content; carbon = kg × factor, low with low and high with high. Aggregate,
 * transport, formwork, reinforcement and later carbonation are not in it.
 *
 * @throws RangeError for a volume not above 0 or a mass below 0. Source: with each factor.
 *
 * @example
 * const { cementPctOfConcrete, earthCementKgM3 } = cementComparison({ earthVolumeM3: 2, earthCementKg: 281.4, carbonFactor: CEMENT_CARBON_FACTORS[0] });
 * earthCementKgM3 // => 140.7
 * cementPctOfConcrete // => { low: 45.39, high: 50.25 }
 */
export function cementComparison(walls: {
  readonly earthVolumeM3: number;
  /** Waste included or not, as the caller says. */
  readonly earthCementKg: number;
  /** Default: the volume of the earth wall. */
  readonly concreteVolumeM3?: number;
  /** One entry of `CEMENT_CARBON_FACTORS`, or a supplier's own. */
  readonly carbonFactor: SourcedRange;
  /** Default `CONCRETE_CEMENT_CONTENT`, from memory: give the real mix where known. */
  readonly concreteCement?: SourcedRange;
}): CementComparison {
  const { earthVolumeM3, earthCementKg, carbonFactor } = walls;
  const { concreteVolumeM3 = earthVolumeM3, concreteCement = CONCRETE_CEMENT_CONTENT } = walls;
  checkPositive("earthVolumeM3", earthVolumeM3);
  checkNotNegative("earthCementKg", earthCementKg);
  checkPositive("concreteVolumeM3", concreteVolumeM3);
  for (const range of [carbonFactor, concreteCement]) {
    if (!(range.low > 0 && range.low <= range.high)) {
      throw new RangeError(
        `invalid range \`${range.id}\`: ${range.low} to ${range.high}; expected above 0, low first`,
      );
    }
  }
  const concreteCementKg = bothEnds((end) => concreteVolumeM3 * concreteCement[end]);
  const cementPctOfConcrete = {
    low: (100 * earthCementKg) / concreteCementKg.high,
    high: (100 * earthCementKg) / concreteCementKg.low,
  };
  return {
    earthCementKgM3: earthCementKg / earthVolumeM3,
    earthCementKg,
    concreteCementKg,
    cementPctOfConcrete,
    earthCementCarbonKg: bothEnds((end) => earthCementKg * carbonFactor[end]),
    concreteCementCarbonKg: bothEnds((end) => concreteCementKg[end] * carbonFactor[end]),
    carbonFactor,
    concreteCement,
    statement: say`The earth element holds ${formatFixed(cementPctOfConcrete.low, 0)} to ${formatFixed(cementPctOfConcrete.high, 0)} % of the cement of a concrete element of ${formatFixed(concreteVolumeM3, 2)} m³ (cement against cement, ${concreteCement.source}).`,
  };
}

export interface SavingTrap {
  readonly concreteMassKg: number;
  readonly concreteCementKg: Interval;
  /** Cement against whole concrete: the number that deceives. */
  readonly falseSavingPct: number;
  /** Cement against cement, low first; below zero where the earth holds more. */
  readonly savingPct: Interval;
  /** For a reader who has not met the trap. */
  readonly text: Text;
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
 * @throws RangeError for a volume or density not above 0 or a mass below 0. Source: own arithmetic.
 *
 * @example
 * const trap = savingTrap({ earthCementKg: 300, concreteVolumeM3: 2 });
 * trap.falseSavingPct // => 93.6
 * trap.savingPct // => { low: 46.4, high: 51.6 }
 */
export function savingTrap(walls: {
  readonly earthCementKg: number;
  readonly concreteVolumeM3: number;
  /** Default 2350 (common practice, no source). */
  readonly concreteDensityKgM3?: number;
  /** Default `CONCRETE_CEMENT_CONTENT`, from memory. */
  readonly concreteCement?: SourcedRange;
}): SavingTrap {
  const { earthCementKg, concreteVolumeM3, concreteDensityKgM3 = 2350 } = walls;
  const { concreteCement = CONCRETE_CEMENT_CONTENT } = walls;
  checkNotNegative("earthCementKg", earthCementKg);
  checkPositive("concreteVolumeM3", concreteVolumeM3);
  checkPositive("concreteDensityKgM3", concreteDensityKgM3);
  const concreteMassKg = concreteVolumeM3 * concreteDensityKgM3;
  const concreteCementKg = bothEnds((end) => concreteVolumeM3 * concreteCement[end]);
  const { low, high } = concreteCementKg;
  const saved = (kilograms: number) => 100 * (1 - earthCementKg / kilograms);
  const savingPct = { low: saved(low), high: saved(high) };
  const whole = (value: number) => formatFixed(value, 0);
  return {
    concreteMassKg,
    concreteCementKg,
    falseSavingPct: saved(concreteMassKg),
    savingPct,
    text: say`${whole(earthCementKg)} kg of cement stand where ${whole(concreteMassKg)} kg of concrete would have stood. To call that ${whole(saved(concreteMassKg))} % less cement sets cement against stone: the concrete would have held ${whole(low)} to ${whole(high)} kg of cement, so the saving is ${whole(savingPct.low)} to ${whole(savingPct.high)} %.`,
  };
}
