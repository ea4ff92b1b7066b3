import { parseNumber } from "./parseQuantity.js";
import { convertToBase } from "./units.js";

/** A sieve's name in the United States series and its opening. */
export interface SieveDesignation {
  readonly name: string;
  readonly sizeMm: number;
  /**
   * Where the opening comes from. `read`: sizes.com/tools/sieves.htm (inch sizes) and the table of
   * Das, Principles of Geotechnical Engineering, Example 2.1, as reproduced (Nos. 4 to 200).
   * `memory`: the remaining numbers of ASTM E11, from memory.
   */
  readonly basis: "read" | "memory";
}

const READ: readonly (readonly [string, number])[] = [
  ["3 in", 75],
  ["2 1/2 in", 63],
  ["2 in", 50],
  ["1 3/4 in", 45],
  ["1 1/2 in", 37.5],
  ["1 1/4 in", 31.5],
  ["1 in", 25],
  ["3/4 in", 19],
  ["5/8 in", 16],
  ["1/2 in", 12.5],
  ["7/16 in", 11.2],
  ["3/8 in", 9.5],
  ["5/16 in", 8],
  ["No. 4", 4.75],
  ["No. 10", 2],
  ["No. 20", 0.85],
  ["No. 40", 0.425],
  ["No. 60", 0.25],
  ["No. 80", 0.18],
  ["No. 100", 0.15],
  ["No. 200", 0.075],
];

const REMEMBERED: readonly (readonly [string, number])[] = [
  ["1/4 in", 6.3],
  ["No. 3 1/2", 5.6],
  ["No. 5", 4],
  ["No. 6", 3.35],
  ["No. 7", 2.8],
  ["No. 8", 2.36],
  ["No. 12", 1.7],
  ["No. 14", 1.4],
  ["No. 16", 1.18],
  ["No. 18", 1],
  ["No. 25", 0.71],
  ["No. 30", 0.6],
  ["No. 35", 0.5],
  ["No. 45", 0.355],
  ["No. 50", 0.3],
  ["No. 70", 0.212],
  ["No. 120", 0.125],
  ["No. 140", 0.106],
  ["No. 170", 0.09],
  ["No. 230", 0.063],
  ["No. 270", 0.053],
  ["No. 325", 0.045],
  ["No. 400", 0.038],
];

/** United States sieve designations and their openings, coarse to fine. */
export const SIEVE_DESIGNATIONS: readonly SieveDesignation[] = [
  ...READ.map(([name, sizeMm]) => ({ name, sizeMm, basis: "read" as const })),
  ...REMEMBERED.map(([name, sizeMm]) => ({ name, sizeMm, basis: "memory" as const })),
].sort((a, b) => b.sizeMm - a.sizeMm);

const OPENING_BY_NAME = new Map(SIEVE_DESIGNATIONS.map((sieve) => [sieve.name, sieve.sizeMm]));

/** No sieve has a longer name, and no pattern need search a longer text. */
const MAX_LENGTH = 40;

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
  if (plain.length > MAX_LENGTH) return undefined;
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
