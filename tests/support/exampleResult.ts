import { join } from "node:path";
import { openStudy } from "../../src/study/openStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { EXAMPLES } from "./studyCopy.js";

export const EXAMPLE_NAMES = ["reading-room", "bus-shelter"] as const;

const opened = new Map<string, Promise<StudyResult>>();

/** The computed result of an example study: computed once, and frozen, for all tests of a thread. */
export function exampleResult(name: (typeof EXAMPLE_NAMES)[number]): Promise<StudyResult> {
  const known = opened.get(name) ?? openStudy(join(EXAMPLES, name)).then(frozen);
  opened.set(name, known);
  return known;
}

function frozen<T>(data: T): T {
  if (typeof data !== "object" || data === null || Object.isFrozen(data)) return data;
  Object.freeze(data);
  for (const value of Object.values(data)) frozen(value);
  return data;
}
