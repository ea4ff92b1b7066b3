import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Study } from "../../src/study/study.js";
import { render } from "../../src/words/render.js";
import { EXAMPLE_NAMES, exampleResult } from "../support/exampleResult.js";
import { computeStudy, readStudy } from "../support/saidStudy.js";
import { copyStudy, EXAMPLES, type StudyCopy } from "../support/studyCopy.js";

async function compute(folder: string) {
  const { study, findings } = await readStudy(folder);
  if (!study) throw new Error(JSON.stringify(findings));
  return { study, ...computeStudy(study, findings) };
}

async function errorsOf(copy: StudyCopy) {
  const { result, findings } = await compute(copy.folder);
  const errors = findings.filter(({ severity }) => severity === "error");
  expect(result === undefined).toBe(errors.length > 0);
  for (const error of errors) {
    for (const text of [error.message, error.expected, error.remedy]) expect(text).toMatch(/\S/);
  }
  return errors;
}

describe.each(EXAMPLE_NAMES)("the study %s", (name) => {
  it("gives plain data, the same each time, and leaves its input alone", async () => {
    const { study, result } = await compute(join(EXAMPLES, name));
    const before = structuredClone(study);
    const again = computeStudy(study, []).result;
    expect(study).toEqual(before);
    expect(result?.format).toBe("loambook-result/1");
    expect(again?.blend).toEqual(result?.blend);
    expect(again?.strength).toEqual(result?.strength);
    expect(JSON.parse(JSON.stringify(again?.mix))).toEqual(JSON.parse(JSON.stringify(result?.mix)));
  });

  it("blends to shares that no small exchange of two materials improves", async () => {
    const { blend, config, materials } = await exampleResult(name);
    const misfit = (shares: readonly number[]) =>
      blend.points.reduce((sum, { sizeMm, targetPct }) => {
        const passing = materials.reduce((total, { curve }, index) => {
          const above = curve.points.findIndex((point) => point.sizeMm >= sizeMm);
          const high = above < 0 ? curve.points[curve.points.length - 1] : curve.points[above];
          const low = above <= 0 ? high : curve.points[above - 1];
          const way =
            high === low || above < 0
              ? 1
              : Math.log(sizeMm / low.sizeMm) / Math.log(high.sizeMm / low.sizeMm);
          const here = low.passingPct + way * (high.passingPct - low.passingPct);
          return total + (shares[index] / 100) * here;
        }, 0);
        return sum + (passing - targetPct) ** 2;
      }, 0);
    const shares = blend.shares.map(({ sharePct }) => sharePct);
    const best = misfit(shares);
    expect(Math.sqrt(best / blend.points.length)).toBeCloseTo(blend.rmsDifferencePct, 9);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 9);
    let tried = 0;
    for (const [from, giver] of config.materials.entries()) {
      for (const [to, taker] of config.materials.entries()) {
        const other = [...shares];
        other[from] -= 0.5;
        other[to] += 0.5;
        if (from === to || other[from] < giver.minSharePct || other[to] > taker.maxSharePct)
          continue;
        tried += 1;
        expect(misfit(other)).toBeGreaterThan(best);
      }
    }
    expect(tried).toBeGreaterThan(2);
  });

  it("classifies the soil in every resampled curve: an empty sieve stays empty", async () => {
    const { materials } = await exampleResult(name);
    const classes = materials[0].uncertainty?.classes ?? [];
    expect(classes).toHaveLength(5);
    for (const { system, likelihoods } of classes) {
      const labels = likelihoods.map(({ label }) => label);
      expect(labels, system).not.toContain("not classified");
      expect(likelihoods.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    }
  });

  it("keeps the cement of the recipe in the quantities", async () => {
    const { mix, strength } = await exampleResult(name);
    if (!mix) throw new Error("no mix");
    const { quantities, recipe, density } = mix;
    expect(recipe.cementPct).toBe(strength.chosenCementPct);
    expect((100 * recipe.cement.dryMassKg) / recipe.dryMassKg).toBeCloseTo(recipe.cementPct, 9);
    // Dry density counts cement among the solids: cement = density c / (100 + c).
    const { cementPct } = recipe;
    expect(quantities.cementKgM3).toBeCloseTo(
      (density.valueKgM3 * cementPct) / (100 + cementPct),
      6,
    );
  });
});

it("weighs the mix as the blocks of the age that takes part", async () => {
  const copy = copyStudy("reading-room");
  copy.edit("sheets/blocks.csv", "17.97,1961,,", "17.97,1961,burst,");
  const { density } = (await compute(copy.folder)).result!.mix!;
  // Nineteen blocks of 28 days: 9733 + 9790 + 7818 + 9768 kg/m³ in all.
  expect(density.valueKgM3).toBeCloseTo(37109 / 19, 9);
  expect([density.lowKgM3, density.highKgM3]).toEqual([1929, 1978]);
});

describe("bad input that only the analysis sees", () => {
  it("retained mass over the sample mass", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("sheets/river-sand-sieve.csv", "\n1,", "\n1,2");
    const errors = await errorsOf(copy);
    expect(errors.map(({ file }) => file)).toContain("sheets/river-sand-sieve.csv");
    expect(errors.length).toBe(1);
  });

  it("loss beyond the limit", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("sheets/river-sand-sieve.csv", /\n0\.5,[\d.]+/, "\n0.5,230.0");
    expect(await errorsOf(copy)).toMatchObject([
      { code: "sieve-loss", file: "sheets/river-sand-sieve.csv" },
    ]);
  });

  it("shares that cannot sum to 100 %", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "min: 30 %, max: 90 %", "min: 0 %, max: 10 %");
    copy.edit("study.yaml", "share: { max: 60 % }", "share: { max: 20 % }");
    copy.edit("study.yaml", "share: { max: 60 % }", "share: { max: 20 % }");
    const errors = await errorsOf(copy);
    expect(errors).toMatchObject([{ code: "blend-shares-exclude", column: "materials" }]);
    expect(errors[0].remedy).toMatch(/10(\.0)? points/);
  });

  it("a coarsest sieve that holds something back", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("sheets/gravel-sieve.csv", "\n25,0.0\n20,51.4\n16,145.4", "\n16,196.8");
    const { study, findings } = await readStudy(copy.folder);
    const { result, findings: all } = computeStudy(study as Study, findings);
    const told = all.filter(
      ({ severity, code }) => severity === "error" || /top-size|ends-early/.test(code),
    );
    expect(told.map(({ severity, code }) => [severity, code])).toEqual([
      ["warning", "top-size-unknown"],
    ]);
    // The blend is known as far as the gravel is, and its curve ends below 100 %.
    const last = result?.blend.curve.points.at(-1);
    expect(last?.sizeMm).toBe(16);
    expect(last?.passingPct).toBeLessThan(100);
  });

  it("an unknown guidance entry", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "guidance: walker-2005", "guidance: nobody-1900");
    const errors = await errorsOf(copy);
    expect(errors).toMatchObject([{ code: "unknown-guidance", value: "nobody-1900" }]);
    expect(errors[0].expected).toContain("walker-2005");
  });

  it("openings larger than the wall", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "width: 1.2 m, height: 1.3 m", "width: 9 m, height: 1.3 m");
    expect(await errorsOf(copy)).toMatchObject([{ code: "element-geometry", file: "study.yaml" }]);
  });

  it("no block of the required age", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "age: 28 d", "age: 56 d");
    const { result, findings } = await compute(copy.folder);
    const told = findings.filter(({ code }) => code === "too-few-blocks");
    expect(told).toMatchObject([{ severity: "warning", file: "sheets/blocks.csv", value: "0" }]);
    expect(result?.strength).toBeUndefined();
    expect(result?.blend.shares).toHaveLength(4);
  });
});

describe("a requirement outside the tests", () => {
  it("above them: a warning, advice, no mix, nothing extrapolated", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "strength: 1.5 MPa", "strength: 9 MPa");
    const { result, findings } = await compute(copy.folder);
    expect(result?.strength.leastCement).toMatchObject({ status: "above-range", cementPct: null });
    expect(result?.strength.leastCement.nextBlocks).not.toBeNull();
    expect(result?.mix).toBeUndefined();
    expect(findings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["least-cement-above-range", "no-mix"]),
    );
  });

  it("below them: the lowest tested content, with a warning", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "strength: 1.5 MPa", "strength: 0.2 MPa");
    const { result, findings } = await compute(copy.folder);
    expect(result?.strength).toMatchObject({ chosenCementPct: 4 });
    expect(findings.map(({ code }) => code)).toContain("least-cement-below-range");
  });
});

describe("a study with less in it", () => {
  it("computes without hydrometer, limits, prices and currency", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", /\n {4}(hydrometer|jar|limits): .*/g, "");
    copy.edit("study.yaml", /\n {2,4}(price|haul): .*/g, "");
    copy.edit("study.yaml", /\ncurrency: .*/, "");
    const { result } = await compute(copy.folder);
    expect(result?.mix?.cost).toBeUndefined();
    expect(result?.materials[0].fractions.clayPct).toBeUndefined();
  });

  it("states no mix without a compaction test", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", /\ncompaction: .*/, "");
    const { result } = await compute(copy.folder);
    expect(result?.mix).toBeUndefined();
    expect(result?.findings.map(({ code }) => code)).toContain("no-mix");
  });
});

describe("what a study may ask of its blend", () => {
  it("at most so many materials", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "\nguidance:", "\nmax-materials: 2\nguidance:");
    const { result } = await compute(copy.folder);
    expect(result?.blend.shares.filter(({ sharePct }) => sharePct > 1e-9)).toHaveLength(2);
  });

  it("a limit that binds, and what relaxing it would buy", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "fines: { max: 30 % }", "fines: { max: 20 % }");
    const { result } = await compute(copy.folder);
    const limit = result?.blend.limits.find(({ label }) => render(label) === "fines");
    expect(limit).toMatchObject({ active: true, limit: 20 });
    expect(limit?.value).toBeCloseTo(20, 6);
    const gain = result?.blend.relaxed.find(({ label }) => render(label) === "fines")?.gainPct;
    expect(gain).toBeGreaterThan(0);
  });

  it("a limit that these materials cannot keep, told in the user's terms", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "fines: { max: 30 % }", "fines: { min: 60 % }");
    const { result, findings } = await compute(copy.folder);
    const told = findings.filter(({ code }) => code === "no-blend");
    expect(told).toMatchObject([{ severity: "warning", file: "study.yaml", column: "limits" }]);
    expect(told[0].message).toMatch(/fines/);
    // The soil, its compaction and its blocks are what they were.
    expect(result?.blend).toBeUndefined();
    expect(result?.mix).toBeUndefined();
    const full = await exampleResult("reading-room");
    expect(result?.materials).toEqual(full?.materials);
    expect(result?.compaction).toEqual(full?.compaction);
    expect(result?.strength.fit).toEqual(full?.strength.fit);
    const open = result?.stages.filter(({ known }) => !known).map(({ stage }) => stage);
    expect(open).toEqual(["blend", "cement", "quantities"]);
    expect(render(result!.stages.find(({ stage }) => stage === "blend")!.needs!)).toContain(
      "“limits”",
    );
  });

  it("an exponent within a range, and the band of an envelope of its own", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "exponent: 0.25", "exponent: 0.2 to 0.4");
    const ranged = (await compute(copy.folder)).result?.blend;
    const fixed = (await exampleResult("reading-room")).blend;
    expect(ranged?.rmsDifferencePct).toBeLessThan(fixed?.rmsDifferencePct as number);

    copy.write(
      "sheets/envelope.csv",
      "title,Our own\nsource,invented\nsieve (mm),low (%),high (%)\n0.063,15,25\n2,45,60\n16,90,100\n",
    );
    copy.edit(
      "study.yaml",
      /exponent: .*\n {2}top-size: .*/,
      "band: guidance\n  objective: most-site-soil",
    );
    copy.edit("study.yaml", "\nguidance:", "\nenvelope: sheets/envelope.csv\nguidance:");
    const { result } = await compute(copy.folder);
    expect(result?.blend.target.kind).toBe("band");
    expect(result?.blend.rmsDifferencePct).toBeLessThan(1e-6);
    expect(result?.blend.siteSoilPct).toBeGreaterThan(fixed?.siteSoilPct as number);
    expect(result?.guidance[0].check.entry.own).toBe(true);
  });

  it("refuses a target that is neither", async () => {
    const copy = copyStudy("reading-room");
    copy.edit("study.yaml", "exponent: 0.25", "exponent: 0.4 to 0.2");
    const { findings, study } = await readStudy(copy.folder);
    expect(study).toBeUndefined();
    expect(findings.some(({ column }) => column?.startsWith("target"))).toBe(true);
  });
});

describe("what a study may ask of its regression", () => {
  it("age as a covariate uses the blocks of both ages", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(
      "study.yaml",
      "  round-up-to: 0.5 %",
      "  round-up-to: 0.5 %\n  covariates: { age: true }",
    );
    const { result } = await compute(copy.folder);
    const plain = await exampleResult("reading-room");
    expect(result?.strength.fit.blocks).toBeGreaterThan(plain?.strength.fit.blocks as number);
    expect(result?.strength.fit.coefficients.map(({ name }) => render(name)).join(" ")).toMatch(
      /age/,
    );
    expect(result?.strength.chosenCementPct).toBeGreaterThan(0);
  });

  it("a density that was tested, and none that was not", async () => {
    const copy = copyStudy("reading-room");
    const line = "  round-up-to: 0.5 %\n  covariates: { dry-density: 1950 kg/m3 }";
    copy.edit("study.yaml", "  round-up-to: 0.5 %", line);
    expect((await compute(copy.folder)).result?.strength.fit.coefficients).toHaveLength(3);
    copy.edit("study.yaml", "1950 kg/m3 }", "2300 kg/m3 }");
    const { result, findings } = await compute(copy.folder);
    expect(findings).toContainEqual(
      expect.objectContaining({ severity: "warning", code: "no-regression" }),
    );
    expect(result?.strength).toBeUndefined();
    expect(result?.mix).toBeUndefined();
  });

  it("batches in the regression, and proportional spread", async () => {
    const copy = copyStudy("bus-shelter");
    copy.edit(
      "study.yaml",
      "  round-up-to: 0.5 %",
      "  round-up-to: 0.5 %\n  variance: proportional",
    );
    const { result } = await compute(copy.folder);
    const even = await exampleResult("bus-shelter");
    expect(result?.strength.leastCement.cementPct).not.toBeCloseTo(
      even?.strength.leastCement.cementPct as number,
      3,
    );
  });

  it("strengths corrected for proportions, beside the measured ones", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(
      "study.yaml",
      "  round-up-to: 0.5 %",
      "  round-up-to: 0.5 %\n  aspect-table: nzs4298",
    );
    const { result } = await compute(copy.folder);
    const [{ block, corrected }] = result?.strength.aspect ?? [];
    expect(result?.strength.aspect).toHaveLength(36);
    // Cubes: height over thickness near 1, factor near 0.70 (NZS 4298, from memory).
    expect(corrected.factor).toBeCloseTo(0.7, 2);
    expect(corrected.uncorrectedMpa).toBe(block.strengthMpa);
    expect(corrected.correctedMpa).toBeCloseTo(0.7 * block.strengthMpa, 1);
    copy.edit("study.yaml", "aspect-table: nzs4298", "aspect-table: guesswork");
    const { findings } = await readStudy(copy.folder);
    expect(findings).toMatchObject([{ column: "strength.aspect-table", value: "guesswork" }]);
  });

  it("strengths of cylinders corrected by their length over diameter", async () => {
    const copy = copyStudy("reading-room");
    copy.edit(
      "study.yaml",
      "  round-up-to: 0.5 %",
      "  round-up-to: 0.5 %\n  aspect-table: cylinder-c39",
    );
    const { study } = await readStudy(copy.folder);
    const [first, ...others] = (study as Study).trials[0].specimens!.specimens;
    const { lengthMm: _, widthMm: __, ...round } = first;
    const cylinder = { ...round, shape: "cylinder" as const, diameterMm: 100, heightMm: 150 };
    const [trial] = (study as Study).trials;
    const specimens = { ...trial.specimens!, specimens: [cylinder, ...others] };
    const { result } = computeStudy({ ...(study as Study), trials: [{ ...trial, specimens }] });
    const [{ block, corrected }] = result?.strength.aspect ?? [];
    expect(block.id).toBe(first.id);
    // Length over diameter 1.5: factor 0.96 (ASTM C39).
    expect(corrected).toMatchObject({ ratio: 1.5, factor: 0.96 });
  });
});
