import { convertToBase } from "./convertUnit.js";
import { parseNumber } from "./parseNumber.js";
import { SIEVE_DESIGNATIONS } from "./sieveDesignations.js";

const OPENING_BY_NAME = new Map(SIEVE_DESIGNATIONS.map((sieve) => [sieve.name, sieve.sizeMm]));

/**
 * Reads a sieve as labs write it: a number in the column's unit, a United States designation
 * (`No. 200`, `#200`, `3/8 in`), or a number with its own unit (`63 um`).
 * An inch size of the standard series gives its standard opening (3/8 in is 9.5 mm, not 9.525).
 *
 * @param unit the unit of the column, mm where none is given.
 * @returns the opening in mm, or `undefined` where the text names no sieve.
 *
 * @example
 * parseSieve("No. 200") // => 0.075
 * parseSieve("3/8 in") // => 9.5
 * parseSieve("63", "um") // => 0.063
 * parseSieve("1 1/2", "in") // => 37.5
 * parseSieve("large") // => undefined
 */
export function parseSieve(text: string, unit = "mm"): number | undefined {
  const plain = text.trim().replace(/\s+/g, " ");
  const bare = parseNumber(plain);
  if ("value" in bare) return positive(openingIn(plain, bare.value, unit));

  const numbered = /^(?:no\.?|#)\s*(\d+(?: 1\/2)?)$/i.exec(plain);
  if (numbered) return OPENING_BY_NAME.get(`No. ${numbered[1]}`);

  const [, whole, top, bottom, ownUnit] =
    /^(\d+(?:\.\d+)?)?(?:[ -]?(\d+)\/(\d+))?\s*("|[a-zµμ]+)$/iu.exec(plain) ?? [];
  if (ownUnit === undefined || (whole === undefined && top === undefined)) {
    // "1/2" parsed greedily has its numerator in `whole`: take plain fractions of an inch here.
    const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)\s*("|in\.?|inch)?$/i.exec(plain);
    if (!fraction) return undefined;
    const [, full, part, parts] = fraction;
    const label = full === undefined ? `${part}/${parts}` : `${full} ${part}/${parts}`;
    return inches(label, Number(full ?? 0) + Number(part) / Number(parts));
  }
  const value = Number(whole ?? 0) + (top === undefined ? 0 : Number(top) / Number(bottom));
  const label = [whole, top === undefined ? undefined : `${top}/${bottom}`]
    .filter(Boolean)
    .join(" ");
  return positive(openingIn(label, value, ownUnit));
}

function openingIn(label: string, value: number, unit: string): number | undefined {
  return convertToBase(1, unit, "length") === 25.4
    ? inches(label, value)
    : convertToBase(value, unit, "length");
}

function inches(label: string, value: number): number {
  return OPENING_BY_NAME.get(`${label} in`) ?? value * 25.4;
}

function positive(sizeMm: number | undefined): number | undefined {
  return sizeMm !== undefined && sizeMm > 0 ? sizeMm : undefined;
}
