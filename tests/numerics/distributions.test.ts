import { describe, expect, it } from "vitest";
import {
  fCdf,
  normalCdf,
  normalQuantile,
  tCdf,
  tQuantile,
} from "../../src/numerics/distributions.js";
import {
  noncentralTCdf,
  noncentralTQuantile,
  toleranceFactor,
} from "../../src/numerics/noncentralT.js";
import scipy from "../reference/distributions.json" with { type: "json" };

/** Asserts `|found - wanted| <= abs + rel |wanted|`, saying which case failed. */
function near(found: number, wanted: number, within: { rel: number; abs: number }, of: unknown) {
  const off = Math.abs(found - wanted);
  expect(
    off <= within.abs + within.rel * Math.abs(wanted),
    `${JSON.stringify(of)}: found ${found}, wanted ${wanted}`,
  ).toBe(true);
}

describe("distributions against SciPy", () => {
  it("t, both ways", () => {
    for (const [x, df, p] of scipy.t) {
      near(tCdf(x, df), p, { rel: 1e-12, abs: 0 }, ["tCdf", x, df]);
      // Near 1 the probability itself no longer tells neighbouring values apart.
      const steep = p > 0.9 ? 1e-15 / (1 - p) : 0;
      near(tQuantile(p, df), x, { rel: 1e-11 + steep, abs: 1e-14 }, ["tQuantile", p, df]);
    }
  });

  it("normal, both ways", () => {
    for (const [p, x] of scipy.normal) {
      near(normalQuantile(p), x, { rel: 1e-14, abs: 1e-15 }, ["normalQuantile", p]);
      near(normalCdf(x), p, { rel: 1e-13, abs: 0 }, ["normalCdf", x]);
    }
  });

  it("F", () => {
    for (const [x, a, b, p] of scipy.f) {
      near(fCdf(x, a, b), p, { rel: 1e-12, abs: 0 }, ["fCdf", x, a, b]);
    }
  });

  it("noncentral t", () => {
    for (const [x, df, delta, p] of scipy.noncentralT) {
      near(noncentralTCdf(x, df, delta), p, { rel: 0, abs: 1e-10 }, ["cdf", x, df, delta]);
    }
  });

  it("one-sided tolerance factors", () => {
    for (const [n, coverage, confidence, k] of scipy.toleranceFactor) {
      near(toleranceFactor(n, coverage, confidence), k, { rel: 1e-9, abs: 0 }, [
        n,
        coverage,
        confidence,
      ]);
    }
  });
});

describe("one-sided 5 % factors calculated apart from this code, to three decimals", () => {
  const n = [3, 4, 5, 6, 8, 10, 15, 20, 30];
  const table: Record<number, number[]> = {
    0.75: [3.152, 2.681, 2.463, 2.336, 2.188, 2.104, 1.991, 1.932, 1.869],
    0.95: [7.656, 5.144, 4.203, 3.708, 3.187, 2.911, 2.566, 2.396, 2.22],
  };
  it.each([0.75, 0.95])("at confidence %f", (confidence) => {
    for (const [i, k] of table[confidence].entries()) {
      near(toleranceFactor(n[i], 0.95, confidence), k, { rel: 0, abs: 5.1e-4 }, [n[i], confidence]);
    }
  });
});

describe("noncentral t by its own laws", () => {
  it("is Student's t without noncentrality", () => {
    for (const [x, df, p] of scipy.t) {
      near(noncentralTCdf(x, df, 0), p, { rel: 0, abs: 2e-14 }, ["central", x, df]);
    }
  });

  it("has the value Φ(-delta) at zero, and mirrors in the sign of x and delta", () => {
    for (const df of [1, 7, 250]) {
      for (const delta of [-3, 0.4, 6]) {
        near(noncentralTCdf(0, df, delta), normalCdf(-delta), { rel: 1e-13, abs: 0 }, [df, delta]);
        const mirrored = 1 - noncentralTCdf(-2.5, df, -delta);
        near(noncentralTCdf(2.5, df, delta), mirrored, { rel: 0, abs: 1e-14 }, [df, delta]);
      }
    }
  });

  it("returns from quantile to probability, far beyond where exp(-delta²/2) underflows", () => {
    for (const p of [0.001, 0.5, 0.95]) {
      for (const df of [1, 5, 40, 2000]) {
        for (const delta of [-60, 0, 3, 90]) {
          const x = noncentralTQuantile(p, df, delta);
          near(noncentralTCdf(x, df, delta), p, { rel: 0, abs: 1e-12 }, [p, df, delta]);
        }
      }
    }
  });

  it("gives factors that fall towards the normal quantile as results grow in number", () => {
    const factors = [2, 5, 20, 100, 1000, 20000].map((n) => toleranceFactor(n, 0.95, 0.75));
    for (let i = 1; i < factors.length; i++) expect(factors[i]).toBeLessThan(factors[i - 1]);
    near(factors[5], normalQuantile(0.95), { rel: 0.01, abs: 0 }, "limit");
  });
});

describe("distributions at the ends of their arguments", () => {
  const ends = [-Infinity, Infinity];
  it("are 0 and 1, and back", () => {
    expect([0, 1].map((p) => normalQuantile(p))).toEqual(ends);
    expect([0, 1].map((p) => tQuantile(p, 3))).toEqual(ends);
    for (const cdf of [
      normalCdf,
      (x: number) => tCdf(x, 3),
      (x: number) => noncentralTCdf(x, 3, 1),
    ]) {
      expect(ends.map(cdf)).toEqual([0, 1]);
    }
    expect([fCdf(0, 2, 3), fCdf(Infinity, 2, 3)]).toEqual([0, 1]);
  });

  it("refuse what lies just beyond", () => {
    for (const p of [-1e-9, 1 + 1e-9]) {
      expect(() => normalQuantile(p)).toThrow(`invalid \`p\`: ${p}`);
      expect(() => tQuantile(p, 3)).toThrow(`invalid \`p\`: ${p}`);
    }
    for (const p of [0, 1]) {
      expect(() => noncentralTQuantile(p, 3, 0)).toThrow(`invalid \`p\`: ${p}`);
      expect(() => toleranceFactor(5, p, 0.9)).toThrow(`invalid \`coverage\`: ${p}`);
      expect(() => toleranceFactor(5, 0.9, p)).toThrow(`invalid \`confidence\`: ${p}`);
    }
    expect(() => tCdf(NaN, 3)).toThrow("invalid `x`: NaN");
    expect(() => fCdf(NaN, 3, 2)).toThrow("invalid `x`: NaN");
    expect(() => tQuantile(0.5, 0)).toThrow("invalid `df`: 0");
    expect(() => fCdf(1, 0, 2)).toThrow("invalid `d1`: 0");
    expect(() => fCdf(1, 2, 0)).toThrow("invalid `d2`: 0");
    for (const df of [0, Infinity]) {
      expect(() => noncentralTCdf(1, df, 0)).toThrow(`invalid \`df\`: ${df}`);
    }
    expect(() => toleranceFactor(2.5, 0.9, 0.9)).toThrow("invalid `n`: 2.5");
    // Two results are the fewest; 26.260 in tables of one-sided factors (from memory).
    near(toleranceFactor(2, 0.95, 0.95), 26.26, { rel: 0, abs: 5e-3 }, "two");
  });
});

describe("misuse of distributions", () => {
  it("is named with its value", () => {
    expect(() => tQuantile(1.2, 3)).toThrow(new RangeError("invalid `p`: 1.2; expected 0 to 1"));
    expect(() => tCdf(1, 0)).toThrow("invalid `df`: 0; expected above 0");
    expect(() => normalQuantile(NaN)).toThrow("invalid `p`: NaN");
    expect(() => normalCdf(NaN)).toThrow("invalid `x`: NaN");
    expect(() => fCdf(1, 2, -1)).toThrow("invalid `d2`: -1");
    expect(() => noncentralTCdf(1, 3, Infinity)).toThrow("invalid `delta`: Infinity");
    expect(() => noncentralTQuantile(1, 3, 0)).toThrow("invalid `p`: 1");
    expect(() => toleranceFactor(1, 0.95, 0.75)).toThrow("invalid `n`: 1");
    expect(() => toleranceFactor(5, 0.95, 75)).toThrow("invalid `confidence`: 75");
  });
});
