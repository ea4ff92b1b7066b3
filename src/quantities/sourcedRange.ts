import type { Text } from "../words/message.js";
import type { Interval } from "./interval.js";

/** A factor with the range that sources give, never one bare number. */
export interface SourcedRange extends Interval {
  readonly id: string;
  readonly name: Text;
  readonly unit: string;
  readonly source: Text;
  /** `entered`: the user gave it, with the source in their own words. */
  readonly basis: "read" | "memory" | "entered";
}
