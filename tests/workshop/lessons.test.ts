import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { compareGuidance } from "../../src/guidance/comparison.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/published/recommendations.js";
import { blendInputOf } from "../../src/study/blend.js";
import { openStudy } from "../../src/study/openStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { render } from "../../src/words/render.js";
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
const said = (id: string, answer: unknown, before = 0) =>
  render(judgeAnswer(one(id), answer, before).text);

/** One-sided 95 % of Student's t, from any table of it: at 1 and 10 degrees of freedom. */
const T_95: Readonly<Record<number, number>> = { 1: 6.313751514675, 10: 1.812461122812 };

/** The least-squares line by its textbook sums, and the 95 % bound of one further block. */
function lineThrough(points: readonly (readonly [content: number, strength: number])[]) {
  const n = points.length;
  const mean = (at: 0 | 1) => points.reduce((sum, point) => sum + point[at], 0) / n;
  const [x, y] = [mean(0), mean(1)];
  const sxx = points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
  const b = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0) / sxx;
  const a = y - b * x;
  const s = Math.sqrt(points.reduce((sum, [c, f]) => sum + (f - a - b * c) ** 2, 0) / (n - 2));
  const bound = (c: number) =>
    a + b * c - T_95[n - 2] * s * Math.sqrt(1 + 1 / n + (c - x) ** 2 / sxx);
  return { a, b, bound };
}

/** The first content within the tested ones at which the bound meets the strength, by small steps. */
function firstContent(points: Parameters<typeof lineThrough>[0], strengthMpa: number) {
  const contents = points.map(([content]) => content);
  const { bound } = lineThrough(points);
  const [from, to] = [Math.min(...contents), Math.max(...contents)];
  for (let c = from; c <= to + 1e-9; c += 0.001) if (bound(c) >= strengthMpa) return c;
  return undefined;
}

/** What three blocks in every way of taking them say beside all blocks. */
function threeBlocks(points: Parameters<typeof lineThrough>[0], strengthMpa: number): string {
  const all = firstContent(points, strengthMpa)!;
  const contents = [...new Set(points.map(([content]) => content))].sort((x, y) => x - y);
  const ends = [contents[0], contents[contents.length - 1]];
  const middle = contents
    .slice(1, -1)
    .sort((x, y) => Math.abs(x - (ends[0] + ends[1]) / 2) - Math.abs(y - (ends[0] + ends[1]) / 2));
  const at = (content: number) => points.filter((point) => point[0] === content);
  const triples = at(ends[0]).flatMap((low) =>
    at(middle[0]).flatMap((centre) => at(ends[1]).map((high) => [low, centre, high])),
  );
  const found = triples.map((triple) => firstContent(triple, strengthMpa) ?? Infinity);
  if (found.filter((content) => content > all + 0.25).length > found.length / 2) {
    return "mostly more, or no answer";
  }
  const less = found.filter((content) => content < all - 0.25).length;
  return less > found.length / 2 ? "mostly less" : "about the same";
}

/** Passing of a mixture at each size of the target 100 (d/16)^0.3, less that target. */
function misfits(sharesPct: readonly number[], sizesMm: readonly number[]): number[] {
  return sizesMm.map((sizeMm) => {
    const passing = study.materials.map(({ curve }) => passingBetween(curve.points, sizeMm));
    const blend = passing.reduce((sum, pct, index) => sum + (pct * sharesPct[index]) / 100, 0);
    return blend - 100 * (sizeMm / 16) ** 0.3;
  });
}

function passingBetween(
  points: readonly { readonly sizeMm: number; readonly passingPct: number }[],
  sizeMm: number,
): number {
  const above = points.findIndex((point) => point.sizeMm >= sizeMm);
  if (above < 0) return 100;
  if (above === 0) return points[0].sizeMm === sizeMm ? points[0].passingPct : 0;
  const [low, high] = [points[above - 1], points[above]];
  const part = Math.log(sizeMm / low.sizeMm) / Math.log(high.sizeMm / low.sizeMm);
  return low.passingPct + part * (high.passingPct - low.passingPct);
}

const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** Each answer by hand or by other means than the exercises'. */
function otherAnswers(): Record<string, number | string> {
  const [retained06, retained2, retainedAll] = [576.5, 359.7, 876.3];
  const passing = (retained: number) => 100 * (1 - retained / 1200);
  const [p06, p2] = [passing(retained06), passing(retained2)];
  const comparison = compareGuidance(classSoil(CLASS).curve, GUIDANCE_ENTRIES);
  const outside = comparison.checks.filter(({ criteria }) =>
    criteria.some(
      ({ measuredPct: at = Number.NaN, lowPct = -Infinity, highPct = Infinity }) =>
        at < lowPct || at > highPct,
    ),
  );
  const [soilFines, sandFines] = study.materials.map(({ curve }) =>
    passingBetween(curve.points, 0.063),
  );
  const target = 100 * (0.063 / 16) ** 0.3;
  const ratio = (soilFines - target) / (target - sandFines);
  const soilPct = 100 / (1 + ratio);
  const sizes = study.blend.points.map(({ sizeMm }) => sizeMm);
  const off = misfits([soilPct, 100 - soilPct, 0], sizes).sort((x, y) => Math.abs(y) - Math.abs(x));
  const three = [off[0], off[Math.floor(off.length / 2)], off[off.length - 2]];
  const { loadKn = 0, lengthMm = 0, widthMm = 0 } = study.strength.specimens[0];
  const points = study.strength.specimens
    .filter(({ ageDays, excluded }) => ageDays === 28 && !excluded)
    .map(({ cementPct, strengthMpa }) => [cementPct, strengthMpa] as const);
  const line = lineThrough(points);
  const contents = [...new Set(points.map(([content]) => content))].sort((x, y) => x - y);
  const top = contents[contents.length - 1];
  const concrete = [280, 310].map((kgM3) => 100 * (1 - (3.6 * 1890 * 8) / 108 / (2.2 * kgM3)));
  return {
    "jar-sand-share": (100 * 52) / 88,
    // Fresh clay is mostly water.
    "jar-clay-by-mass": "less",
    "passing-2-mm": p2,
    "passing-finest": passing(retainedAll),
    "sand-share": p2 - passing(retainedAll),
    "d60-of-the-soil": 0.6 * (2 / 0.6) ** ((60 - p06) / (p2 - p06)),
    // 11.7 % pass at 0.002 mm, the finest.
    "is-d10-known": "no",
    "outside-of-how-many": outside.length,
    "what-inside-proves": "no",
    "sand-to-one-of-soil": ratio,
    "soil-share": soilPct,
    "misfit-by-hand": rms(three),
    "sand-by-mass": (100 * 1450) / (3 * 1200 + 1450),
    "worst-miscount": worstMiscount(sizes),
    "strength-of-a-block": (1000 * loadKn) / (lengthMm * widthMm),
    "strength-on-the-line": line.a + (line.b * (contents[contents.length - 2] + top)) / 2,
    "cement-by-the-line": (1.8 - line.a) / line.b,
    "bound-of-one-block": line.bound(top),
    "cement-to-weigh-out": 0.5 * Math.ceil(firstContent(points, 1.8)! / 0.5),
    "three-blocks": threeBlocks(points, 1.8),
    "cement-in-the-wall": (3.6 * 1890 * 8) / 108,
    "cement-saved": (concrete[0] + concrete[1]) / 2,
    "carbon-follows-cement": "the same",
    "cement-by-volume": 10,
    "cement-by-mass": (100 * 1200) / (7 * 1130 + 2 * 1390),
  };
}

/** Tries one bucket more and one less of each material of the recipe that the question names. */
function worstMiscount(sizes: readonly number[]): string {
  const question = render(one("worst-miscount").question);
  const ids = study.config.materials.map(({ id }) => id);
  const counts = ids.map((id) => Number(new RegExp(`(\\d+) ${id}`).exec(question)?.[1] ?? 0));
  const tried = ids.flatMap((id, index) =>
    [-1, 1].map((change) => {
      const masses = counts.map(
        (count, j) => (count + (j === index ? change : 0)) * [1200, 1450, 1520][j],
      );
      const total = masses.reduce((sum, mass) => sum + mass, 0);
      const sharesPct = masses.map((mass) => (100 * mass) / total);
      const label = `${id} ${change > 0 ? "+" : "−"}1`;
      return { label, off: counts[index] === 0 ? 0 : rms(misfits(sharesPct, sizes)) };
    }),
  );
  return tried.sort((x, y) => y.off - x.off)[0].label;
}

describe("every exercise", () => {
  it("accepts the answer that was found by other means", () => {
    const answers = otherAnswers();
    expect(all().map(({ id }) => id)).toEqual(Object.keys(answers));
    for (const exercise of all()) {
      const { verdict, text } = judgeAnswer(exercise, answers[exercise.id]);
      expect(verdict, `${exercise.id}: ${render(text)}`).toBe("right");
      if (exercise.kind === "number" && !exercise.between) {
        const near = { rel: 1e-9, abs: 1e-9 };
        const other = answers[exercise.id] as number;
        const off = Math.abs(exercise.value - other);
        expect(off, exercise.id).toBeLessThanOrEqual(near.rel * Math.abs(other) + near.abs);
      }
    }
  });

  it("recognises each mistake that these data can tell from the right answer", () => {
    let told = 0;
    for (const exercise of all()) {
      for (const { value, text } of exercise.mistakes) {
        if (exercise.kind === "number") {
          const { low, high } = acceptedRange(exercise);
          if (typeof value === "number" && value >= low && value <= high) continue;
        }
        const judged = judgeAnswer(exercise, value);
        expect(judged.verdict, `${exercise.id}: ${render(text)}`).toBe("wrong");
        expect(render(judged.text), exercise.id).toContain(render(text));
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
          : exercise.options.find(({ key }) => key !== exercise.value)?.key;
      const [first, second, third] = [0, 1, 2].map((before) =>
        render(judgeAnswer(exercise, answer, before).text),
      );
      expect(first).not.toContain(render(exercise.worked));
      expect(second, exercise.id).toContain(render(exercise.hint));
      expect(third, exercise.id).toContain(render(exercise.worked));
    }
  });

  it("is calm about a blank", () => {
    for (const exercise of all()) expect(judgeAnswer(exercise, undefined).verdict).toBe("blank");
  });
});

describe("what is said of a wrong answer", () => {
  it("of the sieving", () => {
    const [p06, p2] = [576.5, 359.7].map((retained) => 100 * (1 - retained / 1200));
    const evenly = 0.6 + 1.4 * ((60 - p06) / (p2 - p06));
    expect(said("d60-of-the-soil", evenly)).toContain("evenly along");
    expect(said("passing-finest", 100 * (1 - 876.3 / 885))).toContain("after washing");
  });

  it("of the buckets, the blocks and the wall", () => {
    expect(said("sand-by-mass", 25)).toContain("by volume");
    const { loadKn = 0, lengthMm = 0, widthMm = 0 } = study.strength.specimens[0];
    expect(said("strength-of-a-block", loadKn / (lengthMm * widthMm))).toContain("kN/mm²");
    expect(said("cement-saved", 100 * (1 - 504 / (2.2 * 2350)))).toContain("the trap");
    expect(said("cement-saved", 18.5)).toContain("Right.");
  });

  it("tells buckets to buckets from mass to mass", () => {
    expect(said("cement-by-mass", 100 / 9)).toContain("buckets to buckets");
    expect(said("cement-by-mass", 10)).toContain("share of the buckets");
    expect(said("cement-by-mass", 11.2)).toContain("Right.");
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
    for (const { lineContentPct, minPct } of draws) {
      const { mean, prediction, tolerance } = minPct;
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
