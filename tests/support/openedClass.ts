import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readGrid } from "../../src/lab/sheet/grid.js";
import type { UnitSystem } from "../../src/quantities/format.js";
import { openStudy } from "../../src/study/openStudy.js";
import { readClassSheet } from "../../src/workshop/classSheet.js";
import { type ClassDay, classDay } from "../../src/workshop/openClass.js";
import { openExample } from "./exampleResult.js";
import { EXAMPLES } from "./studyCopy.js";

const opened = new Map<UnitSystem, Promise<ClassDay>>();

/** The shipped class, or that of a school in the United States: the same data, read in other units. */
export function openedClass(units: UnitSystem = "SI"): Promise<ClassDay> {
  const known = opened.get(units) ?? openIn(units);
  opened.set(units, known);
  return known;
}

async function openIn(units: UnitSystem): Promise<ClassDay> {
  const folder = join(EXAMPLES, "class-day");
  const study =
    units === "SI"
      ? openExample("class-day")
      : openStudy(folder, {
          change: (read) => ({ ...read, config: { ...read.config, units } }),
        });
  const { grid } = await readGrid("class.csv", readFileSync(join(folder, "class.csv")));
  if (grid === undefined) throw new Error("class.csv cannot be read");
  return classDay(await study, readClassSheet(grid));
}
