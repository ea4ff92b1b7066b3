import { checkThat } from "../quantities/checkNumber.js";

/** A stream of seeded random numbers; each object has its own state. */
export interface Random {
  /** From 0 up to but not including 1, in steps of 2⁻⁵³. */
  uniform(): number;
  /** Standard normal, by the polar method. */
  normal(): number;
  /** A whole number from 0 up to but not including `n`, each equally likely. */
  integer(n: number): number;
  /** The same entries in random order, as a new array. */
  shuffle<T>(values: readonly T[]): T[];
}

/**
 * Starts a stream of random numbers that is the same for the same seed, on every machine.
 *
 * Bits come from xoshiro128**, its state filled from the seed by splitmix32. Not for secrets.
 *
 * @param seed A whole number, 0 to 4294967295.
 * @throws RangeError for any other seed.
 *
 * Source: see `xoshiro128`; normals by Marsaglia and Bray's polar method (from memory).
 *
 * @example
 * createRandom(1).integer(100) === createRandom(1).integer(100) // => true
 */
export function createRandom(seed: number): Random {
  const isSeed = Number.isInteger(seed) && seed >= 0 && seed <= 0xffffffff;
  checkThat(isSeed, { seed }, "a whole number, 0 to 4294967295");
  const next = xoshiro128(spread(seed));
  let spare: number | undefined;
  const uniform = (): number => ((next() >>> 5) * 2 ** 26 + (next() >>> 6)) / 2 ** 53;
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    while (true) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const square = u * u + v * v;
      if (square === 0 || square >= 1) continue;
      const stretch = Math.sqrt((-2 * Math.log(square)) / square);
      spare = v * stretch;
      return u * stretch;
    }
  };
  const integer = (n: number): number => {
    if (!Number.isInteger(n) || n < 1 || n > 2 ** 32) {
      throw new RangeError(`invalid \`n\`: ${n}; expected a whole number, 1 to 4294967296`);
    }
    // Drawing again above the last whole multiple of n keeps every value equally likely.
    const usable = 2 ** 32 - (2 ** 32 % n);
    let drawn = next();
    while (drawn >= usable) drawn = next();
    return drawn % n;
  };
  const shuffle = <T>(values: readonly T[]): T[] => {
    const mixed = [...values];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = integer(i + 1);
      [mixed[i], mixed[j]] = [mixed[j], mixed[i]];
    }
    return mixed;
  };
  return { uniform, normal, integer, shuffle };
}

/** Four well-mixed words from one seed (splitmix32). */
function spread(seed: number): [number, number, number, number] {
  let counter = seed | 0;
  const word = (): number => {
    counter = (counter + 0x9e3779b9) | 0;
    let mixed = counter ^ (counter >>> 16);
    mixed = Math.imul(mixed, 0x85ebca6b);
    mixed ^= mixed >>> 13;
    mixed = Math.imul(mixed, 0xc2b2ae35);
    return (mixed ^ (mixed >>> 16)) >>> 0;
  };
  return [word(), word(), word(), word()];
}

/**
 * The generator xoshiro128** of Blackman and Vigna: 32 random bits a call, period 2¹²⁸ - 1.
 *
 * @param state Four 32-bit numbers, not all zero; copied.
 *
 * Source: Blackman and Vigna, *Scrambled linear pseudorandom number generators*, ACM Trans. Math.
 * Softw. 47 (2021), from memory; the tests hold its known first outputs.
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state.map((word) => word | 0);
  return () => {
    const scrambled = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return scrambled;
  };
}

function rotate(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}
