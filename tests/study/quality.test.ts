import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/findings/finding.js";
import { acceptanceRisks, designAcceptance } from "../../src/strength/control/acceptance.js";
import { exampleResult } from "../support/exampleResult.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy, type StudyCopy } from "../support/studyCopy.js";

const SITE = "sheets/site-blocks.csv";
const ACCEPTANCE = "acceptance: { rule: mean-less-ks, blocks: 5, factor: 1.3 }";

async function compute({ folder }: StudyCopy) {
  const { study, findings } = await readStudy(folder);
  return study ? computeStudy(study, findings) : { findings, result: undefined };
}

function only(findings: readonly Finding[], code: string): Finding {
  const found = findings.filter((finding) => finding.code === code);
  expect(found).toHaveLength(1);
  return found[0];
}

it("reads site blocks of a layout of one's own as the plain sheet", async () => {
  const copy = copyStudy("reading-room");
  copy.edit(
    SITE,
    "block,batch,cement (%),age (d),strength (MPa)",
    "Prufling,Los,Zement,Alter,Druck",
  );
  copy.edit(
    "study.yaml",
    `site-blocks: ${SITE}`,
    `site-blocks:
    sheet: ${SITE}
    columns: { Prufling: block, Los: batch, Zement: "cement (%)", Alter: "age (d)", Druck: "strength (MPa)" }`,
  );
  const { result, findings } = await compute(copy);
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(result?.quality).toEqual((await exampleResult("reading-room")).quality);
});

describe("the quality-control plan", () => {
  it("counts lots and blocks from the rammed volume to make", async () => {
    const { quality, mix } = await exampleResult("reading-room");
    // 5.95 m³ to make in lots of 1 m³, five blocks and a spare one of each.
    expect(mix?.quantities.madeVolumeM3).toBeCloseTo(5.9472, 6);
    expect(quality).toMatchObject({ lots: 6, blocksALot: 6, blocks: 36, densityChecks: 12 });
    expect(quality?.scatterBasis).toBe("regression");
    const risks = acceptanceRisks(quality!.rule!, { sdMpa: quality!.scatterMpa });
    expect(quality?.risks).toEqual(risks);
  });

  it("is absent where the study does not ask for it", async () => {
    const result = await exampleResult("bus-shelter");
    expect(result.quality).toBeUndefined();
    expect(result.findings.filter(({ code }) => code.startsWith("tolerance"))).toEqual([]);
  });

  it("judges the site blocks of the age of the requirement, lot by lot", async () => {
    const { quality } = await exampleResult("reading-room");
    const site = quality?.site;
    expect(site?.lots.map(({ label }) => label)).toEqual(
      [1, 2, 3, 4, 5].map((lot) => `Lot ${lot}`),
    );
    expect(site?.lots.every(({ strengthsMpa }) => strengthsMpa.length === 5)).toBe(true);
    expect(site?.lots.every(({ judgement }) => judgement.status === "accepted")).toBe(true);
    expect(site?.otherAges).toBe(5);
    expect(site?.chart.status).toBe("ok");
  });

  it("tells a lot that fails the rule, and who decides", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SITE, "S15,Lot 3,6,28,2.47", "S15,Lot 3,6,28,0.90");
    const { result, findings } = await compute(copy);
    const found = only(findings, "lot-rejected");
    expect(found).toMatchObject({ severity: "warning", file: SITE });
    expect(found.message).toMatch(/^Lot 3: /);
    expect(found.remedy).toContain("responsible person");
    const lot = result?.quality?.site?.lots[2];
    expect(lot?.judgement.steps).toHaveLength(6);
  });

  it("tells a lot with a block too few, an excluded block being one", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(SITE, "dry density (kg/m3),remark", "dry density (kg/m3),excluded");
    copy.edit(SITE, "S15,Lot 3,6,28,2.47,1945,", "S15,Lot 3,6,28,2.47,1945,dropped");
    const { result, findings } = await compute(copy);
    expect(only(findings, "lot-wrong-number").message).toContain("Lot 3");
    expect(result?.quality?.site?.excluded).toEqual([{ id: "S15", reason: "dropped" }]);
  });

  it("tells blocks without a lot, of another cement, and a sheet without any lot", async () => {
    const loose = copyStudy("reading-room");
    loose.edit(SITE, "S15,Lot 3,6,28", "S15,,6,28");
    const { findings } = await compute(loose);
    expect(only(findings, "site-block-without-lot").row).toBe(loose.rowOf(SITE, "S15"));

    const other = copyStudy("reading-room");
    other.edit(SITE, "S15,Lot 3,6,28", "S15,Lot 3,4,28");
    expect(only((await compute(other)).findings, "site-block-other-cement").message).toContain(
      "4.0 %",
    );

    // 6 % is specified: what a sheet rounds is no other mix.
    for (const [content, told] of [
      ["6.04", false],
      ["5.96", false],
      ["6.06", true],
      ["5.94", true],
    ] as const) {
      const near = copyStudy("reading-room");
      near.edit(SITE, "S15,Lot 3,6,28", `S15,Lot 3,${content},28`);
      const codes = (await compute(near)).findings.map(({ code }) => code);
      expect(codes.includes("site-block-other-cement"), content).toBe(told);
    }

    const young = copyStudy("reading-room");
    young.edit(SITE, /,28,/g, ",14,");
    expect(only((await compute(young)).findings, "no-site-lots").message).toContain("28 days");
  });

  it("counts lots of days only where the pace is known", async () => {
    const without = copyStudy("reading-room");
    without.edit("study.yaml", "lot: { volume: 1 m3 }", "lot: { days: 2 }");
    const open = (await compute(without)).result;
    expect(open?.quality?.lots).toBeUndefined();
    expect(open?.quality?.blocks).toBeUndefined();
    const paced = copyStudy("reading-room");
    paced.edit("study.yaml", "lot: { volume: 1 m3 }", "lot: { days: 2, batches-a-day: 15 }");
    const result = (await compute(paced)).result;
    const batches = Math.ceil(result!.mix!.quantities.batches);
    expect(result?.quality?.lots).toBe(Math.ceil(batches / 30));
  });

  it.each(["volume: 6 m3", "days: 90, batches-a-day: 15"])(
    "a wall smaller than a lot of { %s } is one lot",
    async (lot) => {
      const copy = copyStudy("reading-room");
      copy.edit("study.yaml", "lot: { volume: 1 m3 }", `lot: { ${lot} }`);
      const { result } = await compute(copy);
      expect(result?.quality).toMatchObject({ lots: 1, blocks: 6, densityChecks: 2 });
    },
  );

  it("designs the rule from both sides' risks", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(
      "study.yaml",
      ACCEPTANCE,
      "acceptance: { rule: designed, acceptable-quality: 1 %, rejectable-quality: 25 %, producer-risk: 5 %, consumer-risk: 10 % }",
    );
    const { result } = await compute(copy);
    const design = designAcceptance({
      requiredMpa: 1.5,
      acceptableQuality: 0.01,
      rejectableQuality: 0.25,
      builderRisk: 0.05,
      ownerRisk: 0.1,
    });
    expect(result?.quality?.rule).toEqual(design.rule);
    expect(result?.quality?.risks?.builderRisk).toBeCloseTo(0.05, 6);
    expect(result?.quality?.risks?.ownerRisk).toBeLessThan(0.1);
  });

  it.each([
    ["factor: 10", "rule-rejects-good-lots", /rejected in \d\d\.\d % of cases/],
    ["factor: 0", "rule-accepts-poor-lots", /accepted in \d\d\.\d % of cases/],
  ])("warns of a rule with %s: %s", async (factor, code, message) => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", ACCEPTANCE, ACCEPTANCE.replace("factor: 1.3", factor));
    const { findings } = await compute(copy);
    const found = only(findings, code);
    expect(found.severity).toBe("warning");
    expect(found.message).toMatch(message);
  });

  it("says where no rule keeps the risks, and goes on", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(
      "study.yaml",
      ACCEPTANCE,
      "acceptance: { rule: designed, acceptable-quality: 10 %, rejectable-quality: 11 %, producer-risk: 1 %, consumer-risk: 1 % }",
    );
    const { result, findings } = await compute(copy);
    expect(only(findings, "no-acceptance-rule").severity).toBe("warning");
    expect(result?.quality?.rule).toBeUndefined();
    expect(result?.quality?.blocks).toBeUndefined();
  });

  it("warns of a rule that asks for less than the requirement", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(
      "study.yaml",
      ACCEPTANCE,
      "acceptance: { rule: mean-and-least, blocks: 5, mean: 1.4 MPa, least: 1.0 MPa }",
    );
    expect(only((await compute(copy)).findings, "weak-acceptance-rule").expected).toContain("1.5");
  });
});

describe("bad entries of quality", () => {
  it.each([
    ["acceptance.rule", "rule: mean-less-ks", "rule: best-guess"],
    ["acceptance.blocks", "blocks: 5,", "blocks: 1,"],
    ["acceptance.factor", "factor: 1.3", "factor: much"],
    ["lot", "lot: { volume: 1 m3 }", "lot: { volume: 1 }"],
    ["lot", "lot: { volume: 1 m3 }", "lot: { days: 0 }"],
    ["ages", "ages: [28 d]", "ages: []"],
    ["spare-blocks", "spare-blocks: 1", "spare-blocks: 1.5"],
    ["basis", "  basis: Invented rule for this demonstration; not taken from any code.\n", ""],
    ["site-blocks", SITE, "sheets/not-there.csv"],
  ])("%s: %s → %s", async (key, from, to) => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", from, to);
    const { result, findings } = await compute(copy);
    expect(result).toBeUndefined();
    const errors = findings.filter(({ severity }) => severity === "error");
    expect(errors.map(({ column }) => column)).toContainEqual(
      expect.stringContaining(`quality.${key}`),
    );
    for (const { expected, remedy } of errors) expect(`${expected}${remedy}`).toMatch(/\S/);
  });

  it("refuses a weakest block above the mean, and a good lot no better than a poor one", async () => {
    const least = copyStudy("reading-room");
    least.edit(
      "study.yaml",
      ACCEPTANCE,
      "acceptance: { rule: mean-and-least, blocks: 3, mean: 1.5 MPa, least: 1.6 MPa }",
    );
    expect((await compute(least)).findings.map(({ expected }) => expected)).toContain(
      "least at most mean",
    );
    const shares = copyStudy("reading-room");
    shares.edit(
      "study.yaml",
      ACCEPTANCE,
      "acceptance: { rule: designed, acceptable-quality: 20 %, rejectable-quality: 20 %, producer-risk: 5 %, consumer-risk: 10 % }",
    );
    expect((await compute(shares)).findings.map(({ expected }) => expected)).toContain(
      "acceptable-quality less than rejectable-quality",
    );
  });

  it("refuses ages without that of the requirement", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "ages: [28 d]", "ages: [7 d]");
    const { result, findings } = await compute(copy);
    expect(result).toBeUndefined();
    expect(only(findings, "age-not-tested")).toMatchObject({
      severity: "error",
      column: "quality.ages",
    });
  });
});
