import { describe, expect, it } from "vitest";
import type { BlendInput } from "../../src/blend/design.js";
import { powerTargetsTable } from "../../src/tables/choices.js";
import { headsOf, rowsOf } from "../support/blockText.js";

describe("the table of several targets", () => {
  it("gives each exponent its shares, its difference and its price", () => {
    // Close enough together that the straight lines between them follow the power curve.
    const sizes = Array.from({ length: 400 }, (_, step) => 20 / 1.02 ** (399 - step));
    const curve = (exponent: number) => ({
      points: sizes.map((sizeMm) => ({
        sizeMm,
        passingPct: 100 * (sizeMm / 20) ** exponent,
        origin: "sieve" as const,
      })),
    });
    const any = { minSharePct: 0, maxSharePct: 100 };
    const input: BlendInput = {
      materials: [
        { id: "fine", name: "Fine", curve: curve(0.3), costPerT: 10, ...any },
        { id: "coarse", curve: curve(0.6), costPerT: 20, ...any },
      ],
      target: { kind: "power", exponent: 0.5, topSizeMm: 20 },
    };
    const table = powerTargetsTable(input, [0.3, 0.6], 20, "EUR");
    expect(headsOf(table)).toEqual([
      "Exponent",
      "Fine [%]",
      "coarse [%]",
      "Difference from its target [points]",
      "Price of the dry blend [EUR per t]",
    ]);
    expect(rowsOf(table)).toEqual([
      ["0.3", "100.0", "0.0", "0.00", "10.00"],
      ["0.6", "0.0", "100.0", "0.00", "20.00"],
    ]);
    const american = powerTargetsTable(input, [0.6], 20, "USD", "US");
    expect(headsOf(american).at(-1)).toBe("Price of the dry blend [USD per short ton]");
    expect(rowsOf(american)).toEqual([["0.6", "0.0", "100.0", "0.00", "18.14"]]);
    const unpriced = { ...input, materials: input.materials.map(({ costPerT, ...rest }) => rest) };
    expect(rowsOf(powerTargetsTable(unpriced, [0.3], 20))[0].at(-1)).toBe("–");
  });
});
