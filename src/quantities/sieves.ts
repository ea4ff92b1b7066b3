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

/** Openings of the British mesh numbers (BS 410 before it went over to openings), mm; from memory. */
const BRITISH_MESH: Readonly<Record<string, number>> = {
  "5": 3.35,
  "6": 2.8,
  "7": 2.36,
  "8": 2,
  "10": 1.7,
  "12": 1.4,
  "14": 1.18,
  "16": 1,
  "18": 0.85,
  "22": 0.71,
  "25": 0.6,
  "30": 0.5,
  "36": 0.425,
  "44": 0.355,
  "52": 0.3,
  "60": 0.25,
  "72": 0.212,
  "85": 0.18,
  "100": 0.15,
  "120": 0.125,
  "150": 0.106,
  "170": 0.09,
  "200": 0.075,
  "240": 0.063,
  "300": 0.053,
  "350": 0.045,
  "400": 0.038,
};

/**
 * The opening of a sieve number in a series, by the way a column's header names the series: `US No.`, `ASTM`,
 * `ASTM E11` for the United States numbers, `BS mesh`, `BS 410` for the British ones. `mesh` alone may be
 * either and names none.
 *
 * @returns `undefined` where the header names no series of numbers.
 *
 * @example
 * sieveNumbers("US No.")?.("200") // => 0.075
 * sieveNumbers("BS mesh")?.("36") // => 0.425
 * sieveNumbers("mm") // => undefined
 */
export function sieveNumbers(series: string): ((number: string) => number | undefined) | undefined {
  const plain = series.toLowerCase().replace(/[\s.]+/g, "");
  if (/^((us|astm)(e11)?(no|nr|number|mesh|sieve)?|e11|no|sieveno)$/.test(plain)) {
    return (number) => OPENING_BY_NAME.get(`No. ${number}`);
  }
  if (/^(bs(410)?(no|nr|number|mesh)?|british(mesh)?)$/.test(plain)) {
    return (number) => (Object.hasOwn(BRITISH_MESH, number) ? BRITISH_MESH[number] : undefined);
  }
  return undefined;
}

/** No sieve has a longer name, and no pattern need search a longer text. */
const MAX_LENGTH = 40;

/**
 * Reads a sieve as labs write it: a number in the column's unit or of the series that it names
 * ({@link sieveNumbers}), a United States designation (`No. 200`, `#200`, `3/8 in`), a British one (`BS 36`),
 * or a number with its own unit (`63 um`).
 * An inch size of the standard series gives its standard opening (3/8 in is 9.5 mm, not 9.525).
 *
 * @param unit the unit of the column, or the series of its numbers; mm where none is given.
 * @returns the opening in mm, or `undefined` where the text names no sieve.
 *
 * @example
 * parseSieve("No. 200") // => 0.075
 * parseSieve("3/8 in") // => 9.5
 * parseSieve("63", "um") // => 0.063
 * parseSieve("1 1/2", "in") // => 37.5
 * parseSieve("40", "US No.") // => 0.425
 * parseSieve("BS 36") // => 0.425
 * parseSieve("large") // => undefined
 */
export function parseSieve(text: string, unit = "mm"): number | undefined {
  const plain = text.trim().replace(/\s+/g, " ");
  if (plain.length > MAX_LENGTH) return undefined;
  const series = sieveNumbers(unit);
  const [, own, number] = /^(no\.?|#|bs(?: ?no\.?| ?mesh)?) ?(\d+(?: 1\/2)?)$/i.exec(plain) ?? [];
  if (number !== undefined) {
    const numbers = /^bs/i.test(own) ? sieveNumbers("BS") : (series ?? sieveNumbers("US"));
    return numbers?.(number);
  }
  const bare = parseNumber(plain);
  if ("value" in bare) {
    return series ? series(plain) : positive(openingIn(plain, bare.value, unit));
  }

  return fractionOfInch(plain) ?? withOwnUnit(plain);
}

/** `3/8`, `1 1/2 in`, `1-1/2"`: a fraction without a unit is one of an inch. */
function fractionOfInch(text: string): number | undefined {
  const [found, full, top, bottom] =
    /^(?:(\d+)[ -])?(\d+)\/([1-9]\d*)\s*("|in\.?|inch)?$/i.exec(text) ?? [];
  if (found === undefined) return undefined;
  const label = full === undefined ? `${top}/${bottom}` : `${full} ${top}/${bottom}`;
  return positive(inches(label, Number(full ?? 0) + Number(top) / Number(bottom)));
}

function withOwnUnit(text: string): number | undefined {
  const [, number, unit] = /^(\d+(?:\.\d+)?)\s*("|[a-zµμ]+)$/iu.exec(text) ?? [];
  return unit === undefined ? undefined : positive(openingIn(number, Number(number), unit));
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
