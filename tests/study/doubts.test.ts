import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { whatNext } from "../../src/cli/checkCommand.js";
import { summariseResult } from "../../src/cli/computeCommand.js";
import { answerParts } from "../../src/report/appendix/answer.js";
import { computeMix } from "../../src/study/mix.js";
import { mixTesting } from "../../src/study/trials.js";
import { siteOrderList } from "../../src/tables/quantities.js";
import { siteSheets } from "../../src/tables/site/crewCards.js";
import { mixCard } from "../../src/tables/site/mixCard.js";
import { render } from "../../src/words/render.js";
import { allTextOf } from "../support/blockText.js";
import type { FullResult } from "../support/exampleResult.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy } from "../support/studyCopy.js";

type Edit = readonly [from: string | RegExp, to: string];

const BLOCKS = "sheets/blocks.csv";

const FIRST =
  "Do not build from this mix until the responsible person has settled in writing what follows.";

/** A sheet of 28-day blocks, each content with its strengths. */
const blocksOf = (byContent: Readonly<Record<number, readonly number[]>>) =>
  [
    "block,batch,cement (%),age (d),strength (MPa)",
    ...Object.entries(byContent).flatMap(([content, strengths]) =>
      strengths.map(
        (mpa, index) => `B${content}-${index},M${content}-${index},${content},28,${mpa}`,
      ),
    ),
    "",
  ].join("\n");

async function computed(edits: readonly Edit[], sheets: Readonly<Record<string, string>> = {}) {
  const copy = copyStudy("reading-room");
  for (const [from, to] of edits) copy.edit("study.yaml", from, to);
  for (const [file, content] of Object.entries(sheets)) copy.write(file, content);
  const { study, findings: reading } = await readStudy(copy.folder);
  const { result, findings } = study
    ? computeStudy(study, reading)
    : { result: undefined, findings: reading };
  return { result: result as FullResult, findings, codes: findings.map(({ code }) => code) };
}

/** Every page that a crew or an official reads, as text. */
const pages = (result: FullResult) =>
  [...siteSheets(result), mixCard(result), siteOrderList(result)].map(
    ({ name, blocks }) => [name, allTextOf(blocks)] as const,
  );

const DRY: Edit = ["  crushed: soaked\n  curing", "  crushed: dry\n  curing"];

/** A second test of the blend of the study, crushed as told. */
const again = (crushed: string): Edit => [
  "\nbatch:\n",
  `
trials:
  - id: again
    shares: { site-soil: 54.9 %, river-sand: 13.2 %, gravel: 31.9 % }
    compaction: sheets/compaction.csv
    blocks: sheets/again.csv
    crushed: ${crushed}
    curing: as the first
    shape: cube

batch:
`,
];
const STRONG = blocksOf({
  2: [2, 2.1, 2.2],
  4: [3, 3.1, 2.9],
  6: [4, 4.1, 3.95],
  8: [5, 5.2, 4.9],
});

describe("what speaks against a mix", () => {
  it("is nothing for the example as it is", async () => {
    const { result } = await computed([]);
    expect(result.mix!.record.doubts).toEqual([]);
    expect(allTextOf(answerParts(result, []))).not.toContain("Doubts about the mix");
  });

  it("stands on every sheet and on page 1 where blocks were crushed in another state", async () => {
    const { result } = await computed([DRY]);
    expect(result.mix!.record.doubts.map((doubt) => render(doubt))).toEqual([
      FIRST,
      "The blocks of Trial blend of the reading room were crushed dry; the requirement speaks of blocks crushed soaked. The cement content does not show that the requirement is met.",
    ]);
    for (const [name, text] of pages(result)) {
      expect(text, name).toContain("were crushed dry");
      expect(text.split(FIRST), name).toHaveLength(2);
      if (name === "block-labels") expect(text.split("mix in doubt")).toHaveLength(9);
      // Both pages of the log.
      if (name === "making-and-curing-log") expect(text).toContain("This mix is in doubt: read");
    }
    const first = allTextOf(answerParts(result, []));
    expect(first).toContain(FIRST);
    expect(summariseResult(result)).toContain(`Caution: ${FIRST}`);
    expect(whatNext(result, "here")).toContain(FIRST);
    expect(first).toContain("not shown: The blocks of");
    expect(first).not.toContain("requirement met");
  });

  it("tells that the state of the blocks was not told", async () => {
    const { result } = await computed([["  crushed: soaked\n  curing", "  curing"]]);
    for (const [name, text] of pages(result)) expect(text, name).toContain("does not tell how");
  });

  it.each<[string, readonly Edit[], Record<string, string>, string]>([
    [
      "a salt content beyond the recommendation",
      [
        [
          "    particle-density: 2680 kg/m3\n",
          "    particle-density: 2680 kg/m3\n    chemistry: { organic-matter: 0.8 %, sulphates: 0.05 %, soluble-salts: 2.4 % }\n",
        ],
      ],
      {},
      "2.4 %",
    ],
    [
      "blocks that the compaction test does not reach",
      [],
      {
        "sheets/compaction.csv":
          "optimum water content (%),7.5\nmaximum dry density (kg/m3),2185\n",
      },
      "they are not of the same earth",
    ],
  ])("is %s, on every sheet", async (_, edits, sheets, words) => {
    const { result } = await computed(edits, sheets);
    expect(result.mix!.record.doubts.map((doubt) => render(doubt)).join(" ")).toContain(words);
    for (const [name, text] of pages(result)) {
      expect(text, name).toContain(FIRST);
      expect(text, name).toContain(words);
    }
  });

  it("is too few contents and too few blocks", async () => {
    const { result, codes } = await computed([], {
      [BLOCKS]: blocksOf({ 2: [0.6, 0.63, 0.66], 12: [3, 3.05, 2.96] }),
    });
    expect(codes).toEqual(expect.arrayContaining(["few-contents", "few-degrees-of-freedom"]));
    expect(codes).not.toContain("residuals-not-normal");
    for (const [name, text] of pages(result)) {
      expect(text, name).toContain("2 cement contents only (2 %, 12 %)");
      expect(text, name).toContain("degrees of freedom: 4");
    }
  });

  it("is a curve that the nearest blocks do not bear out, at the content of the mix", async () => {
    // Straight but for the blocks at 6 %, which fail what the line gives there.
    const bent = blocksOf({
      4: [0.95, 1, 1.05, 1],
      6: [1.35, 1.4, 1.45, 1.4],
      8: [2.95, 3, 3.05, 3],
      10: [3.95, 4, 4.05, 4],
    });
    const mean: Edit[] = [
      ["    strength: 1.5 MPa", "    strength: 1.6 MPa"],
      ["statistic: tolerance", "statistic: mean"],
    ];
    const { result, codes } = await computed(mean, { [BLOCKS]: bent });
    expect(codes).toEqual(expect.arrayContaining(["lack-of-fit", "nearest-blocks-against"]));
    const { cementPct } = result.mix!.record;
    for (const [name, text] of pages(result)) {
      expect(text, name).toContain("The content found rests on the curve, not on the blocks.");
      expect(text, name).toContain(`give at ${cementPct} % cement`);
    }
    const set = await computed([...mean, ["\nbatch:\n", "\nmix: { cement: 10 % }\n\nbatch:\n"]], {
      [BLOCKS]: bent,
    });
    expect(set.codes).toContain("nearest-blocks-against");
    expect(set.result.mix!.record.cementPct).toBe(10);
    for (const [name, text] of pages(set.result)) {
      expect(text, name).not.toContain("rests on the curve");
    }
  });

  it("is a sheet that was copied and never filled in for another blend", async () => {
    const more = again("soaked")[1]
      .replace("54.9 %, river-sand: 13.2 %", "64.9 %, river-sand: 3.2 %")
      .replace("sheets/compaction.csv", "sheets/again-compaction.csv")
      .replace("\nbatch:\n", "\nmix-from: again\n\nbatch:\n");
    const copy = copyStudy("reading-room");
    const sheet = (name: string) => readFileSync(join(copy.folder, name), "utf8");
    const { result, findings } = await computed([["\nbatch:\n", more]], {
      "sheets/again.csv": sheet(BLOCKS).replace(/^L/gm, "M"),
      "sheets/again-compaction.csv": sheet("sheets/compaction.csv"),
    });
    const copied = findings.filter(({ code }) => code === "same-test-readings");
    // Of each pair once.
    expect(copied.map(({ column }) => column)).toEqual(["compaction", "strength.sheet"]);
    for (const [name, text] of pages(result)) {
      expect(text, name).toContain("sheets/blocks.csv and sheets/again.csv have the same readings");
    }
  });

  it("takes the test crushed as the requirement asks, and says that another disagrees", async () => {
    const { result, codes } = await computed([again("dry")], { "sheets/again.csv": STRONG });
    expect(result.testing.trial).toBe("tested");
    expect(result.mix!.record.cementPct).toBe(6);
    expect(codes).toContain("trials-disagree");
    for (const [name, text] of pages(result)) {
      expect(text, name).toContain("Trial blend of the reading room 6 %; again 2 %");
    }
  });

  it("takes the higher content of two tests in one state", async () => {
    const { result } = await computed([again("soaked")], { "sheets/again.csv": STRONG });
    expect([result.testing.trial, result.mix!.record.cementPct]).toEqual(["tested", 6]);
  });
});

describe("what gives no mix", () => {
  it("is an optimum that cannot be, beyond what an uncertain particle density explains", async () => {
    // Without any air 2670 kg/m³ grains leave 2670 / (1 + 0.10 × 2.67) = 2107 kg/m³ at 10 %.
    const of = async (topKgM3: number) => {
      const rows = [8, 9, 10, 11, 12].map((w) => `${w},${topKgM3 - 8 * (w - 10) ** 2}`);
      const sheet = ["water content (%),dry density (kg/m3)", ...rows, ""].join("\n");
      return computed([], { "sheets/compaction.csv": sheet });
    };
    const above = await of(2160);
    expect(above.result.mix).toBeUndefined();
    const [none] = above.findings.filter(({ code }) => code === "no-mix");
    expect(render(none.message)).toMatch(
      /2160 kg\/m³ at 10\.0 %, is impossible\. .* 2109 kg\/m³\.$/,
    );
    const nearly = await of(2140);
    expect(nearly.result.mix).toBeDefined();
    for (const [name, text] of pages(nearly.result)) {
      expect(text, name).toContain("lies above the line of zero air voids");
    }
  });

  it("is strength that falls with cement", async () => {
    const { result, codes } = await computed([], {
      [BLOCKS]: blocksOf({ 4: [3, 3.1, 3.05], 6: [2.5, 2.55, 2.52], 8: [2, 2.02, 2.04] }),
    });
    expect(codes).toContain("least-cement-falls");
    expect(result.strength.leastCement).toMatchObject({ status: "falls", cementPct: null });
    expect(result.mix).toBeUndefined();
  });

  it("is a least content of no cement at all", async () => {
    const { result, codes } = await computed([], {
      [BLOCKS]: blocksOf({ 0: [2, 2.02, 2.04], 4: [3, 3.1, 3.05], 8: [4, 4.1, 4.05] }),
    });
    expect(codes).toContain("no-cement");
    expect(result.mix).toBeUndefined();
  });
});

describe("tests of another mix", () => {
  it("are an error where two blends name one sheet", async () => {
    const [from, to] = again("soaked");
    const { findings } = await computed(
      [[from, to.replace("54.9 %, river-sand: 13.2 %", "64.9 %, river-sand: 3.2 %")]],
      { "sheets/again.csv": STRONG },
    );
    expect(findings.filter(({ code }) => code === "sheet-of-two-trials")).toMatchObject([
      { severity: "error", column: "trials.0.compaction", value: "sheets/compaction.csv" },
    ]);
  });

  it("judge no lot of another cement content, and none of a blend that was not tested", async () => {
    const mean = await computed([["statistic: tolerance", "statistic: mean"]]);
    expect(mean.result.mix!.record.cementPct).toBe(4.5);
    // One finding for all blocks of one content.
    const others = mean.findings.filter(({ code }) => code === "site-block-other-cement");
    expect(others.map(({ message }) => render(message))).toEqual([
      "25 blocks with 6.0 % cement are not judged: the specified mix has 4.5 %.",
    ]);
    expect(mean.result.quality!.site!.lots).toEqual([]);
    const other = await computed([["  exponent: 0.25", "  exponent: 0.4"]]);
    expect(other.codes).toContain("site-blocks-without-mix");
    expect(other.result.quality?.site).toBeUndefined();
  });

  it("leave compaction and blocks of this blend open", async () => {
    const { result } = await computed([["  exponent: 0.25", "  exponent: 0.4"]]);
    const open = result.stages.filter(({ known }) => !known).map(({ stage }) => stage);
    expect(open).toEqual(["compaction", "blocks", "cement", "quantities"]);
  });

  it("name the sheet of the trial that the mix follows where no mix can be stated", async () => {
    const { config, blend, strength } = (await computed([])).result;
    const asked = (trialKey: string) =>
      computeMix(config as never, blend, strength, undefined, { trialKey }).findings;
    expect(asked("trials.1")).toMatchObject([{ code: "no-mix", column: "trials.1.compaction" }]);
    expect(asked("tested")).toMatchObject([{ code: "no-mix", column: "compaction" }]);
  });

  it("says which test a named trial lacks", () => {
    const trial = { id: "b", key: "trials.0", name: "B", strength: {}, sharesPct: [100] };
    const testing = mixTesting({ mixFrom: "b", strength: {} } as never, [trial] as never);
    expect(render(testing.message)).toBe(
      "Proposed: blocks of this blend were crushed, but no compaction test tells its water and density.",
    );
  });
});
