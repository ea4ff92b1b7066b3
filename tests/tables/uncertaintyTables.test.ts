import { describe, expect, it } from "vitest";
import { analyseSieve } from "../../src/grading/sieveAnalysis.js";
import { resampleReadings } from "../../src/grading/uncertainty/readingErrors.js";
import { compareGuidance } from "../../src/guidance/comparison.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { curveUncertainty } from "../../src/soil/curveUncertainty.js";
import { classesTable, intervalsTable } from "../../src/tables/gradingUncertainty.js";
import { guidanceComparisonTable } from "../../src/tables/guidance.js";
import { renderAll } from "../../src/words/render.js";
import { frozen, sieveRecord } from "../grading/gradingCases.js";

const sieve = frozen(
  sieveRecord([75, 4.75, 2, 0.425, 0.075], [0, 100, 150, 150, 98], 500, { dryMassG: 1000 }),
);
const curve = { points: analyseSieve(sieve).points };
const options = { seed: 3, resamples: 200, errors: { balanceG: 0.5 } };

describe("curveUncertainty and its tables", () => {
  const curves = resampleReadings({ sieve }, options);
  const found = curveUncertainty(curve, curves, undefined, options);

  it("is plain data, the same for the same seed", () => {
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
    const again = resampleReadings({ sieve }, options);
    expect(curveUncertainty(curve, again, undefined, options)).toEqual(found);
    expect(found.spread.map(({ sizeMm }) => sizeMm)).toEqual(
      curve.points.map(({ sizeMm }) => sizeMm),
    );
  });

  it("each row of the intervals has low up to high, and the notes name the errors", () => {
    const { columns, rows, notes } = renderAll(intervalsTable("Site soil", found));
    expect(rows.length).toBeGreaterThan(3);
    for (const row of rows) {
      expect(row).toHaveLength(columns.length);
      expect(Number(row[1])).toBeLessThanOrEqual(Number(row[3]));
    }
    expect(notes?.[0]).toContain("balance 0.5 g");
  });

  it("each system has its classes, shares of which add up to about 100", () => {
    const { rows } = renderAll(classesTable("Site soil", found));
    expect(rows.map(([system]) => system).filter(Boolean)).toHaveLength(5);
    expect(rows.every((row) => row.length === 3)).toBe(true);
    for (const { likelihoods } of found.classes) {
      expect(likelihoods.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    }
    const likelihoods = [0.989, 0.006, 0.005, 0.0049].map((share, index) => ({
      label: `class ${index}`,
      share,
    }));
    const classes = [{ system: "usda" as const, likelihoods }];
    const few = renderAll(classesTable("Site soil", { ...found, classes } as never)).rows;
    expect(few.map(([, , share]) => share)).toEqual(["99", "1", "1", "below 1"]);
  });
});

describe("guidanceComparisonTable", () => {
  it("names every source with its honesty mark, and the caution", () => {
    const entries = GUIDANCE_ENTRIES.filter(({ id }) => ["walker-2005", "hb195"].includes(id));
    const { rows, notes } = renderAll(
      guidanceComparisonTable("Site soil", compareGuidance(curve, entries)),
    );
    expect(rows.length).toBeGreaterThan(1);
    expect(notes?.filter((note) => note.includes("from memory"))).toHaveLength(2);
    expect(notes?.at(-1)).toContain("no proof");
  });
});
