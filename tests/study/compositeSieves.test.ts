import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/findings/finding.js";
import { computeMaterial } from "../../src/study/material.js";
import { sievingTable } from "../../src/tables/grading.js";
import { renderAll } from "../../src/words/render.js";
import { readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

const GRAVEL = "sheets/gravel-sieve.csv";

/** The gravel of the example with another sheet, as `loambook check` reads and computes it. */
async function gravelOf(sheet: string) {
  const copy = copyStudy("reading-room");
  copy.write(GRAVEL, sheet);
  const { study, findings } = await readStudy(copy.folder);
  const errors = findings.filter(({ severity }) => severity === "error");
  if (!study) return { errors, computed: [] as Finding[] };
  const { material: gravel, findings: found } = computeMaterial(study.materials[3], study.config);
  return { errors, computed: renderAll(found), gravel };
}

const TWICE = `dry mass (g),8000
split sieve (mm),10
split dry mass (g),2000
split 2 sieve (mm),2
split 2 dry mass (g),200
split 2 dry mass after washing (g),150

sieve (mm),retained (g)
31.5,0
20,1600
10,2400
6.3,400
2,600
1,60
0.063,80
pan,10
`;

describe("a sieve sheet with two splits", () => {
  it("scales each part by what arrived at it", async () => {
    const { gravel, errors } = await gravelOf(TWICE);
    expect(errors).toEqual([]);
    const passing = gravel?.sieve.rows.map(({ sizeMm, passingPct }) => [sizeMm, passingPct]);
    // By hand: 50 % passes 10 mm; half of its 2000 g stays down to 2 mm: 25 %; of that 60 of 200 g stay on 1 mm.
    const expected = [
      [31.5, 100],
      [20, 80],
      [10, 50],
      [6.3, 40],
      [2, 25],
      [1, 17.5],
      [0.063, 7.5],
    ];
    expect(passing).toHaveLength(expected.length);
    expected.forEach(([sizeMm, passingPct], index) => {
      expect(passing?.[index][0]).toBe(sizeMm);
      expect(passing?.[index][1]).toBeCloseTo(passingPct, 9);
    });
    const table = gravel && renderAll(sievingTable("gravel", gravel.sieve));
    expect(table?.rows.map((cells) => cells[2])).toEqual([
      "Whole sample",
      "Whole sample",
      "Whole sample",
      "Subsample 1",
      "Subsample 1",
      "Subsample 2",
      "Subsample 2",
    ]);
    expect(table?.notes?.[2]).toMatch(/^Subsample 2: 200\.0 g dry, 50\.0 g washed out/);
  });

  it("refuses splits out of order or told by half", async () => {
    const turned = TWICE.replace("split sieve (mm),10", "split sieve (mm),2").replace(
      "split 2 sieve (mm),2",
      "split 2 sieve (mm),10",
    );
    expect((await gravelOf(turned)).errors).toMatchObject([
      { code: "split-order", file: GRAVEL, row: 4, value: "10 mm" },
    ]);
    expect((await gravelOf(TWICE.replace("split 2 dry mass (g),200\n", ""))).errors).toMatchObject([
      { code: "incomplete-split", file: GRAVEL, row: 4 },
    ]);
    expect(
      (await gravelOf(TWICE.replace("split 2 sieve (mm),2", "split 2 sieve (mm),3"))).errors,
    ).toMatchObject([{ code: "split-not-in-set", file: GRAVEL, row: 4, value: "3 mm" }]);
  });
});

describe("sieve series", () => {
  it("United States designations and inches", async () => {
    const { gravel } = await gravelOf(
      `dry mass (lb),10\n\nsieve (in),retained (lb)\n1 1/2,0\n3/4 in,1\n"3/8""",3\nNo. 4,3\nNo. 10,1.5\nNo. 200,1.4\npan,0.1\n`,
    );
    expect(gravel?.sieve.rows.map(({ sizeMm }) => sizeMm)).toEqual([37.5, 19, 9.5, 4.75, 2, 0.075]);
    expect(gravel?.sieve.rows.at(-1)?.passingPct).toBeCloseTo(1, 9);
  });

  it("British openings, millimetres and micrometres in one column", async () => {
    const openings = [
      "28",
      "20",
      "14",
      "10",
      "6.3",
      "5",
      "3.35",
      "2",
      "1.18",
      "600 um",
      "425 µm",
      "300 μm",
      "212 um",
      "150 um",
      "63 um",
    ];
    const rows = openings.map((opening, index) => `${opening},${index === 0 ? 0 : 200}`);
    const { gravel, errors } = await gravelOf(
      `dry mass (g),10000\nsieve (mm),retained (g)\n${rows.join("\n")}\npan,7200\n`,
    );
    expect(errors).toEqual([]);
    expect(gravel?.sieve.rows.map(({ sizeMm }) => sizeMm)).toEqual([
      28, 20, 14, 10, 6.3, 5, 3.35, 2, 1.18, 0.6, 0.425, 0.3, 0.212, 0.15, 0.063,
    ]);
  });

  it("#4 may be a sieve or a remark, and neither is guessed", async () => {
    const { errors } = await gravelOf(
      "dry mass (g),9000\nsieve (mm),retained (g)\n25,0\n#4,100\n# 2,300\npan,9000\n",
    );
    expect(errors).toMatchObject([
      {
        code: "sieve-or-remark",
        file: GRAVEL,
        row: 4,
        value: "#4",
        expected: expect.stringContaining("No. 4"),
      },
    ]);
  });

  it("a designation that is none is refused", async () => {
    const { errors } = await gravelOf(
      "dry mass (g),9000\nsieve (mm),retained (g)\n25,0\nNo. 9,100\npan,8900\n",
    );
    expect(errors).toMatchObject([
      { code: "unknown-sieve", file: GRAVEL, row: 4, column: "sieve (mm)", value: "No. 9" },
    ]);
  });
});

describe("the least mass of a sample", () => {
  it("is told by the nominal maximum size, for a divided sample by its whole", async () => {
    const { computed } = await gravelOf(TWICE);
    // 8 kg: nominal maximum 31.5 mm asks for 7.5 kg.
    expect(computed.map(({ code }) => code)).not.toContain("small-sample");
    const small = TWICE.replace("8000", "4000")
      .replace("20,1600", "20,800")
      .replace("10,2400", "10,1200");
    expect((await gravelOf(small)).computed).toContainEqual(
      expect.objectContaining({
        severity: "warning",
        code: "small-sample",
        file: GRAVEL,
        row: 9,
        value: "4000 g",
        expected: expect.stringContaining("7.5 kg"),
      }),
    );
  });

  it("is not asked of percentages, whose mass nobody knows", async () => {
    const { computed, gravel } = await gravelOf("sieve (mm),passing (%)\n31.5,100\n20,80\n2,10\n");
    expect(gravel).toBeDefined();
    expect(computed.map(({ code }) => code)).not.toContain("small-sample");
  });
});
