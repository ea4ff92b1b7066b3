export type FieldBasis = "read" | "memory" | "common practice";

/** What may be concluded from what is seen, and how the rule is known. */
export interface FieldConclusion {
  readonly seen: string;
  readonly means: string;
  readonly basis: FieldBasis;
}

/** A line of the form. */
export interface FieldReading {
  readonly label: string;
  readonly unit?: string;
}

/** A test that needs no laboratory: what to do, write down and conclude, and what it cannot tell. */
export interface FieldTest {
  readonly id: string;
  readonly name: string;
  /** The one question it answers. */
  readonly asks: string;
  readonly tools: string;
  readonly steps: readonly string[];
  readonly readings: readonly FieldReading[];
  readonly conclusions: readonly FieldConclusion[];
  /** What people take from it and should not. */
  readonly doesNotTell: string;
  /** The laboratory test that settles the question. */
  readonly settledBy: string;
  /** Another test that shares a name or a look. */
  readonly notToBeMistakenFor?: string;
  readonly source: string;
}
