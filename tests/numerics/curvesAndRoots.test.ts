import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findRoot } from "../../src/numerics/findRoot.js";

describe("findRoot", () => {
  it("finds roots to the last digits in few calls", () => {
    let calls = 0;
    const root = findRoot(
      (x) => {
        calls++;
        return Math.cos(x) - x;
      },
      0,
      1,
      { tolerance: 1e-15 },
    );
    expect(Math.abs(Math.cos(root) - root)).toBeLessThan(4e-16);
    expect(calls).toBeLessThan(12);
  });

  it("finds Wallis's root of x³ − 2x − 5 and others by curved steps, far quicker than by halves", () => {
    const cases: [(x: number) => number, number, number, number, number][] = [
      [(x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265, 9],
      [(x) => Math.exp(x) - 5, 0, 4, Math.log(5), 12],
      [(x) => 1 / x - 3, 0.1, 2, 1 / 3, 12],
      [(x) => x ** 9 - 0.5, 0, 1, 2 ** (-1 / 9), 12],
    ];
    for (const [f, low, high, wanted, most] of cases) {
      let calls = 0;
      const counted = (x: number): number => {
        calls += 1;
        return f(x);
      };
      expect(findRoot(counted, low, high, { tolerance: 1e-15 })).toBeCloseTo(wanted, 14);
      expect(calls).toBeLessThanOrEqual(most);
    }
  });

  it("finds a known root within its tolerance, at any scale", () => {
    const size = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(size, fc.constantFrom(1e-9, 1, 1e9), (part, scale) => {
        const wanted = part * scale;
        const f = (x: number): number => ((x - wanted) / scale) ** 3 * (1 + x / scale);
        const root = findRoot(f, 0, scale, { tolerance: 1e-9 });
        expect(Math.abs(root - wanted)).toBeLessThanOrEqual(1e-9 * scale);
      }),
    );
  });

  it("takes a root at an end and refuses a bracket without one", () => {
    expect(findRoot((x) => x, 0, 3)).toBe(0);
    expect(findRoot((x) => x - 3, 0, 3)).toBe(3);
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow("expected opposite signs");
    expect(() => findRoot(() => NaN, -1, 1)).toThrow(RangeError);
  });
});
