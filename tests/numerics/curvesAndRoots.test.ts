import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findRoot } from "../../src/numerics/findRoot.js";
import { monotoneCubic } from "../../src/numerics/monotoneCubic.js";

describe("monotoneCubic", () => {
  it("goes through its points and stays between neighbours, whatever the points", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0.001, max: 50, noNaN: true }),
            fc.double({ min: -1e3, max: 1e3, noNaN: true }),
          ),
          { minLength: 2, maxLength: 12 },
        ),
        (steps) => {
          let at = -10;
          const x = steps.map(([dx]) => {
            at += dx;
            return at;
          });
          const y = steps.map(([, v]) => v);
          const curve = monotoneCubic(x, y);
          for (const [i, v] of x.entries()) expect(curve(v)).toBeCloseTo(y[i], 12);
          for (let i = 1; i < x.length; i++) {
            let before = y[i - 1];
            const rises = Math.sign(y[i] - y[i - 1]);
            for (let k = 1; k <= 10; k++) {
              const value = curve(x[i - 1] + ((x[i] - x[i - 1]) * k) / 10);
              expect((value - before) * rises).toBeGreaterThanOrEqual(-1e-10);
              before = value;
            }
          }
        },
      ),
    );
  });

  it("follows a smooth monotone function closely, and a line exactly", () => {
    const x = Array.from({ length: 41 }, (_, i) => i / 10);
    const curve = monotoneCubic(x, x.map(Math.exp));
    expect(Math.abs(curve(2.05) / Math.exp(2.05) - 1)).toBeLessThan(1e-4);
    expect(monotoneCubic([0, 1, 5], [1, 3, 11])(3.7)).toBeCloseTo(8.4, 13);
  });

  it("keeps end values outside, takes one point, and refuses disorder", () => {
    const curve = monotoneCubic([1, 2], [5, 6]);
    expect([curve(0), curve(3), curve(NaN)]).toEqual([5, 6, NaN]);
    expect(monotoneCubic([1], [5])(9)).toBe(5);
    expect(() => monotoneCubic([], [])).toThrow("invalid `x`: no values");
    expect(() => monotoneCubic([1, 1], [0, 0])).toThrow("invalid `x[1]`: 1; expected above 1");
    expect(() => monotoneCubic([1, 2], [0])).toThrow(TypeError);
  });
});

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
    const cases: [(x: number) => number, number, number, number][] = [
      [(x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
      [(x) => Math.exp(x) - 5, 0, 4, Math.log(5)],
      [(x) => 1 / x - 3, 0.1, 2, 1 / 3],
    ];
    for (const [f, low, high, wanted] of cases) {
      let calls = 0;
      const counted = (x: number): number => {
        calls += 1;
        return f(x);
      };
      expect(findRoot(counted, low, high, { tolerance: 1e-15 })).toBeCloseTo(wanted, 14);
      expect(calls).toBeLessThanOrEqual(13);
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
