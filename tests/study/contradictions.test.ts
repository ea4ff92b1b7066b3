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

/** Findings whose limit is nobody's but ours, and says so where a person reads it. */
const OF_COMMON_PRACTICE = new Set([
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

  it("takes a moisture at which the blocks were made as tested, and another as not", async () => {
    const moisture = async (pct: string) => {
      const [columns, row] = withColumn("moisture at making (%)", "8.4");
      const set: Edit = ["study.yaml", /$/, `mix: { moisture: ${pct} }\n`];
      const { result } = await readingRoom(columns, row, set);
      return result!.mix!.record.doubts.map((text) => render(text));
    };
    expect(await moisture("8.4 %")).toEqual([]);
    expect(await moisture("9.1 %")).toEqual([
      "Not as tested: the mix is set to 9.1 % moisture, its blocks were made at 8.4 %. Density and strength at this moisture are not known.",
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
        /^(blocks-|mix-moisture|sulphates-|optimum-above|lift-|blend-far)/.test(code),
      ),
    ).toEqual([]);
  });
});
