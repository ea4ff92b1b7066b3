/** How a sample of a material was taken: the user's statement, printed as it stands. */
export interface SamplingConfig {
  /** Id of the material. */
  readonly material: string;
  readonly where: string;
  readonly how: string;
  /** Pits, boreholes or heaps that the sample was put together from. */
  readonly pits?: number;
  /** ISO 8601 calendar date. */
  readonly date?: string;
}
