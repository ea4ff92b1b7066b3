import { describe, expect, it } from "vitest";
import { shortSource } from "../../src/guidance/entry.js";
import { gradingEnvelope, powerEnvelope } from "../../src/guidance/envelope.js";
import { GUIDANCE_ENTRIES, guidanceEntry } from "../../src/guidance/published/recommendations.js";
import { render } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";

const entry = (id: string) => GUIDANCE_ENTRIES.find((each) => each.id === id)!;

describe("gradingEnvelope", () => {
  it("draws what was published and what was derived between the stated sizes", () => {
    const road = gradingEnvelope(entry("usace-road-base"))!;
    expect(road.kind).toBe("published");
    // Burroughs 2001, table 2.5, as cited there from the Army manual.
    expect(road.edges.map(({ sizeMm, lowPct, highPct }) => [sizeMm, lowPct, highPct])).toEqual([
      [0.075, 5, 15],
      [0.425, 15, 30],
      [2, 20, 50],
      [4.75, 35, 65],
      [9.5, 50, 80],
      [19, 70, 100],
      [25, 100, 100],
    ]);
    expect(gradingEnvelope(entry("craterre-pise"))).toMatchObject({
      kind: "derived",
      edges: [{ sizeMm: 0.002 }, { sizeMm: 0.06 }, { sizeMm: 2, lowPct: 85, highPct: 100 }],
    });
    expect(gradingEnvelope(entry("burroughs-2008"))).toBeUndefined();
  });

  it("bends power curves between their sieves, and ends them at the top size", () => {
    const { kind, points, edges } = gradingEnvelope(powerEnvelope(20, [0.2, 0.5]))!;
    expect(kind).toBe("power");
    expect(edges[0]).toEqual(points[0]);
    expect(edges.at(-1)).toEqual({ sizeMm: 20, lowPct: 100, highPct: 100 });
    for (const { sizeMm, lowPct, highPct } of edges) {
      expect(lowPct).toBeCloseTo(100 * Math.sqrt(sizeMm / 20), 9);
      expect(highPct).toBeCloseTo(100 * (sizeMm / 20) ** 0.2, 9);
    }
    // A straight line between the ends would lie 20 points above the lower curve: forty even steps on the
    // logarithm of size.
    expect(edges).toHaveLength(41);
    const step = (20 / 0.075) ** (1 / 40);
    edges.slice(1).forEach(({ sizeMm }, index) => {
      expect(sizeMm / edges[index].sizeMm).toBeCloseTo(step, 9);
    });
  });

  it("takes limits of a part of the soil in percent of the whole, of a curve that reaches there", () => {
    const sandClay = entry("fdot-sand-clay");
    // Half of the soil passes 2 mm: 8 to 21 % of that half are 4 to 10.5 % of the whole.
    const soil = curveOf([0.005, 6], [0.05, 10], [2, 50], [25, 100]);
    expect(gradingEnvelope(sandClay, soil)!.points).toEqual([
      { sizeMm: 0.005, lowPct: 4, highPct: 10.5 },
      { sizeMm: 0.05, lowPct: 4, highPct: 12.5 },
      { sizeMm: 2, lowPct: 50, highPct: 50 },
    ]);
    expect(gradingEnvelope(sandClay)).toBeUndefined();
    expect(gradingEnvelope(sandClay, curveOf([4, 50], [25, 100]))).toBeUndefined();
  });
});

describe("powerEnvelope", () => {
  it("with exponents of one's own is nobody's recommendation", () => {
    const own = powerEnvelope(20, [0.2, 0.25]);
    expect(own).toMatchObject({ id: "power-20mm-0.2-0.25", own: true, material: "own" });
    expect(render(own.notes)).toBe("Not a published recommendation.");
    expect(render(shortSource(own))).toBe(
      "Power curves between the exponents 0.2 and 0.25, maximum size 20 mm",
    );
    const road = powerEnvelope(37.5);
    expect([road.id, road.own, render(shortSource(road))]).toEqual([
      "power-37.5mm",
      undefined,
      "Austroads 1998",
    ]);
    expect(powerEnvelope(19, [0.33, 0.45]).own).toBe(true);
  });

  it("is given at the sieves below its top size, and there", () => {
    expect(powerEnvelope(50).points.map(({ sizeMm }) => sizeMm)).toEqual([
      0.075, 0.15, 0.3, 0.6, 1.18, 2.36, 4.75, 9.5, 12.5, 19, 25, 37.5, 50,
    ]);
  });

  it("refuses exponents out of range or order", () => {
    expect(() => powerEnvelope(19, [0, 0.5])).toThrow("`exponents[0]`: 0");
    expect(() => powerEnvelope(19, [0.5, 0.33])).toThrow("`exponents[1]`: 0.33; expected 0.5 to 1");
    expect(() => powerEnvelope(19, [0.5, 1.1])).toThrow("`exponents[1]`: 1.1");
    expect(() => powerEnvelope(Number.POSITIVE_INFINITY)).toThrow("`topSizeMm`");
    expect(powerEnvelope(19, [0.4, 0.4]).points).toHaveLength(10);
  });
});

describe("guidanceEntry", () => {
  it("finds published entries, and makes power curves of their id", () => {
    for (const each of GUIDANCE_ENTRIES) expect(guidanceEntry(each.id)).toEqual(each);
    for (const made of [
      powerEnvelope(20),
      powerEnvelope(37.5, [0.2, 0.25]),
      powerEnvelope(8, [0.4, 1]),
    ]) {
      expect(guidanceEntry(made.id)).toEqual(made);
    }
    expect(guidanceEntry("power-20mm-.2-.25")).toEqual(powerEnvelope(20, [0.2, 0.25]));
  });

  it("makes none of what is out of range", () => {
    for (const id of [
      "power-0.5mm",
      "power-20mm-0.3-0.2",
      "power-20mm-0-0.5",
      "power-20mm-0.2-1.5",
      "power-20mm-0.2",
      "power-mm",
      "walker",
      "",
    ]) {
      expect(guidanceEntry(id), id).toBeUndefined();
    }
  });
});
