import { say } from "../../words/message.js";
import type { WrittenEntry } from "../entry.js";
import { derivedBand, powerEnvelope } from "../envelope.js";

/** Sizes used where a source names fractions without saying where they end (ISO 14688-1, from memory). */
const UNSAID = { clay: 0.002, silt: 0.063, sand: 2 } as const;

const BURROUGHS_2001 = {
  authors: "Burroughs, V.S.",
  year: 2001,
  title:
    "Quantitative criteria for the selection and stabilisation of soils for rammed earth wall construction (PhD, UNSW)",
  address: "https://doi.org/10.26190/unsworks/19954",
};

/** Entries whose numbers were seen, in the source itself or in its abstract: see `basis`. */
export const READ_ENTRIES: readonly WrittenEntry[] = [
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
    ...derivedBand({ clay: 0.002, silt: 0.02, sand: 2 }, [
      ["clay", 5, 20],
      ["silt", 15, 30],
      ["sandAndGravel", 50, 70],
    ]),
    notes: say`Silt is finer than 0.02 mm here, not 0.063 mm: do not compare it with the silt of other entries. Cobbles up to 100 mm are counted with sand and gravel.`,
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
    notes: say`Approximate. The upper size of clay is not stated; 0.002 mm is assumed.`,
  },
  {
    id: "burroughs-2001",
    title: say`Classes of soil for stabilised rammed earth, thesis`,
    material: "stabilised-rammed-earth",
    source: { ...BURROUGHS_2001, locator: say`classes of soil by shrinkage, plasticity and sand` },
    basis: "read",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 2.36 },
    classes: {
      favourableBelow: { linearShrinkagePct: 7.1, plasticityIndexPct: 16 },
      unfavourableAbove: { linearShrinkagePct: 13, plasticityIndexPct: 30 },
      sand: { limitPct: 60, below: "satisfactory", fromThere: "not classified" },
      success: {
        favourable: say`90 % of such soils reached 2 MPa`,
        satisfactory: say`65 % of such soils reached 2 MPa`,
        unfavourable: say`10 % of such soils reached 2 MPa`,
      },
    },
    notes: say`111 soils, 230 blocks, with cement, lime or bitumen. Sand is 0.075 to 2.36 mm here. The same author’s paper of 2008 uses other limits.`,
  },
  {
    id: "burroughs-2001-values",
    title: say`Values of favourable soils for stabilised rammed earth, thesis`,
    material: "stabilised-rammed-earth",
    source: { ...BURROUGHS_2001, locator: say`values of the favourable soils` },
    basis: "read",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 2.36 },
    points: [{ sizeMm: 0.075, lowPct: 21, highPct: 35 }],
    fractions: [{ fraction: "sand", minPct: 30, maxPct: 60 }],
    consistency: [
      { quantity: "liquidLimitPct", maxPct: 36 },
      { quantity: "plasticityIndexPct", maxPct: 16, below: true },
      { quantity: "linearShrinkagePct", maxPct: 7.1, below: true },
    ],
    others: [{ quantity: "plasticLimitPct", min: 16, max: 19 }],
    notes: say`Ranges found among the soils of which 90 % reached 2 MPa; gravel (2.36 to 19 mm) was 3 to 5 % or above 12 %. Fines are all that passes 0.075 mm.`,
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
    basis: "abstract",
    confidence: "read",
    boundariesMm: UNSAID,
    classes: {
      favourableBelow: { linearShrinkagePct: 6, plasticityIndexPct: 15 },
      unfavourableAbove: { linearShrinkagePct: 11, plasticityIndexPct: 30 },
      sand: { limitPct: 64, below: "favourable", fromThere: "unfavourable" },
      success: {
        favourable: say`at least 80 % of such soils reached 2 MPa`,
        unfavourable: say`fewer than 60 % of such soils reached 2 MPa`,
      },
    },
    notes: say`104 soils, 4 to 8 % cement and lime together. The abstract does not define sand; 0.063 to 2 mm is assumed. Its shrinkage is that of a laboratory bar, not of a wall.`,
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
    points: [{ sizeMm: 0.075, lowPct: 8, highPct: 25 }],
    notes: say`A builder’s opinion: at least 8 to 10 % fines where cement is used; above 25 % passing 0.075 mm, sand probably has to be added.`,
  },
  // Pages and secondary citations, weaker than those before them.
  {
    id: "berge-pise",
    title: say`Clay in rammed earth`,
    material: "rammed-earth",
    source: {
      authors: "Ecology Center (author not shown)",
      title: "Suitable types of earth",
      locator: say`whole page`,
      address: "https://www.ecologycenter.us/thermal-insulation/suitable-types-of-earth.html",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [{ fraction: "clay", minPct: 0, maxPct: 30 }],
    notes: say`12 % is called ideal, 30 % the maximum. The upper size of clay is not stated.`,
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
    basis: "cited",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [
      { fraction: "fines", minPct: 5, maxPct: 30 },
      { fraction: "sandAndGravel", minPct: 70, maxPct: 95 },
    ],
    points: [{ sizeMm: 0.063, lowPct: 5, highPct: 30 }],
    derived: true,
    notes: say`The page gives 5 to 30 % clay and does not mention silt; its clay is taken here as all fines, since otherwise no silt would be left.`,
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
    basis: "abstract",
    confidence: "read",
    boundariesMm: UNSAID,
    others: [{ quantity: "dryDensityKgM3", min: 1800, max: 2200 }],
    notes: say`A range found in practice, given as background; not a suitability limit.`,
  },
  {
    id: "usace-road-base",
    title: say`Graded road base, US Army`,
    material: "road-base",
    source: {
      authors: "US Army Corps of Engineers",
      year: 2000,
      title: "as cited in Burroughs, V.S. (2001), PhD thesis, University of New South Wales",
      locator: say`table 2.5 and figure 2.4 of the thesis`,
      address: "https://doi.org/10.26190/unsworks/19954",
    },
    basis: "cited",
    confidence: "read",
    boundariesMm: { clay: 0.002, silt: 0.075, sand: 4.75 },
    points: [
      { sizeMm: 0.075, lowPct: 5, highPct: 15 },
      { sizeMm: 0.425, lowPct: 15, highPct: 30 },
      { sizeMm: 2, lowPct: 20, highPct: 50 },
      { sizeMm: 4.75, lowPct: 35, highPct: 65 },
      { sizeMm: 9.5, lowPct: 50, highPct: 80 },
      { sizeMm: 19, lowPct: 70, highPct: 100 },
      { sizeMm: 25, lowPct: 100, highPct: 100 },
    ],
    consistency: [
      { quantity: "liquidLimitPct", maxPct: 28 },
      { quantity: "plasticityIndexPct", maxPct: 6 },
    ],
    notes: say`An envelope for graded road bases with a maximum size of 25 mm, not for earth walls; the thesis uses it in a worked example of blending two soils.`,
  },
  {
    id: "fdot-sand-clay",
    title: say`Sand-clay road base, Florida: the part finer than 2 mm`,
    material: "road-base",
    source: {
      authors: "Florida DOT",
      title: "Standard Specifications, section 912, sand-clay base material",
      locator: say`as cited on a page that copies the section`,
      address: "https://azrefs.org/sand-clay-base-material.html",
    },
    basis: "cited",
    confidence: "read",
    boundariesMm: { clay: 0.005, silt: 0.05, sand: 2 },
    // Clay, and clay with silt, as the passing that they are; silt by itself is a fraction.
    points: [
      { sizeMm: 0.005, lowPct: 8, highPct: 21 },
      { sizeMm: 0.05, lowPct: 8, highPct: 25 },
    ],
    fractions: [{ fraction: "silt", minPct: 0, maxPct: 10 }],
    ofPassingMm: 2,
    consistency: [
      { quantity: "liquidLimitPct", maxPct: 25 },
      { quantity: "plasticityIndexPct", maxPct: 6 },
    ],
    others: [{ quantity: "topSizeMm", max: 25 }],
    notes: say`A natural sand-clay for road bases. Percentages are of the fraction passing 2 mm; clay is finer than 0.005 mm and silt finer than 0.05 mm.`,
  },
  powerEnvelope(19),
];
