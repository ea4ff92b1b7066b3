import { describe, expect, it } from "vitest";
import { passingAtSize } from "../../src/grading/curve.js";
import {
  type AashtoInput,
  classifyAashto,
  groupIndex,
} from "../../src/soil/classification/aashto.js";
import { render } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";
import cases from "../reference/soilWorkedExamples.json" with { type: "json" };

const soil = (
  passing: [number, number, number],
  liquidLimitPct: number,
  plasticityIndexPct: number,
): AashtoInput => ({
  passing2Pct: passing[0],
  passing0425Pct: passing[1],
  passing0075Pct: passing[2],
  liquidLimitPct,
  plasticityIndexPct,
});

describe("published classes", () => {
  it("Das: A-4(3)", () => {
    const { input, published } = cases["aashto-das-a4"];
    const found = classifyAashto(soil([input.F10, input.F40, input.F200], input.LL, input.PI));
    expect(found.label).toBe(published.class);
    expect(
      groupIndex({
        passing0075Pct: input.F200,
        liquidLimitPct: input.LL,
        plasticityIndexPct: input.PI,
      }),
    ).toBeCloseTo(published.GI_raw, 9);
  });

  it("hand-out 3.15 soil B: A-1-b(0), non-plastic", () => {
    const { input, published } = cases["aashto-3.15-B"];
    const curve = curveOf(
      ...input.opening_mm.map((size, index): [number, number] => [
        size,
        input.percent_finer[index],
      ]),
    );
    const [passing2Pct, passing0425Pct, passing0075Pct] = [2, 0.425, 0.075].map(
      (size) => passingAtSize(curve, size)!,
    );
    expect(
      classifyAashto({ passing2Pct, passing0425Pct, passing0075Pct, nonPlastic: true }),
    ).toMatchObject({
      group: published.class,
      groupIndex: published.GI,
    });
  });

  it("the older capped index (curioustab) is told apart from the present one", () => {
    const { input, published } = cases["aashto-gi-capped-curioustab"];
    const values = {
      passing0075Pct: input.F200,
      liquidLimitPct: input.LL,
      plasticityIndexPct: input.PI,
    };
    expect(groupIndex(values, "capped")).toBeCloseTo(published.GI_capped_raw, 9);
    expect(groupIndex(values)).toBeCloseTo(14.875, 9);
    const found = classifyAashto(soil([100, 90, input.F200], input.LL, input.PI));
    expect(found).toMatchObject({
      groupIndex: 15,
      cappedGroupIndex: published.GI_capped,
      label: "A-7-5(15)",
    });
  });
});

describe("the table, from both sides of its limits", () => {
  const group = (...given: Parameters<typeof soil>) => classifyAashto(soil(...given)).group;
  it("granular groups", () => {
    expect(group([50, 30, 15], 20, 6)).toBe("A-1-a");
    expect(group([51, 30, 15], 20, 6)).toBe("A-1-b");
    expect(group([50, 31, 15], 20, 6)).toBe("A-1-b");
    expect(group([50, 30, 16], 20, 6)).toBe("A-1-b");
    expect(group([50, 30, 15], 20, 7)).toBe("A-2-4");
    expect(group([90, 50, 25], 20, 6)).toBe("A-1-b");
    expect(group([90, 51, 25], 20, 6)).toBe("A-2-4");
    expect(group([90, 50, 26], 20, 6)).toBe("A-2-4");
  });

  it("fine sand", () => {
    const sand = (f40: number, f200: number) =>
      classifyAashto({
        passing2Pct: 100,
        passing0425Pct: f40,
        passing0075Pct: f200,
        nonPlastic: true,
      }).group;
    expect([sand(51, 10), sand(51, 11), sand(50, 10)]).toEqual(["A-3", "A-2-4", "A-1-b"]);
    expect(group([100, 80, 10], 20, 3)).toBe("A-2-4");
  });

  it("35 % fines, liquid limit 40, plasticity index 10, A-7", () => {
    expect([group([100, 90, 35], 40, 10), group([100, 90, 36], 40, 10)]).toEqual(["A-2-4", "A-4"]);
    expect([group([100, 90, 35], 41, 10), group([100, 90, 36], 41, 10)]).toEqual(["A-2-5", "A-5"]);
    expect([group([100, 90, 35], 40, 11), group([100, 90, 36], 40, 11)]).toEqual(["A-2-6", "A-6"]);
    expect([group([100, 90, 35], 41, 11), group([100, 90, 36], 41, 11)]).toEqual([
      "A-2-7",
      "A-7-5",
    ]);
    expect([group([100, 90, 60], 50, 20), group([100, 90, 60], 50, 21)]).toEqual([
      "A-7-5",
      "A-7-6",
    ]);
  });

  it("the older index ends at 20: 0.2 · 40 + 0.005 · 40 · 20 + 0.01 · 40 · 20", () => {
    const soft = { passing0075Pct: 100, liquidLimitPct: 100, plasticityIndexPct: 60 };
    expect(groupIndex(soft, "capped")).toBeCloseTo(20, 12);
    // Each of the four parts by itself a unit below its end.
    const short = (part: object) => groupIndex({ ...soft, ...part }, "capped");
    expect(short({ passing0075Pct: 74 })).toBeCloseTo(0.2 * 39 + 0.005 * 39 * 20 + 8, 12);
    expect(short({ passing0075Pct: 54 })).toBeCloseTo(0.2 * 19 + 0.005 * 19 * 20 + 0.2 * 39, 12);
    expect(short({ liquidLimitPct: 59 })).toBeCloseTo(8 + 0.005 * 40 * 19 + 8, 12);
    expect(short({ plasticityIndexPct: 29 })).toBeCloseTo(8 + 4 + 0.01 * 40 * 19, 12);
  });

  it("A-2-6 takes the plasticity term alone, granular groups none, negatives are 0", () => {
    expect(classifyAashto(soil([90, 80, 35], 40, 20)).groupIndex).toBe(2);
    expect(classifyAashto(soil([90, 80, 20], 45, 9)).groupIndex).toBe(0);
    expect(groupIndex({ passing0075Pct: 36, liquidLimitPct: 20, plasticityIndexPct: 2 })).toBe(0);
  });
});

describe("classifyAashto", () => {
  it("gives no group without limits, and refuses passings that fall with size", () => {
    const passings = { passing2Pct: 90, passing0425Pct: 60, passing0075Pct: 40 };
    expect(classifyAashto({ ...passings, liquidLimitPct: 30 }).group).toBeUndefined();
    expect(classifyAashto({ ...passings, plasticityIndexPct: 9 }).group).toBeUndefined();
    const found = classifyAashto(passings);
    expect(found.group).toBeUndefined();
    expect(render(found.path.at(-1)!)).toContain("the group cannot be determined");
    expect(() => classifyAashto(soil([50, 60, 10], 20, 5))).toThrow("invalid `passing0425Pct`: 60");
    expect(() => classifyAashto(soil([150, 60, 10], 20, 5))).toThrow("invalid `passing2Pct`: 150");
  });
});
