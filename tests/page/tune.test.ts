import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { designBlend } from "../../src/blend/design.js";
import { practicalParts } from "../../src/blend/parts.js";
import type { BenchMix } from "../../src/page/bench.js";
import { solveBench } from "../../src/page/solve.js";
import { type StudyFiles, withMix } from "../../src/page/studyFiles.js";
import { keepsLimit, type OpenStudy, tuneBlend, tuneMix } from "../../src/page/tune.js";
import { strengthBound } from "../../src/strength/regression/bounds.js";
import { blendInputOf } from "../../src/study/blend.js";
import { computeStudy } from "../../src/study/computeStudy.js";
import { studyFromFiles } from "../../src/study/studyFromFiles.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { render } from "../../src/words/render.js";
import { openBench } from "../support/openBench.js";
import { EXAMPLES } from "../support/studyCopy.js";

const NAMES = { name: "the study's mix", basis: "the study" };

async function filesOf(name: string, { study }: OpenStudy): Promise<StudyFiles> {
  const read = study.inputs.map(
    async ({ file }) => [file, new Uint8Array(await readFile(join(EXAMPLES, name, file)))] as const,
  );
  return new Map(await Promise.all(read));
}

/** What the command line would compute of a study with this mix in its entries. */
async function computed(name: string, open: OpenStudy, mix: BenchMix): Promise<StudyResult> {
  const { materials, config } = open.result;
  const files = withMix(
    await filesOf(name, open),
    mix,
    materials.map(({ id }) => id),
    {
      locale: config.language,
      units: config.units,
    },
  );
  const { study, findings } = await studyFromFiles(files);
  const { result } = computeStudy(study!, findings);
  return result!;
}

const plain = (value: unknown) => JSON.parse(JSON.stringify(value));

it("holds the rammed density against the recommendation in the reader's units", async () => {
  const told = async (name: string) => {
    const open = await openBench(name);
    const { result } = tuneMix(open, tuneBlend(open, open.start), NAMES);
    return render(result.guidance[0].check.others!.find(({ unit }) => unit === "kg/m³")!.text);
  };
  expect(await told("reading-room")).toBe(
    "dry density: 1954 kg/m³, recommended 1700 kg/m³ to 2200 kg/m³: inside.",
  );
  // 1979 kg/m³ by 16.018.
  expect(await told("bus-shelter")).toBe(
    "dry density: 124 lb/ft³, recommended 106 lb/ft³ to 137 lb/ft³: inside.",
  );
});

describe("the mix on the bench", () => {
  it("starts as the study's own, to the last digit", async () => {
    const open = await openBench("reading-room");
    const tuned = tuneBlend(open, open.start);
    const { result } = open;
    expect(tuned.blend.curve).toEqual(result.blend?.curve);
    expect(tuned.blend.fractions).toEqual(result.blend?.fractions);
    expect(tuned.result.blendSpread).toEqual(result.blendSpread);
    expect(tuned.result.testing?.state).toBe("tested");
    const { mix } = tuneMix(open, tuned, NAMES);
    expect(mix?.recipe).toEqual(result.mix?.recipe);
    expect(mix?.cost).toEqual(result.mix?.cost);
    expect(mix?.compared).toBeUndefined();
  });

  for (const [name, change] of [
    ["reading-room", { sharesPct: [55.4, 13.1, 0, 31.5], cementPct: 7.3, moisturePct: 9.6 }],
    ["reading-room", { sharesPct: [70, 0, 10, 20] }],
    ["bus-shelter", {}],
    ["two-blends", { cementPct: 6 }],
    ["reading-room", { limits: [] }],
    ["untested-blend", { target: { kind: "power", exponent: 0.35, topSizeMm: 25 } }],
  ] as const) {
    it(`computes as the command line does of the saved study: ${name} ${JSON.stringify(change)}`, async () => {
      const open = await openBench(name);
      const mix = { ...open.start, ...change };
      const tuned = tuneBlend(open, mix);
      const recipe = tuneMix(open, tuned, NAMES);
      const saved = await computed(name, open, mix);
      expect(tuned.blend.shares).toEqual(saved.blend?.shares);
      expect(tuned.blend.curve).toEqual(saved.blend?.curve);
      expect(tuned.blend.points).toEqual(saved.blend?.points);
      expect(tuned.result.blendSpread).toEqual(saved.blendSpread);
      expect(tuned.result.testing).toEqual(saved.testing);
      const ofBlend = saved.guidance.filter(({ name: what }) => render(what) === "Blend");
      expect(plain(recipe.result.guidance)).toEqual(plain(ofBlend));
      const { compared: _, ...own } = recipe.mix ?? {};
      const { compared: __, ...theirs } = saved.mix ?? {};
      expect(plain(own)).toEqual(plain(theirs));
    });
  }

  it("says the strength and whether it is enough, as the blocks show it", async () => {
    const open = await openBench("reading-room");
    const enough = tuneBlend(open, { ...open.start, cementPct: 8 });
    const { fit } = open.result.strength!;
    const { statistic, confidence } = open.result.config.strength.requirement!;
    expect(enough.strength.boundMpa).toBe(strengthBound(fit, 8, { statistic, confidence }));
    expect(enough.strength.meets).toBe(true);
    expect(tuneBlend(open, { ...open.start, cementPct: 5 }).strength.meets).toBe(false);
    expect(
      tuneMix(open, tuneBlend(open, { ...open.start, cementPct: 5 }), NAMES).mix,
    ).toBeUndefined();
    const beyond = tuneBlend(open, { ...open.start, cementPct: 3 }).strength;
    expect(beyond.band).toBeUndefined();
    expect(render(beyond.reasons[0])).toBe(
      "No blocks were made with 3 % cement: 4 to 10 % were tested, and nothing is read off the curve beyond them.",
    );
  });

  it("hides strength and recipe, with the reason, where the blend leaves what was tested", async () => {
    const open = await openBench("reading-room");
    const tuned = tuneBlend(open, { ...open.start, sharesPct: [70, 10, 0, 20] });
    expect(tuned.trial).toBeUndefined();
    expect(tuned.strength.band).toBeUndefined();
    expect(render(tuned.strength.reasons[0])).toContain("The proposed blend was not tested.");
    const { mix, findings } = tuneMix(open, tuned, NAMES);
    expect(mix).toBeUndefined();
    expect(findings.map(({ code }) => code)).toEqual(["blend-not-tested"]);
    expect(tuned.result.proposal?.shares.map(({ sharePct }) => sharePct)).toEqual([70, 10, 20]);
  });

  it("gives no recipe for a moisture outside the window of the compaction test", async () => {
    const open = await openBench("reading-room");
    const wet = tuneMix(open, tuneBlend(open, { ...open.start, moisturePct: 16 }), NAMES);
    expect(wet.findings.map(({ code }) => code)).toEqual(["mix-outside-moisture-window"]);
  });

  it("compares with the study's own mix", async () => {
    const open = await openBench("reading-room");
    const more = tuneMix(open, tuneBlend(open, { ...open.start, cementPct: 8 }), NAMES);
    const own = open.result.mix!.quantities.mix.cement.dryMassKg;
    expect(more.mix?.compared?.quantities.mix.cement.dryMassKg).toBeCloseTo(own, 9);
    expect(more.mix?.compared?.savedCementKg).toBeCloseTo(
      own - more.mix!.quantities.mix.cement.dryMassKg,
      9,
    );
  });

  it("estimates plasticity by the share passing 0.425 mm, and says whose test is missing", async () => {
    const open = await openBench("reading-room");
    const [index] = tuneBlend(open, open.start).estimates;
    const limit = open.result.blend!.limits.find(({ unit, estimate }) => estimate && unit === "%");
    expect(index.valuePct).toBeCloseTo(limit!.value, 9);
    const bus = await openBench("untested-blend");
    const [, shrinkage] = tuneBlend(bus, bus.start).estimates;
    expect(shrinkage.valuePct).toBeUndefined();
    expect(shrinkage.untested).toEqual(["Site soil from the road cut"]);
  });

  it("tells which limits are kept", async () => {
    const open = await openBench("reading-room");
    const rich = tuneBlend(open, { ...open.start, sharesPct: [90, 5, 0, 5] });
    const [fines] = rich.limits;
    expect([keepsLimit(fines), fines.limit]).toEqual([false, 30]);
  });
});

describe("the solvers", () => {
  it("are those of the study", async () => {
    const open = await openBench("reading-room");
    const moved = { ...open.start, sharesPct: [80, 10, 0, 10] };
    const { sharesPct } = solveBench(open, moved, "target");
    expect(sharesPct).toEqual(open.result.blend?.shares.map(({ sharePct }) => sharePct));
  });

  it("leave locked shares alone, and say why where nothing can be found", async () => {
    const open = await openBench("reading-room");
    const locked = {
      ...open.start,
      sharesPct: [60, 10, 5, 25],
      locked: [true, false, false, false],
    };
    expect(solveBench(open, locked, "target").sharesPct?.[0]).toBeCloseTo(60, 6);
    const all = { ...locked, sharesPct: [90, 5, 0, 5], locked: [true, true, true, true] };
    const none = solveBench(open, all, "target");
    expect(none.sharesPct).toBeUndefined();
    expect(none.messages.length).toBeGreaterThan(0);
  });

  it("keep to the band with most site soil, and at least cost", async () => {
    const open = await openBench("bus-shelter");
    const soil = solveBench(open, open.start, "most-site-soil").sharesPct!;
    const cheap = solveBench(open, open.start, "least-cost").sharesPct!;
    const inside = ({ sharesPct }: { readonly sharesPct: readonly number[] }) =>
      tuneBlend(open, { ...open.start, sharesPct })
        .result.guidance[0].check.criteria.filter(({ kind }) => kind === "passing")
        .every(({ verdict }) => verdict === "inside");
    expect(inside({ sharesPct: soil })).toBe(true);
    expect(inside({ sharesPct: cheap })).toBe(true);
    expect(soil[0]).toBeGreaterThanOrEqual(cheap[0] - 1e-6);
  });

  it("give what a study with that objective, or the notebook's functions, give", async () => {
    const open = await openBench("bus-shelter");
    const { study } = open;
    for (const objective of ["most-site-soil", "least-cost"] as const) {
      const config = { ...study.config, target: { kind: "band", objective } as const };
      const { result } = computeStudy({ ...study, config }, []);
      const shares = result!.blend!.shares.map(({ sharePct }) => sharePct);
      expect(solveBench(open, open.start, objective).sharesPct, objective).toEqual(shares);
    }
    const input = blendInputOf(open.result);
    const { materials } = open.result.config;
    const parts = practicalParts(input, designBlend(input), {
      looseDryDensityKgM3: materials.map((material) => material.looseBulkDensityKgM3!),
      bulkingPct: materials.map(({ bulkingPct = 0 }) => bulkingPct),
    });
    const shares = parts.status === "ok" && parts.materials.map(({ sharePct }) => sharePct);
    expect(solveBench(open, open.start, "whole-buckets").sharesPct).toEqual(shares);
  });

  it("count whole buckets", async () => {
    const open = await openBench("reading-room");
    const { sharesPct, messages } = solveBench(open, open.start, "whole-buckets");
    const parts = /Buckets: (.*)\./
      .exec(messages.map((each) => render(each)).join(" "))![1]
      .split(" : ")
      .map(Number);
    const { materials } = open.result.config;
    const masses = parts.map((count, index) => count * materials[index].looseBulkDensityKgM3!);
    const total = masses.reduce((sum, mass) => sum + mass, 0);
    masses.forEach((mass, index) => {
      expect(sharesPct![index]).toBeCloseTo((100 * mass) / total, 9);
    });
  });
});
