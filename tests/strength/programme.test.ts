import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readSpecimens } from "../../src/lab/specimens.js";
import { readTrials } from "../../src/lab/trials.js";
import {
  differencePower,
  programmeSheet,
  sheetCsv,
  type TestProgrammeOptions,
  testProgramme,
} from "../../src/strength/programme.js";
import { strengthBands } from "../../src/strength/regression/bounds.js";
import { compareTrials, trialFindings } from "../../src/strength/trials.js";
import { fitted } from "./blocks.js";
import { near } from "./near.js";

const file = new URL("../reference/strengthStatsmodels.json", import.meta.url);
const fixture = JSON.parse(readFileSync(file, "utf8"));
const OPTIONS: TestProgrammeOptions = {
  aim: { kind: "width", halfWidthMpa: 0.15, atPct: 7 },
  contentsPct: [10, 4, 6, 8, 4],
  sdMpa: 0.25,
  ageDays: 28,
};

describe("testProgramme", () => {
  it("has SciPy's power", () => {
    for (const { n, sd, difference, power } of fixture.twoSamplePower) {
      const found = differencePower({
        contents: 4,
        blocks: n,
        sdMpa: sd,
        differenceMpa: difference,
      });
      // SciPy 1.10 warns of an invalid value in the far tail; its power is good to nine digits.
      near(found, power, { rel: 1e-8, abs: 0 }, `${n} blocks`);
    }
  });

  it("promises the width that a fit of such blocks has", () => {
    const plan = testProgramme(OPTIONS);
    expect(plan.contentsPct).toEqual([4, 6, 8, 10]);
    // Blocks whose residual standard deviation is known: pairs at ± one step about a line.
    const half = plan.blocksAContent! / 2;
    const pairs = plan.contentsPct.flatMap((content) =>
      [1, -1].flatMap((sign) =>
        Array.from({ length: half }, () => [content, 1 + 0.3 * content + 0.1 * sign]),
      ),
    );
    const fit = fitted(pairs);
    const [at] = strengthBands(fit, { cementPct: [7] });
    near(
      plan.halfWidthMpa,
      ((at.meanHighMpa - at.meanMpa) * 0.25) / fit.residualSd,
      { rel: 1e-9, abs: 0 },
      "width",
    );
    expect(plan.halfWidthMpa).toBeLessThanOrEqual(0.15);
  });

  it("makes whole batches in random order, the same for the same seed", () => {
    const plan = testProgramme(OPTIONS);
    const { blocks, blocksAContent } = plan;
    expect(testProgramme(OPTIONS)).toEqual(plan);
    expect(testProgramme({ ...OPTIONS, seed: 2 }).blocks).not.toEqual(blocks);
    expect(blocks).toHaveLength(4 * blocksAContent!);
    expect(new Set(blocks.map(({ id }) => id)).size).toBe(blocks.length);
    expect(new Set(blocks.map(({ batch }) => batch)).size).toBe(8);
    expect(blocks[0]).toMatchObject({ id: "M1-1", batch: "M1" });
    for (const { id, batch } of blocks) expect(id.split("-")[0]).toBe(batch);
    const order = blocks.map(({ crushingOrder }) => crushingOrder).sort((a, b) => a - b);
    expect(order).toEqual(blocks.map((_, index) => index + 1));
    for (const content of plan.contentsPct) {
      expect(blocks.filter(({ cementPct }) => cementPct === content)).toHaveLength(blocksAContent!);
    }
  });

  it("prints a sheet that is the lab sheet once it is filled in", () => {
    const { blocks } = testProgramme(OPTIONS);
    const sheet = programmeSheet(blocks, "blocks.csv");
    const header = sheet.rows[1];
    const filled = sheet.rows.map((row, index) =>
      index < 2
        ? row
        : row.map((cell, at) => {
            if (/^(length|width|height)/.test(header[at])) return "100";
            return header[at] === "load (kN)" ? String(21.5 + index / 100) : cell;
          }),
    );
    const { record: read, findings } = readSpecimens({ file: "blocks.csv", rows: filled });
    expect(findings).toEqual([]);
    expect(
      read?.specimens.map(({ id, batch, cementPct, ageDays, crushingOrder }) => ({
        id,
        batch,
        cementPct,
        ageDays,
        crushingOrder,
      })),
    ).toEqual(blocks);
    near(read?.specimens[0].strengthMpa ?? null, 2.152, { rel: 1e-12, abs: 0 }, "strength");
    const empty = readSpecimens(sheet);
    expect(empty.record).toBeUndefined();
    expect(new Set(empty.findings.map(({ code }) => code))).toEqual(new Set(["missing-value"]));
    expect(sheetCsv(sheet).split("\n")).toHaveLength(sheet.rows.length + 1);
  });

  it("says what it cannot plan", () => {
    const status = (change: Partial<TestProgrammeOptions>) =>
      testProgramme({ ...OPTIONS, ...change }).status;
    expect(status({ contentsPct: [4, 6] })).toBe("too-few-contents");
    expect(status({ contentsPct: [4, 6, 8] })).toBe("ok");
    expect(status({ contentsPct: [4, 6, 8], model: "quadratic" })).toBe("too-few-contents");
    expect(status({ aim: { kind: "width", halfWidthMpa: 0.1, atPct: 12 } })).toBe(
      "outside-contents",
    );
    expect(status({ aim: { kind: "difference", differenceMpa: 0.01 } })).toBe("too-many-blocks");
    expect(() => testProgramme({ ...OPTIONS, sdMpa: 0 })).toThrow("`sdMpa`: 0");
    expect(() => testProgramme({ ...OPTIONS, batchesAContent: 1.5 })).toThrow(
      "`batchesAContent`: 1.5",
    );
  });
});

describe("workshop trials", () => {
  const trial = (id: string, l: number, a: number, b: number) => ({
    id,
    mix: "invented",
    lab: { l, a, b },
    dryToConstantMass: true,
    row: 2,
  });

  it("has the CIEDE2000 of the test pairs of Sharma, Wu and Dalal (from memory)", () => {
    for (const [one, other, wanted] of [
      [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
      [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
      [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
      [[50, 2.5, 0], [73, 25, -18], 27.1492],
    ] as [number[], number[], number][]) {
      const [pair] = compareTrials([
        trial("A", one[0], one[1], one[2]),
        trial("B", other[0], other[1], other[2]),
      ]);
      near(pair.deltaE, wanted, { rel: 0, abs: 5.1e-5 }, `${one} to ${other}`);
    }
  });

  it("puts the largest difference first, and leaves out trials without a colour", () => {
    const pairs = compareTrials([
      trial("A", 60, 10, 20),
      trial("B", 60.1, 10, 20),
      trial("C", 40, 12, 18),
      { id: "D", mix: "no colour", row: 5 },
    ]);
    expect(pairs.map(({ words }) => words)).toEqual([
      "seen at a glance",
      "seen at a glance",
      "hardly seen",
    ]);
    expect(pairs).toHaveLength(3);
    expect(() => compareTrials([trial("A", Number.NaN, 0, 0)])).toThrow("`lab.l` of A: NaN");
  });

  it("calls a difference by its steps, at 1 and at 5", () => {
    const words = (l: number) =>
      compareTrials([trial("A", 50, 0, 0), trial("B", l, 0, 0)])[0].words;
    expect([50.8, 51.3, 54.8, 55.5].map(words)).toEqual([
      "hardly seen",
      "seen side by side",
      "seen side by side",
      "seen at a glance",
    ]);
  });

  it("reads the log, and what is amiss in its cells", () => {
    const read = (lines: string) => {
      const rows = lines.split("\n").map((line) => line.split(","));
      const { record: trials, findings } = readTrials({ file: "trials.csv", rows });
      return { trials, codes: findings.map(({ code, row }) => [code, row]) };
    };
    const header =
      "trial,mix,texture,edges,thickness (mm),drying hours,dry,munsell,L*,a*,b*,remark";
    const good = read(
      `${header}\nT1,3 soil : 1 sand,smooth,sharp,12,48,yes,7.5YR 6/4,60,10,20,\nT2,soil,,,,,,,,,,`,
    );
    expect(good.codes).toEqual([]);
    expect(good.trials).toEqual([
      {
        id: "T1",
        mix: "3 soil : 1 sand",
        texture: "smooth",
        edges: "sharp",
        thicknessMm: 12,
        dryingHours: 48,
        dryToConstantMass: true,
        munsell: "7.5YR 6/4",
        row: 2,
        lab: { l: 60, a: 10, b: 20 },
      },
      { id: "T2", mix: "soil", row: 3 },
    ]);
    const seen = read(
      "block,cracks,colour when dry,dry,photograph,who,date\nL1,hairline,light brown,yes,photos/L1.jpg,the laboratory,2026-06-12",
    );
    expect(seen).toEqual({
      codes: [],
      trials: [
        {
          id: "L1",
          cracks: "hairline",
          colour: "light brown",
          dryToConstantMass: true,
          photograph: "photos/L1.jpg",
          seenBy: "the laboratory",
          seenOn: "2026-06-12",
          row: 2,
        },
      ],
    });
    const damp = read("block,colour\nL1,dark brown").trials!;
    expect(trialFindings(damp, "looks.csv").map(({ code, value }) => [code, value])).toEqual([
      ["colour-before-dry", "dark brown"],
      ["trial-not-strength", undefined],
    ]);
    const bad = read(`${header}\nT1,soil,,,,,perhaps,,60,10,,`);
    expect(bad.trials).toBeUndefined();
    expect(bad.codes).toEqual([
      ["missing-value", 2],
      ["not-yes-or-no", 2],
    ]);
  });

  it("finds what is amiss with the log", () => {
    const log = [
      { ...trial("A", 60, 10, 20), munsell: "7.5YR 6/4" },
      { ...trial("A", 160, 10, 20), row: 3 },
      { id: "C", mix: "x", munsell: "brown", dryToConstantMass: true, row: 4 },
      { id: "D", mix: "x", munsell: "N 5/", row: 5 },
    ];
    expect(trialFindings(log, "trials.csv").map(({ code, row }) => [code, row])).toEqual([
      ["repeated-trial", 3],
      ["unknown-colour", 3],
      ["unknown-colour", 4],
      ["colour-before-dry", 5],
      ["trial-not-strength", undefined],
    ]);
    expect(trialFindings([], "trials.csv")).toEqual([]);
  });
});
