/** An area behind the curves of a grading chart: an envelope, or how far a curve is in doubt. */
export interface ChartBand {
  /** Says what the band is and how far it can be trusted. */
  readonly name: string;
  /** Nothing is known between the points: they are drawn as bars, not joined to a band. */
  readonly pointsOnly?: boolean;
  /** The band is the doubt about this curve, counted from 0: it takes the curve's colour. */
  readonly aboutCurve?: number;
  readonly points: readonly {
    readonly sizeMm: number;
    readonly lowPct: number;
    readonly highPct: number;
  }[];
}
