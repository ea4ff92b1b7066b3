import { beforeAll, describe, expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import type { Figure } from "../../src/figures/figure.js";
import { render, renderAll } from "../../src/words/render.js";
import { classBlend } from "../../src/workshop/classBlend.js";
import * as shown from "../../src/workshop/classBlocks.js";
import { blockRows, classRows } from "../../src/workshop/classRows.js";
import { type LessonId, lessonExercises, openLesson } from "../../src/workshop/lesson.js";
import { type ClassDay, classDay } from "../../src/workshop/openClass.js";
import { openedClass } from "../support/openedClass.js";

let whole: ClassDay;
beforeAll(async () => {
  whole = await openedClass();
}, 60_000);

type Study = ClassDay["study"];

/** The shipped class with a study that lacks something. */
function dayWith(change: (study: Study) => Partial<Study>, options = {}): ClassDay {
  const sheet = { groups: whole.groups, findings: [] };
  return classDay({ ...whole.study, ...change(whole.study) }, sheet, options);
}

const reasons = ({ findings }: ClassDay) =>
  findings
    .filter(({ code }) => code === "lesson-not-possible")
    .map(({ message }) => render(message));

describe("a study that does not serve a lesson", () => {
  const NO_BLEND = "The study has no two materials and a target to blend them to.";
  const NO_BLOCKS = "The study has no crushed blocks, or requires no strength.";
  const NO_WALL = "The study has no mix for a wall: nothing can be saved or lost.";
  const cases: readonly [string, (study: Study) => Partial<Study>, LessonId, string][] = [
    [
      "a target",
      ({ config }) => ({ config: { ...config, target: undefined } }),
      "blending",
      NO_BLEND,
    ],
    ["a grading", () => ({ ungraded: [] }), "blending", NO_BLEND],
    [
      "a second material",
      ({ materials }) => ({ materials: materials.slice(0, 1) }),
      "blending",
      NO_BLEND,
    ],
    ["blocks", () => ({ strength: undefined }), "cement", NO_BLOCKS],
    [
      "a requirement",
      ({ config }) => ({
        config: { ...config, strength: { ...config.strength, requirement: undefined } },
      }),
      "cement",
      NO_BLOCKS,
    ],
    [
      "a straight line",
      ({ strength }) => ({ strength: { ...strength!, fit: { ...strength!.fit, model: "power" } } }),
      "cement",
      "The curve through the blocks is no straight line.",
    ],
    [
      "a third content",
      ({ strength }) => ({
        strength: { ...strength!, fit: { ...strength!.fit, contentsPct: [6, 10] } },
      }),
      "cement",
      "Fewer than three cement contents were tested.",
    ],
    ["a mix", () => ({ mix: undefined }), "saving", NO_WALL],
    ["a cement", ({ config }) => ({ config: { ...config, cement: undefined } }), "saving", NO_WALL],
  ];

  it.each(cases)("says that it lacks %s, and gives the others", (_, change, lesson, reason) => {
    const day = dayWith(change);
    expect(reasons(day)).toEqual([reason]);
    const ids = ["grading", "blending", "cement", "saving"] as const;
    const without = ids.filter((id) => lessonExercises(day, id).core.length === 0);
    expect(without).toEqual([lesson]);
    const opened = openLesson(day, lesson);
    expect(opened.kind === "findings" && opened.findings.map(({ code }) => code)).toEqual([
      "lesson-not-possible",
    ]);
  });

  it("blends two materials as well as three", () => {
    const day = dayWith(({ config, materials }) => ({
      config: { ...config, materials: config.materials.slice(0, 2) },
      materials: materials.slice(0, 2),
    }));
    expect(day.blend?.names).toEqual(["Class soil", "Washed sand 0/4"]);
    expect(whole.blend?.names).toHaveLength(3);
    expect(reasons(day)).toEqual([]);
  });

  it("asks for the loose bulk density of each material", () => {
    const day = dayWith(({ config }) => ({
      config: {
        ...config,
        materials: config.materials.map((material, index) =>
          index === 1 ? { ...material, looseBulkDensityKgM3: undefined } : material,
        ),
      },
    }));
    expect(reasons(day)).toEqual([
      "A loose bulk density is missing: there are no buckets.",
      "The study has no mix for a wall: nothing can be saved or lost.",
    ]);
  });

  it("shows a word in the place of each table and figure", () => {
    const { study } = whole;
    const empty: ClassDay = { language: "en", units: "SI", study, groups: [], findings: [] };
    const { classCautions: _, classFindings, ...ofClass } = shown;
    const texts = Object.entries(ofClass).map(([name, show]): [string, string] => {
      const block = (show as (day: ClassDay) => ReportBlock | Figure)(empty);
      return [name, block.kind === "note" ? render(block.text) : block.kind];
    });
    const soil =
      "There is no curve of this group yet: look at what the first cell says about its readings.";
    const lesson =
      "This study does not have what the lesson needs: look at what the first cell says.";
    const ofSoil = /Jar|Sieving|Curve|Sizes|Recommend|Disagree/;
    for (const [name, text] of texts) {
      const expected = ofSoil.test(name) ? soil : lesson;
      expect(text, name).toBe(name === "classJarsTable" ? "No group has a jar yet." : expected);
    }
    expect(texts.length).toBe(27);
    expect(classFindings(empty).findings).toEqual([]);
    expect([classRows(empty), blockRows(empty)]).toEqual([[], []]);
  });

  it("blends nothing with one material, or towards a target without fines", () => {
    const [soil, sand] = [40, 0].map((finesPct, index) => ({
      id: `m${index}`,
      curve: {
        points: [
          { sizeMm: 0.063, passingPct: finesPct, origin: "sieve" as const },
          { sizeMm: 2, passingPct: 100, origin: "sieve" as const },
        ],
      },
      minSharePct: 0,
      maxSharePct: 100,
    }));
    const blend = (materials: (typeof soil)[], sizeMm: number) => {
      const target = { kind: "curve" as const, points: [{ sizeMm, passingPct: 30 }] };
      const made = classBlend({ materials, target, looseDryDensityKgM3: [1200, 1500] });
      return made.status === "none" ? render(made.message) : made.targetFinesPct;
    };
    expect(blend([soil], 0.063)).toBe("A blend needs two materials, a soil and a sand.");
    expect(blend([soil, sand], 0.5)).toBe(
      "The target says nothing of the fines, at 0.063 or 0.075 mm.",
    );
    expect([blend([soil, sand], 0.063), blend([soil, sand], 0.075)]).toEqual([30, 30]);
  });
});

describe("the group of a notebook", () => {
  const named = (group: string | number) => dayWith(() => ({}), { group });

  it("is the one whose column is named, or numbered, else the first", () => {
    expect(dayWith(() => ({})).group?.name).toBe(whole.groups[0].name);
    const second = whole.groups[1].name;
    expect(
      [named(second), named(` ${second.toUpperCase()} `)].map((day) => day.group?.name),
    ).toEqual([second, second]);
    expect(named(2).group?.name).toBe("group 2");
  });

  it("that is not there is told, with those that are", () => {
    const day = named("nobody");
    expect(day.group).toBeUndefined();
    const [found] = renderAll(day.findings);
    expect(found).toMatchObject({
      code: "no-such-group",
      value: "nobody",
      expected: `one of ${whole.groups.map(({ name }) => name).join(", ")}`,
    });
  });
});

describe("the wall of a class", () => {
  it("is that of the study, beside a concrete one of a part of its volume and somebody's buckets", () => {
    const { study } = whole;
    const { materials, cement } = study.config;
    const dry = ({ looseBulkDensityKgM3 = 0, bulkingPct = 0 }: (typeof materials)[number]) =>
      looseBulkDensityKgM3 / (1 + bulkingPct / 100);
    expect(whole.wall).toEqual({
      wallVolumeM3: study.mix?.quantities.netVolumeM3,
      cementPct: study.mix?.record.cementPct,
      dryDensityKgM3: study.mix?.density.valueKgM3,
      concreteVolumeM3: 0.6 * study.mix!.quantities.netVolumeM3,
      parts: { soil: 7, sand: 2, cement: 1 },
      looseDryKgM3: {
        soil: dry(materials[0]),
        sand: dry(materials[1]),
        cement: cement?.looseBulkDensityKgM3,
      },
    });
    const bulked = dayWith(({ config }) => ({
      config: {
        ...config,
        materials: config.materials.map((material) => ({
          ...material,
          looseBulkDensityKgM3: 1250,
          bulkingPct: 25,
        })),
      },
    }));
    expect(bulked.wall?.looseDryKgM3).toMatchObject({ soil: 1000, sand: 1000 });
    const parts = { soil: 5, sand: 4, cement: 1 };
    const other = dayWith(() => ({}), { concretePart: 0.5, buckets: parts });
    expect(other.wall?.parts).toEqual(parts);
    expect(other.wall!.concreteVolumeM3 / other.wall!.wallVolumeM3).toBe(0.5);
  });
});
