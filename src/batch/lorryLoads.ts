import { checkAbove, checkNotBelow } from "./checkAmount.js";

export interface LorryLoads {
  readonly loads: number;
  /** What fills the lorry first. */
  readonly limitedBy: "mass" | "volume" | "mass alone known";
  /** How full the last load is, percent of what a load takes. */
  readonly lastLoadPct: number;
}

/**
 * Counts the lorry loads of a material by what is full first: the payload or the body.
 *
 * Formula: loads = the larger of mass / payload and loose volume / body, rounded up.
 *
 * @param of.moistMassKg as delivered, water included. @param of.looseVolumeL null where not known.
 * @throws RangeError for a payload or body not above 0, or an amount below 0. Source: own arithmetic.
 *
 * @example
 * lorryLoads({ moistMassKg: 21000, looseVolumeL: 18000 }, { payloadKg: 10000, bodyM3: 8 }) // => { loads: 3, limitedBy: "volume", lastLoadPct: 25 }
 */
export function lorryLoads(
  of: { readonly moistMassKg: number; readonly looseVolumeL: number | null },
  lorry: { readonly payloadKg: number; readonly bodyM3: number },
): LorryLoads {
  checkNotBelow("moistMassKg", of.moistMassKg);
  if (of.looseVolumeL !== null) checkNotBelow("looseVolumeL", of.looseVolumeL);
  checkAbove("payloadKg", lorry.payloadKg);
  checkAbove("bodyM3", lorry.bodyM3);
  const byMass = of.moistMassKg / lorry.payloadKg;
  const byVolume = of.looseVolumeL === null ? 0 : of.looseVolumeL / 1000 / lorry.bodyM3;
  const exact = Math.max(byMass, byVolume);
  const loads = Math.max(0, Math.ceil(exact - 1e-9));
  return {
    loads,
    limitedBy:
      of.looseVolumeL === null ? "mass alone known" : byMass >= byVolume ? "mass" : "volume",
    lastLoadPct: loads === 0 ? 0 : 100 * (exact - (loads - 1)),
  };
}
