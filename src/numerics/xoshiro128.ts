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
