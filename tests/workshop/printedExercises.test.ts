import { expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import type { Interval } from "../../src/quantities/interval.js";
import { render, renderAll, type Said } from "../../src/words/render.js";
import * as shown from "../../src/workshop/classBlocks.js";
import { acceptedRange } from "../../src/workshop/exercise.js";
import { LESSONS, lessonExercises } from "../../src/workshop/lesson.js";
import type { ClassDay } from "../../src/workshop/openClass.js";
import { classForms, type Paper, worksheet } from "../../src/workshop/papers.js";
import { openedClass } from "../support/openedClass.js";

/** A block as lines; nothing of a figure. */
function linesOf(block: ReportBlock | Paper["parts"][number]): readonly string[] {
  const said = renderAll(block) as Said<ReportBlock>;
  switch (said.kind) {
    case "note":
      return [said.text];
    case "keyValues":
      return said.items.map(({ label, value }) => `${label} | ${value}`);
    case "signature":
      return [said.label, ...said.lines];
    case "table":
      return [said.caption, ...said.rows.map((row) => row.join(" | ")), ...(said.notes ?? [])];
    default:
      return [];
  }
}

const written = (value: number | string) =>
  typeof value === "number" ? `${Number(value.toPrecision(4))}` : value;
const acceptedWords = ({ low, high }: Interval) => `${written(low)} to ${written(high)}`;

/** What a class reads of its exercises, its tables, its notes and its papers. */
function pagesOf(day: ClassDay): string[] {
  const exercises = LESSONS.flatMap(({ id }) => {
    const { core, further } = lessonExercises(day, id);
    return [...core, ...further];
  }).map((exercise) => {
    const { id, question, hint, worked, why, mistakes } = exercise;
    return [
      `# ${id}`,
      ...[question, hint, worked, why].map((text) => render(text)),
      exercise.kind === "choice" ? exercise.value : acceptedWords(acceptedRange(exercise)),
      ...mistakes.map(({ value, text }) => `${written(value)}: ${render(text)}`),
    ];
  });
  const { classCautions: _, classFindings: __, ...ofClass } = shown;
  const blocks = Object.entries(ofClass).map(([name, show]) => [
    `# ${name}`,
    ...linesOf((show as (day: ClassDay) => ReportBlock)(day)),
  ]);
  const papers = [worksheet(day), classForms(day)].map(({ name, parts }) => [
    `# ${name}`,
    ...parts.flatMap(linesOf),
  ]);
  const pages = [...exercises, ...blocks, ...papers].filter((lines) => lines.length > 1);
  return pages.map((lines) => lines.join("\n"));
}

// Read sentence by sentence when it was written down; most sums in SI, a few in US units, were done again by
// hand. Where one changes on purpose, look at it, then run this file with `--update`.
it.each(["SI", "US"] as const)(
  "a class reads in %s what was read when it was written down",
  async (units) => {
    const pages = pagesOf(await openedClass(units));
    expect(pages.join("\n")).not.toMatch(/NaN|Infinity|undefined/);
    await expect(`${pages.join("\n\n")}\n`).toMatchFileSnapshot(`expected/exercises.${units}.txt`);
  },
  60_000,
);
