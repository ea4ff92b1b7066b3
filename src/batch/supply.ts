import { checkNotNegative, wholeCount } from "../quantities/checkNumber.js";
import type { Text } from "../words/message.js";
import { type Recipe, type RecipeLine, usedLines } from "./recipe.js";
import { type Truck, type TruckLoads, truckLoads } from "./truckLoads.js";

/** How a material comes to the site. */
export interface SupplyTerms {
  /** Lost in the heap and on the way, percent of what goes into the mix; default 0. */
  readonly lossPct?: number;
  /** Where it comes in bags. */
  readonly bagMassKg?: number;
  /** Where it comes loose by truck. */
  readonly truck?: Truck;
}

/** What has to be brought of a material so that enough of it goes into the mix. */
export interface SuppliedAmount {
  readonly id: string;
  readonly name: Text;
  readonly dryMassKg: number;
  /** As delivered: with its water. */
  readonly moistMassKg: number;
  /** Null without a loose bulk density. */
  readonly looseVolumeL: number | null;
  /** Whole bags; null where it does not come in bags. */
  readonly bags: number | null;
  /** Null without a truck. */
  readonly loads: TruckLoads | null;
}

/**
 * Gives what has to be brought of each material: what goes into the mix and what is lost before. Order
 * list, cost and haul all read these amounts.
 *
 * Formula: amount in the mix × (1 + loss/100); bags and loads are whole.
 *
 * @param recipe the mix in the amount to make, for example `elementQuantities(…).amounts.mix`, which holds
 * the element's own waste already.
 * @param terms by material id, the cement under `cement`.
 * @throws RangeError for a loss below 0 or a truck that takes nothing. Source: own arithmetic.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 6 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const [soil, cement] = suppliedAmounts(batch, { soil: { lossPct: 10 }, cement: { bagMassKg: 25 } });
 * [soil.moistMassKg, soil.looseVolumeL, cement.bags] // => [1166, 880, 4]
 */
export function suppliedAmounts(
  recipe: Recipe,
  terms: Readonly<Record<string, SupplyTerms | undefined>>,
): SuppliedAmount[] {
  return usedLines(recipe).map((line) => suppliedAmount(line, terms[line.id]));
}

function suppliedAmount(line: RecipeLine, terms: SupplyTerms = {}): SuppliedAmount {
  const { id, name } = line;
  const { lossPct = 0, bagMassKg, truck } = terms;
  checkNotNegative(`${id}.lossPct`, lossPct);
  const brought = 1 + lossPct / 100;
  const dryMassKg = line.dryMassKg * brought;
  const moistMassKg = line.moistMassKg * brought;
  const looseVolumeL = line.looseVolumeL === null ? null : line.looseVolumeL * brought;
  return {
    id,
    name,
    dryMassKg,
    moistMassKg,
    looseVolumeL,
    bags: bagMassKg !== undefined && bagMassKg > 0 ? wholeCount(dryMassKg / bagMassKg) : null,
    loads: truck === undefined ? null : truckLoads({ moistMassKg, looseVolumeL }, truck),
  };
}
