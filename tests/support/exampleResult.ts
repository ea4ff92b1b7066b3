import { join } from "node:path";
import type { BlendDesign } from "../../src/blend/description.js";
import type { MaterialConfig, StrengthConfig, StudyConfig } from "../../src/entries/studyConfig.js";
import { openStudy } from "../../src/study/openStudy.js";
import type { BlendStudy, StrengthStudy, StudyResult } from "../../src/study/studyResult.js";
import { EXAMPLES } from "./studyCopy.js";

type Told<T, K extends keyof T> = Omit<T, K> & Required<Pick<T, K>>;

/** Entries of a study that tells all that the examples tell. */
export type FullConfig = Told<
  Omit<StudyConfig, "materials" | "strength">,
  "title" | "place" | "date" | "target" | "guidance" | "cement" | "batchDryMassKg"
> & {
  readonly materials: readonly Told<
    MaterialConfig,
    "particleDensityKgM3" | "looseBulkDensityKgM3" | "moisturePct"
  >[];
  readonly strength: Told<StrengthConfig, "sheet" | "requirement">;
};

/** A result with every section but those of a tested mix, as the examples have it. */
export type FullResult = Told<
  Omit<StudyResult, "config" | "strength" | "blend">,
  "blendSpread" | "guidanceComparison" | "testing"
> & {
  readonly config: FullConfig;
  readonly strength: Told<StrengthStudy, "leastCement">;
  readonly blend: BlendStudy & BlendDesign;
};

/** Says that a result is full, and throws where it is not. */
export function full(result: StudyResult): FullResult {
  const { blend, strength, testing } = result;
  const answered = testing?.state !== "tested" || strength?.leastCement !== undefined;
  if (!blend || !strength || !testing || !answered) throw new Error("this result is not full");
  return result as FullResult;
}

export const EXAMPLE_NAMES = ["reading-room", "bus-shelter"] as const;

const opened = new Map<string, Promise<StudyResult>>();

/** The computed result of any example: computed once, and frozen, for all tests of a process. */
export function openExample(name: string): Promise<StudyResult> {
  const known = opened.get(name) ?? openStudy(join(EXAMPLES, name)).then(frozen);
  opened.set(name, known);
  return known;
}

/** An example that tells all. */
export async function exampleResult(name: (typeof EXAMPLE_NAMES)[number]): Promise<FullResult> {
  return full(await openExample(name));
}

function frozen<T>(data: T): T {
  if (typeof data !== "object" || data === null || Object.isFrozen(data)) return data;
  Object.freeze(data);
  for (const value of Object.values(data)) frozen(value);
  return data;
}
