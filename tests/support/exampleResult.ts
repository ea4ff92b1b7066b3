import { join } from "node:path";
import type { LeastCement } from "../../src/strength/leastCement.js";
import { openStudy } from "../../src/study/openStudy.js";
import type { StudyResult } from "../../src/study/studyResult.js";

/** A study of which every stage is known, down to the quantities. */
export type CompleteResult = StudyResult &
  Required<
    Pick<StudyResult, "blend" | "blendSpread" | "guidanceComparison" | "compaction" | "life">
  > & {
    readonly strength: Required<StudyResult>["strength"] & { readonly leastCement: LeastCement };
  };

/** Says so of a result, and throws where it is not. */
export function complete(result: StudyResult): CompleteResult {
  const open = result.stages.filter(({ known }) => !known).map(({ stage }) => stage);
  if (open.length > 0) throw new Error(`not known: ${open.join(", ")}`);
  return result as CompleteResult;
}

import { EXAMPLES } from "./studyCopy.js";

export const EXAMPLE_NAMES = ["reading-room", "bus-shelter"] as const;

const opened = new Map<string, Promise<CompleteResult>>();

/** The computed result of an example study: computed once, and frozen, for all tests of a thread. */
export function exampleResult(name: (typeof EXAMPLE_NAMES)[number]): Promise<CompleteResult> {
  const known =
    opened.get(name) ?? openStudy(join(EXAMPLES, name)).then((result) => frozen(complete(result)));
  opened.set(name, known);
  return known;
}

function frozen<T>(data: T): T {
  if (typeof data !== "object" || data === null || Object.isFrozen(data)) return data;
  Object.freeze(data);
  for (const value of Object.values(data)) frozen(value);
  return data;
}
