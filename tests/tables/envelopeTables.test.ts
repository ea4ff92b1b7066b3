import { describe, expect, it } from "vitest";
import { envelopeEntry, type GuidanceEntry } from "../../src/guidance/entry.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { envelopeTables } from "../../src/tables/guidance.js";
import { renderAll } from "../../src/words/render.js";
import { curveOf } from "../grading/gradingCases.js";

const SOIL = {
  name: "Pit soil",
  role: "soil",
  curve: curveOf([0.002, 20], [0.063, 50], [2, 90], [20, 100]),
};
const SAND = { name: "Sand", role: "sand", curve: curveOf([0.063, 2], [2, 80], [20, 100]) };
const entry = (id: string) => GUIDANCE_ENTRIES.find((each) => each.id === id) as GuidanceEntry;
const OWN = envelopeEntry({
  file: "sheets/envelope.csv",
  title: "Our pit",
  source: "trial walls",
  points: [
    { sizeMm: 0.001, lowPct: 0, highPct: 5, row: 4 },
    { sizeMm: 0.063, lowPct: 10, highPct: 25, row: 5 },
    { sizeMm: 2, lowPct: 90, highPct: 95, row: 6 },
    { sizeMm: 20, lowPct: 100, highPct: 100, row: 7 },
  ],
});

const blended = {
  materials: [SOIL, SAND],
  // 0.6 × 50 + 0.4 × 2 = 30.8 at 0.063 mm; 0.6 × 90 + 0.4 × 80 = 86 at 2 mm.
  blend: {
    curve: curveOf([0.002, 12], [0.063, 30.8], [2, 86], [20, 100]),
    shares: [{ sharePct: 60 }, { sharePct: 40 }],
  },
} as unknown as StudyResult;
const soilOnly = { materials: [SOIL, SAND] } as unknown as StudyResult;
const tablesOf = (result: StudyResult, ...entries: readonly GuidanceEntry[]) =>
  envelopeTables(result, entries).map((table) => renderAll(table));

describe("envelopeTables", () => {
  it("the blend: sizes, points and the material that causes them, as worked out by hand", () => {
    const [table] = tablesOf(blended, OWN);
    expect(table.caption).toBe("The blend against the envelope of Our pit");
    expect(table.columns.map(({ header }) => header)).toEqual([
      "Curve",
      "Size",
      "Envelope",
      "Passing",
      "Verdict",
      "Caused most by",
    ]);
    // 0.001 mm is finer than the curve was measured.
    expect(table.rows).toEqual([
      ["Blend", "0.063", "10.0 to 25.0", "30.8", "above by 5.8 points", "Pit soil"],
      ["Blend", "2", "90.0 to 95.0", "86.0", "below by 4.0 points", "Sand"],
      ["Blend", "20", "100.0 to 100.0", "100.0", "inside", "–"],
    ]);
    expect(table.notes).toEqual([
      "This study, trial walls, sheets/envelope.csv (supplied with the study; source not checked).",
    ]);
  });

  it("without a blend each soil by itself, and nothing is caused by another", () => {
    const [table] = tablesOf(soilOnly, OWN);
    expect(table.caption).toBe("The soil against the envelope of Our pit");
    expect(table.columns).toHaveLength(5);
    expect(table.rows.map(([name, , , passing, verdict]) => [name, passing, verdict])).toEqual([
      ["Pit soil", "50.0", "above by 25.0 points"],
      ["Pit soil", "90.0", "inside"],
      ["Pit soil", "100.0", "inside"],
    ]);
  });

  it("limits of a part are shown in percent of the whole, and said to be", () => {
    const [table] = tablesOf(soilOnly, entry("fdot-sand-clay"));
    // 90 % pass 2 mm: 8 to 21 % of them are 7.2 to 18.9 % of the whole.
    expect(table.rows.map(([, size, limits]) => [size, limits])).toEqual([
      ["0.005", "7.2 to 18.9"],
      ["0.05", "7.2 to 22.5"],
    ]);
    expect(table.notes).toHaveLength(2);
    expect(table.notes?.[1]).toContain("limits what passes 2 mm");
  });

  it("one for each entry that limits passing, and of the study's guidance each once", () => {
    const some = ["burroughs-2008", "usace-road-base", "walker-2005"].map(entry);
    expect(tablesOf(soilOnly, ...some)).toHaveLength(2);
    const check = (of: GuidanceEntry) => ({ check: { entry: of } });
    const guidance = [check(OWN), check(some[2]), check(OWN)];
    const result = { ...soilOnly, guidance } as unknown as StudyResult;
    expect(envelopeTables(result).map(({ caption }) => renderAll(caption))).toEqual([
      "The soil against the envelope of Our pit",
      "The soil against the envelope of Walker 2005",
    ]);
    expect(envelopeTables(soilOnly)).toEqual([]);
  });
});
