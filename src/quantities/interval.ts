/** Two ends that a value lies between. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}
