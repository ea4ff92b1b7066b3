import { describe, expect, it } from "vitest";
import { powerOf } from "../../src/numerics/powerOf.js";
import { sourceFiles } from "../support/sourceFiles.js";

describe("powerOf", () => {
  it("is a power within rounding, also at the ends", () => {
    for (const base of [1e-6, 0.063, 0.5, 1, 2, 19, 1e4]) {
      for (const exponent of [-7, -0.37, 0, 0.2, 1, 2.5, 6]) {
        const size = 1 + Math.abs(exponent * Math.log(base));
        const off = Math.abs(powerOf(base, exponent) / base ** exponent - 1);
        expect(off, `${base} to the power ${exponent}`).toBeLessThan(4e-16 * size);
      }
    }
    const ends = [powerOf(0, 2), powerOf(0, 0), powerOf(0, -1), powerOf(Infinity, 0.5)];
    expect(ends).toEqual([0, 1, Infinity, Infinity]);
  });

  it("has these bits on every version of Node.js", () => {
    expect([powerOf(0.063, 0.25), powerOf(19, 0.37), powerOf(0.3, -2.7)]).toEqual([
      0.5009970139234591, 2.97261614589591, 25.80908525688701,
    ]);
  });

  it("stands wherever an exponent is not written as a number", () => {
    // powers of two are exact everywhere
    const engine = /(?<!(?<![\w.])2 )\*\* (?!\d)/;
    const found = sourceFiles().flatMap(({ path, text }) =>
      text
        .split("\n")
        .filter((line) => !/^\s*(\/\*\*|\*|\/\/)/.test(line) && engine.test(line))
        .map((line) => `${path}: ${line.trim()}`),
    );
    expect(found).toEqual([]);
  });
});
