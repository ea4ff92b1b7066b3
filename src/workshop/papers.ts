import type { ReportBlock } from "../blocks/block.js";
import type { Figure } from "../figures/figure.js";
import { formatFixed, formatNumber, formatPlain } from "../quantities/format.js";
import { BLANK } from "../tables/cell.js";
import { note, present } from "../tables/tableOf.js";
import { say, type Text } from "../words/message.js";
import { answerKey, mistakesTable } from "./answerKey.js";
import { classCautions, classRequirement } from "./classBlocks.js";
import { classRowLabel, JAR_TIMES_MIN, sieveRowLabel } from "./classSheet.js";
import type { Exercise } from "./exercise.js";
import { LESSONS, type LessonId, lessonExercises, rehearsalTable } from "./lesson.js";
import type { ClassDay } from "./openClass.js";
import { semiLogPaper } from "./readingChart.js";

/** Something to print, apart from its form: blocks, figures and the headings between them. */
export interface Paper {
  /** Name of its files. */
  readonly name: string;
  readonly title: Text;
  readonly parts: readonly (
    | ReportBlock
    | Figure
    | { readonly kind: "heading"; readonly text: Text }
  )[];
}

const heading = (text: Text) => ({ kind: "heading" as const, text });
const NEW_PAGE: ReportBlock = { kind: "pageBreak" };

/**
 * What pupils get on paper: the readings, every question with room to answer it, paper for a grading curve.
 * No answer stands in it, and no word that is about computers.
 */
export function worksheet(day: ClassDay): Paper {
  const asked: Exercise[] = [];
  const ask = (exercise: Exercise): ReportBlock => {
    const block = question(exercise, asked);
    asked.push(exercise);
    return block;
  };
  const parts = LESSONS.flatMap(({ id, title }): Paper["parts"] => {
    const { core, further } = onPaper(day, id);
    if (core.length + further.length === 0) return [];
    return present([
      id === "cement" && NEW_PAGE,
      heading(title),
      ...(id === "grading" ? readings(day) : []),
      id === "cement" && classRequirement(day),
      ...core.map(ask),
      further.length > 0 && heading(say`Further, for those who finish early`),
      ...further.map(ask),
    ]);
  });
  return {
    name: "worksheet",
    title: say`Worksheet`,
    parts: [
      classCautions("any", "dry-work", "wet-mix"),
      ...parts,
      NEW_PAGE,
      heading(say`Paper for a grading curve`),
      semiLogPaper(),
    ],
  };
}

/** These ask about a table, or a trial, that is longer than the question is worth on paper. */
const ON_SCREEN = ["outside-of-how-many", "worst-miscount"];

function onPaper(day: ClassDay, id: LessonId) {
  const { core, further } = lessonExercises(day, id);
  const printed = ({ id: exercise }: Exercise) => !ON_SCREEN.includes(exercise);
  return {
    core: core.filter(printed),
    further: further.filter(printed),
    onScreen: [...core, ...further].filter((exercise) => !printed(exercise)),
  };
}

function question(exercise: Exercise, before: readonly Exercise[]): ReportBlock {
  const text = say`${before.length + 1}. ${questionAfter(exercise, before)}`;
  if (exercise.kind === "choice") {
    const options = exercise.options.map((option) => option.text);
    return { kind: "question", text, options, lines: 0 };
  }
  const { unit } = exercise;
  return { kind: "question", text, lines: 1, ...(unit === "" ? {} : { unit }) };
}

/** The question as it is put after those before it: it tells the answer of none of them. */
function questionAfter({ question, recalls }: Exercise, before: readonly Exercise[]): Text {
  const at = before.findIndex(({ id }) => id === recalls?.id);
  if (recalls === undefined || at < 0) return question;
  // Of other readings, or with another content, it tells nothing.
  const { value } = before[at];
  const same =
    typeof value === "number" &&
    [formatFixed(value, 1), formatPlain(value)].some(
      ({ number }) => number === recalls.told.number,
    );
  return same ? recalls.question(String(at + 1)) : question;
}

/** What the questions on the soil are worked from. */
function readings({ group }: ClassDay): ReportBlock[] {
  if (!group?.soil) return [];
  const { sieveRecord, jarRecord, curve } = group.soil;
  const fine = curve.points.filter(({ origin }) => origin === "sedimentation");
  const mass = (grams: number) => formatPlain(grams, 5);
  const jar: ReportBlock[] = jarRecord
    ? [
        form(say`Jar of ${group.name}`, [
          [classRowLabel("waterDepth"), formatPlain(jarRecord.waterDepthMm)],
          ...jarRecord.layers.map(({ topMm }, index): Text[] => [
            classRowLabel((["sand", "silt", "clay"] as const)[index]),
            formatPlain(topMm),
          ]),
        ]),
      ]
    : [];
  return present([
    ...jar,
    form(say`Sieving of ${group.name}`, [
      [classRowLabel("dryMass"), mass(sieveRecord.dryMassG)],
      [
        classRowLabel("washedMass"),
        sieveRecord.washedDryMassG === undefined
          ? say`not washed`
          : mass(sieveRecord.washedDryMassG),
      ],
      ...sieveRecord.rows.map(({ label, retainedG }): Text[] => [
        sieveRowLabel(sieveName(label)),
        mass(retainedG),
      ]),
      [classRowLabel("pan"), mass(sieveRecord.panG)],
    ]),
    fine.length !== 0 &&
      form(
        say`The laboratory's hydrometer, of the same soil`,
        everyThird(fine).map(({ sizeMm, passingPct }): Text[] => [
          formatNumber(sizeMm, 2),
          formatFixed(passingPct, 1),
        ]),
        [say`Size, mm`, say`Passing, %`],
      ),
    {
      kind: "paragraph",
      text: say`Work out what passes each sieve, in percent of the dry mass before washing, and draw the curve on the paper at the end.`,
    },
  ]);
}

/** The finest point and enough others to draw a line through. */
function everyThird<Point>(points: readonly Point[]): readonly Point[] {
  return points.filter((_, index) => index % 3 === 0);
}

/** A bare number is an opening in mm. */
const sieveName = (label: string) => (/^[\d.]+$/.test(label) ? `${label} mm` : label);

function form(
  caption: Text,
  rows: readonly (readonly Text[])[],
  columns?: readonly Text[],
): ReportBlock {
  const headers = columns ?? [say`Reading`, say`Value`];
  return {
    kind: "table",
    caption,
    columns: headers.map((header, index) => ({ header, align: index === 0 ? "left" : "right" })),
    rows,
  };
}

/** Room to write a reading by hand, one line each. */
function toFillIn(caption: Text, labels: readonly Text[]): ReportBlock {
  return { kind: "signature", label: caption, lines: labels };
}

/** Sheets to fill in by hand: jar, sieving, and the results of all groups; then into the class's own file. */
export function classForms({ groups, units }: ClassDay): Paper {
  const [first] = groups.flatMap(({ soil }) => soil ?? []);
  const own = first?.sieveRecord.rows.map(({ label }) => sieveName(label)) ?? SI_SIEVES;
  const sieves = units === "US" && own.every((label) => label.endsWith(" mm")) ? US_SIEVES : own;
  const names = groups.length > 0 ? groups.map(({ name }) => name) : [say`group ${1}`];
  return {
    name: "class-sheets",
    title: say`Sheets to fill in`,
    parts: [
      classCautions("any", "dry-work"),
      heading(say`Jar`),
      { kind: "paragraph", text: WHO },
      {
        kind: "paragraph",
        text: say`Fill a third of a straight jar with soil, lumps broken, stones out. Fill up with water, add a pinch of salt, leave it for an hour, shake for two minutes, set it down and do not move it. Read the top of what has settled after ${JAR_TIMES_MIN.sand} minute, ${JAR_TIMES_MIN.silt} minutes and 24 hours.`,
      },
      toFillIn(say`The soil in the jar`, [classRowLabel("passedSieve")]),
      toFillIn(say`Heights above the bottom of the jar`, [
        classRowLabel("waterDepth"),
        classRowLabel("sand"),
        classRowLabel("silt"),
        classRowLabel("clay"),
      ]),
      note(
        say`With salt the clay clumps and comes down within the day; some comes down with the silt, so the line between the two is the least sure. Heights are not masses. No measured correction was found: apply none.`,
      ),
      NEW_PAGE,
      heading(say`Sieving`),
      { kind: "paragraph", text: WHO },
      {
        kind: "paragraph",
        text: say`Dry and weigh the sample. Wash the fines out over the finest sieve, dry and weigh again. Sieve from coarse to fine and weigh what stays on each sieve, then the pan. Not washed: leave that line empty. Sieve outdoors or with the lid on, with a fitted mask; damp the floor, not the sample.`,
      },
      toFillIn(say`Masses`, [
        classRowLabel("dryMass"),
        classRowLabel("washedMass"),
        ...sieves.map(sieveRowLabel),
        classRowLabel("pan"),
      ]),
      NEW_PAGE,
      heading(say`Results of the class`),
      form(
        say`One column a group`,
        [
          say`sand in the jar, % of the height`,
          say`silt in the jar, % of the height`,
          say`clay in the jar, % of the height`,
          say`passing the finest sieve, %`,
          say`D60, mm`,
          say`sand to one of soil, by hand`,
          say`least cement, %`,
          say`cement saved, %`,
        ].flatMap((label): Text[][] => [
          [label, ...names.map(() => "")],
          ["\u00a0", ...names.map(() => "")],
        ]),
        [say`Result`, ...names],
      ),
      NEW_PAGE,
      heading(say`Paper for a grading curve`),
      semiLogPaper(),
    ],
  };
}

const WHO = say`Group: _________________   Soil: _________________   Date: ____________`;
const SI_SIEVES = ["16 mm", "8 mm", "4 mm", "2 mm", "0.6 mm", "0.2 mm", "0.063 mm"];
const US_SIEVES = ["3/4 in", "3/8 in", "No. 4", "No. 10", "No. 40", "No. 100", "No. 200"];

/** The teacher's: timing, all answers as numbered on the worksheet, and the usual mistakes. */
export function answerPaper(day: ClassDay): Paper {
  let last = 0;
  const lessons = LESSONS.flatMap(({ id, title }) => {
    const { core, further, onScreen } = onPaper(day, id);
    const exercises = [...core, ...further, ...onScreen];
    if (exercises.length === 0) return [];
    const numbers = exercises.map((exercise): Text => {
      if (onScreen.includes(exercise)) return BLANK;
      last += 1;
      return String(last);
    });
    return [{ title, exercises, numbers }];
  });
  return {
    name: "key",
    title: say`Key to the worksheet`,
    parts: [
      rehearsalTable(),
      ...lessons.map(({ title, exercises, numbers }) => answerKey(title, exercises, numbers)),
      NEW_PAGE,
      heading(say`Common mistakes`),
      ...lessons.map(({ title, exercises, numbers }) => mistakesTable(title, exercises, numbers)),
    ],
  };
}
