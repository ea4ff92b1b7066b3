import { say } from "../../words/message.js";
import { type GuidanceEntry, published, type WrittenEntry } from "../entry.js";
import { derivedBand, powerEnvelope, ROAD_EXPONENTS } from "../envelope.js";
import { READ_ENTRIES } from "./read.js";
import { REMEMBERED_ENTRIES } from "./remembered.js";

const BS = { clay: 0.002, silt: 0.06, sand: 2 };

/** Entries for compressed blocks: the nearest trade, shown beside those for walls and never for them. */
const BLOCK_ENTRIES: readonly WrittenEntry[] = [
  {
    id: "kerali-blocks",
    title: say`Soil for stabilised blocks`,
    material: "compressed-block",
    source: {
      authors: "thesis excerpt, after Gooding 1993, VITA 1975, BRU 1974 and Webb 1988",
      title: "Selection of suitable soil for stabilisation",
      locator: say`section text`,
      address: "https://1library.net/article/selection-of-suitable-soil-for-stabilisation.yev3351z",
    },
    basis: "cited",
    confidence: "read",
    boundariesMm: BS,
    fractions: [{ fraction: "clay", minPct: 10, maxPct: 35 }],
    consistency: [{ quantity: "linearShrinkagePct", minPct: 2.5, maxPct: 9 }],
    notes: say`Outside the shrinkage range, reject or blend. The clay content is for cohesion, after BRU 1974.`,
  },
  {
    id: "craterre-blocks",
    title: say`Compressed earth blocks, Africa`,
    material: "compressed-block",
    source: {
      authors: "CRATerre-EAG; CDE; ARSO",
      year: 1998,
      title: "Compressed Earth Blocks: Standards (Technologies Series 11)",
      locator: say`grading and plasticity zones (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    ...derivedBand(BS, [
      ["clay", 8, 30],
      ["silt", 10, 25],
      ["sand", 25, 80],
      ["gravel", 0, 40],
    ]),
    consistency: [
      { quantity: "plasticityIndexPct", minPct: 2.5, maxPct: 29 },
      { quantity: "liquidLimitPct", minPct: 25, maxPct: 51 },
    ],
    notes: say`The criterion is the zone drawn in the source; these are its corner values.`,
  },
  {
    id: "is-1725",
    title: say`Soil blocks, India`,
    material: "compressed-block",
    source: {
      authors: "Bureau of Indian Standards",
      year: 1982,
      title: "IS 1725:1982",
      locator: say`soil clause (not read)`,
    },
    basis: "memory",
    confidence: "low",
    ...derivedBand(BS, [
      ["clay", 5, 18],
      ["silt", 10, 40],
      ["sand", 50, 80],
    ]),
    consistency: [{ quantity: "plasticityIndexPct", maxPct: 12 }],
    notes: say`Revised in 2013 and 2023; recalled from the 1982 edition.`,
  },
];

/**
 * Published recommendations about soils for rammed and cement-stabilised earth, those that were read
 * first, then some envelopes of road bases, and after those from memory some for compressed blocks. For
 * rammed earth itself no complete two-sided grading curve was read.
 *
 * @example
 * GUIDANCE_ENTRIES.find(({ id }) => id === "walker-2005").basis // => "memory"
 */
export const GUIDANCE_ENTRIES: readonly GuidanceEntry[] = [
  ...READ_ENTRIES,
  ...REMEMBERED_ENTRIES,
  ...BLOCK_ENTRIES,
].map(published);

/** `power-20mm` or `power-20mm-0.2-0.25`. */
const POWER_ID = /^power-(\d+(?:\.\d+)?)mm(?:-(0?\.\d+|1)-(0?\.\d+|1))?$/;

/**
 * The entry of an id: one of `GUIDANCE_ENTRIES`, or power curves as `powerEnvelope` makes them, such as
 * `power-20mm` and, with exponents of one's own, `power-20mm-0.2-0.25`; undefined where there is none.
 *
 * @example
 * guidanceEntry("power-20mm-0.2-0.25").power // => { topSizeMm: 20, exponents: [0.2, 0.25] }
 * guidanceEntry("power-20mm-0.3-0.2") // => undefined
 */
export function guidanceEntry(id: string): GuidanceEntry | undefined {
  const [named, top, smaller, larger] = POWER_ID.exec(id) ?? [];
  if (named === undefined) return GUIDANCE_ENTRIES.find((entry) => entry.id === id);
  const exponents =
    smaller === undefined ? ROAD_EXPONENTS : ([Number(smaller), Number(larger)] as const);
  const isSound = Number(top) >= 1 && exponents[0] > 0 && exponents[0] <= exponents[1];
  return isSound ? powerEnvelope(Number(top), exponents) : undefined;
}
