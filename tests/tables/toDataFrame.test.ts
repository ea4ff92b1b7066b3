import { describe, expect, it } from "vitest";
import { toDataFrame } from "../../src/tables/toDataFrame.js";

describe("a danfo.js frame", () => {
  it("holds the rows as given", async () => {
    const rows = [
      { sieve: "2", retainedG: 34.8, pan: false },
      { sieve: "pan", retainedG: 2.4, pan: true },
      { sieve: "lost", retainedG: null, pan: false },
    ];
    const frame = await toDataFrame(rows);
    expect(frame.columns).toEqual(["sieve", "retainedG", "pan"]);
    expect(frame.values).toEqual(rows.map((row) => Object.values(row)));
    expect(frame.index).toEqual([0, 1, 2]);
  });

  it("refuses rows that do not match", async () => {
    await expect(toDataFrame([])).rejects.toThrow(/invalid `rows`/);
    await expect(toDataFrame([{ a: 1 }, { b: 2 } as unknown as { a: number }])).rejects.toThrow(
      /invalid `rows\[1\]` keys: b; expected a/,
    );
  });
});
