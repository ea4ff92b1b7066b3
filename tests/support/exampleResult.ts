import { join } from "node:path";
import { openStudy } from "../../src/study/openStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";
import { EXAMPLES } from "./studyCopy.js";

export const EXAMPLE_NAMES = ["reading-room", "bus-shelter"] as const;

/** The computed result of an example study. */
export function exampleResult(name: (typeof EXAMPLE_NAMES)[number]): Promise<StudyResult> {
  return openStudy(join(EXAMPLES, name));
}
