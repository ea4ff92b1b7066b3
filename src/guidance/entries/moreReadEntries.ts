import { phrase } from "../../words/say.js";
import type { GuidanceEntry } from "../guidanceEntry.js";
import { UNSAID } from "./unsaidBoundaries.js";

/** More entries whose numbers were seen: pages and secondary citations, weaker than those before them. */
export const MORE_READ_ENTRIES: readonly GuidanceEntry[] = [
  {
    id: "berge-pise",
    title: phrase`Clay in rammed earth`,
    material: "rammed-earth",
    source: {
      authors: "Berge, B. (by its text)",
      title: "Suitable types of earth",
      locator: phrase`whole page`,
      address: "https://www.ecologycenter.us/thermal-insulation/suitable-types-of-earth.html",
    },
    basis: "read",
    confidence: "read",
    boundariesMm: UNSAID,
    fractions: [{ fraction: "clay", minPct: 0, maxPct: 30 }],
    points: [],
    derived: false,
    consistency: [],
    notes: phrase`12 % is called ideal, 30 % the most. The size that ends clay is not said.`,
  },
  {
    id: "easton-terrawiki",
    title: phrase`Proportions after Easton, secondary`,
    material: "rammed-earth",
    source: {
      authors: "Easton, D., as cited by a wiki",
      year: 2007,
      title: "The Rammed Earth House (secondary citation)",
      locator: phrase`wiki page Proporciones de la tierra`,
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
    notes: phrase`The page says clay 5 to 30 % and names no silt; clay is taken here for all fines, or nothing would be left for silt.`,
  },
  {
    id: "hall-djerbib-2004",
    title: phrase`Dry density of rammed earth`,
    material: "rammed-earth",
    source: {
      authors: "Hall, M.; Djerbib, Y.",
      year: 2004,
      title:
        "Rammed earth sample production: context, recommendations and consistency (Constr. Build. Mater. 18, 281–286)",
      locator: phrase`abstract and first paragraph`,
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
    notes: phrase`A range met in practice, told as context; not a limit of suitability.`,
  },
];
