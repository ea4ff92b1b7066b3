import type { EnvelopeRecord } from "../lab/envelope.js";
import { powerOf } from "../numerics/powerOf.js";
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
  | "sulphatePct"
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

export type SelectionClass = "favourable" | "satisfactory" | "unfavourable" | "not classified";

/** Classes of a soil for stabilisation, by shrinkage and plasticity together and, between them, by sand. */
export interface SelectionClasses {
  /** A soil with less of both is favourable. */
  readonly favourableBelow: ClassLimit;
  /** A soil with more of both is unfavourable; between the two limits the sand decides. */
  readonly unfavourableAbove: ClassLimit;
  readonly sand: {
    readonly limitPct: number;
    readonly below: SelectionClass;
    readonly fromThere: SelectionClass;
  };
  /** How many soils of a class reached the strength, as the source puts it. */
  readonly success: Readonly<Partial<Record<SelectionClass, Text>>>;
}

interface ClassLimit {
  readonly linearShrinkagePct: number;
  readonly plasticityIndexPct: number;
}

/** What a recommendation was written for. */
export type GuidanceMaterial =
  | "rammed-earth"
  | "stabilised-rammed-earth"
  | "soil-cement"
  | "compressed-block"
  | "road-base"
  | "own";

/** One published recommendation about soils, as data. */
export interface GuidanceEntry {
  readonly id: string;
  readonly title: Text;
  readonly material: GuidanceMaterial;
  readonly source: Source;
  /**
   * `read`: the figures were read in the source; `abstract`: in its abstract or opening only; `cited`: in
   * another work or page that cites it; `memory`: not at all, check before citing.
   */
  readonly basis: "read" | "abstract" | "cited" | "memory";
  readonly confidence: "read" | "high" | "medium-high" | "medium" | "low";
  /** Upper sizes of clay, silt and sand that the fractions below mean. */
  readonly boundariesMm: { readonly clay: number; readonly silt: number; readonly sand: number };
  readonly fractions: readonly FractionLimit[];
  /** Limits of passing and fractions are of the part that passes this size; left out, of the whole. */
  readonly ofPassingMm?: number;
  /** Increasing size; empty where the source limits no passing. */
  readonly points: readonly BandPoint[];
  /** The points are our arithmetic from the fraction limits, not a published curve. */
  readonly derived: boolean;
  readonly consistency: readonly ConsistencyLimit[];
  /** Linear shrinkage, plasticity and sand judged together, by `selectionClass`. */
  readonly classes?: SelectionClasses;
  /** Organic matter, sulphate, salts, top size, density; left out where the entry limits none of them. */
  readonly others?: readonly OtherLimit[];
  /** The study brought it along: nothing published, and its source is the user's own words. */
  readonly own?: true;
  readonly notes: Text;
}

/** An entry as it is written down: what its source does not limit is left out. */
export type WrittenEntry = Omit<GuidanceEntry, Limits> & Partial<Pick<GuidanceEntry, Limits>>;
type Limits = "fractions" | "points" | "derived" | "consistency";

export function published(written: WrittenEntry): GuidanceEntry {
  return { fractions: [], points: [], derived: false, consistency: [], ...written };
}

/** Fractions from the finest to the coarsest, with the band that follows from them by `deriveBand`. */
export function derivedBand(
  boundariesMm: GuidanceEntry["boundariesMm"],
  limits: readonly (readonly [fraction: FractionName, minPct: number, maxPct: number])[],
): Pick<GuidanceEntry, "fractions" | "points" | "derived"> {
  const upTo: Partial<Record<FractionName, number>> = boundariesMm;
  const fractions = limits.map(([fraction, minPct, maxPct]) => ({ fraction, minPct, maxPct }));
  const ends = fractions.map(({ fraction, ...shares }, index) =>
    index === fractions.length - 1 ? shares : { ...shares, upToMm: upTo[fraction] },
  );
  return { fractions, points: deriveBand(ends), derived: true };
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

/**
 * How the figures of an entry are known, in words: read is said only where they were read themselves.
 *
 * @example
 * sourceMark(GUIDANCE_ENTRIES.find(({ id }) => id === "burroughs-2008")) // => { text: "abstract read", values: [] }
 */
export function sourceMark({ own, basis }: GuidanceEntry): Text {
  if (own) return say`the study's own; its origin was not checked`;
  return SOURCE_MARKS[basis];
}

const SOURCE_MARKS: Readonly<Record<GuidanceEntry["basis"], Text>> = {
  read: say`read`,
  abstract: say`abstract read`,
  cited: say`as cited in the work named`,
  memory: say`from memory; not read`,
};

/**
 * The envelope between two power curves as an entry: passing = 100 (size / top size)^exponent.
 *
 * @param topSizeMm size that everything passes.
 * @throws RangeError where the top size is not above 0.75 mm.
 * Source: exponents 0.33 to 0.50, Austroads 1998, and above 0.50 "segregates", below 0.33 "excessive fines",
 * as cited in Burroughs 2001 (thesis read); the passing is our arithmetic.
 *
 * @example
 * powerEnvelope(19).points.at(-3) // => { sizeMm: 9.5, lowPct: 70.7, highPct: 79.6 }
 */
export function powerEnvelope(topSizeMm: number): GuidanceEntry {
  const sizes = POWER_SIZES_MM.filter((size) => size < topSizeMm);
  if (sizes.length < 4) {
    throw new RangeError(`invalid \`topSizeMm\`: ${topSizeMm}; expected above 0.75 mm`);
  }
  const passing = (sizeMm: number, exponent: number) => 100 * powerOf(sizeMm / topSizeMm, exponent);
  return {
    id: `power-${topSizeMm}mm`,
    title: say`Power curves between the exponents 0.33 and 0.50, largest grain ${topSizeMm} mm`,
    material: "road-base",
    source: {
      authors: "Austroads",
      year: 1998,
      title: "as cited in Burroughs, V.S. (2001), PhD thesis, University of New South Wales",
      locator: say`exponents 0.33 to 0.50`,
      address: "https://doi.org/10.26190/unsworks/19954",
    },
    basis: "cited",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 4.75 },
    fractions: [],
    points: [
      ...sizes.map((sizeMm) => ({
        sizeMm,
        lowPct: passing(sizeMm, 0.5),
        highPct: passing(sizeMm, 0.33),
      })),
      { sizeMm: topSizeMm, lowPct: 100, highPct: 100 },
    ],
    derived: false,
    consistency: [],
    notes: say`For road bases: below 0.33 the fines are called excessive, above 0.50 the mix is said to segregate. The passing is our arithmetic from the exponents.`,
  };
}

/** Sieves at which a power envelope is given. */
const POWER_SIZES_MM = [0.075, 0.15, 0.3, 0.6, 1.18, 2.36, 4.75, 9.5, 12.5, 19, 25, 37.5];
