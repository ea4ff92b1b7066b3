import { say } from "../../words/message.js";
import type { WrittenEntry } from "../entry.js";
import { derivedBand } from "../envelope.js";

const BS = { clay: 0.002, silt: 0.063, sand: 2 };

/** Entries whose numbers are from memory: check each against its source before citing it. */
export const REMEMBERED_ENTRIES: readonly WrittenEntry[] = [
  {
    id: "walker-2005",
    title: say`Rammed earth guidelines, United Kingdom`,
    material: "rammed-earth",
    source: {
      authors: "Walker, P.; Keable, R.; Martin, J.; Maniatidis, V.",
      year: 2005,
      title: "Rammed earth: design and construction guidelines (BRE EP 62)",
      locator: say`soil selection (clause not recalled)`,
    },
    basis: "memory",
    confidence: "medium-high",
    boundariesMm: BS,
    ...derivedBand(BS, [
      ["clay", 5, 20],
      ["silt", 10, 30],
      ["sandAndGravel", 45, 80],
    ]),
    consistency: [
      { quantity: "plasticityIndexPct", minPct: 2, maxPct: 30 },
      { quantity: "liquidLimitPct", maxPct: 45, below: true },
      { quantity: "linearShrinkagePct", maxPct: 5 },
    ],
    others: [
      { quantity: "organicPct", max: 2 },
      { quantity: "saltsPct", max: 2 },
      { quantity: "dryDensityKgM3", min: 1700, max: 2200 },
    ],
    notes: say`Recalled with boundaries 0.002, 0.06 and 2 mm; 0.063 mm is used. For unstabilised earth.`,
  },
  {
    id: "keable-sazs-ars",
    title: say`Code of practice, southern Africa`,
    material: "rammed-earth",
    source: {
      authors: "Keable, J.; Standards Association of Zimbabwe; ARSO",
      year: 2001,
      title: "Rammed Earth Structures: a code of practice / SAZS 724",
      locator: say`soil clause (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: BS,
    ...derivedBand(BS, [
      ["clay", 5, 15],
      ["silt", 15, 30],
      ["sandAndGravel", 50, 70],
    ]),
    notes: say`That the standard is based on the 1996 book was read; the values were not.`,
  },
  {
    id: "hb195",
    title: say`Earth building handbook, Australia`,
    material: "rammed-earth",
    source: {
      authors: "Walker, P.; Standards Australia",
      year: 2002,
      title: "HB 195-2002",
      locator: say`rammed earth soil table (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: BS,
    ...derivedBand(BS, [
      ["clay", 0, 20],
      ["silt", 10, 30],
      ["sandAndGravel", 45, 75],
    ]),
    consistency: [{ quantity: "linearShrinkagePct", maxPct: 2.5 }],
    notes: say`As quoted in later papers. All limits can be met only with at least 50 % sand and gravel.`,
  },
  {
    id: "craterre-pise",
    title: say`Rammed earth composition, France`,
    material: "rammed-earth",
    source: {
      authors: "Doat, P. et al. (CRATerre)",
      year: 1979,
      title: "Construire en terre",
      locator: say`pisé section (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: { clay: 0.002, silt: 0.06, sand: 2 },
    ...derivedBand({ clay: 0.002, silt: 0.06, sand: 2 }, [
      ["clay", 15, 25],
      ["silt", 20, 35],
      ["sand", 40, 50],
      ["gravel", 0, 15],
    ]),
    notes: say`Higher in clay than the other handbooks; sometimes attributed to other books.`,
  },
  {
    id: "aci-230",
    title: say`Soils for soil-cement`,
    material: "soil-cement",
    source: {
      authors: "ACI Committee 230",
      year: 2009,
      title: "Report on Soil Cement, ACI 230.1R-09",
      locator: say`materials chapter (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 4.75 },
    points: [
      { sizeMm: 0.075, lowPct: 5, highPct: 35 },
      { sizeMm: 4.75, lowPct: 55, highPct: 100 },
      { sizeMm: 50, lowPct: 100, highPct: 100 },
    ],
    consistency: [{ quantity: "plasticityIndexPct", maxPct: 8 }],
    others: [{ quantity: "organicPct", max: 2 }],
    notes: say`Recalled as advice for economical cement contents in pavements, not as a hard limit.`,
  },
];

/** More entries whose numbers are from memory: check each against its source before citing it. */
export const MORE_REMEMBERED_ENTRIES: readonly WrittenEntry[] = [
  {
    id: "maniatidis-walker-2003",
    title: say`Review of published limits, United Kingdom`,
    material: "rammed-earth",
    source: {
      authors: "Maniatidis, V.; Walker, P.",
      year: 2003,
      title: "A Review of Rammed Earth Construction (DTi)",
      locator: say`sec. 3.2.2 (heading read, numbers not)`,
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
    notes: say`Summarises other sources: minimum fines 20 to 25 %, maximum 30 to 35 %; minimum sand 50 to 55 %, maximum 70 to 75 %. The outermost values are used.`,
  },
  {
    id: "nmac-re-soil",
    title: say`Soil for rammed earth, New Mexico`,
    material: "rammed-earth",
    source: {
      authors: "New Mexico Construction Industries Division",
      title: "14.7.4 NMAC",
      locator: say`soil specification subsection (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: BS,
    others: [
      { quantity: "topSizeMm", max: 38.1 },
      { quantity: "saltsPct", max: 2 },
    ],
    notes: say`Rock up to 1½ in, clay lumps up to ½ in, no organic matter, salts up to 2 %.`,
  },
  {
    id: "lehmbau-regeln",
    title: say`Rammed earth, Germany`,
    material: "rammed-earth",
    source: {
      authors: "Dachverband Lehm",
      year: 2009,
      title: "Lehmbau Regeln, 3rd ed.",
      locator: say`Stampflehm section (not read)`,
    },
    basis: "memory",
    confidence: "medium",
    boundariesMm: BS,
    others: [
      { quantity: "dryDensityKgM3", min: 1700, max: 2400 },
      { quantity: "sulphatePct", max: 0.1 },
      { quantity: "saltsPct", max: 0.12 },
    ],
    notes: say`Salts and sulphate after DIN 18945. Its drying shrinkage of at most 2 % is that of a test prism as rammed, not of the laboratory bar: it is not compared here.`,
  },
  {
    id: "is-2110",
    title: say`Soil-cement walls rammed in place, India`,
    material: "stabilised-rammed-earth",
    source: {
      authors: "Bureau of Indian Standards",
      year: 1980,
      title: "IS 2110:1980",
      locator: say`soil clause (not read)`,
    },
    basis: "memory",
    confidence: "low",
    boundariesMm: BS,
    fractions: [{ fraction: "sand", minPct: 35, maxPct: 100 }],
    consistency: [
      { quantity: "liquidLimitPct", maxPct: 27 },
      { quantity: "plasticityIndexPct", minPct: 8.5, maxPct: 10.5 },
    ],
    notes: say`Recalled with little confidence; only the front matter was seen.`,
  },
];
