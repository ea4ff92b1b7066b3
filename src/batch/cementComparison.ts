import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { CONCRETE_CEMENT_CONTENT, type SourcedRange } from "./carbonFactors.js";
import { checkAbove, checkNotBelow } from "./checkAmount.js";

export interface Between {
  readonly low: number;
  readonly high: number;
}

export interface CementComparison {
  /** In the earth wall, per cubic metre. */
  readonly earthCementKgM3: number;
  readonly earthCementKg: number;
  readonly concreteCementKg: Between;
  /** Cement in the earth wall in percent of the cement in the concrete element. */
  readonly cementPctOfConcrete: Between;
  /** From cement alone. */
  readonly earthCementCarbonKg: Between;
  readonly concreteCementCarbonKg: Between;
  readonly carbonFactor: SourcedRange;
  readonly concreteCement: SourcedRange;
  readonly statement: string;
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
 * @param of.earthCementKg cement in the wall, waste included or not as the caller says.
 * @param of.concreteVolumeM3 default: the volume of the earth wall.
 * @param of.carbonFactor one entry of `CEMENT_CARBON_FACTORS` or a supplier's own.
 * @param of.concreteCement default `CONCRETE_CEMENT_CONTENT`, from memory: give the real mix where known.
 * @throws RangeError for a volume not above 0 or a mass below 0. Source: with each factor.
 *
 * @example
 * const { cementPctOfConcrete, earthCementKgM3 } = cementComparison({ earthVolumeM3: 2, earthCementKg: 281.4, carbonFactor: CEMENT_CARBON_FACTORS[0] });
 * earthCementKgM3 // => 140.7
 * cementPctOfConcrete // => { low: 45.39, high: 50.25 }
 */
export function cementComparison(of: {
  readonly earthVolumeM3: number;
  readonly earthCementKg: number;
  readonly concreteVolumeM3?: number;
  readonly carbonFactor: SourcedRange;
  readonly concreteCement?: SourcedRange;
}): CementComparison {
  const { earthVolumeM3, earthCementKg, carbonFactor } = of;
  const { concreteVolumeM3 = earthVolumeM3, concreteCement = CONCRETE_CEMENT_CONTENT } = of;
  checkAbove("earthVolumeM3", earthVolumeM3);
  checkNotBelow("earthCementKg", earthCementKg);
  checkAbove("concreteVolumeM3", concreteVolumeM3);
  for (const range of [carbonFactor, concreteCement]) {
    if (!(range.low > 0 && range.low <= range.high)) {
      throw new RangeError(
        `invalid range \`${range.id}\`: ${range.low} to ${range.high}; expected above 0, low first`,
      );
    }
  }
  const concreteCementKg = {
    low: concreteVolumeM3 * concreteCement.low,
    high: concreteVolumeM3 * concreteCement.high,
  };
  const cementPctOfConcrete = {
    low: (100 * earthCementKg) / concreteCementKg.high,
    high: (100 * earthCementKg) / concreteCementKg.low,
  };
  return {
    earthCementKgM3: earthCementKg / earthVolumeM3,
    earthCementKg,
    concreteCementKg,
    cementPctOfConcrete,
    earthCementCarbonKg: {
      low: earthCementKg * carbonFactor.low,
      high: earthCementKg * carbonFactor.high,
    },
    concreteCementCarbonKg: {
      low: concreteCementKg.low * carbonFactor.low,
      high: concreteCementKg.high * carbonFactor.high,
    },
    carbonFactor,
    concreteCement,
    statement: say`The earth element holds ${formatFixed(cementPctOfConcrete.low, 0)} to ${formatFixed(cementPctOfConcrete.high, 0)} % of the cement of a concrete element of ${formatFixed(concreteVolumeM3, 2)} m³ (cement against cement, ${concreteCement.source}).`,
  };
}
