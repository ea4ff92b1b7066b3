/** A clause of the user's own code, and where the report answers it. */
export interface ClauseConfig {
  /** As the code numbers it. */
  readonly clause: string;
  readonly requirement: string;
  /** Key of a section of the report; absent while the clause is open. */
  readonly answeredBy?: string;
  readonly remark?: string;
}

/** One line of the decision log. */
export interface DecisionConfig {
  /** ISO 8601 calendar date. */
  readonly date: string;
  readonly what: string;
  readonly why: string;
  readonly insteadOf?: string;
}
