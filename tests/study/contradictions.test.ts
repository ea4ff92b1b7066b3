import { describe, expect, it } from "vitest";
import { render } from "../../src/words/render.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

type Edit = readonly [file: string, from: string | RegExp, to: string];

const BLOCKS = "sheets/blocks.csv";

async function readingRoom(...edits: readonly Edit[]) {
  const copy = copyStudy("reading-room");
  for (const edit of edits) copy.edit(...edit);
  const { study, findings } = await readStudy(copy.folder);
  return computeStudy(study!, findings);
}

/** The block sheet with one of its free columns read as another. */
const withColumn = (name: string, value: string): Edit[] => [
  [BLOCKS, "excluded,remark", `excluded,remark,${name}`],
  [BLOCKS, /^(?=L01)(.*)$/m, `L01,A1,4,7,99.9,99.8,100.1,10.66,1964,,,${value}`],
];

/** Blocks of every content ten times as strong as earth is. */
const TEN_TIMES = [
  "block,batch,cement (%),age (d),strength (MPa)",
  ...[4, 6, 8].flatMap((content) =>
    [0, 1.2, 0.2, 0.7].map(
      (more, index) => `B${content}-${index},M,${content},28,${14.8 + 4 * (content - 4) + more}`,
    ),
  ),
  "",
].join("\n");

/** Findings whose limit is nobody's but ours, and says so where a person reads it. */
const OF_COMMON_PRACTICE = new Set([
  "blocks-of-another-size",
  "blocks-smaller-than-stones",
  "blocks-very-strong",
  "grading-step",
  "mixed-units",
  "blocks-too-dry-for-soaked",
  "mix-moisture-not-tested",
  "lift-too-deep",
  "sulphates-to-ask",
]);

describe("what the sheets say against each other", () => {
  it.each<[string, readonly Edit[], string, string]>([
    [
      "blocks with sides that are called cylinders",
      [["study.yaml", "shape: cube", "shape: cylinder"]],
      "blocks-of-another-shape",
      "The study speaks of cylinders",
    ],
    [
      "a block made drier than the range of the compaction test",
      withColumn("moisture at making (%)", "2.0"),
      "blocks-made-outside-window",
      "1 block was rammed outside the moisture range of the compaction test, 6.9 % to 11.5 %",
    ],
    [
      "a block called soaked that was dry",
      withColumn("moisture at test (%)", "1.0"),
      "blocks-too-dry-for-soaked",
      "1 block called soaked held less than 4.6 % of water",
    ],
    [
      "a mix set beside the optimum",
      [["study.yaml", /$/, "mix: { moisture: 8.5 % }\n"]],
      "mix-moisture-not-tested",
      "Not as tested: the mix is set to 8.5 % moisture, the optimum is 9.2 %",
    ],
    [
      "lifts of half a metre",
      [["study.yaml", /compacted-lift: \d+ mm/, "compacted-lift: 500 mm"]],
      "lift-too-deep",
      "has lifts of 500 mm rammed",
    ],
    [
      "a soil with 2 % sulphates",
      [
        [
          "study.yaml",
          "    particle-density: 2680 kg/m3\n",
          "    particle-density: 2680 kg/m3\n    chemistry: { sulphates: 2 % }\n",
        ],
      ],
      "sulphates-to-ask",
      "holds 2 % sulphates",
    ],
    [
      "cubes that are called prisms",
      [["study.yaml", "shape: cube", "shape: prism"]],
      "blocks-of-another-shape",
      "The study speaks of prisms, and the blocks of sheets/blocks.csv are cubes.",
    ],
    [
      "a tall block among those that are called cubes",
      [[BLOCKS, /^L01.*$/m, "L01,A1,4,7,99.9,99.8,112.0,10.66,1964,,"]],
      "blocks-of-another-shape",
      "The study speaks of cubes, and 1 block of sheets/blocks.csv has sides of different length.",
    ],
    [
      "a block of half the side",
      [[BLOCKS, /^L01.*$/m, "L01,A1,4,7,99.9,99.8,50.0,10.66,1964,,"]],
      "blocks-of-another-size",
      "1 block of sheets/blocks.csv has a side of another length than the others: block L01 50 mm, the others about 100 mm.",
    ],
    [
      "a block no wider than two stones",
      [[BLOCKS, /^L01.*$/m, "L01,A1,4,7,40.0,40.0,40.0,1.70,1964,,"]],
      "blocks-smaller-than-stones",
      "1 block of sheets/blocks.csv has a side of less than 3 times the largest grain of the blend: block L01 40 mm, the grain 14 mm.",
    ],
    [
      "kgf/cm² that were typed under MPa",
      [[BLOCKS, /[\s\S]*/, TEN_TIMES]],
      "blocks-very-strong",
      "Even the weakest block of sheets/blocks.csv has 14.8 MPa",
    ],
    [
      "a sample weighed in pounds before washing and in grams after it",
      [["sheets/gravel-sieve.csv", "dry mass (g),3105.0", "dry mass (lb),6.8454"]],
      "mixed-units",
      "sheets/gravel-sieve.csv has “dry mass after washing (g)” beside “dry mass (lb)”: units of two systems.",
    ],
    [
      "half the soil in the cylinder of the hydrometer",
      [["sheets/site-soil-hydrometer.csv", "dry mass (g),50.0", "dry mass (g),100.0"]],
      "grading-step",
      "The sieve gives 43.3 % passing at 0.063 mm and the sedimentation 20.2 % at 0.0451 mm",
    ],
  ])("%s", async (_, edits, code, words) => {
    const { result, findings } = await readingRoom(...edits);
    const told = findings.filter((one) => one.code === code);
    expect(told.map(({ severity }) => severity)).toEqual(["warning"]);
    expect(render(told[0].message)).toContain(words);
    const marked = render(told[0].expected).includes("common practice, no source");
    expect(marked).toBe(OF_COMMON_PRACTICE.has(code));
    const doubts = result!.mix!.record.doubts.map((text) => render(text)).join("\n");
    // Whoever builds reads it beside the mix.
    expect(doubts).toContain(words);
  });

  it.each([
    ["optimum water content (%),11.9", "9.2 %"],
    ["optimum water content (%),7.1", "9.2 %"],
    ["maximum dry density (kg/m3),2090", "2011 kg/m³"],
    ["maximum dry density (kg/m3),1940", "2011 kg/m³"],
  ])("refuses a reported top that the points cannot have given: %s", async (line, points) => {
    const { result, findings } = await readingRoom([
      "sheets/compaction.csv",
      "mould",
      `${line}\nmould`,
    ]);
    expect(result).toBeUndefined();
    const errors = findings.filter(({ severity }) => severity === "error");
    expect(errors.map(({ code }) => code)).toEqual(["reported-against-points"]);
    expect(render(errors[0].message)).toContain(`its points give ${points}`);
  });

  it("is no doubt about a mix that does not follow the sheet", async () => {
    const doubts = async (sheet: string) => {
      const copy = copyStudy("two-blends");
      const file = `sheets/${sheet}.csv`;
      copy.edit(file, /^mould mass \(g\),4310$/m, "mould mass (lb),9.502");
      const { study, findings } = await readStudy(copy.folder);
      const { result, findings: told } = computeStudy(study!, findings);
      expect(told.filter(({ code }) => code === "mixed-units")).toMatchObject([{ file }]);
      return result!.mix!.record.doubts.map((text) => render(text)).join(" ");
    };
    // The mix of the example follows its second trial.
    expect(await doubts("compaction")).toBe("");
    expect(await doubts("more-sand-compaction")).toContain(
      "sheets/more-sand-compaction.csv has “mould + moist soil (g)” beside “mould mass (lb)”: units of two systems.",
    );
  });

  it("asks for no blocks where no cement content in reach will do", async () => {
    const { findings } = await readingRoom(["study.yaml", "strength: 1.5 MPa", "strength: 15 MPa"]);
    const [above] = findings.filter(({ code }) => code === "least-cement-above-range");
    expect(render(above.message)).toContain("no cement content in reach will do");
    expect(render(above.remedy)).toBe(
      "Improve the grading, the compaction or the evenness of the mix, and test that blend.",
    );
  });

  it("tells the area of openings with its unit", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", /count: \d+/, "count: 20");
    const { study, findings } = await readStudy(copy.folder);
    const all = study ? computeStudy(study, findings).findings : findings;
    const [told] = all.filter(({ code }) => code === "element-geometry");
    expect(render(told.value ?? "")).toMatch(/^\d+\.?\d{0,2} m²$/);
  });

  it("takes a reported top as two people read it off the same points", async () => {
    const lines = "optimum water content (%),10.9\nmaximum dry density (kg/m3),1960\nmould";
    const { result } = await readingRoom(["sheets/compaction.csv", "mould", lines]);
    expect(result!.mix!.record.doubts).toEqual([]);
  });

  it("takes a moisture at which the blocks were made as tested, and another as not", async () => {
    const moisture = async (pct: string) => {
      const [columns, row] = withColumn("moisture at making (%)", "8.4");
      const set: Edit = ["study.yaml", /$/, `mix: { moisture: ${pct} }\n`];
      const { result } = await readingRoom(columns, row, set);
      return result!.mix!.record.doubts.map((text) => render(text));
    };
    expect(await moisture("8.4 %")).toEqual([]);
    expect(await moisture("9.1 %")).toEqual([
      "Do not build from this mix until the responsible person has settled in writing what follows.",
      "Not as tested: the mix is set to 9.1 % moisture, its blocks were made at 8.4 %. The strength and density given are those of the blocks; at this moisture neither was measured.",
    ]);
  });

  it("is told where the nearest blend is far from its target", async () => {
    const { result, findings } = await readingRoom([
      "study.yaml",
      /exponent: [\d.]+/,
      "exponent: 0.9",
    ]);
    const far = findings.filter(({ code }) => code === "blend-far-from-target");
    expect(far).toHaveLength(1);
    expect(render(far[0].expected)).toContain("common practice, no source");
    expect(result!.blend!.rmsDifferencePct).toBeGreaterThan(10);
  });

  it("is nothing in the example as it stands", async () => {
    const { findings } = await readingRoom();
    const codes = findings.map(({ code }) => code);
    expect(
      codes.filter((code) =>
        /^(blocks-|mixed-units|grading-|mix-moisture|sulphates-|optimum-above|lift-|blend-far)/.test(
          code,
        ),
      ),
    ).toEqual([]);
  });
});
