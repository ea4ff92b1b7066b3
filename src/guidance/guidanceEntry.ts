/** Where a statement comes from. */
export interface Source {
  readonly authors: string;
  readonly year?: number;
  readonly title: string;
  readonly locator: string;
  /** Address of the copy that was read. */
  readonly address?: string;
}

export type FractionName = "clay" | "silt" | "fines" | "sand" | "gravel" | "sandAndGravel";

/** Percent of the dry mass, by the entry's own size boundaries. */
export interface FractionLimit {
  readonly fraction: FractionName;
  readonly minPct: number;
  readonly maxPct: number;
}

/** Limits of the percent passing at a size. */
export interface BandPoint {
  readonly sizeMm: number;
  readonly lowPct: number;
  readonly highPct: number;
}

export interface ConsistencyLimit {
  readonly quantity: "liquidLimitPct" | "plasticityIndexPct" | "linearShrinkagePct";
  readonly minPct?: number;
  readonly maxPct?: number;
  /** The largest value itself no longer counts as inside. */
  readonly below?: boolean;
}

export type OtherQuantity =
  | "organicPct"
  | "saltsPct"
  | "topSizeMm"
  | "dryDensityKgM3"
  | "plasticLimitPct";

/** A limit of something that is not read off the grading curve alone. */
export interface OtherLimit {
  readonly quantity: OtherQuantity;
  readonly min?: number;
  readonly max?: number;
}

/** One published recommendation about soils, as data. */
export interface GuidanceEntry {
  readonly id: string;
  readonly title: string;
  readonly material:
    | "rammed-earth"
    | "stabilised-rammed-earth"
    | "soil-cement"
    | "compressed-block"
    | "own";
  readonly source: Source;
  /** `read`: the statement was seen, often in an abstract only. `memory`: it was not; check before citing. */
  readonly basis: "read" | "memory";
  readonly confidence: "read" | "high" | "medium-high" | "medium" | "low";
  /** Upper sizes of clay, silt and sand that the fractions below mean. */
  readonly boundariesMm: { readonly clay: number; readonly silt: number; readonly sand: number };
  readonly fractions: readonly FractionLimit[];
  /** Increasing size; empty where the source limits no passing. */
  readonly points: readonly BandPoint[];
  /** The points are our arithmetic from the fraction limits, not a published curve. */
  readonly derived: boolean;
  readonly consistency: readonly ConsistencyLimit[];
  /** Linear shrinkage, plasticity and sand are judged together by `burroughsClass`. */
  readonly judgedTogether?: true;
  /** Organic matter, salts, top size, density; left out where the entry limits none of them. */
  readonly others?: readonly OtherLimit[];
  /** The study brought it along: nothing published, and its source is the user's own words. */
  readonly own?: true;
  readonly notes: string;
}
