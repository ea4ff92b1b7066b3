import { describe, expect, it } from "vitest";
import { createRandom, xoshiro128 } from "../../src/numerics/random.js";

const many = (n: number, draw: () => number): number[] => Array.from({ length: n }, draw);
const mean = (values: number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

describe("xoshiro128", () => {
  it("gives the outputs known for the state 1, 2, 3, 4 (from memory)", () => {
    const outputs = many(8, xoshiro128([1, 2, 3, 4]));
    expect(outputs.slice(0, 4)).toEqual([11520, 0, 5927040, 70819200]);
    expect(outputs.slice(5)).toEqual([1637235492, 1287239034, 3734860849]);
  });
});

describe("createRandom", () => {
  it("repeats for a seed, differs between seeds, and keeps its own state", () => {
    const one = createRandom(7);
    const first = many(5, one.uniform);
    createRandom(8).uniform();
    expect(many(5, createRandom(7).uniform)).toEqual(first);
    expect(many(5, one.uniform)).not.toEqual(first);
    expect(many(5, createRandom(8).uniform)).not.toEqual(first);
  });

  it("has the moments of uniform and normal variables", () => {
    const random = createRandom(20);
    const uniform = many(40_000, random.uniform);
    expect(Math.min(...uniform)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...uniform)).toBeLessThan(1);
    // Four standard errors of each moment at this many draws.
    expect(Math.abs(mean(uniform) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / 40_000));
    const normal = many(40_000, random.normal);
    expect(Math.abs(mean(normal))).toBeLessThan(4 / 200);
    expect(Math.abs(mean(normal.map((z) => z ** 2)) - 1)).toBeLessThan(4 * Math.sqrt(2 / 40_000));
    expect(Math.abs(mean(normal.map((z) => z ** 4)) - 3)).toBeLessThan(4 * Math.sqrt(96 / 40_000));
  });

  it("draws whole numbers evenly", () => {
    const random = createRandom(3);
    const counts = new Array<number>(7).fill(0);
    for (let i = 0; i < 14_000; i++) counts[random.integer(7)]++;
    const chiSquare = counts.reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0);
    expect(chiSquare).toBeLessThan(22.5); // 0.999 point of chi-square with 6 degrees of freedom
    expect(random.integer(1)).toBe(0);
  });

  it("draws evenly where the generator's range is no multiple of the number", () => {
    // 2^32 = 4/3 n: without drawing again a third of the values would come twice as often.
    const random = createRandom(5);
    const n = 3 * 2 ** 30;
    const low = many(3000, () => random.integer(n)).filter((drawn) => drawn < n / 3).length;
    // Four standard deviations of a binomial count about 1000.
    expect(Math.abs(low - 1000)).toBeLessThan(4 * Math.sqrt(3000 * (1 / 3) * (2 / 3)));
  });

  it("shuffles a copy, each order about equally often", () => {
    const random = createRandom(11);
    const source = ["a", "b", "c"] as const;
    const orders = new Map<string, number>();
    for (let i = 0; i < 6000; i++) {
      const order = random.shuffle(source).join("");
      orders.set(order, (orders.get(order) ?? 0) + 1);
    }
    expect(source).toEqual(["a", "b", "c"]);
    expect(orders.size).toBe(6);
    for (const count of orders.values()) expect(Math.abs(count - 1000)).toBeLessThan(120);
  });

  it("refuses seeds and sizes that are not whole numbers in range", () => {
    expect(() => createRandom(-1)).toThrow("invalid `seed`: -1");
    expect(() => createRandom(0.5)).toThrow("invalid `seed`: 0.5");
    expect(() => createRandom(2 ** 32)).toThrow("invalid `seed`: 4294967296");
    const [least, most] = [createRandom(0), createRandom(2 ** 32 - 1)];
    expect(least.uniform()).not.toBe(most.uniform());
    expect(() => least.integer(0)).toThrow("invalid `n`: 0");
    expect(() => least.integer(1.5)).toThrow("invalid `n`: 1.5");
    expect(() => least.integer(2 ** 32 + 1)).toThrow("invalid `n`: 4294967297");
    // All of the range: the generator's own numbers.
    expect(createRandom(4).integer(2 ** 32)).toBe(createRandom(4).integer(2 ** 32 - 1));
  });
});
