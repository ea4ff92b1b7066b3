import { describe, expect, it } from "vitest";
import type { StudyResult, TrialStudy } from "../../src/study/studyResult.js";
import {
  blendDifferenceTable,
  doubtNotes,
  mixStateNote,
  stateInShort,
  testedBlendsTable,
} from "../../src/tables/trials.js";
import { render } from "../../src/words/render.js";
import { headsOf, notesOf, rowsOf } from "../support/blockText.js";

const pair = (more: object) => ({
  cementPct: 7.25,
  moisturePct: 9.5,
  densityKgM3: 2000,
  cementKgM3: 130,
  cementKg: 410,
  siteSoilPct: 55.04,
  cost: { low: 110.2, high: 180.4 },
  carbonKg: { low: 300, high: 390 },
  ...more,
});
const trial = (id: string, more: object = {}) =>
  ({ id, name: `Blend ${id}`, key: `trials.${id}`, ...more }) as unknown as TrialStudy;
const A = trial("a", {
  crushed: "moist",
  pair: pair({}),
  compaction: { peak: { maximumDryDensityKgM3: 2013.2 } },
});
// More cement and less money than a, whatever the price within its range.
const B = trial("b", {
  crushed: "dry",
  pair: pair({
    cementPct: 8,
    cementKg: 450,
    siteSoilPct: 70,
    cost: { low: 100, high: 140 },
    carbonKg: { low: 350, high: 350 },
  }),
});
const C = trial("c");

const study = (trials: readonly TrialStudy[], testing: object, crushed?: string) =>
  ({
    config: { units: "SI", currency: "EUR", strength: { requirement: { crushed } } },
    trials,
    testing: { message: "Said.", ...testing },
  }) as unknown as StudyResult;

describe("tested blends side by side", () => {
  it("each in a row, the one of this mix named", () => {
    const table = testedBlendsTable(study([A, B, C], { state: "tested", trial: "a" }));
    expect(headsOf(table)).toEqual([
      "Blend",
      "Blocks crushed",
      "Maximum dry density [kg/m³]",
      "Site soil [%]",
      "Least cement [%]",
      "Cement for the element",
      "Cost [EUR]",
      "Carbon (CO₂e)",
    ]);
    const rows = rowsOf(table);
    expect(rows.map(([name]) => name)).toEqual(["Blend a (this mix)", "Blend b", "Blend c"]);
    expect(rows[0].slice(2)).toEqual([
      "2013",
      "55.0",
      "7.25",
      "410 kg",
      "110 to 180",
      "300 kg to 390 kg",
    ]);
    expect(rows[1].slice(2)).toEqual(["–", "70.0", "8", "450 kg", "100 to 140", "350 kg"]);
    expect(rows[2].slice(1)).toEqual(["not told", "–", "–", "none", "–", "–", "–"]);
    expect(notesOf(table).slice(0, 2)).toEqual([
      "Least cement that meets the requirement: Blend a with 7.25 %.",
      "Least cost, by the middle of its range: Blend b with 8 % cement.",
    ]);
    // By the middle, 100, not by the higher end: 150 against 140.
    const D = trial("d", { pair: pair({ cementPct: 9, cost: { low: 50, high: 150 } }) });
    expect(notesOf(testedBlendsTable(study([A, B, D], { state: "proposed" })))[1]).toBe(
      "Least cost, by the middle of its range: Blend d with 9 % cement.",
    );
  });

  it("none is this mix where only a blend is proposed; one pair alone is no comparison", () => {
    const table = testedBlendsTable(study([A, C], { state: "proposed", trial: "a" }));
    expect(rowsOf(table).map(([name]) => name)).toEqual(["Blend a", "Blend c"]);
    expect(notesOf(table)).toHaveLength(1);
  });

  it("no cost is compared where one has no price", () => {
    const free = trial("b", { pair: pair({ cementKg: 300, cost: undefined }) });
    const notes = notesOf(testedBlendsTable(study([A, free], { state: "tested", trial: "a" })));
    expect(notes).toHaveLength(2);
    expect(notes[0]).toContain("Blend b");
  });
});

it("the proposed blend beside a tested one: shares used, and the size that differs most", () => {
  const share = (name: string, proposedPct: number, testedPct: number) => ({
    id: name,
    name,
    proposedPct,
    testedPct,
    differencePoints: proposedPct - testedPct,
  });
  const difference = {
    shares: [share("Soil", 59, 57), share("Sand", 40, 43.1), share("Chalk", 0, 0)],
    maxPassing: { sizeMm: 0.0632, proposedPct: 21.5, testedPct: 25.1, differencePoints: -3.6 },
    close: false,
  };
  const table = blendDifferenceTable({ trials: [trial("a", { difference }), C] });
  expect(headsOf(table)).toEqual([
    "Tested blend",
    "Share or passing",
    "Proposed [%]",
    "Tested [%]",
    "Difference [points]",
    "Close",
  ]);
  expect(rowsOf(table)).toEqual([
    ["Blend a", "Soil", "59.0", "57.0", "2.0", "yes"],
    ["Blend a", "Sand", "40.0", "43.1", "−3.1", "no"],
    ["Blend a", "Passing 0.0632 mm, the largest difference", "21.5", "25.1", "−3.6", "no"],
  ]);
});

it("says the state of the mix, and prints its doubts", () => {
  expect(render(stateInShort({ state: "tested" } as never))).toBe("tested mix");
  expect(render(stateInShort({ state: "proposed" } as never))).toContain("proposed blend");
  const note = (state: string) => mixStateNote(study([A], { state }));
  expect([note("tested").tone, note("proposed").tone]).toEqual(["note", "warning"]);
  const doubts = ["Crushed otherwise."];
  expect(doubtNotes({ mix: { record: { doubts } } } as never)).toEqual([
    { kind: "note", tone: "warning", text: "Crushed otherwise." },
  ]);
  expect(doubtNotes({})).toEqual([]);
});
