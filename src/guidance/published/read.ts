import { say } from "../../words/message.js";
import { deriveBand, type GuidanceEntry } from "../entry.js";

/** Sizes used where a source names fractions without saying where they end (ISO 14688-1, from memory). */
const UNSAID = { clay: 0.002, silt: 0.063, sand: 2 } as const;

/** Entries whose numbers were seen, most of them in an abstract or an opening page. */
export const READ_ENTRIES: readonly GuidanceEntry[] = [
  {
    id: "darchitectures-pise",
    title: say`Unstabilised rammed earth, France`,
    material: "rammed-earth",
    source: {
      authors: "d’Architectures (author not shown in the part read)",
      title: "Le pisé : formulation et mise en œuvre",
      locator: say`opening of the article`,
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
    notes: say`Silt ends at 0.02 mm here, not at 0.063: do not compare its silt with that of other entries. Cobbles to 100 mm count with sand and gravel.`,
  },
  {
    id: "morel-clay",
    title: say`Clay in compressed blocks and rammed earth`,
    material: "rammed-earth",
    source: {
      authors: "Morel, J.-C.; Kouakou, C.H.",
      title: "Performances mécaniques de l’adobe",
      locator: say`introduction`,
      address: "https://fr.scribd.com/document/549050664/artmorel",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [{ fraction: "clay", minPct: 5, maxPct: 15 }],
    points: [],
    derived: false,
    consistency: [],
    notes: say`Approximate. The size that ends clay is not said; 0.002 mm is taken.`,
  },
  {
    id: "burroughs-2001",
    title: say`Favourable soils for stabilised rammed earth, thesis`,
    material: "stabilised-rammed-earth",
    source: {
      authors: "Burroughs, V.S.",
      year: 2001,
      title:
        "Quantitative criteria for the selection and stabilisation of soils for rammed earth wall construction (PhD, UNSW)",
      locator: say`abstract`,
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
    notes: say`90 % of such soils reached 2 MPa. The two other classes were cut off in the copy read. The same author’s paper of 2008 draws the lines elsewhere.`,
  },
  {
    id: "burroughs-2008",
    title: say`Soil criteria for stabilisation at 2 MPa`,
    material: "stabilised-rammed-earth",
    source: {
      authors: "Burroughs, S.",
      year: 2008,
      title:
        "Soil Property Criteria for Rammed Earth Stabilization (J. Mater. Civ. Eng. 20(3), citation from memory)",
      locator: say`abstract (TRIS accession 01091532)`,
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
    notes: say`The abstract does not say which sizes it calls sand; 0.063 to 2 mm is taken. Its shrinkage is that of a laboratory bar, not of a wall.`,
  },
  {
    id: "rew-practitioner",
    title: say`Fines of a soil to be stabilised, builder’s rule, California`,
    material: "stabilised-rammed-earth",
    source: {
      authors: "Rammed Earth Works blog",
      year: 2010,
      title: "Finding the Right Soil",
      locator: say`opening`,
      address: "https://www.rammedearthworks.com/blog/2010/07/11/finding-the-right-soil",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 4.75 },
    fractions: [],
    points: [{ sizeMm: 0.075, lowPct: 8, highPct: 25 }],
    derived: false,
    consistency: [],
    notes: say`A builder’s opinion: with cement at least 8 to 10 % fines; above 25 % passing 0.075 mm sand probably has to be added.`,
  },
];

/** More entries whose numbers were seen: pages and secondary citations, weaker than those before them. */
export const MORE_READ_ENTRIES: readonly GuidanceEntry[] = [
  {
    id: "berge-pise",
    title: say`Clay in rammed earth`,
    material: "rammed-earth",
    source: {
      authors: "Berge, B. (by its text)",
      title: "Suitable types of earth",
      locator: say`whole page`,
      address: "https://www.ecologycenter.us/thermal-insulation/suitable-types-of-earth.html",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [{ fraction: "clay", minPct: 0, maxPct: 30 }],
    points: [],
    derived: false,
    consistency: [],
    notes: say`12 % is called ideal, 30 % the most. The size that ends clay is not said.`,
  },
  {
    id: "easton-terrawiki",
    title: say`Proportions after Easton, secondary`,
    material: "rammed-earth",
    source: {
      authors: "Easton, D., as cited by a wiki",
      year: 2007,
      title: "The Rammed Earth House (secondary citation)",
      locator: say`wiki page Proporciones de la tierra`,
      address:
        "https://terrawiki.es/wiki/index.php?mobileaction=toggle_view_mobile&oldid=1123&title=Proporciones_de_la_tierra",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [
      { fraction: "fines", minPct: 5, maxPct: 30 },
      { fraction: "sandAndGravel", minPct: 70, maxPct: 95 },
    ],
    points: [{ sizeMm: 0.063, lowPct: 5, highPct: 30 }],
    derived: true,
    consistency: [],
    notes: say`The page says clay 5 to 30 % and names no silt; clay is taken here for all fines, or nothing would be left for silt.`,
  },
  {
    id: "hall-djerbib-2004",
    title: say`Dry density of rammed earth`,
    material: "rammed-earth",
    source: {
      authors: "Hall, M.; Djerbib, Y.",
      year: 2004,
      title:
        "Rammed earth sample production: context, recommendations and consistency (Constr. Build. Mater. 18, 281–286)",
      locator: say`abstract and first paragraph`,
      address: "https://fr.scribd.com/document/220153789/Rammed-Earth",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [],
    points: [],
    derived: false,
    consistency: [],
    others: [{ quantity: "dryDensityKgM3", min: 1800, max: 2200 }],
    notes: say`A range met in practice, told as context; not a limit of suitability.`,
  },
];
