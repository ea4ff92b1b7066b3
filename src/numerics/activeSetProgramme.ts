/**
 * The form in which the active-set solver takes a problem, all arrays row-major:
 * minimise `‖matrix z - target‖` with `conditions z = limits` for the first `equalities` rows,
 * `conditions z <= limits` for the others, and `lower <= z <= upper`.
 */
export interface ActiveSetProgramme {
  readonly unknowns: number;
  readonly rows: number;
  readonly matrix: Float64Array;
  readonly target: Float64Array;
  readonly conditions: Float64Array;
  readonly limits: Float64Array;
  readonly equalities: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}
