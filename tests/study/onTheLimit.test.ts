import { describe, expect, it } from "vitest";
import { recipe } from "../../src/batch/recipe.js";
import type { StudyConfig } from "../../src/entries/studyConfig.js";
import type { Finding } from "../../src/findings/finding.js";
import type { GradingCurve } from "../../src/grading/curve.js";
import type { SpecimenRecord } from "../../src/lab/specimens.js";
import { computeFirstMix } from "../../src/study/firstMix.js";
import { studyGuidance } from "../../src/study/guidance.js";
import { leftTested, moistureFindings, refusals } from "../../src/study/mixGuard.js";
import { mixWater } from "../../src/study/mixWater.js";
import { plausibilityFindings, trialContradictions } from "../../src/study/plausibility.js";
import { computeQuality } from "../../src/study/quality.js";
import { reviewFindings } from "../../src/study/review.js";
import { mixDensity, specifiedMix, toleranceFindings } from "../../src/study/specifiedMix.js";
import { stagesOf } from "../../src/study/stages.js";
import { blockMeans } from "../../src/study/strength.js";
import type { Study } from "../../src/study/study.js";
import type {
  MaterialResult,
  MixStudy,
  StrengthStudy,
  TrialStudy,
} from "../../src/study/studyResult.js";
import { trialEntryFindings } from "../../src/study/trials.js";
import { render, renderAll } from "../../src/words/render.js";

/** The part of a thing that a function looks at. */
const as = <T>(part: object) => part as T;
const codes = (findings: readonly Finding[]) => findings.map(({ code }) => code);
const curve = (...points: readonly (readonly [number, number])[]): GradingCurve => ({
  points: points.map(([sizeMm, passingPct]) => ({ sizeMm, passingPct, origin: "sieve" })),
});

describe("the blocks of a trial", () => {
  type Block = Partial<SpecimenRecord>;
  const FILE = "blocks.csv";
  /** What is told of them, with an optimum of 10 % and 2000 kg/m³. */
  function told(blocks: readonly Block[], entry: object = {}, blended?: GradingCurve) {
    const specimens = blocks.map((block, index) => ({
      id: `B${index + 1}`,
      row: index + 2,
      cementPct: 6,
      ageDays: 28,
      strengthMpa: 2,
      ...block,
    }));
    const trial = {
      entry: { id: "a", key: "tested", sheetKeys: { compaction: "c", blocks: "s" }, ...entry },
      specimens: { file: FILE, specimens },
    };
    const compaction = {
      peak: { maximumDryDensityKgM3: 2000, optimumWaterPct: 10 },
      curve: [],
      points: [],
    };
    const of = { id: "a", compaction, blended: blended && { curve: blended } };
    return renderAll(
      trialContradictions(
        as<Study["trials"]>([trial]),
        as<Pick<TrialStudy, "id" | "compaction" | "blended">>(of),
      ),
    );
  }

  it("are as dense as the compaction test to a tenth of its maximum, excluded ones aside", () => {
    const dense = (...densities: readonly number[]) =>
      told(densities.map((dryDensityKgM3) => ({ dryDensityKgM3 })));
    expect(dense(1800)).toEqual([]);
    expect(dense(2200)).toEqual([]);
    expect(dense(1700, 1890)).toMatchObject([
      {
        code: "blocks-against-compaction",
        file: FILE,
        value: "1795 kg/m³",
        expected: "90 to 110 % of the maximum (common practice, no source)",
      },
    ]);
    expect(codes(told([{ dryDensityKgM3: 2201 }]))).toEqual(["blocks-against-compaction"]);
    expect(told([{ dryDensityKgM3: 2000 }, { dryDensityKgM3: 1, excluded: "broken" }])).toEqual([]);
  });

  it("are cubes while no side is a tenth longer than another", () => {
    const sided = (heightMm: number) => ({ lengthMm: 100, widthMm: 100, heightMm });
    const shape = (name: string, ...heights: readonly number[]) =>
      told(heights.map(sided), { shape: name }).map(({ message }) => message);
    expect(shape("cube", 110)).toEqual([]);
    expect(shape("cube", 111, 100)).toEqual([
      "The study speaks of cubes, and 1 block of blocks.csv has sides of different length.",
    ]);
    expect(shape("prism", 100, 111)).toEqual([]);
    expect(shape("prism", 100, 110)).toHaveLength(1);
    expect(shape("cylinder", 100, 100)).toEqual([
      "The study speaks of cylinders, and 2 blocks of blocks.csv have a width.",
    ]);
    const round = told([{ diameterMm: 100, heightMm: 200 }], { shape: "cube" });
    expect(round.map(({ message }) => message)).toEqual([
      "The study speaks of blocks with sides, and 1 block of blocks.csv has a diameter.",
    ]);
  });

  it("have sides within a fifth of the middle, where three were measured", () => {
    const tall = (...heights: readonly number[]) => told(heights.map((heightMm) => ({ heightMm })));
    expect(tall(100, 100, 120)).toEqual([]);
    expect(tall(100, 200)).toEqual([]);
    expect(tall(100, 100, 121, 79)).toMatchObject([
      {
        code: "blocks-of-another-size",
        row: 4,
        value: "121 mm",
        message:
          "2 blocks of blocks.csv have a side of another length than the others: block B3 121 mm, the others about 100 mm.",
      },
    ]);
  });

  it("are three times as wide as the size that 95 % pass, or the sieve that stones were taken out on", () => {
    const stony = curve([2, 50], [20, 95], [40, 100]);
    const wide = (widthMm: number, entry: object = {}) => told([{ widthMm }], entry, stony);
    expect(wide(60)).toEqual([]);
    expect(wide(59)).toMatchObject([{ code: "blocks-smaller-than-stones", value: "59 mm" }]);
    expect(wide(59)[0].message).toContain("block B1 59 mm, the grain 20 mm.");
    expect(wide(30, { screenedAtMm: 10 })).toEqual([]);
    expect(codes(wide(29, { screenedAtMm: 10 }))).toEqual(["blocks-smaller-than-stones"]);
  });

  it("are not all stronger than 10 MPa", () => {
    const strong = (...values: readonly number[]) =>
      told(values.map((strengthMpa) => ({ strengthMpa })));
    expect(strong(10, 30)).toEqual([]);
    expect(strong(30, 10.5)).toMatchObject([{ code: "blocks-very-strong", value: "10.5 MPa" }]);
    expect(told([{ strengthMpa: 30, excluded: "unit" }])).toEqual([]);
  });

  it("called soaked hold half of the optimum", () => {
    const wet = (testMoisturePct: number, crushed = "soaked") =>
      told([{ testMoisturePct }], { crushed });
    expect(wet(5)).toEqual([]);
    expect(wet(1, "moist")).toEqual([]);
    expect(wet(4.9)).toMatchObject([{ code: "blocks-too-dry-for-soaked", value: "4.9 %" }]);
  });

  it("of each content and age have a mean, a lowest and a highest", () => {
    const block = (cementPct: number, ageDays: number, strengthMpa: number, excluded?: string) =>
      as<SpecimenRecord>({ cementPct, ageDays, strengthMpa, excluded });
    expect(
      blockMeans([
        block(8, 28, 3),
        block(6, 28, 2.5),
        block(6, 7, 1),
        block(6, 28, 1.5),
        block(6, 28, 9, "cracked"),
      ]),
    ).toEqual([
      { cementPct: 6, ageDays: 7, blocks: 1, meanMpa: 1, lowestMpa: 1, highestMpa: 1 },
      { cementPct: 6, ageDays: 28, blocks: 2, meanMpa: 2, lowestMpa: 1.5, highestMpa: 2.5 },
      { cementPct: 8, ageDays: 28, blocks: 1, meanMpa: 3, lowestMpa: 3, highestMpa: 3 },
    ]);
  });
});

describe("materials and lifts", () => {
  const of = (
    role: string,
    graded: GradingCurve = curve([1, 0], [2, 100]),
    liftM = 0.1,
  ): readonly Finding[] =>
    renderAll(
      plausibilityFindings(
        {
          config: as<StudyConfig>({
            materials: [{ id: "other" }, { id: "one" }],
            elements: [{ name: "Wall", compactedLiftM: liftM }],
            units: "SI",
          }),
          materials: [],
        },
        [as<MaterialResult>({ id: "one", name: "Heap", role, curve: graded })],
      ),
    );

  it("half of a gravel is coarser than 2 mm", () => {
    expect(of("gravel", curve([2, 50], [20, 100]))).toEqual([]);
    expect(of("gravel", curve([2, 51], [20, 100]))).toMatchObject([
      {
        column: "materials.1.role",
        value: "gravel",
        message: "Heap is called a gravel, and more than half of it (51 %) is finer than 2 mm.",
      },
    ]);
  });

  it("half of a sand lies between 0.063 and 4.75 mm", () => {
    expect(of("sand", curve([0.063, 20], [4.75, 70], [20, 100]))).toEqual([]);
    expect(codes(of("sand", curve([0.063, 20], [4.75, 69], [20, 100])))).toEqual([
      "role-against-curve",
    ]);
    expect(of("soil", curve([0.063, 20], [4.75, 69], [20, 100]))).toEqual([]);
  });

  it("a lift is rammed 200 mm deep at the most", () => {
    expect(of("soil", undefined, 0.2)).toEqual([]);
    expect(of("soil", undefined, 0.201)).toMatchObject([
      {
        code: "lift-too-deep",
        value: "201 mm",
        expected: "at most 200 mm (common practice, no source)",
      },
    ]);
  });
});

describe("chemistry", () => {
  const told = (sulphates: number, cement: object | null = {}) => {
    const chemistry = { organicPct: 1, sulphatePct: sulphates, saltsPct: "not tested" };
    const materials = [
      { id: "sand", name: "Sand", role: "sand" },
      { id: "soil", name: "Soil", role: "soil", chemistry },
    ];
    return renderAll(studyGuidance({ config: as<StudyConfig>({ materials, cement }) }).findings);
  };

  it("a specialist is asked from more than 0.2 % sulphates on, where cement goes in", () => {
    expect(codes(told(0.2))).toEqual(["chemistry-not-tested"]);
    expect(told(0.21)).toMatchObject([
      { code: "sulphates-to-ask", column: "materials.1.chemistry", value: "0.21 %" },
      { message: "Soil was not tested, or the study does not say so, for: soluble salts." },
    ]);
    expect(told(0.21, null)).toEqual([]);
  });
});

describe("the moisture and the cement of a mix", () => {
  const strength = (made: readonly number[] = []) =>
    as<StrengthStudy>({
      specimens: made.map((makingMoisturePct) => ({ makingMoisturePct })),
      fit: { contentsPct: [4, 6, 8], covariates: [], ageDays: 28 },
      leastCement: { cementPct: 5 },
    });

  it("are those of the blocks to half a point", () => {
    expect(leftTested(10.5, strength(), 10)).toEqual([]);
    expect(leftTested(10, strength([12]), 10)).toEqual([]);
    expect(leftTested(11.5, strength([10, 12]), 10)).toEqual([]);
    const [found] = renderAll(leftTested(11.6, strength([10, 12]), 10));
    expect(found).toMatchObject({ code: "mix-moisture-not-tested", value: "11.6 %" });
    expect(found.message).toContain("its blocks were made at 11.0 %");
    expect(render(leftTested(10.6, strength(), 10)[0].message)).toContain("the optimum is 10.0 %");
  });

  const compaction = (peak: object = {}) => ({
    peak: { optimumWaterPct: 10, maximumDryDensityKgM3: 1900, ...peak },
    curve: [],
    points: [],
  });

  it("lie within the tolerance of an optimum that is reported alone, or of the blocks", () => {
    const told = (moisturePct: number, made: readonly number[] = [], tolerances = {}) =>
      codes(
        moistureFindings(
          as<StudyConfig>({ specified: { moisturePct }, tolerances, materials: [{}] }),
          [100],
          strength(made),
          as(compaction()),
        ),
      );
    expect([told(9), told(11)]).toEqual([[], []]);
    expect(told(8.9)).toEqual(["mix-beyond-reported-optimum"]);
    expect(told(11.1)).toEqual(["mix-beyond-reported-optimum"]);
    expect(told(12, [12])).toEqual([]);
    expect(told(11.9, [], { moistureAbovePct: 2 })).toEqual([]);
    expect(told(7.9, [], { moistureBelowPct: 2 })).toEqual(["mix-beyond-reported-optimum"]);
  });

  /** Refusals of a mix of one heap, 2650 kg/m³ its grains, 1900 kg/m³ its lightest block. */
  const refused = (cementPct: number, looseKgM3 = 1200, peak: object = {}) =>
    renderAll(
      refusals(
        as({
          materials: [
            {
              id: "soil",
              name: "Soil",
              particleDensityKgM3: 2650,
              looseBulkDensityKgM3: looseKgM3,
            },
          ],
          specified: { cementPct },
        }),
        [100],
        as({
          strength: strength(),
          compaction: compaction(peak),
          peak: compaction(peak).peak,
          density: { valueKgM3: 1950, lowKgM3: 1900, highKgM3: 2000 },
          cementPct,
        }),
      ),
    );

  it("set by hand are at least what the blocks need and at most what they were made with", () => {
    expect([refused(5), refused(8)]).toEqual([[], []]);
    expect(refused(4.9)[0].message).toMatch(/set to 4\.90 % cement.*from 5\.00 % on/);
    expect(refused(8.1)[0].message).toMatch(/set to 8\.10 % cement.*more than 8\.00 %/);
    expect(codes(refused(0))).toEqual(["no-cement", "mix-below-least-cement"]);
  });

  it("rest on a heap that is looser than the lightest block", () => {
    expect(refused(6, 1899)).toEqual([]);
    expect(refused(6, 1900)).toMatchObject([
      {
        severity: "error",
        code: "heap-denser-than-wall",
        value: "1900 kg/m³",
        expected: expect.stringMatching(/^less than 1900 kg\/m³/),
      },
    ]);
  });

  it("rest on no optimum denser than earth without air, but for 2 %", () => {
    // 2650 / (1 + 0.1 × 2.65) = 2094.9 kg/m³; 2 % more are 2136.8.
    expect(refused(6, 1200, { maximumDryDensityKgM3: 2136 })).toEqual([]);
    const [found] = refused(6, 1200, { maximumDryDensityKgM3: 2137 });
    expect(found).toMatchObject({ code: "no-mix", column: "compaction" });
    expect(found.message).toContain("2137 kg/m³ at 10.0 %");
    expect(found.expected).toContain("at most 2095 kg/m³, and 2 %");
    // At 15 % earth without air has 1896 kg/m³, less than the wall must have: that is told once.
    const wet = { optimumWaterPct: 15, maximumDryDensityKgM3: 2100 };
    expect(codes(refused(6, 1200, wet))).toEqual(["no-mix"]);
  });
});

describe("the specified mix", () => {
  const mix = (over: object = {}) =>
    as<MixStudy>({
      recipe: {
        materials: [
          { id: "soil", name: "Soil", dryMassKg: 60, sharePct: 60 },
          { id: "sand", name: "Sand", dryMassKg: 40, sharePct: 40 },
          { id: "stone", name: "Stone", dryMassKg: 0, sharePct: 0 },
        ],
        cementPct: 8,
        targetMoisturePct: 10,
      },
      water: { window: { moisturePct: { low: 9, high: 11 } }, basis: "test" },
      density: { valueKgM3: 1950, lowKgM3: 1900, highKgM3: 2000, basis: "blocks" },
      ...over,
    });
  const config = (tolerances?: object, lifts: readonly number[] = [0.1]) =>
    as<StudyConfig>({
      units: "SI",
      site: {},
      tolerances,
      materials: [
        { id: "soil", moisturePct: 5, batchingPlusMinusPct: 3 },
        { id: "sand", moisturePct: 5 },
      ],
      cement: { name: "Cement" },
      batchDryMassKg: 100,
      elements: lifts.map((compactedLiftM, index) => ({ name: `E${index + 1}`, compactedLiftM })),
    });
  const strength = as<StrengthStudy>({ leastCement: { cementPct: 7.7 } });
  const linesOf = (tolerances?: object, lifts?: readonly number[]) =>
    specifiedMix({ config: config(tolerances, lifts), mix: mix(), strength });

  it("has 5 % of masses and 20 mm of a lift where nothing was entered, and never less than the least cement", () => {
    const lines = linesOf().map(({ kind, low, value, high, basis }) => [
      kind,
      low?.toFixed(2),
      value,
      high?.toFixed(2),
      basis,
    ]);
    expect(lines).toEqual([
      ["share", "58.20", 60, "61.80", "batching variation"],
      ["share", "38.00", 40, "42.00", "common practice"],
      ["cement", "7.70", 8, "8.40", "least cement"],
      ["moisture", "9.00", 10, "11.00", "compaction test"],
      ["density", "1900.00", 1950, undefined, "lightest block"],
      ["lift", "0.08", 0.1, "0.12", "common practice"],
    ]);
  });

  it("has what was entered, and a line for lifts of each depth", () => {
    const entered = { cementPct: 10, sharesPct: 2, liftM: 0.2, densityPct: 96 };
    const lines = linesOf(entered, [0.1, 0.15, 0.1]);
    expect(lines.map(({ low, high, basis }) => [low?.toFixed(2), high?.toFixed(2), basis])).toEqual(
      [
        ["58.80", "61.20", "entered"],
        ["39.20", "40.80", "entered"],
        ["7.20", "8.80", "entered"],
        ["9.00", "11.00", "compaction test"],
        ["1900.00", undefined, "lightest block"],
        ["0.00", "0.30", "entered"],
        ["0.00", "0.35", "entered"],
      ],
    );
    expect(lines.slice(5).map(({ name }) => render(name!))).toEqual(["E1, E3", "E2"]);
  });

  const tolerated = (tolerances: object, lifts?: readonly number[], over: object = {}) => {
    const compaction = as<MixStudy>({
      peak: { maximumDryDensityKgM3: 2000, optimumWaterPct: 10 },
      curve: [],
      points: [],
    });
    return renderAll(
      toleranceFindings({
        config: config(tolerances, lifts),
        mix: mix(over),
        strength,
        compaction: compaction as never,
      }),
    );
  };

  it("is told where its cement may fall below the least, its lift away, its density below or above all blocks", () => {
    expect(tolerated({ cementPct: 3.75 })).toEqual([]);
    const [cement] = tolerated({ cementPct: 4 });
    expect(cement).toMatchObject({
      code: "tolerance-below-least-cement",
      column: "tolerances.cement",
    });
    expect(cement.message).toContain("may fall to 7.68 %, below the 7.70 %");
    expect(tolerated({ liftM: 0.099 })).toEqual([]);
    expect(tolerated({ liftM: 0.1 }, [0.12, 0.1])).toMatchObject([
      { code: "tolerance-as-large-as-lift", expected: "less than 100 mm" },
    ]);
    expect([tolerated({ densityPct: 95 }), tolerated({ densityPct: 100 })]).toEqual([[], []]);
    expect(tolerated({ densityPct: 94 })).toMatchObject([
      {
        code: "tolerance-below-blocks",
        message: expect.stringContaining("A wall of 1880 kg/m³ would be accepted; the lightest"),
      },
    ]);
    expect(tolerated({ densityPct: 101 })).toMatchObject([
      { code: "tolerance-above-blocks", message: expect.stringContaining("2020 kg/m³") },
    ]);
    const alike = { density: { valueKgM3: 1950, lowKgM3: 1950, highKgM3: 1950, basis: "test" } };
    expect(codes(tolerated({}, [0.1], alike))).toEqual(["tolerance-not-stated"]);
  });

  it("weighs what its blocks of the age of the curve weigh, else what the compaction test gives", () => {
    const block = (dryDensityKgM3: number | undefined, ageDays = 28, excluded?: string) => ({
      dryDensityKgM3,
      ageDays,
      excluded,
    });
    const specimens = [
      block(1900),
      block(2000),
      block(1500, 7),
      block(1, 28, "x"),
      block(undefined),
    ];
    const of = (all: object[], kinds: string[] = []) =>
      mixDensity(
        as<StrengthStudy>({
          specimens: all,
          fit: { covariates: kinds.map((kind) => ({ kind })), ageDays: 28 },
        }),
        as({ peak: { maximumDryDensityKgM3: 2050 } }),
      )!;
    const { basis, ...density } = of(specimens);
    expect(density).toEqual({ valueKgM3: 1950, lowKgM3: 1900, highKgM3: 2000 });
    expect(render(basis)).toBe("mean dry density of 2 blocks of 28 days");
    expect(of(specimens, ["ln age"])).toMatchObject({ valueKgM3: 1800, lowKgM3: 1500 });
    expect(of([block(undefined)])).toMatchObject({
      valueKgM3: 2050,
      lowKgM3: 2050,
      highKgM3: 2050,
    });
  });
});

describe("the water of a batch", () => {
  const soil = { id: "soil", name: "Soil", sharePct: 100, moisturePct: 1 };
  const batch = recipe({
    materials: [{ ...soil, looseBulkDensityKgM3: 1200 }],
    cementPct: 8,
    targetMoisturePct: 2,
    batchDryMassKg: 100,
  });
  const allowed = (...given: readonly [object?, number?]) => {
    const { window, basis } = mixWater(batch, undefined, ...given);
    return [window.moisturePct.low, window.moisturePct.high, basis];
  };

  it("is never less than none, and within the narrower of what study and site allow", () => {
    expect(allowed()).toEqual([1, 3, "common practice"]);
    expect(allowed({ moistureBelowPct: 3, moistureAbovePct: 1 })).toEqual([0, 3, "entered"]);
    expect(allowed({ moistureBelowPct: 0.5, moistureAbovePct: 2 }, 1)).toEqual([1.5, 3, "entered"]);
    expect(allowed({}, 0.5)).toEqual([1.5, 2.5, "entered"]);
    expect(allowed({ moistureBelowPct: 0.5 })).toEqual([1, 3, "common practice"]);
  });
});

describe("the blocks that are still needed", () => {
  const needs = (...contents: readonly number[]) => {
    const stages = stagesOf(
      as({
        config: { materials: [{ name: "Soil" }], elements: [], strength: { sheet: "b.csv" } },
        materials: [],
        trials: [],
        blocks: { means: contents.map((cementPct) => ({ cementPct })), message: "Why." },
      }),
    );
    return render(stages.find(({ stage }) => stage === "blocks")!.needs!);
  };

  it("are of three contents; with as many the curve lacks something else", () => {
    expect(needs(4, 6, 8, 8)).toBe("Why.");
    expect(needs(4, 6, 6)).toMatch(/^Blocks with further .* Crushed so far: 4 %, 6 %\. Why\.$/);
    expect(needs()).toMatch(/^Blocks that are not excluded/);
  });
});

describe("entries that name each other", () => {
  const shares = { soil: 100 };
  const told = (entries: object) =>
    renderAll(
      trialEntryFindings(
        as<StudyConfig>({
          materials: [{ id: "soil" }, { id: "sand" }],
          strength: { sheet: "b.csv" },
          ...entries,
        }),
      ),
    ).map(({ severity, code, column, value }) => [severity, code, column, value]);

  it("a mix follows a trial that is there, whose shares are told, and no shares beside it", () => {
    expect(told({ mixFrom: "tested", tested: { sharesPct: shares } })).toEqual([]);
    expect(told({ mixFrom: "tested" })).toEqual([
      ["error", "trial-without-shares", "mix-from", "tested"],
    ]);
    expect(told({ mixFrom: "tested", materials: [{ id: "soil" }] })).toEqual([]);
    expect(told({ mixFrom: "none", specified: { sharesPct: shares } })).toEqual([
      ["error", "two-mixes", "mix-from", "none"],
      ["error", "unknown-trial", "mix-from", "none"],
    ]);
  });

  it("shares are of materials that are there, wherever they stand", () => {
    const sharesPct = { soil: 60, sund: 40 };
    expect(
      told({
        tested: { sharesPct },
        trials: [{ id: "b", sharesPct, blocks: "c.csv" }],
        specified: { sharesPct },
        compareMix: { sharesPct },
      }),
    ).toEqual(
      ["tested", "trials.0", "mix", "compare-mix"].map((key) => [
        "error",
        "unknown-material",
        `${key}.shares.sund`,
        "sund",
      ]),
    );
  });

  it("no trial has the id of the study's own sheets, and none the sheet of another blend", () => {
    const trials = [{ id: "tested", sharesPct: shares, blocks: "c.csv" }];
    expect(told({ trials })).toEqual([["error", "trial-id-taken", "trials.0.id", "tested"]]);
    const tested = { sharesPct: { soil: 98, sand: 2 } };
    const same = [{ id: "b", sharesPct: shares, blocks: "b.csv" }];
    expect(told({ tested, trials: same })).toEqual([]);
    const apart = { sharesPct: { soil: 97.9, sand: 2.1 } };
    expect(told({ tested: apart, trials: same })).toEqual([
      ["error", "sheet-of-two-trials", "trials.0.blocks", "b.csv"],
    ]);
  });

  it("a statement on sampling is of a material, and a clause is answered by a section", () => {
    const found = renderAll(
      reviewFindings(
        as<StudyConfig>({
          materials: [{ id: "soil" }],
          checklist: [{ answeredBy: "tolerence" }, {}, { answeredBy: "mix" }],
          sampling: [{ material: "soil" }, { material: "sand" }],
        }),
      ),
    );
    expect(found.map(({ column, value }) => [column, value])).toEqual([
      ["checklist.0.answered-by", "tolerence"],
      ["sampling.1.material", "sand"],
    ]);
    expect(found[0].message).toContain("“tolerances” may be meant");
  });
});

describe("the sand that a soil asks for", () => {
  const graded = (id: string, finesPct: number) =>
    as<MaterialResult>({ id, fractions: { finesPct } });
  const told = (
    addSand: object,
    materials: readonly MaterialResult[] = [graded("soil", 60), graded("sand", 0)],
    roles: readonly string[] = ["soil", "sand"],
  ) => {
    const ids = ["soil", "sand"];
    const config = as<StudyConfig>({
      addSand: { sand: "sand", finesPct: 30, batchDryMassKg: 15, ...addSand },
      materials: ids.map((id, index) => ({ id, name: id, role: roles[index] })),
    });
    const { mix, findings } = computeFirstMix(config, { materials, ungraded: [] });
    return { mix, findings: renderAll(findings) };
  };

  it("halves fines of 60 % with as much sand as soil", () => {
    const { mix, findings } = told({});
    expect(findings).toEqual([]);
    expect(mix).toMatchObject({ soil: "soil", sand: "sand" });
    expect(render(mix!.basis)).toMatch(/^Of the sieve curves\. Loose volumes by general densities/);
  });

  it("is of a soil and a sand that are there, and whose fines are known", () => {
    expect(told({ sand: "sund" }).findings).toMatchObject([
      { code: "unknown-material", column: "add-sand.sand", value: "sund" },
    ]);
    expect(told({ soil: "loam" }).findings).toMatchObject([
      { code: "unknown-material", column: "add-sand.soil", value: "loam" },
    ]);
    const [several] = told({}, undefined, ["soil", "soil"]).findings;
    expect(several).toMatchObject({ column: "add-sand.soil", expected: "one of soil, sand" });
    expect(several.message).toContain("several soils, or none");
    expect(told({}, [graded("sand", 0)]).findings).toMatchObject([
      { severity: "warning", code: "fines-not-known", expected: "one of: sieve, jar" },
    ]);
    expect(told({}, [graded("soil", 60)]).findings).toMatchObject([
      { code: "fines-not-known", expected: "one of: sieve, jar, “sand-fines”" },
    ]);
    expect(told({ sandFinesPct: 2 }, [graded("soil", 60)]).findings).toEqual([]);
  });
});

describe("the plan of quality", () => {
  const acceptance = { kind: "mean-and-least", blocks: 3, meanMpa: 2, minMpa: 1.6 };
  const plan = (quality: object, mix: object | undefined, requiredMpa = 2) => {
    const config = as<StudyConfig>({
      seed: 1,
      quality: {
        acceptance,
        spareBlocks: 1,
        scatterMpa: 0,
        lot: { kind: "volume", volumeM3: 3 },
        ...quality,
      },
      strength: { requirement: { ageDays: 28, strengthMpa: requiredMpa } },
    });
    const made = mix && as<MixStudy>({ quantities: mix, record: { cementPct: 6 } });
    return computeQuality(config, as<StrengthStudy>({}), made, undefined);
  };
  const countsOf = ({ plan: counts }: ReturnType<typeof plan>) => [
    counts?.lots,
    counts?.blocksALot,
    counts?.blocks,
    counts?.densityChecks,
  ];

  it("counts whole lots, and blocks of all ages with the spare ones", () => {
    const element = { madeVolumeM3: 6, batches: 40 };
    expect(countsOf(plan({ densityChecks: 2 }, element))).toEqual([2, 4, 8, 4]);
    expect(countsOf(plan({ agesDays: [7, 28] }, { ...element, madeVolumeM3: 6.1 }))).toEqual([
      3,
      7,
      21,
      undefined,
    ]);
    expect(countsOf(plan({}, { ...element, madeVolumeM3: 0.5 }))[0]).toBe(1);
    const whole = { lot: { kind: "volume", volumeM3: 1e12 } };
    expect(countsOf(plan(whole, element))[0]).toBe(1);
    expect(countsOf(plan({}, undefined))).toEqual([undefined, 4, undefined, undefined]);
    const days = (more: object) => plan({ lot: { kind: "days", days: 2, ...more } }, element);
    expect(countsOf(days({ batchesADay: 10 }))[0]).toBe(2);
    expect(countsOf(days({ batchesADay: 9 }))[0]).toBe(3);
    expect(countsOf(days({}))).toEqual([undefined, 4, undefined, undefined]);
  });

  it("has a rule as strict as the requirement, and blocks crushed at its age", () => {
    expect(plan({}, undefined).findings).toEqual([]);
    expect(renderAll(plan({}, undefined, 2.1).findings)).toMatchObject([
      { code: "weak-acceptance-rule", value: "2 MPa", expected: "at least 2.1 MPa" },
    ]);
    expect(renderAll(plan({ agesDays: [7, 56] }, undefined).findings)).toMatchObject([
      {
        severity: "error",
        code: "age-not-tested",
        value: "7, 56",
        expected: "28 d among the ages",
      },
    ]);
  });
});
