import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { TableBlock } from "../../src/blocks/block.js";
import { firstWords } from "../../src/cli/appendixCommand.js";
import { summariseResult } from "../../src/cli/computeCommand.js";
import { blendInParts, blendInputOf } from "../../src/study/blend.js";
import { permitGaps } from "../../src/study/review.js";
import { sha256 } from "../../src/study/sha256.js";
import { sheetsAsStudy } from "../../src/study/sheetsAsStudy.js";
import { notKnownYet } from "../../src/study/stages.js";
import { studyFromFiles } from "../../src/study/studyFromFiles.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { blendSharesTable } from "../../src/tables/blend.js";
import { firstMixTable } from "../../src/tables/firstMix.js";
import { blockMeansTable, leastCementTable } from "../../src/tables/strength.js";
import { render, renderAll } from "../../src/words/render.js";
import { runCli, temporaryFolder } from "../support/runCli.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { EXAMPLES } from "../support/studyCopy.js";

const STAGES = join(EXAMPLES, "garden-wall");
const bytes = (text: string) => new TextEncoder().encode(text);
const SIEVE = "dry mass (g),1000\nsieve (mm),retained (g)\n8,0\n2,300\n0.063,400\npan,300\n";

/** A stage of the garden wall, computed once for all that look at it. */
const stages = new Map<string, ReturnType<typeof computeStage>>();
function computed(name: string) {
  const known = stages.get(name) ?? computeStage(name);
  stages.set(name, known);
  return known;
}

async function computeStage(name: string) {
  const { study, findings } = await readStudy(join(STAGES, name));
  if (!study) throw new Error(JSON.stringify(findings));
  const computation = computeStudy(study, findings);
  if (!computation.result) throw new Error(JSON.stringify(computation.findings));
  return { ...computation, result: computation.result };
}

/** The files of a folder by their paths in it. */
function filesOf(folder: string): Map<string, Uint8Array> {
  const names = [
    "study.yaml",
    ...readdirSync(join(folder, "sheets")).map((one) => `sheets/${one}`),
  ];
  return new Map(names.map((name) => [name, new Uint8Array(readFileSync(join(folder, name)))]));
}

describe("a study at five stages of its life", () => {
  it.each([
    ["1-jar", []],
    ["2-sieve", ["soil"]],
    ["3-soil-and-sand", ["soil", "target", "blend"]],
    ["4-compaction", ["soil", "target", "blend", "compaction"]],
    [
      "5-tested",
      ["soil", "target", "blend", "compaction", "blocks", "cement", "element", "quantities"],
    ],
  ])("%s knows %j and says of the rest what would tell it", async (name, known) => {
    const { result, findings } = await computed(name);
    expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(result.stages.filter((stage) => stage.known).map(({ stage }) => stage)).toEqual(known);
    expect(result.stages).toHaveLength(8);
    for (const { known: isKnown, needs } of result.stages) {
      expect(needs === undefined).toBe(isKnown);
      if (needs !== undefined) expect(render(needs)).toMatch(/\S/);
    }
    const run = await runCli(["check", join(STAGES, name)]);
    expect(run.code).toBe(0);
    expect(run.stdout.includes("What comes next")).toBe(known.length < 8);
    expect(run.stdout).toMatch(/do not replace a licensed engineer.*\n$/);
    const summary = await runCli(["compute", join(STAGES, name)]);
    expect(summary.stdout.includes("Compaction: 1964 kg/m³ dry at 9.7 % water")).toBe(
      known.includes("compaction"),
    );
    // 13.30, 12.14, 13.09, 14.26 and 13.66 kN on faces of about 0.01 m².
    expect(
      summary.stdout.includes("Blocks with 4 % cement at 28 days: mean 1.33 MPa (5 crushed)"),
    ).toBe(known.includes("blocks"));
    // A jar is a first guide until a laboratory has settled the soil.
    expect(run.stdout.includes("The test is a first guide only")).toBe(!known.includes("blend"));
    expect([summary.code, summary.stdout.includes("After that:")]).toEqual([0, known.length < 7]);
  });

  it("a jar gives fractions with their range, and the sand for a share of fines", async () => {
    const { result } = await computed("1-jar");
    expect(result.materials).toEqual([]);
    expect(result.blend).toBeUndefined();
    const [soil] = result.ungraded!;
    const [sand] = soil.jar!.shares;
    const mix = result.firstMix!;
    expect(mix.soilFinesPct).toEqual({ low: 100 - sand.highPct, high: 100 - sand.lowPct });
    // By hand: (F − 28) / (28 − 2) at both ends.
    expect(mix.byMass!.low).toBeCloseTo((mix.soilFinesPct.low - 28) / 26, 9);
    expect(mix.byMass!.high).toBeCloseTo((mix.soilFinesPct.high - 28) / 26, 9);
    // General densities, from memory: 1200 (1000 to 1450) for soil, 1400 (1200 to 1600) for sand.
    expect(mix.byVolume!.middle).toBeCloseTo((mix.byMass!.middle * 1200) / 1400, 9);
    expect(mix.byVolume!.low).toBeCloseTo((mix.byMass!.low * 1000) / 1600, 9);
    expect(mix.byVolume!.high).toBeCloseTo((mix.byMass!.high * 1450) / 1200, 9);
    const { soilKg, sandKg, dryMassKg } = mix.batch!;
    expect(soilKg + sandKg).toBeCloseTo(dryMassKg, 9);
    expect(sandKg / soilKg).toBeCloseTo(mix.byMass!.middle, 9);
    expect(render(mix.basis)).toContain("first guide");
    const table = renderAll(firstMixTable(result)) as TableBlock;
    expect(table.rows[0].slice(1)).toEqual(
      [mix.byMass!.middle, mix.byMass!.low, mix.byMass!.high].map((one) => one.toPrecision(2)),
    );
    expect(table.rows).toHaveLength(7);
    expect((await runCli(["check", join(STAGES, "1-jar")])).stdout).toContain("first guide");
  });

  it("a sieve narrows what the jar left open", async () => {
    const [jar, sieve] = [await computed("1-jar"), await computed("2-sieve")];
    const width = ({ low, high }: { readonly low: number; readonly high: number }) => high - low;
    const [wide, narrow] = [jar, sieve].map(({ result }) => width(result.firstMix!.byMass!));
    expect(narrow).toBeLessThan(wide / 20);
    expect(sieve.result.soilGuidance?.[0].comparison.checks.length).toBeGreaterThan(5);
    const open = leastCementTable(sieve.result as never);
    expect(open).toEqual(notKnownYet(sieve.result, "cement"));
    expect(render((open as { text: string }).text)).toContain("“strength.requirement”");
  });

  it("compaction without blocks says so, and gives the batches for blocks", async () => {
    const { result } = await computed("4-compaction");
    expect(render(result.testing.message)).toContain("no blocks of it were crushed yet");
    expect(result.proposal?.batches.map(({ cementPct }) => cementPct)).toEqual([4, 6, 8, 10]);
    expect(result.strength).toBeUndefined();
  });

  it("two elements have one total and one order", async () => {
    const { result } = await computed("5-tested");
    const { record, quantities } = result.mix!;
    expect(record.elements.map(({ name }) => name)).toEqual(["Garden wall", "Bench"]);
    // By hand: 5.2 × 1.8 × 0.35 less a gate of 0.9 × 1.8 × 0.35; 1.6 × 0.45 × 0.45.
    const [wall, bench] = [(5.2 - 0.9) * 1.8 * 0.35, 1.6 * 0.45 * 0.45];
    expect(quantities.netVolumeM3).toBeCloseTo(wall + bench, 9);
    expect(quantities.madeVolumeM3).toBeCloseTo(1.06 * wall + 1.08 * bench, 9);
    expect(record.order!.at(-1)!.bags).toBe(Math.ceil(quantities.mix.cement.dryMassKg / 25 - 1e-9));
    // The gate stands on the foot and reaches the top: its two sides alone are formed.
    const forms = 2 * (5.2 + 0.35) * 1.8 - 2 * 0.9 * 1.8 + 2 * 1.8 * 0.35;
    expect(record.elements[0].amounts.formAreaM2).toBeCloseTo(forms, 9);
    const gaps = permitGaps(result).map((gap) => render(gap));
    expect(gaps.join("\n")).toMatch(
      /“sampling”[\s\S]*“tolerances”[\s\S]*“quality”[\s\S]*“checklist”/,
    );
    expect(gaps.join("\n")).not.toContain("“methods”");
  });
});

describe("a study from files by name", () => {
  it("is the study that its folder holds", async () => {
    const folder = join(STAGES, "5-tested");
    const here = await studyFromFiles(filesOf(folder));
    const there = await readStudy(folder);
    expect(here.study).toEqual(there.study);
  });

  it("says what is missing, and which file may be meant", async () => {
    const files = filesOf(join(STAGES, "2-sieve"));
    files.set("sheets/hill-soil-sieves.csv", files.get("sheets/hill-soil-sieve.csv")!);
    files.delete("sheets/hill-soil-sieve.csv");
    const { study, findings } = await studyFromFiles(files);
    expect(study).toBeUndefined();
    expect(findings).toMatchObject([{ code: "missing-sheet", column: "materials.0.sieve" }]);
    expect(render(findings[0].remedy)).toContain("sheets/hill-soil-sieves.csv");
  });
});

describe("sheets alone", () => {
  it("one sieve sheet gives curve, fractions and guidance", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "sieve.csv"), SIEVE);
    for (const place of [join(folder, "sieve.csv"), folder]) {
      const run = await runCli(["compute", place, "--json"]);
      expect(run.code, run.stderr).toBe(0);
      const result = JSON.parse(run.stdout);
      expect(result.materials).toHaveLength(1);
      expect(result.materials[0]).toMatchObject({ id: "soil", name: "Soil", role: "soil" });
      expect(result.materials[0].fractions).toMatchObject({ finesPct: 30, gravelPct: 30 });
      expect(result.inputs.map(({ file }: { file: string }) => file)).toEqual(["sieve.csv"]);
      expect(result.config).not.toHaveProperty("target");
      expect(result.config).not.toHaveProperty("guidance");
    }
    const check = await runCli(["check", join(folder, "sieve.csv")]);
    expect(check.stdout).toContain("Taken as: sieve analysis of Soil.");
    expect(check.stdout).toContain("loambook new <folder> --sheets");
  });

  it.each([
    ["the file's name", "hill-loam-sieve.csv", SIEVE, "hill-loam", "soil"],
    ["a line of the sheet", "a.csv", `material,Pit gravel\n${SIEVE}`, "pit-gravel", "gravel"],
    ["a sand by its name", "river-sand.csv", SIEVE, "river-sand", "sand"],
    ["a soil though it names a stone", "limestone-soil.csv", SIEVE, "limestone-soil", "soil"],
  ])("the material is known by %s", async (_, file, sheet, id, role) => {
    const { materials } = await sheetsAsStudy(new Map([[file, bytes(sheet)]]));
    expect(materials).toMatchObject([{ id, role, sheets: { sieve: file } }]);
  });

  it("sorts several, and leaves out what stands twice", async () => {
    const jar = readFileSync(join(STAGES, "1-jar/sheets/hill-soil-jar.csv"));
    const files = new Map<string, Uint8Array>([
      ["hill-soil-sieve.csv", bytes(SIEVE)],
      ["river-sand-sieve.csv", bytes(SIEVE.replace("400\npan,300", "690\npan,10"))],
      ["jar.csv", new Uint8Array(jar)],
      ["hill-soil-sieve-2.csv", bytes(SIEVE)],
      ["prices.csv", bytes("name,price\nsand,3\n")],
    ]);
    const { materials, findings, text } = await sheetsAsStudy(files);
    expect(materials.map(({ id, sheets }) => [id, Object.keys(sheets)])).toEqual([
      ["hill-soil", ["sieve", "jar"]],
      ["river-sand", ["sieve"]],
    ]);
    expect(text).toContain("invented: true");
    const told = findings.filter(({ severity }) => severity === "warning");
    expect(told.map(({ code, file }) => [code, file])).toEqual([
      ["unknown-sheet", "prices.csv"],
      ["sheet-left-out", "hill-soil-sieve-2.csv"],
    ]);
  });

  it("keeps two materials of one name in letters apart, and opens nothing that is no sheet", async () => {
    const files = new Map<string, Uint8Array>([
      ["Loam (east)-sieve.csv", bytes(`sample,Loam 1\n${SIEVE}`)],
      ["b.csv", bytes(`sample,1 loam\n${SIEVE}`)],
      ["c.csv", bytes(`sample,2 loam\n${SIEVE}`)],
      ["readme.txt", bytes("not read")],
      ["broken.xlsx", bytes("no workbook")],
    ]);
    const { materials, findings } = await sheetsAsStudy(files);
    expect(materials.map(({ id, name }) => [id, name])).toEqual([
      ["loam-1", "Loam 1"],
      ["loam", "1 loam"],
      ["loam-2", "2 loam"],
    ]);
    const errors = findings.filter(({ severity }) => severity === "error");
    expect(errors.map(({ file }) => file)).toEqual(["broken.xlsx"]);
    const alone = await sheetsAsStudy(new Map([["prices.csv", bytes("name,price\nsand,3\n")]]));
    expect(alone).toMatchObject({ materials: [], findings: [{ severity: "error" }] });
  });

  it("names each sheet of the whole study under its own key", async () => {
    const read = (path: string) => new Uint8Array(readFileSync(join(EXAMPLES, path)));
    const { text } = await sheetsAsStudy(
      new Map([
        ["sieve.csv", bytes(SIEVE)],
        ["looks.csv", read("two-blends/sheets/more-sand-looks.csv")],
        ["blocks.csv", read("garden-wall/5-tested/sheets/blocks.csv")],
        ["compaction.csv", read("garden-wall/5-tested/sheets/compaction.csv")],
      ]),
    );
    expect(text?.slice(text.indexOf("compaction:"))).toBe(
      "compaction: compaction.csv\nstrength:\n  sheet: blocks.csv\ntested:\n  looks: looks.csv\n",
    );
  });

  it("what is no study and no sheet is told for what it is", async () => {
    const folder = temporaryFolder();
    const told = async (...path: string[]) => {
      const { stdout, stderr, code } = await runCli(["compute", join(folder, ...path)]);
      expect(code).toBe(3);
      expect(stdout + stderr).not.toMatch(/ENO/);
      return stdout + stderr;
    };
    expect(await told()).toContain("This folder is empty.");
    expect(await told("nowhere")).toContain("There is nothing of this name.");
    writeFileSync(join(folder, "report.pdf"), "%PDF-1.4\n");
    expect(await told()).toContain("holds no study.yaml and no sheet, but: report.pdf.");
    expect(await told("report.pdf")).toMatch(
      /This kind of file is not read\.[\s\S]*PDF[\s\S]*typed in/,
    );
  });

  it("several sieve sheets show every material, and how to go on", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "loam-sieve.csv"), SIEVE);
    writeFileSync(join(folder, "river-sand.csv"), SIEVE.replace("400\npan,300", "690\npan,10"));
    const { stdout } = await runCli(["compute", folder]);
    expect(stdout).toContain("Loam: fines 30.0 %");
    expect(stdout).toContain("River sand: fines 1.0 %");
    expect(stdout).toContain("“loambook new <folder> --sheets …”");
    expect(stdout).not.toContain("\n\n\n");
    // The same folder starts a study.
    const begun = join(temporaryFolder(), "begun");
    const made = await runCli(["new", begun, "--sheets", folder]);
    expect([made.code, made.stderr]).toEqual([0, ""]);
    const { study } = await readStudy(begun);
    expect(study?.materials.map(({ config }) => config.id)).toEqual(["loam", "river-sand"]);
  });

  it("an unknown sheet alone is an error that says what was looked for", async () => {
    const { study, findings } = await studyFromFiles(
      new Map([["list.csv", bytes("name,price\nsand,3\n")]]),
    );
    expect(study).toBeUndefined();
    expect(findings).toMatchObject([{ severity: "error", code: "unknown-sheet" }]);
    expect(render(findings[0].expected)).toContain("sieve sheet");
  });

  it("a compaction sheet, blocks or both tell what they tell of a soil that is not known yet", async () => {
    const sheets = join(STAGES, "5-tested/sheets");
    const compute = async (...names: string[]) => {
      const run = await runCli(["compute", ...names.map((name) => join(sheets, name))]);
      expect(run.code, run.stderr).toBe(0);
      return run.stdout;
    };
    const optimum =
      "Compaction: 1964 kg/m³ dry at 9.7 % water\n  between 7.4 and 12.1 % water it keeps 98 % of that density\n";
    const means = "Blocks with 4 % cement at 28 days: mean 1.33 MPa (5 crushed)\n";
    const next = "Next: the soil. A sieve analysis of Soil";
    const [alone, blocks, both] = [
      await compute("compaction.csv"),
      await compute("blocks.csv"),
      await compute("blocks.csv", "compaction.csv"),
    ];
    for (const told of [alone, blocks, both]) expect(told).toContain(next);
    expect(alone).toContain(optimum);
    expect(alone).not.toContain("Blocks with");
    expect(blocks).toContain(means);
    expect(blocks).not.toContain("Compaction:");
    expect(both).toContain(optimum + means);
    const check = await runCli(["check", join(sheets, "compaction.csv")]);
    expect(check.stdout).toContain("Add the sieve analysis of the soil that was compacted");
    expect(check.stdout).toContain(next);
  });

  it("what was seen on blocks, or an envelope, is no study yet", async () => {
    const looks = readFileSync(join(EXAMPLES, "two-blends/sheets/more-sand-looks.csv"));
    const { study, findings } = await studyFromFiles(new Map([["looks.csv", looks]]));
    expect(study).toBeUndefined();
    expect(findings[0]).toMatchObject({ severity: "error", code: "no-material" });
  });
});

describe("what a growing study leaves open", () => {
  const compute = async (yaml: string, sheets: Record<string, string> = { "s.csv": SIEVE }) => {
    const files = new Map(
      Object.entries({ "study.yaml": yaml, ...sheets }).map(([name, text]) => [name, bytes(text)]),
    );
    const { study, findings } = await studyFromFiles(files);
    return study ? computeStudy(study, findings) : { result: undefined, findings };
  };
  const SOIL =
    "format: loambook-study/1\nmaterials:\n  - { id: soil, name: Soil, role: soil, sieve: s.csv";

  it("needs format and one material, and nothing more", async () => {
    const { result, findings } = await compute(`${SOIL} }\n`);
    expect(findings).toEqual([]);
    expect(result?.stages[0]).toEqual({ stage: "soil", known: true });
    const none = await compute("format: loambook-study/1\n");
    expect(none.findings).toMatchObject([{ code: "missing-key", column: "materials" }]);
  });

  it("a hydrometer waits for the density of the grains", async () => {
    const sheet = readFileSync(join(STAGES, "5-tested/sheets/hill-soil-hydrometer.csv"), "utf8");
    const sheets = { "s.csv": SIEVE, "h.csv": sheet };
    const open = await compute(`${SOIL}, hydrometer: h.csv }\ninvented: true\n`, sheets);
    expect(open.findings).toMatchObject([
      { severity: "warning", code: "particle-density-not-told" },
    ]);
    expect(open.result?.materials[0].fractions.clayPct).toBeUndefined();
    const told = `${SOIL}, hydrometer: h.csv, particle-density: 2680 kg/m3 }\ninvented: true\n`;
    const { result } = await compute(told, sheets);
    expect(result?.materials[0].fractions.clayPct).toBeGreaterThan(5);
  });

  it("blocks of one age give a curve without a requirement; of several they wait", async () => {
    const rows = (ages: readonly number[]) =>
      [4, 6, 8, 10].flatMap((cement) =>
        ages.map(
          (age, index) => `B${cement}${index},${cement},${age},${0.3 * cement + 0.1 * index}`,
        ),
      );
    const sheet = (ages: readonly number[]) =>
      ["block,cement (%),age (d),strength (MPa)", ...rows(ages), ""].join("\n");
    const yaml = `${SOIL} }\nstrength: { sheet: b.csv }\n`;
    const one = await compute(yaml, { "s.csv": SIEVE, "b.csv": sheet([28, 28]) });
    expect(one.result?.strength.fit.ageDays).toBe(28);
    expect(one.result?.strength.leastCement).toBeUndefined();
    const two = await compute(yaml, { "s.csv": SIEVE, "b.csv": sheet([7, 28]) });
    expect(two.result?.strength).toBeUndefined();
    expect(two.findings.map(({ code }) => code)).toEqual(["age-not-told"]);
  });

  it("blocks of one content give their mean, and the stage says which blocks come next", async () => {
    const sheet =
      "block,cement (%),age (d),strength (MPa)\nA,6,28,2.1\nB,6,28,2.7\nC,6,28,2.4\nD,6,7,1.5\n";
    const requirement =
      "requirement: { strength: 2 MPa, age: 28 d, statistic: prediction, confidence: 95 %, basis: the engineer's brief }";
    const yaml = `${SOIL} }\nstrength: { sheet: b.csv, ${requirement} }\n`;
    const { result, findings } = await compute(yaml, { "s.csv": SIEVE, "b.csv": sheet });
    expect(findings).toContainEqual(
      expect.objectContaining({ severity: "warning", code: "one-cement-content", file: "b.csv" }),
    );
    expect(result?.strength).toBeUndefined();
    const [early, late] = result?.blocks?.means ?? [];
    expect(early).toMatchObject({ cementPct: 6, ageDays: 7, blocks: 1, meanMpa: 1.5 });
    expect(late).toMatchObject({ cementPct: 6, ageDays: 28, blocks: 3, lowestMpa: 2.1 });
    expect([late.meanMpa, late.highestMpa].map((one) => one.toFixed(9))).toEqual([
      "2.400000000",
      "2.700000000",
    ]);
    const { known, needs } = result!.stages.find(({ stage }) => stage === "blocks")!;
    expect(known).toBe(false);
    expect(render(needs!)).toMatch(/three contents or more.*Crushed so far: 6 %\./);
    const table = renderAll(blockMeansTable(result!.blocks!, "SI"));
    expect(table.rows).toEqual([
      ["6", "7", "1", "1.50", "1.50", "1.50"],
      ["6", "28", "3", "2.40", "2.10", "2.70"],
    ]);
    expect(summariseResult(result!)).toContain(
      "Blocks with 6 % cement at 28 days: mean 2.40 MPa (3 crushed)",
    );
  });

  const SANDY = { "s.csv": SIEVE, "s2.csv": SIEVE.replace("400\npan,300", "690\npan,10") };
  const SAND = "  - { id: sand, name: Sand, role: sand, sieve: s2.csv }\n";
  const openStages = (result: StudyResult | undefined) =>
    result?.stages.filter(({ known }) => !known).map(({ stage }) => stage);

  it("a single material is the whole blend, without a target", async () => {
    const { result, findings } = await compute(`${SOIL} }\n`);
    expect(findings).toEqual([]);
    expect(result?.blend?.shares).toMatchObject([{ id: "soil", sharePct: 100 }]);
    expect(result?.blend?.fractions).toMatchObject({ finesPct: 30, gravelPct: 30 });
    expect(result?.blend).not.toHaveProperty("target");
    expect(result?.blend).not.toHaveProperty("rmsDifferencePct");
    expect(result?.soilGuidance?.map(({ id }) => id)).toEqual(["soil"]);
    expect(openStages(result)).toEqual(["compaction", "blocks", "cement", "element", "quantities"]);
    const page = summariseResult(result!);
    expect(page).toContain("100.0 %  Soil");
    expect(page).toContain("sand or gravel that is available nearby");
    expect(page).not.toContain("differs from the target");
    expect(firstWords(result!)).toMatch(/^Soil\nProposed: /);
    // What was compacted of it was this blend.
    const compaction = readFileSync(join(STAGES, "5-tested/sheets/compaction.csv"), "utf8");
    const tested = await compute(`${SOIL} }\ncompaction: c.csv\ninvented: true\n`, {
      "s.csv": SIEVE,
      "c.csv": compaction,
    });
    expect(tested.result?.trials).toMatchObject([
      { sharesPct: [100], difference: { close: true } },
    ]);
    expect(tested.findings.map(({ code }) => code)).not.toContain("blend-not-tested");
  });

  it("the shares of a tested blend are the mix, without a target", async () => {
    const tested = "tested: { shares: { soil: 60 %, sand: 40 % } }\nmix-from: tested\n";
    const compaction = readFileSync(join(STAGES, "5-tested/sheets/compaction.csv"), "utf8");
    const yaml = `${SOIL} }\n${SAND}compaction: c.csv\ninvented: true\n${tested}`;
    const { result } = await compute(yaml, { ...SANDY, "c.csv": compaction });
    expect(result?.blend?.shares.map(({ sharePct }) => sharePct)).toEqual([60, 40]);
    // By hand: 0.6 × 30 + 0.4 × 1.
    expect(result?.blend?.fractions.finesPct).toBeCloseTo(18.4, 9);
    expect(openStages(result)).toEqual(["blocks", "cement", "element", "quantities"]);
    expect(summariseResult(result!)).not.toContain("Soil: fines");
    const by = await compute(
      `${SOIL} }\n${SAND}mix: { shares: { soil: 25 %, sand: 75 % } }\n`,
      SANDY,
    );
    expect(by.result?.blend?.shares.map(({ sharePct }) => sharePct)).toEqual([25, 75]);
    const table = renderAll(blendSharesTable(by.result!.blend!, by.result!.config.materials));
    expect(table.caption).toBe("Shares of the blend, as the study gives them");
    expect(table.rows.map((row) => [row[1], row[3]])).toEqual([
      ["25.0", "given"],
      ["75.0", "given"],
    ]);
    expect(table.notes).toHaveLength(1);
    expect(() => blendInputOf(by.result!)).toThrow("expected a target");
  });

  it("a blend has whole parts, by bucket where every loose density is known, else by mass", async () => {
    const { result } = await computed("3-soil-and-sand");
    const buckets = blendInParts(result)!;
    expect(buckets.parts).toMatchObject({ status: "ok", by: "volume" });
    const [soil, sand] = buckets.parts.materials.map(({ parts }) => parts);
    // By hand: 1180 and 1430 kg/m³, without bulking.
    const soilPct = (100 * soil * 1180) / (soil * 1180 + sand * 1430);
    expect(buckets.parts.materials[0].sharePct).toBeCloseTo(soilPct, 9);
    const one = buckets.miscounted.find(({ id, change }) => id === "hill-soil" && change === 1);
    const more = (100 * (soil + 1) * 1180) / ((soil + 1) * 1180 + sand * 1430);
    expect(one?.sharesPct[0]).toBeCloseTo(more, 9);

    const materials = result.config.materials.map((material) => ({
      ...material,
      looseBulkDensityKgM3: material.role === "soil" ? 1180 : undefined,
    }));
    const masses = blendInParts({ ...result, config: { ...result.config, materials } })!;
    expect(masses.parts.by).toBe("mass");
    expect(masses.parts.materials.map(({ parts }) => parts)).toEqual([5, 6]);
    expect(masses.miscounted.map(({ id, sharesPct }) => [id, sharesPct[0].toFixed(6)])).toEqual([
      ["hill-soil", "40.000000"],
      ["hill-soil", "50.000000"],
      ["river-sand", "50.000000"],
      ["river-sand", "41.666667"],
    ]);
    expect(
      blendInParts({ ...result, blend: { ...result.blend!, target: undefined } }),
    ).toBeUndefined();
  });

  it("materials without shares or a target have no blend, and the stage says what is needed", async () => {
    const { result, findings } = await compute(`${SOIL} }\n${SAND}`, SANDY);
    expect(findings).toEqual([]);
    expect(result?.blend).toBeUndefined();
    expect(openStages(result)?.slice(0, 2)).toEqual(["target", "blend"]);
    expect(render(result!.stages[1].needs!)).toMatch(/“target”.*“mix.shares”.*“mix-from”/);
    expect(render(result!.stages[2].needs!)).toContain("its shares");
  });

  it("max-materials below those with a smallest share is a finding", async () => {
    const second = `  - { id: sand, name: Sand, role: sand, sieve: s2.csv, share: { min: 10 % } }\n`;
    const yaml = `${SOIL}, share: { min: 20 % } }\n${second}target: { exponent: 0.3, top-size: 8 mm }\nmax-materials: 1\n`;
    const { result, findings } = await compute(yaml, {
      "s.csv": SIEVE,
      "s2.csv": SIEVE.replace("400\npan,300", "690\npan,10"),
    });
    expect(result).toBeUndefined();
    expect(findings.map(({ code, column }) => [code, column])).toContainEqual([
      "too-many-forced-materials",
      "max-materials",
    ]);
  });

  it.each([
    ["an id that is none", "{ sand: beach, fines: 20 % }", "unknown-material"],
    ["fines that nobody knows", "{ sand: sand, fines: 20 % }", "fines-not-known"],
  ])("add-sand with %s is told", async (_, entry, code) => {
    const yaml = `${SOIL} }\n  - { id: sand, name: Sand, role: sand }\nadd-sand: ${entry}\n`;
    const { findings } = await compute(yaml);
    expect(findings.map((one) => one.code)).toEqual([code]);
  });
});

it("SHA-256 is Node's own, for every length about a block", () => {
  for (const length of [0, 1, 55, 56, 63, 64, 65, 119, 120, 1000, 70_000]) {
    const data = Uint8Array.from({ length }, (_, i) => (i * 37 + length) % 256);
    expect(sha256(data)).toBe(createHash("sha256").update(data).digest("hex"));
  }
});
