/**
 * A sieve analysis as read from its sheet: masses in g, sizes in mm, coarse to fine.
 *
 * A composite analysis has splits: rows finer than `splits[i].sizeMm` were measured on that
 * split's subsample, not on the whole sample.
 */
export interface SieveRecord {
  readonly file: string;
  /** Dry mass of the whole sample before washing. */
  readonly dryMassG: number;
  /** Dry mass after washing, where the (undivided) sample was washed. */
  readonly washedDryMassG?: number;
  /** From the coarsest split to the finest; empty for a single set. */
  readonly splits: readonly SieveSplit[];
  /** Strictly decreasing sizes. */
  readonly rows: readonly SieveRow[];
  /** Mass in the pan under the last sieve of the (finest) set. */
  readonly panG: number;
  /** The sheet gave percentages and no mass: grams here are percent, and no mass can be checked. */
  readonly massesUnknown?: true;
}

export interface SieveSplit {
  readonly sizeMm: number;
  /** Dry mass of the subsample before washing. */
  readonly dryMassG: number;
  readonly washedDryMassG?: number;
}

export interface SieveRow {
  readonly sizeMm: number;
  readonly retainedG: number;
  /** The sieve as written in the sheet. */
  readonly label: string;
  /** Row of the sheet, from 1. */
  readonly row: number;
}
