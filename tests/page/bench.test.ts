import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Bench,
  type BenchAction,
  type BenchMix,
  changeBench,
  newBench,
  withShare,
} from "../../src/page/bench.js";
import { benchOfLink, linkOf, mixOfLink, traceOf } from "../../src/page/link.js";

const MIX: BenchMix = {
  sharesPct: [54.921875, 13.203125, 0, 31.875],
  locked: [false, false, false, false],
  cementPct: 6,
  moisturePct: 9.19,
  target: { kind: "power", exponent: 0.25, topSizeMm: 20 },
  limits: [{ kind: "fines", maxPct: 30 }],
};

const doing = (bench: Bench, ...actions: readonly BenchAction[]) =>
  actions.reduce(changeBench, bench);

describe("the shares", () => {
  it("give and take in proportion, in tenths, and sum to 100", () => {
    expect(withShare(MIX, 0, 50)).toEqual([50, 14.6, 0, 35.4]);
    expect(withShare({ ...MIX, locked: [false, false, false, true] }, 0, 50)).toEqual([
      50, 18.1, 0.025, 31.875,
    ]);
  });

  it("go to the others alike where they have none", () => {
    const lone = { sharesPct: [100, 0, 0], locked: [false, false, false] };
    expect(withShare(lone, 0, 70)).toEqual([70, 15, 15]);
  });

  it("never pass what the locked ones leave, nor 0", () => {
    const locked = { ...MIX, locked: [false, false, false, true] };
    expect(withShare(locked, 0, 99)[0]).toBe(68.125);
    expect(withShare(locked, 0, -5)[0]).toBe(0);
    expect(withShare(MIX, 0, Number.NaN)).toBe(MIX.sharesPct);
  });

  it("sum to 100, none below 0, locked ones as they were, whatever is done to them", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(3), fc.double({ min: 0, max: 100, noNaN: true }), fc.boolean()), {
          maxLength: 30,
        }),
        (moves) => {
          let bench = newBench(MIX);
          for (const [index, pct, lock] of moves) {
            const { sharesPct, locked } = bench.now;
            bench = changeBench(
              bench,
              lock ? { kind: "lock", index } : { kind: "share", index, pct },
            );
            const shares = bench.now.sharesPct;
            expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 9);
            expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
            const held = locked.flatMap((is, at) => (is && at !== index ? [at] : []));
            for (const at of held) expect(shares[at]).toBe(sharesPct[at]);
          }
        },
      ),
    );
  });
});

describe("the steps", () => {
  it("are taken back and made again; a new one forgets those that were taken back", () => {
    const one = doing(newBench(MIX), { kind: "cement", pct: 8 }, { kind: "moisture", pct: 10 });
    expect([one.now.cementPct, one.now.moisturePct]).toEqual([8, 10]);
    const back = doing(one, { kind: "undo" });
    expect([back.now.cementPct, back.now.moisturePct]).toEqual([8, 9.19]);
    expect(doing(back, { kind: "redo" }).now).toEqual(one.now);
    const other = doing(back, { kind: "cement", pct: 7 });
    expect(other.future).toEqual([]);
    expect(doing(other, { kind: "redo" })).toBe(other);
    expect(doing(other, { kind: "undo" }, { kind: "undo" }, { kind: "undo" }).now).toEqual(MIX);
  });

  it("count a drag as one, and two drags as two", () => {
    const drag = (pct: number): BenchAction => ({ kind: "share", index: 0, pct, during: true });
    const once = doing(newBench(MIX), drag(54), drag(53), drag(52), { kind: "settle" });
    expect([once.now.sharesPct[0], once.past.length]).toEqual([52, 1]);
    const twice = doing(once, drag(51), drag(50), { kind: "settle" });
    expect(twice.past.length).toBe(2);
    expect(doing(twice, { kind: "undo" }).now).toEqual(once.now);
  });

  it("count nothing that changes nothing", () => {
    const bench = newBench(MIX);
    expect(doing(bench, { kind: "cement", pct: 6 }, { kind: "reset" }).past).toEqual([]);
  });

  it("keep a mix aside, swap with it, and discard it", () => {
    const kept = doing(newBench(MIX), { kind: "keep" }, { kind: "cement", pct: 9 });
    expect(kept.kept).toEqual(MIX);
    const swapped = doing(kept, { kind: "swap-kept" });
    expect([swapped.now.cementPct, swapped.kept?.cementPct]).toEqual([6, 9]);
    expect(doing(swapped, { kind: "drop-kept" }).kept).toBeUndefined();
  });
});

describe("a link", () => {
  it("brings back the mix to the last digit", () => {
    const mix = { ...MIX, sharesPct: [100 / 3, 200 / 3, 0, 0] };
    expect(mixOfLink(linkOf(mix), 4)).toEqual(mix);
  });

  it("brings back the steps and the kept mix with it, and each step can be taken back", () => {
    const bench = doing(
      newBench(MIX),
      { kind: "cement", pct: 8 },
      { kind: "keep" },
      { kind: "share", index: 0, pct: 50 },
      { kind: "moisture", pct: 10 },
      { kind: "undo" },
    );
    const back = benchOfLink(MIX, linkOf(bench.now), traceOf(bench));
    expect(back).toEqual(bench);
    expect(doing(back, { kind: "redo" }).now.moisturePct).toBe(10);
    expect(doing(back, { kind: "undo" }, { kind: "undo" }).now).toEqual(MIX);
    expect(back.kept?.cementPct).toBe(8);
  });

  it("without steps, or with those of another study, is one step from the start", () => {
    const moved = { ...MIX, cementPct: 8 };
    const other = linkOf({ ...MIX, sharesPct: [60, 40], locked: [false, false] });
    for (const trace of [undefined, { past: [other], future: [], kept: other }]) {
      const bench = benchOfLink(MIX, linkOf(moved), trace);
      expect(bench).toEqual({ ...newBench(MIX), now: moved, past: [MIX] });
    }
    expect(benchOfLink(MIX, "spoilt", { past: [], future: [] })).toEqual(newBench(MIX));
    expect(benchOfLink(MIX, undefined)).toEqual(newBench(MIX));
  });

  it("is refused where it holds anything else", () => {
    const changed = (change: object) => linkOf({ ...MIX, ...change } as BenchMix);
    for (const link of [
      "",
      "%",
      "null",
      "[[100],[0],1,1,null,[]]",
      changed({ sharesPct: [50, 20, 10, 10] }),
      changed({ sharesPct: [150, -50, 0, 0] }),
      changed({ sharesPct: ["50", 50, 0, 0] }),
      changed({ cementPct: "<b>" }),
      changed({ target: { kind: "power", exponent: 9, topSizeMm: 20 } }),
      changed({ target: { kind: "constructor" } }),
      changed({ limits: [{ kind: "__proto__", maxPct: 3 }] }),
      changed({ limits: [{ kind: "fines", maxPct: "x" }] }),
      changed({ limits: [{ kind: "cost" }] }),
      `${linkOf(MIX)}${" ".repeat(5000)}`,
    ]) {
      expect(mixOfLink(link, 4), link.slice(0, 80)).toBeUndefined();
    }
  });
});
