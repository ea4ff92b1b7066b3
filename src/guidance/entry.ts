import type { EnvelopeRecord } from "../lab/envelope.js";
import { say, type Text } from "../words/message.js";

/** Where a statement comes from. */
export interface Source {
  readonly authors: string;
  readonly year?: number;
  readonly title: string;
  readonly locator: Text;
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
  readonly title: Text;
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
  readonly notes: Text;
}

/** A fraction between its neighbour's upper size and its own; percent of the dry mass. */
export interface BandFraction {
  /** Left out for the coarsest fraction: 100 % pass its end in any case. */
  readonly upToMm?: number;
  readonly minPct: number;
  readonly maxPct: number;
}

/**
 * What fraction limits say about the percent passing at the sizes between the fractions.
 *
 * Formula: fractions sum to 100, so passing at the end of fraction k lies between
 * max(Σ minima finer, 100 − Σ maxima coarser) and min(Σ maxima finer, 100 − Σ minima coarser).
 * Our arithmetic, not a published curve: it gives one point a boundary and nothing in between.
 *
 * @param fractions from the finest to the coarsest, all of the material.
 * @throws RangeError where no soil can meet all limits, or a limit is not 0 to 100 or the wrong way round.
 *
 * @example
 * deriveBand([{ upToMm: 0.002, minPct: 5, maxPct: 20 }, { upToMm: 0.063, minPct: 10, maxPct: 30 }, { minPct: 45, maxPct: 80 }]) // => [{ sizeMm: 0.002, lowPct: 5, highPct: 20 }, { sizeMm: 0.063, lowPct: 20, highPct: 50 }]
 */
export function deriveBand(fractions: readonly BandFraction[]): BandPoint[] {
  fractions.forEach(({ minPct, maxPct }, index) => {
    if (!(minPct >= 0 && minPct <= maxPct && maxPct <= 100)) {
      throw new RangeError(
        `invalid \`fractions[${index}]\`: ${minPct} to ${maxPct}; expected 0 to 100, smallest first`,
      );
    }
  });
  const sum = (part: readonly BandFraction[], key: "minPct" | "maxPct") =>
    part.reduce((total, fraction) => total + fraction[key], 0);
  if (sum(fractions, "minPct") > 100 || sum(fractions, "maxPct") < 100) {
    throw new RangeError(
      `invalid \`fractions\`: they add up to ${sum(fractions, "minPct")} to ${sum(fractions, "maxPct")}; expected a range that holds 100`,
    );
  }
  return fractions.flatMap(({ upToMm }, index): BandPoint[] => {
    if (upToMm === undefined) return [];
    const [finer, coarser] = [fractions.slice(0, index + 1), fractions.slice(index + 1)];
    return [
      {
        sizeMm: upToMm,
        lowPct: Math.max(sum(finer, "minPct"), 100 - sum(coarser, "maxPct")),
        highPct: Math.min(sum(finer, "maxPct"), 100 - sum(coarser, "minPct")),
      },
    ];
  });
}

/**
 * A study's own grading envelope as an entry, to be checked like a published one and marked as the
 * study's own wherever a verdict stands.
 *
 * @example
 * const record = { file: "sheets/envelope.csv", title: "Our pit, 2024", source: "trial walls", points: [{ sizeMm: 0.063, lowPct: 15, highPct: 30, row: 5 }] };
 * const entry = envelopeEntry(record);
 * [entry.id, entry.own, entry.points] // => ["own", true, [{ sizeMm: 0.063, lowPct: 15, highPct: 30 }]]
 */
export function envelopeEntry({ file, title, source, points }: EnvelopeRecord): GuidanceEntry {
  return {
    id: "own",
    title,
    material: "own",
    source: { authors: "This study", title: source, locator: file },
    basis: "read",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.063, sand: 2 },
    fractions: [],
    points: points.map(({ sizeMm, lowPct, highPct }) => ({ sizeMm, lowPct, highPct })),
    derived: false,
    consistency: [],
    own: true,
    notes: say`Not a published recommendation.`,
  };
}
