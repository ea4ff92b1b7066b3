import type { Exercise } from "./exercise.js";

export interface Prediction {
  /** A number, or a short text. */
  readonly value: number | string;
  /** Said after the computed value had been shown. */
  readonly afterwards: boolean;
}

/**
 * What this process knows of the workshop: it lasts as long as the notebook's kernel and is written
 * nowhere. Of this process, because one kernel serves one notebook of one group.
 */
export const workshopMemory = {
  exercises: new Map<string, Exercise>(),
  tries: new Map<string, number>(),
  predictions: new Map<string, Prediction>(),
  /** Names whose computed value was shown. */
  revealed: new Set<string>(),
};
