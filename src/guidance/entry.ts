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
  /** How much this size counts where a blend aims at the band; left out, 1. */
  readonly weight?: number;
}

/** Two power curves, passing = 100 (size / top size)^exponent, between which a grading is to lie. */
export interface PowerCurves {
  readonly topSizeMm: number;
  /** The smaller exponent gives the finer curve, the upper edge. */
  readonly exponents: readonly [smaller: number, larger: number];
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
  /** The points lie on these curves, which hold at every size between. */
  readonly power?: PowerCurves;
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
    points: points.map(({ row, ...point }) => point),
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
  if (own) return say`supplied with the study; source not checked`;
  return SOURCE_MARKS[basis];
}

const SOURCE_MARKS: Readonly<Record<GuidanceEntry["basis"], Text>> = {
  read: say`read`,
  abstract: say`abstract read`,
  cited: say`secondary citation`,
  memory: say`from memory; not read`,
};

/**
 * A source in a few words, as a reader cites it: the first author and the year; an envelope of the study's
 * own by its title.
 *
 * @example
 * render(shortSource(GUIDANCE_ENTRIES.find(({ id }) => id === "walker-2005"))) // => "Walker 2005"
 */
export function shortSource({ title, own, source: { authors, year } }: GuidanceEntry): Text {
  if (own) return title;
  const author = authors.split(/[;,(]/)[0].trim();
  return year === undefined ? author : `${author} ${year}`;
}
