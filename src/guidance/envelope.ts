import { type GradingCurve, passingAtSize } from "../grading/curve.js";
import { powerOf } from "../numerics/powerOf.js";
import { checkThat } from "../quantities/checkNumber.js";
import { say, type Text } from "../words/message.js";
import type { BandPoint, FractionName, GuidanceEntry, PowerCurves } from "./entry.js";

/** An envelope of gradings: an upper and a lower edge, with what stands behind them. */
export interface GradingEnvelope {
  /**
   * `published`: pairs of percent passing, as the source states them; `power`: between two power curves,
   * which hold at every size; `derived`: our arithmetic from fraction limits, with nothing known between
   * its sizes.
   */
  readonly kind: "published" | "power" | "derived";
  /** The sizes at which the envelope is stated, increasing. */
  readonly points: readonly BandPoint[];
  /** The points along which its edges are drawn: the same, or many on a power curve. */
  readonly edges: readonly BandPoint[];
}

/** Along a power curve, which is bent on the logarithm of size. */
const STEPS = 40;

/**
 * The envelope that an entry limits the percent passing to, ready to be drawn or held against a curve;
 * undefined where the entry limits no passing.
 *
 * @param curve the grading that it is held against. An entry that limits a part of the material (its
 * `ofPassingMm`) has an envelope only of a curve that reaches there: limit × passing of that size / 100.
 *
 * @example
 * const entry = GUIDANCE_ENTRIES.find(({ id }) => id === "usace-road-base");
 * const { kind, points } = gradingEnvelope(entry);
 * [kind, points[0]] // => ["published", { sizeMm: 0.075, lowPct: 5, highPct: 15 }]
 */
export function gradingEnvelope(
  entry: GuidanceEntry,
  curve?: GradingCurve,
): GradingEnvelope | undefined {
  if (entry.points.length === 0) return undefined;
  const points = ofWhole(entry, curve);
  if (points === undefined) return undefined;
  if (entry.power) {
    return { kind: "power", points, edges: alongPower(entry.power, points[0].sizeMm) };
  }
  return { kind: entry.derived ? "derived" : "published", points, edges: points };
}

/** The points in percent of the whole material. */
function ofWhole(
  { points, ofPassingMm }: GuidanceEntry,
  curve: GradingCurve | undefined,
): readonly BandPoint[] | undefined {
  if (ofPassingMm === undefined) return points;
  const part = curve && passingAtSize(curve, ofPassingMm);
  if (part === undefined) return undefined;
  return [...points, { sizeMm: ofPassingMm, lowPct: 100, highPct: 100 }].map(
    ({ sizeMm, lowPct, highPct }) => ({
      sizeMm,
      lowPct: (lowPct * part) / 100,
      highPct: (highPct * part) / 100,
    }),
  );
}

function alongPower(curves: PowerCurves, finestMm: number): BandPoint[] {
  const ratio = curves.topSizeMm / finestMm;
  return Array.from({ length: STEPS + 1 }, (_, step) =>
    onPower(curves, step === STEPS ? curves.topSizeMm : finestMm * powerOf(ratio, step / STEPS)),
  );
}

function onPower(
  { topSizeMm, exponents: [smaller, larger] }: PowerCurves,
  sizeMm: number,
): BandPoint {
  const passing = (exponent: number) => 100 * powerOf(sizeMm / topSizeMm, exponent);
  return { sizeMm, lowPct: passing(larger), highPct: passing(smaller) };
}

/** What the envelope of an entry is, in words: where its percentages come from, and of what they are. */
export function envelopeRemarks(entry: GuidanceEntry): Text[] {
  const { own, derived, power, ofPassingMm } = entry;
  if (own) return [power ? say`exponents of the study's own choice` : say`the study's own`];
  let kind = say`percent passing as published`;
  if (derived) kind = say`derived by us from fraction limits`;
  if (power) kind = say`computed by us from the exponents`;
  return ofPassingMm === undefined ? [kind] : [kind, say`of what passes ${ofPassingMm} mm`];
}

/** Fractions from the finest to the coarsest, with the band that follows from them by `deriveBand`. */
export function derivedBand(
  boundariesMm: GuidanceEntry["boundariesMm"],
  limits: readonly (readonly [fraction: FractionName, minPct: number, maxPct: number])[],
): Pick<GuidanceEntry, "boundariesMm" | "fractions" | "points" | "derived"> {
  const upTo: Partial<Record<FractionName, number>> = boundariesMm;
  const fractions = limits.map(([fraction, minPct, maxPct]) => ({ fraction, minPct, maxPct }));
  const ends = fractions.map(({ fraction, ...shares }, index) =>
    index === fractions.length - 1 ? shares : { ...shares, upToMm: upTo[fraction] },
  );
  return { boundariesMm, fractions, points: deriveBand(ends), derived: true };
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

/** The exponents of Austroads 1998. */
export const ROAD_EXPONENTS = [0.33, 0.5] as const;

/**
 * The envelope between two power curves as an entry: passing = 100 (size / top size)^exponent.
 *
 * @param topSizeMm size that everything passes, above 0.6 mm, so that four sieves lie below it.
 * @param exponents more than 0, at most 1, the smaller first; default 0.33 and 0.50. Others are the
 * reader's own choice, and the entry says so.
 * @throws RangeError where a number is out of range.
 * Source: exponents 0.33 to 0.50, Austroads 1998, and above 0.50 "segregates", below 0.33 "excessive fines",
 * as cited in Burroughs 2001 (thesis read); the passing is our arithmetic.
 *
 * @example
 * powerEnvelope(19).points.at(-3) // => { sizeMm: 9.5, lowPct: 70.7, highPct: 79.6 }
 * powerEnvelope(20, [0.2, 0.25]).own // => true
 */
export function powerEnvelope(
  topSizeMm: number,
  exponents: readonly [smaller: number, larger: number] = ROAD_EXPONENTS,
): GuidanceEntry {
  const sizes = POWER_SIZES_MM.filter((size) => size < topSizeMm);
  checkThat(Number.isFinite(topSizeMm) && sizes.length >= 4, { topSizeMm }, "above 0.6 mm");
  const [smaller, larger] = exponents;
  checkThat(smaller > 0, { "exponents[0]": smaller }, "more than 0");
  checkThat(larger >= smaller && larger <= 1, { "exponents[1]": larger }, `${smaller} to 1`);
  const power: PowerCurves = { topSizeMm, exponents };
  const isRoad = smaller === ROAD_EXPONENTS[0] && larger === ROAD_EXPONENTS[1];
  const common = {
    material: "road-base",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 4.75 },
    basis: "cited",
    confidence: "read",
    fractions: [],
    points: [...sizes, topSizeMm].map((sizeMm) => onPower(power, sizeMm)),
    derived: false,
    power,
    consistency: [],
  } as const;
  if (isRoad) {
    return {
      ...common,
      id: `power-${topSizeMm}mm`,
      title: say`Power curves between the exponents 0.33 and 0.50, maximum size ${topSizeMm} mm`,
      source: {
        authors: "Austroads",
        year: 1998,
        title: "as cited in Burroughs, V.S. (2001), PhD thesis, University of New South Wales",
        locator: say`exponents 0.33 to 0.50`,
        address: "https://doi.org/10.26190/unsworks/19954",
      },
      notes: say`For road bases: below 0.33 the fines are said to be excessive, above 0.50 the mix to segregate. Percent passing is computed by us from the exponents.`,
    };
  }
  const title = say`Power curves between the exponents ${smaller} and ${larger}, maximum size ${topSizeMm} mm`;
  return {
    ...common,
    id: `power-${topSizeMm}mm-${smaller}-${larger}`,
    title,
    material: "own",
    source: { authors: "This study", title: "Exponents of the study's own choice", locator: title },
    basis: "read",
    own: true,
    notes: say`Not a published recommendation.`,
  };
}

/** Sieves at which a power envelope is given. */
const POWER_SIZES_MM = [0.075, 0.15, 0.3, 0.6, 1.18, 2.36, 4.75, 9.5, 12.5, 19, 25, 37.5];
