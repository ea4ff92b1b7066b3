import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { toMassShares } from "../../src/batch/volumeParts.js";
import { compareGuidance } from "../../src/guidance/comparison.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { blendInputOf } from "../../src/study/blend.js";
import { openStudy } from "../../src/study/openStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { blendingExercises } from "../../src/workshop/blendingExercises.js";
import { cementExercises } from "../../src/workshop/cementExercises.js";
import { classBlend } from "../../src/workshop/classBlend.js";
import { type ClassReadings, classSoil } from "../../src/workshop/classSoil.js";
import { acceptedRange, type Exercise } from "../../src/workshop/exercise.js";
import { fewerBlocks } from "../../src/workshop/fewerBlocks.js";
import { gradingExercises } from "../../src/workshop/gradingExercises.js";
import { jarSharesTable } from "../../src/workshop/jarSharesTable.js";
import { judgeAnswer } from "../../src/workshop/judgeAnswer.js";
import { savingExercises } from "../../src/workshop/savingExercises.js";

const CLASS: ClassReadings = {
  jar: { waterDepthMm: 220, sandTopMm: 52, siltTopMm: 71, clayTopMm: 88, passedSizeMm: 4 },
  sieve: {
    dryMassG: 1200,
    washedDryMassG: 885,
    retained: [
      { sizeMm: 16, massG: 0 },
      { sizeMm: 8, massG: 107.6 },
      { sizeMm: 4, massG: 120.9 },
      { sizeMm: 2, massG: 131.2 },
      { sizeMm: 0.6, massG: 216.8 },
      { sizeMm: 0.2, massG: 167.3 },
      { sizeMm: 0.063, massG: 132.5 },
    ],
    panG: 5.9,
  },
  laboratory: [{ sizeMm: 0.002, passingPct: 11.7 }],
};
const WALL = {
  wallVolumeM3: 3.6,
  cementPct: 8,
  dryDensityKgM3: 1890,
  concreteVolumeM3: 2.2,
  parts: { soil: 7, sand: 2, cement: 1 },
  looseDryKgM3: { soil: 1130, sand: 1390, cement: 1200 },
};

let study: StudyResult;
let lessons: Readonly<Record<string, Exercise[]>>;

beforeAll(async () => {
  study = await openStudy(fileURLToPath(new URL("../../data-examples/class-day", import.meta.url)));
  const soil = classSoil(CLASS);
  const { materials, target } = blendInputOf(study);
  lessons = {
    grading: gradingExercises(soil, compareGuidance(soil.curve, GUIDANCE_ENTRIES)),
    blending: blendingExercises(
      classBlend({ materials, target, looseDryDensityKgM3: [1200, 1450, 1520] }),
    ),
    cement: cementExercises(study),
    saving: savingExercises(WALL),
  };
}, 60_000);

const all = () => Object.values(lessons).flat();
const one = (id: string) => {
  const found = all().find((exercise) => exercise.id === id);
  if (!found) throw new Error(`no exercise ${id}`);
  return found;
};
const said = (id: string, answer: unknown, before = 0) => judgeAnswer(one(id), answer, before).text;

describe("every exercise", () => {
  it("accepts its own answer, and has one of its own options", () => {
    expect(all().length).toBe(25);
    for (const exercise of all()) {
      expect(judgeAnswer(exercise, exercise.value).verdict, exercise.id).toBe("right");
      if (exercise.kind === "choice") expect(exercise.options).toContain(exercise.value);
    }
  });

  it("recognises each wrong turn that these data can tell from the right answer", () => {
    let told = 0;
    for (const exercise of all()) {
      for (const { value, text } of exercise.wrongTurns) {
        if (exercise.kind === "number") {
          const { low, high } = acceptedRange(exercise);
          if (typeof value === "number" && value >= low && value <= high) continue;
        }
        const judged = judgeAnswer(exercise, value);
        expect(judged.verdict, `${exercise.id}: ${text}`).toBe("wrong");
        expect(judged.text, exercise.id).toContain(text);
        told += 1;
      }
    }
    expect(told).toBeGreaterThan(60);
  });

  it("gives the worked answer at the third try and nothing of it before", () => {
    for (const exercise of all()) {
      const answer =
        exercise.kind === "number"
          ? exercise.value * 1.4 + 7
          : exercise.options.find((option) => option !== exercise.value);
      expect(judgeAnswer(exercise, answer, 0).text).not.toContain(exercise.worked);
      expect(judgeAnswer(exercise, answer, 1).text, exercise.id).toContain(exercise.hint);
      expect(judgeAnswer(exercise, answer, 2).text, exercise.id).toContain(exercise.worked);
    }
  });

  it("is calm about a blank", () => {
    for (const exercise of all()) expect(judgeAnswer(exercise, undefined).verdict).toBe("blank");
  });
});

describe("answers by an independent sum", () => {
  const near = (id: string, value: number) => expect(one(id).value).toBeCloseTo(value, 6);

  it("of the sieving", () => {
    near("passing-2-mm", 100 * (1 - (107.6 + 120.9 + 131.2) / 1200));
    near("passing-finest", 100 * (1 - 876.3 / 1200));
    const [p06, p2] = [576.5, 359.7].map((retained) => 100 * (1 - retained / 1200));
    near("d60-of-the-soil", 0.6 * (2 / 0.6) ** ((60 - p06) / (p2 - p06)));
    expect(said("d60-of-the-soil", 0.6 + 1.4 * ((60 - p06) / (p2 - p06)))).toContain(
      "evenly along",
    );
    expect(said("passing-finest", 100 * (1 - 876.3 / 885))).toContain("after washing");
  });

  it("of the blend and the buckets", () => {
    const [soil, sand] = study.materials.map(({ fractions }) => fractions.finesPct as number);
    const target = 100 * (0.063 / 16) ** 0.3;
    near("sand-to-one-of-soil", (soil - target) / (target - sand));
    near("sand-by-mass", (100 * 1450) / (3 * 1200 + 1450));
    expect(said("sand-by-mass", 25)).toContain("by volume");
  });

  it("of the blocks", () => {
    const [block] = study.strength.specimens;
    const { loadKn = 0, lengthMm = 0, widthMm = 0 } = block;
    near("strength-of-a-block", (1000 * loadKn) / (lengthMm * widthMm));
    expect(said("strength-of-a-block", (10 * loadKn) / (lengthMm * widthMm) / 10)).toContain(
      "kN/mm²",
    );
    expect(one("cement-to-weigh-out").value).toBe(study.strength.leastCement.batchablePct);
  });

  it("of the wall", () => {
    near("cement-in-the-wall", (3.6 * 1890 * 8) / 108);
    near("cement-by-volume", 10);
    near("cement-by-mass", (100 * 1200) / (7 * 1130 + 2 * 1390));
    expect(said("cement-saved", 100 * (1 - 504 / (2.2 * 2350)))).toContain("the trap");
    expect(said("cement-saved", 18.5)).toContain("Right.");
    expect(
      toMassShares([{ id: "all", parts: 9, looseBulkDensityKgM3: 1 }], {
        parts: 1,
        looseBulkDensityKgM3: 1,
      }).cementByVolumePct,
    ).toBe(10);
  });
});

describe("what a class types", () => {
  it("gets the findings of the sheets' own checks where it cannot be", () => {
    const heavier = { ...CLASS, sieve: { ...CLASS.sieve, washedDryMassG: 1300 } };
    expect(() => classSoil(heavier)).toThrow("heavier after washing");
    const sinking = { ...CLASS, jar: { ...CLASS.jar, clayTopMm: 60 } };
    expect(() => classSoil(sinking)).toThrow("lower than at the reading before");
    const missing = { ...CLASS, sieve: { ...CLASS.sieve, panG: Number.NaN } };
    expect(() => classSoil(missing)).toThrow("The study has errors");
    const lost = { ...CLASS, sieve: { ...CLASS.sieve, washedDryMassG: 950 } };
    expect(classSoil(lost).findings.map(({ code }) => code)).toContain("sieve-loss");
  });

  it("leaves out exercises that its sieves do not allow", () => {
    const retained = CLASS.sieve.retained.filter(({ sizeMm }) => sizeMm !== 2);
    const soil = classSoil({
      ...CLASS,
      sieve: { ...CLASS.sieve, retained, washedDryMassG: 753.8 },
    });
    const ids = gradingExercises(soil, compareGuidance(soil.curve, GUIDANCE_ENTRIES)).map(
      ({ id }) => id,
    );
    expect(ids).not.toContain("passing-2-mm");
    expect(ids).toContain("d60-of-the-soil");
  });

  it("refuses jars that are none", () => {
    for (const text of ["", "50 70", "50 40 60", "a b c", "50 70 90 100"]) {
      expect(() => jarSharesTable(text), text).toThrow("invalid `text`");
    }
  });
});

describe("fewer blocks", () => {
  it("tries every way, and sees less cement only by luck", () => {
    const draws = fewerBlocks(study.strength.specimens, study.config.strength.requirement);
    expect(draws.length).toBe(27);
    expect(new Set(draws.map(({ ids }) => ids.join())).size).toBe(27);
    for (const { lineContentPct, leastPct } of draws) {
      const { mean, prediction, tolerance } = leastPct;
      if (mean !== null && lineContentPct !== null)
        expect(mean).toBeGreaterThanOrEqual(lineContentPct);
      if (prediction !== null) expect(prediction).toBeGreaterThanOrEqual(mean as number);
      if (tolerance !== null) expect(tolerance).toBeGreaterThanOrEqual(prediction as number);
    }
  });

  it("wants three contents", () => {
    const two = study.strength.specimens.filter(({ cementPct }) => cementPct < 8);
    expect(() => fewerBlocks(two, { strengthMpa: 1.5, ageDays: 28 })).toThrow("expected 3 or more");
  });
});
