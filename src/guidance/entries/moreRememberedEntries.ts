import { phrase } from "../../words/say.js";
import type { GuidanceEntry } from "../guidanceEntry.js";

const BS = { clay: 0.002, silt: 0.063, sand: 2 };

/** More entries whose numbers are from memory: check each against its source before citing it. */
export const MORE_REMEMBERED_ENTRIES: readonly GuidanceEntry[] = [
  {
    id: "maniatidis-walker-2003",
    title: phrase`Review of published limits, United Kingdom`,
    material: "rammed-earth",
    source: {
      authors: "Maniatidis, V.; Walker, P.",
      year: 2003,
      title: "A Review of Rammed Earth Construction (DTi)",
      locator: phrase`sec. 3.2.2 (heading read, numbers not)`,
    },
    basis: "memory",
    confidence: "medium-high",
    boundariesMm: BS,
    fractions: [
      { fraction: "fines", minPct: 20, maxPct: 35 },
      { fraction: "sand", minPct: 50, maxPct: 75 },
    ],
    points: [{ sizeMm: 0.063, lowPct: 20, highPct: 35 }],
    derived: true,
    consistency: [],
    notes: phrase`Sums up others: least fines of 20 to 25 %, most of 30 to 35 %; least sand 50 to 55 %, most 70 to 75 %. The outer ends are taken.`,
  },
  {
    id: "nmac-re-soil",
    title: phrase`Soil for rammed earth, New Mexico`,
    material: "rammed-earth",
    source: {
      authors: "New Mexico Construction Industries Division",
      title: "14.7.4 NMAC",
      locator: phrase`soil specification subsection (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: BS,
    fractions: [],
    points: [],
    derived: false,
    consistency: [],
    others: [
      { quantity: "topSizeMm", max: 38.1 },
      { quantity: "saltsPct", max: 2 },
    ],
    notes: phrase`Rock up to 1½ in, clay lumps up to ½ in, no organic matter, salts up to 2 %.`,
  },
  {
    id: "lehmbau-regeln",
    title: phrase`Rammed earth, Germany`,
    material: "rammed-earth",
    source: {
      authors: "Dachverband Lehm",
      year: 2009,
      title: "Lehmbau Regeln, 3rd ed.",
      locator: phrase`Stampflehm section (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: BS,
    fractions: [],
    points: [],
    derived: false,
    consistency: [],
    others: [
      { quantity: "dryDensityKgM3", min: 1700, max: 2400 },
      { quantity: "saltsPct", max: 0.12 },
    ],
    notes: phrase`Its drying shrinkage of at most 2 % is that of a test prism as rammed, not of the laboratory bar: it is not compared here.`,
  },
  {
    id: "is-2110",
    title: phrase`Soil-cement walls rammed in place, India`,
    material: "soil-cement",
    source: {
      authors: "Bureau of Indian Standards",
      year: 1980,
      title: "IS 2110:1980",
      locator: phrase`soil clause (not read)`,
    },
    basis: "memory",
    confidence: "low",
    boundariesMm: BS,
    fractions: [{ fraction: "sand", minPct: 35, maxPct: 100 }],
    points: [],
    derived: false,
    consistency: [
      { quantity: "liquidLimitPct", maxPct: 27 },
      { quantity: "plasticityIndexPct", minPct: 8.5, maxPct: 10.5 },
    ],
    notes: phrase`Recalled with little confidence; only the front matter was seen.`,
  },
];
