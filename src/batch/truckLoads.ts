import { checkNotNegative, checkPositive, wholeCount } from "../quantities/checkNumber.js";

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
  return {
    loads,
    limitedBy: firstFull(looseVolumeL, byMass, byVolume),
    lastLoadPct: loads === 0 ? 0 : 100 * (exact - (loads - 1)),
  };
}

function firstFull(
  looseVolumeL: number | null,
  byMass: number,
  byVolume: number,
): TruckLoads["limitedBy"] {
  if (looseVolumeL === null) return "mass alone known";
  return byMass >= byVolume ? "mass" : "volume";
}
