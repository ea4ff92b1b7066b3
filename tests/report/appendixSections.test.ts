import { describe, expect, it } from "vitest";
import { blockText } from "../../src/blocks/partText.js";
import { ANNEX_KEYS, annexKeys } from "../../src/entries/report.js";
import { figurePng } from "../../src/figures/svg/figurePng.js";
import type { Finding } from "../../src/findings/finding.js";
import { findingsOfMix } from "../../src/report/appendix/answer.js";
import type { AppendixPart } from "../../src/report/appendix/parts.js";
import {
  type AppendixSectionKey,
  permitAppendix,
} from "../../src/report/appendix/permitAppendix.js";
import { openStudy } from "../../src/study/openStudy.js";
import { openPhotographs } from "../../src/study/photographs.js";
import { APPENDIX_SECTIONS } from "../../src/study/review.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { type Locale, render } from "../../src/words/render.js";
import { openExample } from "../support/exampleResult.js";
import { copyStudy } from "../support/studyCopy.js";

const SECTION_KEYS = APPENDIX_SECTIONS.map(({ key }) => key).filter(
  (key) => !(ANNEX_KEYS as readonly string[]).includes(key),
) as AppendixSectionKey[];

const bodyOf = (result: StudyResult) =>
  SECTION_KEYS.flatMap((key) => permitAppendix(result).section(key));

const textOf = (parts: readonly AppendixPart[], locale: Locale = "en") =>
  parts
    .map((part) => (part.kind === "figure" ? render(part.title, locale) : blockText(part, locale)))
    .join("\n\n");

describe("the sections of the body", () => {
  it("speak of a window and an envelope only where there is one", async () => {
    const copy = copyStudy("reading-room");
    copy.write(
      "sheets/compaction.csv",
      "optimum water content (%),9.2\nmaximum dry density (kg/m3),2010\n",
    );
    const whole = permitAppendix(await openExample("reading-room"));
    const reported = permitAppendix(await openStudy(copy.folder));
    expect(textOf(whole.section("compaction"))).toContain("and the range that keeps most of it.");
    expect(textOf(reported.section("compaction"))).toContain(
      "The compaction sheet reports 9.2 % water for the highest dry density, 2010 kg/m³. Without the test points the range of water that keeps most of it is not known.",
    );
    const drawn = "The blend against its target and the recommended envelope";
    expect(textOf(whole.section("blend"))).toContain(drawn);
    copy.edit("study.yaml", /^guidance: .*\n/m, "");
    const bare = textOf(permitAppendix(await openStudy(copy.folder)).section("blend"));
    expect(bare).toContain("The blend against its target");
    expect(bare).not.toContain("recommended envelope");
  }, 60_000);

  it("show strength against age where age stands in the regression", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "  model: linear", "  model: linear\n  covariates: { age: true }");
    const parts = permitAppendix(await openStudy(copy.folder)).section("strength");
    const keys = parts.flatMap((part) => ("key" in part ? (part.key ?? []) : []));
    expect(keys.slice(-2)).toEqual(["strength-by-age", "strength-by-age-chart"]);
    const plain = textOf(permitAppendix(await openExample("reading-room")).section("strength"));
    expect(plain).not.toContain("Strength by age");
  }, 60_000);
});

describe("the annex of the trial blocks", () => {
  it("shows what was seen, with who noted it, and when; nothing where nobody looked", async () => {
    const result = await openExample("two-blends");
    const text = textOf(permitAppendix(result, "trials").annexes());
    expect(text).toContain("nothing of it is judged here");
    expect(text).toMatch(/more-sand .*open, sandy +sharp +none/);
    expect(text).toContain("the class, 2026-06-12");
    expect(text).toContain("seen at a glance");
    expect(text).not.toContain("Photographs");
    expect(textOf(permitAppendix(result).section("mix"))).not.toContain("judged");
    const none = permitAppendix(await openExample("bus-shelter"), "trials").annexes();
    expect(none).toEqual([]);
  }, 60_000);

  it("shows the photographs that the sheet of looks names", async () => {
    const { folder, edit, write } = copyStudy("two-blends");
    const block = `<svg xmlns="http://www.w3.org/2000/svg" width="600" height="400"><rect width="600" height="400" fill="#a07850"/></svg>`;
    write("block.png", figurePng(block, 1));
    edit("sheets/more-sand-looks.csv", "date,remark", "date,remark,photograph");
    edit("sheets/more-sand-looks.csv", "2026-06-12,\n", "2026-06-12,,block.png\n");
    const result = await openStudy(folder);
    const parts = permitAppendix(result, "", await openPhotographs(folder, result)).annexes();
    const figure = parts.find((part) => part.kind === "figure" && part.key === "trial-photographs");
    expect(figure && "altText" in figure && render(figure.altText)).toBe(
      "Photographs of the trial blocks. Blend with more sand, first, noted by the class, 2026-06-12.",
    );
    const cites = parts.flatMap((part) => (part.kind === "paragraph" ? (part.cites ?? []) : []));
    expect(cites).toContain("trial-photographs");
  }, 60_000);
});

describe("the first page", () => {
  it("states the mix, the bound in words, a verdict a line and what is open", async () => {
    const text = textOf(permitAppendix(await openExample("reading-room")).section("answer"));
    for (const words of [
      "East wall of the reading room: 6.40 m long",
      "Tested: compaction and blocks were made of Trial blend of the reading room",
      "Site soil, two pits mixed 54.9 %, River sand 0/4 13.2 %, Rounded gravel 4/16 31.9 %",
      "Portland cement, invented brand: 6.0 %",
      "9.2 %, allowed 7.7 to 10.7 %",
      "1.50 MPa at 28 days; blocks crushed soaked; basis as entered: “Value entered for",
      "1.53 MPa at 6.0 % cement: with 95 % confidence, at least 95 of 100 such blocks are stronger",
      "requirement met by the curve at 6.0 % cement (1.53 MPa; required 1.50 MPa), but the bounds",
      "not inside Walker 2005 (from memory; not read): clay 4.9 % (recommended 5 to 20 %), outside",
      "2 other limits are kept; at most 2.7 points off the target of the study (at 16 mm)",
      "linear shrinkage 5.8 % (recommended up to 5 %), outside by 0.8 points",
      "5 of 5 lots crushed so far meet the rule",
      "organic matter",
      "responsible licensed person",
      "Block L25 lies far from the others",
    ]) {
      expect(text).toContain(words);
    }
  });

  it("leaves out the findings on the tests of another blend, by their sheet and by their entry", () => {
    const found = (file: string, column?: string): Finding => ({
      file,
      column,
      severity: "warning",
      code: "x",
      message: "m",
      expected: "e",
      remedy: "r",
    });
    const kept = [
      found("sand.csv"),
      found("study.yaml"),
      found("study.yaml", "cement.strength"),
      found("study.yaml", "strengthening"),
      found("sand.csv", "crushed"),
    ];
    const ofTests = [
      found("blocks.csv"),
      found("proctor.csv"),
      found("study.yaml", "strength"),
      found("study.yaml", "strength.requirement.age"),
      found("study.yaml", "tested.crushed"),
      found("study.yaml", "trials.0.crushed"),
    ];
    const result = {
      config: { strength: { sheet: "blocks.csv" }, compaction: "proctor.csv" },
      trials: [{ id: "a", difference: { close: false } }],
      testing: { state: "proposed", trial: "a" },
      findings: [...ofTests, ...kept],
    } as unknown as StudyResult;
    expect(findingsOfMix(result)).toEqual(kept);
    const tested = { ...result, trials: [{ id: "a", difference: { close: true } }] };
    expect(findingsOfMix(tested as unknown as StudyResult)).toHaveLength(11);
  });

  it("says of a blend that was not tested what is not known, and nothing of another blend", async () => {
    const result = await openExample("untested-blend");
    const page = textOf(permitAppendix(result).section("answer"));
    expect(page).toContain("Proposed: nothing was compacted and crushed with this blend.");
    expect(page).toMatch(/Strength shown +not known yet/);
    expect(page).not.toMatch(/at 5\.5 % cement|requirement (not )?met|were crushed/);
    expect(page).not.toContain("The residuals of the curve");
    // what the tests of the other blend leave open is untested of this one
    expect(page).toMatch(/Not tested .*sulphates.*compaction, strength, erosion/);
    const notes = result.findings.filter(({ severity }) => severity === "note").length;
    const counted = Number(/ and (\d+) notes? besides\./.exec(page)?.[1]);
    expect(counted).toBeGreaterThan(0);
    expect(counted).toBeLessThanOrEqual(notes);
    const body = textOf(bodyOf(result));
    // neither the other blend's curve and bounds nor its optimum, nor how they were computed
    expect(body).not.toMatch(
      /Regression of|least squares of block|Fitted strength|The least cement of/,
    );
    expect(body).not.toMatch(/linear model|Optimum \d|reaches the requirement/);
    expect(body).toContain("nothing of that holds for this blend");
    const annexes = textOf(permitAppendix(result, "all").annexes());
    expect(annexes).not.toMatch(/Blocks as crushed|Checks of the regression/);
    // nor a finding on its blocks and its curve, whose strengths would be read as this mix's
    expect(annexes).not.toMatch(/Without the curve|residuals of the curve|lack of fit/);
    expect(annexes).toMatch(/\d findings on the tests of another blend/);
    expect(result.findings.map(({ message }) => render(message)).join()).toMatch(
      /Without the curve|residuals of the curve/,
    );
  });

  it("says with the verdict that the bounds of the curve are in doubt", async () => {
    const doubted = textOf(permitAppendix(await openExample("bus-shelter")).section("answer"));
    expect(doubted).toMatch(/requirement met by the curve at .* bounds of the curve are in doubt/);
    const sound = textOf(
      permitAppendix(await openExample("garden-wall/5-tested")).section("answer"),
    );
    expect(sound).toMatch(/requirement met at [\d.]+ % cement/);
    expect(sound).not.toContain("in doubt");
  });

  it("leads from each value to its table, on paper too", async () => {
    const [, mix] = permitAppendix(await openExample("reading-room")).section("answer");
    if (mix.kind !== "table") throw new Error("the mix is a table");
    expect(mix.columns.map(({ header }) => render(header))).toEqual([
      "Subject",
      "Value",
      "Shown in",
    ]);
    expect(mix.links?.map(({ row, column }) => [row, column])).toEqual(
      mix.rows.map((_, row) => [row, 2]),
    );
  });

  it("says how the soil was compacted, as the sheet does", async () => {
    const text = textOf(permitAppendix(await openExample("reading-room")).section("compaction"));
    expect(text).toMatch(/How it was compacted, as the sheet says: .*without cement\./);
  });
});

describe("an appendix at an early stage", () => {
  it("has no empty section, and tells in words what is needed and what was not tested", async () => {
    const result = await openExample("garden-wall/1-jar");
    for (const key of SECTION_KEYS) {
      expect(permitAppendix(result).section(key).length, key).toBeGreaterThan(0);
    }
    const body = textOf(bodyOf(result));
    expect(body).not.toMatch(/materials\.\d|stabilised with cement/);
    expect(body).toContain("the compaction of the blend");
    expect(body).toContain("the strength of its blocks");
    expect(textOf(permitAppendix(result).section("answer"))).toContain(
      "organic matter, soluble salts, sulphates, sieve analysis, consistency limits, sedimentation, compaction, strength, erosion",
    );
  });

  it("gives on page 1 the optimum of the blend compacted, which is no mix yet", async () => {
    const page = async (name: string) =>
      permitAppendix(await openExample(`garden-wall/${name}`)).section("answer");
    const compacted = await page("4-compaction");
    expect(textOf(compacted)).toMatch(
      /Water and dry density +optimum of the blend compacted: 9\.7 % water, 1964 kg\/m³ dry; no mix yet/,
    );
    const [, mix] = compacted;
    if (mix.kind !== "table") throw new Error("the mix is a table");
    expect(mix.links?.map(({ to }) => to)).toContain("compaction-table");
    expect(textOf(await page("3-soil-and-sand"))).toMatch(/Water and dry density +not known yet/);
  });

  const study = (lines: readonly string[]) => {
    const copy = copyStudy("reading-room");
    copy.write(
      "study.yaml",
      `${["format: loambook-study/1", "invented: true", ...lines].join("\n")}\n`,
    );
    return openStudy(copy.folder);
  };
  const soil = [
    "materials:",
    "  - id: site-soil",
    "    name: Site soil",
    "    role: soil",
    "    sieve: sheets/site-soil-sieve.csv",
  ];

  it("prints the soil that is known and lists what is not", async () => {
    const body = textOf(bodyOf(await study(soil)));
    expect(body).toContain("Characteristic sizes and fractions");
    expect(body).toMatch(/What is not known yet[\s\S]*compaction/i);
    expect(body).not.toMatch(/undefined|NaN|\[object/);
  });

  it("keeps what follows from compaction, without blocks", async () => {
    const result = await study([
      ...soil,
      "compaction: sheets/compaction.csv",
      "target: { exponent: 0.25, top-size: 20 mm }",
    ]);
    const body = textOf([...bodyOf(result), ...permitAppendix(result, "all").annexes()]);
    // one material alone is the blend, so that its compaction is the blend's own
    expect(body).toContain("Optimum 9.2 % water");
    expect(textOf(permitAppendix(result).section("strength"))).toMatch(/not known yet/i);
    expect(body).not.toMatch(/undefined|NaN|\[object/);
  });
});

describe("the annexes", () => {
  it("are those that were asked for, else the study's, else the usual ones", () => {
    expect(annexKeys({ report: { annexes: ["cost"] } })).toEqual(["cost"]);
    expect(annexKeys({ report: { annexes: ["cost"] } }, "code, readings")).toEqual([
      "readings",
      "code",
    ]);
    expect(annexKeys(undefined, "none")).toEqual([]);
    expect(annexKeys(undefined)).not.toContain("cost");
    expect(() => annexKeys(undefined, "readings, prices")).toThrow("prices");
  });

  it("hold money and carbon only where cost is asked for", async () => {
    const result = await openExample("reading-room");
    const money = /\bEUR\b|\bper t\b|CO₂e|carbon/i;
    const usual = [...bodyOf(result), ...permitAppendix(result).annexes()];
    // a sheet or an entry may speak of it in the user's own words
    expect(textOf(usual.filter(({ kind }) => kind !== "findings"))).not.toMatch(money);
    expect(textOf(permitAppendix(result, "cost").annexes())).toMatch(money);
  });

  it("start with a lettered heading each, and none that has nothing to say", async () => {
    const result = await openExample("untested-blend");
    const headings = permitAppendix(result, "all")
      .annexes()
      .flatMap((part) => (part.kind === "section" ? [part.key] : []));
    expect(headings).toContain("readings");
    expect(headings).not.toContain("regression");
    expect(headings).not.toContain("cost");
  });
});

describe.each(["reading-room", "bus-shelter"])("the parts of %s", (name) => {
  it("have a key of their own each, and no table without rows", async () => {
    const result = await openExample(name);
    const parts = [...bodyOf(result), ...permitAppendix(result, "all").annexes()];
    const keys = parts.flatMap((part) => ("key" in part && part.key ? [part.key] : []));
    expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
    const sections: readonly string[] = SECTION_KEYS;
    expect(keys.filter((key) => sections.includes(key))).toEqual([]);
    for (const part of parts) {
      if (part.kind === "table") expect(part.rows.length, part.key).toBeGreaterThan(0);
    }
  });
});
