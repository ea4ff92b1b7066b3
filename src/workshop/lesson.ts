import type { FindingsBlock, NoteBlock, TableBlock } from "../blocks/block.js";
import { hasErrors } from "../findings/finding.js";
import { numberColumn } from "../tables/cell.js";
import { note } from "../tables/tableOf.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { blendingExercises } from "./blendingExercises.js";
import { cementExercises } from "./cementExercises.js";
import { bucketsByMass, wallCement } from "./classWall.js";
import type { Exercise } from "./exercise.js";
import { fewerBlocks } from "./fewerBlocks.js";
import { gradingExercises } from "./gradingExercises.js";
import type { ClassDay } from "./openClass.js";
import { savingExercises } from "./savingExercises.js";
import { type AskedPrediction, openExercises, openPredictions } from "./session.js";

export type LessonId = "grading" | "blending" | "cement" | "saving";

/** One of the four lessons of a class of two hours. */
export interface Lesson {
  readonly id: LessonId;
  readonly title: Text;
  /** What is done and how long it takes, in order. */
  readonly parts: readonly { readonly what: Text; readonly minutes: number }[];
  /** Exercises that everybody does; all others are further ones, for those who finish early. */
  readonly core: readonly string[];
}

/** How long a class has, minutes. */
export const CLASS_MINUTES = 120;

/** Before the first lesson: cautions, groups, computers. */
export const WELCOME_MINUTES = 6;

/** The four lessons, in the order of the two hours. Their minutes leave a slack: see `CLASS_MINUTES`. */
export const LESSONS: readonly Lesson[] = [
  {
    id: "grading",
    title: say`From jar to sieve to curve`,
    parts: [
      { what: say`Read the jar that was shaken the day before; from heights to mass`, minutes: 10 },
      { what: say`Sieve a dry, washed sample; weigh; what went down the drain`, minutes: 14 },
      { what: say`The curve, D60 and what is not known`, minutes: 7 },
      { what: say`Recommendations: what lying inside proves`, minutes: 4 },
    ],
    core: [
      "jar-sand-share",
      "jar-clay-by-mass",
      "passing-2-mm",
      "passing-finest",
      "d60-of-the-soil",
      "is-d10-known",
      "what-inside-proves",
    ],
  },
  {
    id: "blending",
    title: say`Blending by hand and by least squares`,
    parts: [
      { what: say`Sand by hand: a ratio, then a share`, minutes: 9 },
      { what: say`Least squares: all sizes at once`, minutes: 6 },
      { what: say`Buckets are not percent`, minutes: 5 },
    ],
    core: ["sand-to-one-of-soil", "soil-share", "sand-by-mass"],
  },
  {
    id: "cement",
    title: say`Cement, strength and how sure it is`,
    parts: [
      { what: say`From load to strength; break a block if there is a press`, minutes: 7 },
      { what: say`The line, and what its words mean`, minutes: 7 },
      { what: say`Three bounds; the least cement, rounded up`, minutes: 6 },
      { what: say`Three blocks in place of all`, minutes: 6 },
    ],
    core: ["strength-of-a-block", "cement-by-the-line", "cement-to-weigh-out", "three-blocks"],
  },
  {
    id: "saving",
    title: say`Cement saved, told honestly`,
    parts: [
      { what: say`Cement with cement`, minutes: 8 },
      { what: say`One bucket in ten: percent of what?`, minutes: 5 },
    ],
    core: ["cement-in-the-wall", "cement-saved", "cement-by-volume", "cement-by-mass"],
  },
];

/** The exercises of a lesson with the data of a class: those for everybody, and further ones. */
export interface LessonExercises {
  readonly core: readonly Exercise[];
  readonly further: readonly Exercise[];
}

/**
 * The exercises of a lesson. None where the class has not the data; single ones are left out where a
 * reading is missing.
 */
export function lessonExercises(day: ClassDay, id: LessonId): LessonExercises {
  const { core } = lessonOf(id);
  const all = exercisesOf(day, id);
  return {
    core: all.filter((exercise) => core.includes(exercise.id)),
    further: all.filter((exercise) => !core.includes(exercise.id)),
  };
}

function lessonOf(id: LessonId): Lesson {
  const found = LESSONS.find((lesson) => lesson.id === id);
  if (found) return found;
  throw new RangeError(
    `invalid \`id\`: ${String(id)}; expected ${LESSONS.map((lesson) => lesson.id).join(", ")}`,
  );
}

function exercisesOf(day: ClassDay, id: LessonId): readonly Exercise[] {
  const { group, guidance, blend, blocks, wall, units } = day;
  switch (id) {
    case "grading":
      return group?.soil && guidance ? gradingExercises(group.soil, guidance) : [];
    case "blending":
      return blend ? blendingExercises(blend, units) : [];
    case "cement":
      return blocks ? cementExercises(blocks, units) : [];
    case "saving":
      return wall ? savingExercises(wall, units) : [];
  }
}

/** What a class is to expect before it is computed, by lesson. */
function predictionsOf(day: ClassDay, id: LessonId): readonly AskedPrediction[] {
  const { group, blend, blocks, wall } = day;
  switch (id) {
    case "grading":
      return [
        {
          id: "clay",
          label: say`clay, % of the mass`,
          value: group?.soil?.fractions.clayPct,
        },
        {
          id: "fines",
          label: say`passing the finest sieve, %`,
          value: group?.soil?.sieve.points[0].passingPct,
          exercise: "passing-finest",
        },
        {
          id: "d60",
          label: say`D60, mm`,
          value: group?.soil?.sizes.d60,
          exercise: "d60-of-the-soil",
        },
      ];
    case "blending":
      return [
        {
          id: "sand-parts",
          label: say`parts of sand to one of soil`,
          value: blend?.byHand.sandToOneOfSoil ?? undefined,
          exercise: "sand-to-one-of-soil",
        },
        {
          id: "misfit-times",
          label: say`misfit by hand ÷ misfit by least squares`,
          value: blend && blend.handDesign.rmsDifferencePct / blend.design.rmsDifferencePct,
        },
      ];
    case "cement":
      return [
        {
          id: "least-cement",
          label: say`least cement, %`,
          value: blocks?.leastCement.cementPct ?? undefined,
        },
        {
          id: "no-answer",
          label: say`ways without an answer, of 100`,
          value: noAnswer(blocks),
          exercise: "three-blocks",
        },
      ];
    case "saving": {
      const saved = wall && wallCement(wall).trap.savingPct;
      return [
        {
          id: "saved",
          label: say`cement saved, %`,
          value: saved && (saved.low + saved.high) / 2,
          exercise: "cement-saved",
        },
        {
          id: "by-mass",
          label: say`cement by mass, %`,
          value: wall && bucketsByMass(wall).cementPct,
          exercise: "cement-by-mass",
        },
      ];
    }
  }
}

/** Of all ways to have three blocks, those by which no tested content meets the requirement. */
function noAnswer(blocks: ClassDay["blocks"]): number | undefined {
  if (!blocks) return undefined;
  const { requirement, specimens } = blocks;
  const draws = fewerBlocks(specimens, requirement);
  const none = draws.filter(({ minPct }) => minPct[requirement.statistic] === null);
  return (100 * none.length) / draws.length;
}

/**
 * Makes the exercises and predictions of a lesson known to `checkAnswer` and `predict`. Shows no number:
 * only how many exercises there are, or what is wrong with what the group typed.
 *
 * @throws RangeError for a lesson that is none.
 */
export function openLesson(day: ClassDay, id: LessonId): NoteBlock | FindingsBlock {
  const { title } = lessonOf(id);
  const { core, further } = lessonExercises(day, id);
  openExercises([...core, ...further]);
  openPredictions(predictionsOf(day, id));
  const { findings, group, study } = day;
  const ofLesson = findings.filter(
    ({ code, severity }) =>
      (severity === "error" && id === "grading") || code === "lesson-not-possible",
  );
  if (core.length === 0 && ofLesson.length > 0) return { kind: "findings", findings: ofLesson };
  if (id === "grading" && hasErrors(findings)) {
    return { kind: "findings", findings: findings.filter(({ severity }) => severity === "error") };
  }
  const whose = id === "grading" ? group?.name : study.config.title;
  return note(
    joinTexts(
      [
        say`${title}. Ready, with the numbers of ${whose ?? ""}.`,
        say`Exercises: ${core.length}, and ${further.length} for those who finish early.`,
      ],
      " ",
    ),
  );
}

/** The two hours part by part, with the exercises that everybody does and the slack that is left. */
export function rehearsalTable(): TableBlock {
  const rows: Text[][] = [];
  let at = 0;
  const add = (minutes: number, what: Text, where: Text) => {
    rows.push([String(at), String(minutes), what, where]);
    at += minutes;
  };
  add(WELCOME_MINUTES, say`Cautions, groups of three, one computer each`, "–");
  for (const { title, parts } of LESSONS) {
    for (const { what, minutes } of parts) add(minutes, what, title);
  }
  const slack = CLASS_MINUTES - at;
  add(slack, say`Slack: questions, a slow sieve, a computer that will not start`, "–");
  return {
    kind: "table",
    caption: say`Two hours, with ${slack} minutes of slack`,
    columns: [
      numberColumn(say`From`, "min"),
      numberColumn(say`Minutes`),
      { header: say`What` },
      { header: say`Notebook` },
    ],
    rows,
    notes: [
      say`Everybody does ${LESSONS.reduce((sum, { core }) => sum + core.length, 0)} exercises; the others stand under “Further” and are for those who finish early. With less time, leave out least squares and the three bounds; keep the washing, the three blocks and the trap of the saving.`,
    ],
  };
}
