import { checkNotNegative, checkPositive, wholeCount } from "../quantities/checkNumber.js";
import type { Text } from "../words/message.js";
import { type Recipe, type RecipeLine, usedLines } from "./recipe.js";

/** What a truck takes. */
export interface Truck {
  readonly payloadKg: number;
  readonly bodyM3: number;
}

export interface TruckLoads {
  readonly loads: number;
  /** What fills the truck first. */
  readonly limitedBy: "mass" | "volume" | "mass alone known";
  /** How full the last load is, percent of what a load takes. */
  readonly lastLoadPct: number;
}

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

/**
 * Counts the truck loads of a material by what is full first: the payload or the body.
 *
 * Formula: loads = the larger of mass / payload and loose volume / body, rounded up.
 *
 * @param amount moist mass as delivered, water included; loose volume null where not known.
 * @throws RangeError for a payload or body not above 0, or an amount below 0. Source: own arithmetic.
 *
 * @example
 * truckLoads({ moistMassKg: 21000, looseVolumeL: 18000 }, { payloadKg: 10000, bodyM3: 8 }) // => { loads: 3, limitedBy: "volume", lastLoadPct: 25 }
 */
export function truckLoads(
  amount: { readonly moistMassKg: number; readonly looseVolumeL: number | null },
  truck: Truck,
): TruckLoads {
  const { moistMassKg, looseVolumeL } = amount;
  checkNotNegative("moistMassKg", moistMassKg);
  if (looseVolumeL !== null) checkNotNegative("looseVolumeL", looseVolumeL);
  checkPositive("payloadKg", truck.payloadKg);
  checkPositive("bodyM3", truck.bodyM3);
  const byMass = moistMassKg / truck.payloadKg;
  const byVolume = looseVolumeL === null ? 0 : looseVolumeL / 1000 / truck.bodyM3;
  const exact = Math.max(byMass, byVolume);
  const loads = wholeCount(exact);
  const full = byMass >= byVolume ? "mass" : "volume";
  const limitedBy = looseVolumeL === null ? "mass alone known" : full;
  return {
    loads,
    limitedBy,
    lastLoadPct: loads === 0 ? 0 : 100 * (exact - (loads - 1)),
  };
}
