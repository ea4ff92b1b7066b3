import type { EnvelopeRecord } from "../lab/envelopeRecord.js";
import { say } from "../words/say.js";
import type { GuidanceEntry } from "./guidanceEntry.js";

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
