import { describe, expect, it } from "vitest";
import { loadDanfo, rowsOf, toDataFrame } from "../../src/tables/toDataFrame.js";

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

  it("groups blocks by content and batch, and gives them back as rows", async () => {
    const blocks = [
      { id: "A1", batch: "A", cementPct: 4, strengthMpa: 1.5 },
      { id: "A2", batch: "A", cementPct: 4, strengthMpa: 1.7 },
      { id: "B1", batch: "B", cementPct: 6, strengthMpa: 2.1 },
    ];
    const frame = await toDataFrame(blocks);
    const means = frame.groupby(["cementPct", "batch"]).col(["strengthMpa"]).mean();
    expect(rowsOf(means)).toEqual([
      { cementPct: 4, batch: "A", strengthMpa_mean: 1.6 },
      { cementPct: 6, batch: "B", strengthMpa_mean: 2.1 },
    ]);
    expect(rowsOf(frame.query(frame.column("cementPct").eq(4)))).toEqual(blocks.slice(0, 2));
  });

  it("says in plain words that danfo.js is not installed", async () => {
    const absent = () =>
      Promise.reject(Object.assign(new Error("no"), { code: "ERR_MODULE_NOT_FOUND" }));
    await expect(loadDanfo(absent)).rejects.toThrow("`npm install danfojs` there adds it");
    const broken = () => Promise.reject(new Error("broken"));
    await expect(loadDanfo(broken)).rejects.toThrow("broken");
  });
});
