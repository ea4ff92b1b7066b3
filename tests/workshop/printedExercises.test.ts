import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import type { ReportBlock } from "../../src/blocks/block.js";
import { readGrid } from "../../src/lab/sheet/grid.js";
import type { UnitSystem } from "../../src/quantities/format.js";
import { openStudy } from "../../src/study/openStudy.js";
import { render, renderAll } from "../../src/words/render.js";
import * as shown from "../../src/workshop/classBlocks.js";
import { readClassSheet } from "../../src/workshop/classSheet.js";
import { LESSONS, lessonExercises } from "../../src/workshop/lesson.js";
import { type ClassDay, classDay } from "../../src/workshop/openClass.js";

const FOLDER = fileURLToPath(new URL("../../data-examples/class-day/", import.meta.url));

async function dayIn(units: UnitSystem): Promise<ClassDay> {
  const study = await openStudy(FOLDER, {
    change: (read) => ({ ...read, config: { ...read.config, units } }),
  });
  const { grid } = await readGrid("class.csv", readFileSync(join(FOLDER, "class.csv")));
  return classDay(study, readClassSheet(grid!));
}

/** What a class reads of its exercises, its tables and its notes. */
function pagesOf(day: ClassDay): string[] {
  const exercises = LESSONS.flatMap(({ id }) => {
    const { core, further } = lessonExercises(day, id);
    return [...core, ...further];
  }).map(({ id, question, hint, worked, why }) =>
    [`# ${id}`, question, hint, worked, why]
      .map((text) => (typeof text === "string" ? text : render(text)))
      .join("\n"),
  );
  const { classCautions: _, classFindings: __, ...ofClass } = shown;
  const blocks = Object.entries(ofClass).flatMap(([name, show]) => {
    const block = renderAll((show as (day: ClassDay) => ReportBlock)(day));
    if (block.kind === "note") return [`# ${name}\n${block.text}`];
    if (block.kind === "keyValues") {
      return [[`# ${name}`, ...block.items.map(({ value }) => value)].join("\n")];
    }
    if (block.kind !== "table") return [];
    const rows = block.rows.map((row) => row.join(" | "));
    return [[`# ${name}`, block.caption, ...rows, ...(block.notes ?? [])].join("\n")];
  });
  return [...exercises, ...blocks];
}

// Read sentence by sentence when it was written down, the sums done again. Where one changes on purpose, look
// at it, then run this file with `--update`.
it.each(["SI", "US"] as const)(
  "a class reads in %s what somebody has read before",
  async (units) => {
    const pages = pagesOf(await dayIn(units));
    expect(pages.join("\n")).not.toMatch(/NaN|Infinity|undefined/);
    await expect(`${pages.join("\n\n")}\n`).toMatchFileSnapshot(`expected/exercises.${units}.txt`);
  },
  60_000,
);
