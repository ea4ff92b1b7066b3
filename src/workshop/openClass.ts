import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { type Finding, finding, hasErrors } from "../findings/finding.js";
import { compareGuidance, type GuidanceComparison } from "../guidance/comparison.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import { readGrid } from "../lab/sheet/grid.js";
import type { UnitSystem } from "../quantities/format.js";
import { blendInputOf } from "../study/blend.js";
import { openStudy } from "../study/openStudy.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/message.js";
import type { Language } from "../words/render.js";
import { type ClassStrength, classStrength } from "./cementExercises.js";
import { type ClassBlend, classBlend } from "./classBlend.js";
import { type ClassGroup, readClassSheet } from "./classSheet.js";
import { type ClassSoil, classSoil } from "./classSoil.js";
import type { ClassWall } from "./classWall.js";

/** The sheet of the class, in the folder of its study. */
const CLASS_SHEET = "class.csv";

/** A group with what its readings give. */
export interface ClassGroupSoil extends ClassGroup {
  /** Absent where its sieving cannot be worked out. */
  readonly soil?: ClassSoil;
}

/** A class as it works: its study, and the readings of all groups. */
export interface ClassDay {
  readonly language: Language;
  readonly units: UnitSystem;
  readonly study: StudyResult;
  readonly groups: readonly ClassGroupSoil[];
  /** The group that the notebook belongs to; absent where the sheet has no such column. */
  readonly group?: ClassGroupSoil;
  /** What this soil is held against: recommendations for rammed earth. Absent without a curve. */
  readonly guidance?: GuidanceComparison;
  /** Absent where the study has not what a blend by hand needs: `findings` says what. */
  readonly blend?: ClassBlend;
  /** Absent where the study's blocks do not serve. */
  readonly blocks?: ClassStrength;
  readonly wall?: ClassWall;
  /** About this group's readings, the sheet, and what of the study the lessons cannot use. */
  readonly findings: readonly Finding[];
}

export interface ClassOptions {
  /** Head of the group's column; default the first group. */
  readonly group?: string | number;
  /** Default `en`. */
  readonly language?: Language;
  /** Volume of the concrete wall that the earth wall stands for, as a part of its own; default 0.6. */
  readonly concretePart?: number;
  /** Somebody's recipe in buckets; default 7 of soil, 2 of sand, 1 of cement. */
  readonly buckets?: ClassWall["parts"];
}

const EARTH = ["rammed-earth", "stabilised-rammed-earth"];
const BUCKETS: ClassWall["parts"] = { soil: 7, sand: 2, cement: 1 };

/**
 * Opens the folder of a class: `study.yaml` with its sheets, and `class.csv`, into which the groups type.
 *
 * What a group typed never stops a notebook: what cannot be is told among the findings, and the part that
 * rests on it is absent.
 *
 * @throws StudyError where `study.yaml` or its sheets have errors.
 */
export async function openClass(folder: string, options: ClassOptions = {}): Promise<ClassDay> {
  const { language = "en" } = options;
  const study = await openStudy(folder, { language });
  const sheet = await readSheetOfClass(folder);
  return classDay(study, sheet, options);
}

async function readSheetOfClass(folder: string): Promise<ReturnType<typeof readClassSheet>> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(join(folder, CLASS_SHEET));
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== "ENOENT") throw problem;
    const found = finding({ file: CLASS_SHEET }, "error", "no-class-sheet", {
      message: say`The folder of the class has no sheet for the groups' readings.`,
      expected: say`a file ${CLASS_SHEET} beside study.yaml`,
      remedy: say`Copy the one that came with the notebooks.`,
    });
    return { groups: [], findings: [found] };
  }
  const { grid, findings } = await readGrid(CLASS_SHEET, bytes);
  if (grid === undefined) return { groups: [], findings };
  const read = readClassSheet(grid);
  return { ...read, findings: [...findings, ...read.findings] };
}

/** The class of a computed study and its groups' readings: what `openClass` gives, without files. */
export function classDay(
  study: StudyResult,
  sheet: ReturnType<typeof readClassSheet>,
  options: ClassOptions = {},
): ClassDay {
  const { language = "en", group: wanted } = options;
  const { units } = study.config;
  const boundaries = units === "US" ? "astm" : "iso14688";
  const laboratory = (study.materials[0]?.curve.points ?? []).filter(
    ({ origin }) => origin === "sedimentation",
  );
  const groups = sheet.groups.map((group): ClassGroupSoil => {
    const { sieve, jar } = group;
    if (sieve === undefined || hasErrors(group.findings)) return group;
    const soil = classSoil({ sieve, jar, laboratory, boundaries });
    return { ...group, soil, findings: [...group.findings, ...soil.findings] };
  });
  const group =
    wanted === undefined ? groups[0] : groups.find(({ name }) => isNamed(name, String(wanted)));
  const entries = GUIDANCE_ENTRIES.filter(({ material }) => EARTH.includes(material));
  const blended = blendOfClass(study);
  const wall = wallOfClass(study, options);
  const blocks = classStrength(study);
  return {
    language,
    units,
    study,
    groups,
    group,
    guidance: group?.soil && compareGuidance(group.soil.curve, entries),
    blend: blended.blend,
    blocks: "status" in blocks ? undefined : blocks,
    wall: wall.wall,
    findings: [
      ...sheet.findings,
      ...(group === undefined && groups.length > 0 ? [noSuchGroup(String(wanted), groups)] : []),
      ...(group?.findings ?? []),
      ...blended.findings,
      ...("status" in blocks ? [lacking(blocks.message)] : []),
      ...wall.findings,
    ],
  };
}

/** “2” is “group 2” too. */
function isNamed(name: string, wanted: string): boolean {
  const [own, asked] = [name, wanted].map((text) => text.trim().toLowerCase());
  return own === asked || own.endsWith(` ${asked}`);
}

function noSuchGroup(wanted: string, groups: readonly ClassGroup[]): Finding {
  return finding({ file: CLASS_SHEET, value: wanted }, "error", "no-such-group", {
    message: say`The sheet of the class has no column for this group.`,
    expected: say`one of ${groups.map(({ name }) => name).join(", ")}`,
    remedy: say`Write the head of your column, or its number, into the first cell, in quotation marks.`,
  });
}

/** Why a lesson cannot be given with this study. */
function lacking(why: Finding["message"]): Finding {
  return finding({ file: "study.yaml" }, "warning", "lesson-not-possible", {
    message: why,
    expected: say`a study as the one that came with the notebooks`,
    remedy: say`Give this lesson with that study, or leave it out.`,
  });
}

function blendOfClass(study: StudyResult): {
  readonly blend?: ClassBlend;
  readonly findings: readonly Finding[];
} {
  const { config } = study;
  if (!config.target || study.ungraded || study.materials.length < 2) {
    return {
      findings: [lacking(say`The study has no two materials and a target to blend them to.`)],
    };
  }
  const { materials, target } = blendInputOf(study);
  const looseDryDensityKgM3 = config.materials.map(looseDryKgM3);
  if (looseDryDensityKgM3.some((density) => density === undefined)) {
    return { findings: [lacking(say`A loose bulk density is missing: there are no buckets.`)] };
  }
  const made = classBlend({
    materials,
    target,
    looseDryDensityKgM3: looseDryDensityKgM3 as number[],
    names: config.materials.map(({ name }) => name),
  });
  return made.status === "ok"
    ? { blend: made, findings: [] }
    : { findings: [lacking(made.message)] };
}

/** Dry mass in a loose cubic metre of a material as it is shovelled. */
function looseDryKgM3({
  looseBulkDensityKgM3,
  bulkingPct = 0,
}: StudyResult["config"]["materials"][number]): number | undefined {
  return looseBulkDensityKgM3 === undefined
    ? undefined
    : looseBulkDensityKgM3 / (1 + bulkingPct / 100);
}

function wallOfClass(
  study: StudyResult,
  { concretePart = 0.6, buckets = BUCKETS }: ClassOptions,
): { readonly wall?: ClassWall; readonly findings: readonly Finding[] } {
  const { mix, config } = study;
  const [soil, sand] = config.materials.map(looseDryKgM3);
  const cement = config.cement?.looseBulkDensityKgM3;
  if (!mix || soil === undefined || sand === undefined || cement === undefined) {
    return {
      findings: [lacking(say`The study has no mix for a wall: nothing can be saved or lost.`)],
    };
  }
  const wallVolumeM3 = mix.quantities.netVolumeM3;
  return {
    wall: {
      wallVolumeM3,
      cementPct: mix.record.cementPct,
      dryDensityKgM3: mix.density.valueKgM3,
      concreteVolumeM3: concretePart * wallVolumeM3,
      parts: buckets,
      looseDryKgM3: { soil, sand, cement },
    },
    findings: [],
  };
}
