import { phrase } from "../../words/say.js";
import { deriveBand } from "../deriveBand.js";
import type { GuidanceEntry } from "../guidanceEntry.js";
import { UNSAID } from "./unsaidBoundaries.js";

/** Entries whose numbers were seen, most of them in an abstract or an opening page. */
export const READ_ENTRIES: readonly GuidanceEntry[] = [
  {
    id: "darchitectures-pise",
    title: phrase`Unstabilised rammed earth, France`,
    material: "rammed-earth",
    source: {
      authors: "d’Architectures (author not shown in the part read)",
      title: "Le pisé : formulation et mise en œuvre",
      locator: phrase`opening of the article`,
      address: "https://darchitectures.com/le-pise-formulation-et-mise-en-uvre-a5188.html",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.02, sand: 2 },
    fractions: [
      { fraction: "clay", minPct: 5, maxPct: 20 },
      { fraction: "silt", minPct: 15, maxPct: 30 },
      { fraction: "sandAndGravel", minPct: 50, maxPct: 70 },
    ],
    points: deriveBand([
      { upToMm: 0.002, minPct: 5, maxPct: 20 },
      { upToMm: 0.02, minPct: 15, maxPct: 30 },
      { minPct: 50, maxPct: 70 },
    ]),
    derived: true,
    consistency: [],
    notes: phrase`Silt ends at 0.02 mm here, not at 0.063: do not compare its silt with that of other entries. Cobbles to 100 mm count with sand and gravel.`,
  },
  {
    id: "morel-clay",
    title: phrase`Clay in compressed blocks and rammed earth`,
    material: "rammed-earth",
    source: {
      authors: "Morel, J.-C.; Kouakou, C.H.",
      title: "Performances mécaniques de l’adobe",
      locator: phrase`introduction`,
      address: "https://fr.scribd.com/document/549050664/artmorel",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [{ fraction: "clay", minPct: 5, maxPct: 15 }],
    points: [],
    derived: false,
    consistency: [],
    notes: phrase`Approximate. The size that ends clay is not said; 0.002 mm is taken.`,
  },
  {
    id: "burroughs-2001",
    title: phrase`Favourable soils for stabilised rammed earth, thesis`,
    material: "stabilised-rammed-earth",
    source: {
      authors: "Burroughs, V.S.",
      year: 2001,
      title:
        "Quantitative criteria for the selection and stabilisation of soils for rammed earth wall construction (PhD, UNSW)",
      locator: phrase`abstract`,
      address:
        "https://www.scribd.com/document/464007159/Quantitative-criteria-for-the-selection-and-stabilization-of-soils-for-rammed-earth-wall-construction-pdf",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [],
    points: [],
    derived: false,
    consistency: [
      { quantity: "linearShrinkagePct", maxPct: 7.1, below: true },
      { quantity: "plasticityIndexPct", maxPct: 16, below: true },
    ],
    notes: phrase`90 % of such soils reached 2 MPa. The two other classes were cut off in the copy read. The same author’s paper of 2008 draws the lines elsewhere.`,
  },
  {
    id: "burroughs-2008",
    title: phrase`Soil criteria for stabilisation at 2 MPa`,
    material: "stabilised-rammed-earth",
    source: {
      authors: "Burroughs, S.",
      year: 2008,
      title:
        "Soil Property Criteria for Rammed Earth Stabilization (J. Mater. Civ. Eng. 20(3), citation from memory)",
      locator: phrase`abstract (TRIS accession 01091532)`,
      address: "https://trid.trb.org/View/851384",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [],
    points: [],
    derived: false,
    consistency: [],
    judgedTogether: true,
    notes: phrase`The abstract does not say which sizes it calls sand; 0.063 to 2 mm is taken. Its shrinkage is that of a laboratory bar, not of a wall.`,
  },
  {
    id: "rew-practitioner",
    title: phrase`Fines of a soil to be stabilised, builder’s rule, California`,
    material: "stabilised-rammed-earth",
    source: {
      authors: "Rammed Earth Works blog",
      year: 2010,
      title: "Finding the Right Soil",
      locator: phrase`opening`,
      address: "https://www.rammedearthworks.com/blog/2010/07/11/finding-the-right-soil",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 4.75 },
    fractions: [],
    points: [{ sizeMm: 0.075, lowPct: 8, highPct: 25 }],
    derived: false,
    consistency: [],
    notes: phrase`A builder’s opinion: with cement at least 8 to 10 % fines; above 25 % passing 0.075 mm sand probably has to be added.`,
  },
];
