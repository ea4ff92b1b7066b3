import type { ReferencesBlock } from "../blocks/block.js";
import type { HydrometerAnalysis } from "../grading/sedimentation/hydrometer.js";
import { WATER_SOURCES } from "../grading/sedimentation/settling.js";
import { CAUTIONS } from "../guidance/cautions.js";
import { type GuidanceEntry, sourceMark } from "../guidance/entry.js";
import type { HydrometerType } from "../lab/hydrometer.js";
import type { MaterialResult, StudyResult } from "../study/studyResult.js";
import { testedAnotherBlend } from "../study/trials.js";
import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";
import { mixReferences } from "./carbon.js";

type References = ReferencesBlock["items"];

/** Which parts of a report its sources are of; what is not shown needs no source. */
interface ReferenceScope {
  /** The published recommendations compared; default true. */
  readonly guidance?: boolean;
  /** Classes of the soils; default true. */
  readonly classes?: boolean;
  /** Carbon and cement in concrete; default true. */
  readonly carbon?: boolean;
}

/**
 * What the numbers of an appendix rest on, and how it is known: only what this study used. Sources that were
 * read stand first, those from memory last.
 */
export function referencesBlock(result: StudyResult, scope: ReferenceScope = {}): ReferencesBlock {
  const { guidance = true, classes = true, carbon = true } = scope;
  const { materials, mix, blend, strength, guidanceComparison } = result;
  const compared = guidance ? (guidanceComparison?.checks ?? []) : [];
  const entries = entriesOf([...result.guidance.map(({ check }) => check), ...compared]);
  const hydrometers = materials.flatMap(({ sedimentation }) => sedimentation ?? []);
  const items = [
    ...entries.map((entry) => ({
      text: say`${entrySource(entry)}: limits of grading and consistency`,
      mark: sourceMark(entry),
    })),
    ...(entries.length > 0 ? [NO_PROOF] : []),
    ...(materials.length > 0 ? [SIEVING] : []),
    ...waterReferences(materials),
    ...hydrometerReferences(hydrometers),
    ...(classes && materials.some(({ uncertainty }) => uncertainty) ? CLASSES : []),
    ...(blend ? [BLENDING] : []),
    ...(strength && !testedAnotherBlend(result) ? STRENGTH : []),
    ...CAUTIONS.flatMap(({ citation, title }) =>
      citation ? [{ text: say`${citation}: caution “${title}”`, mark: say`abstract read` }] : [],
    ),
    ...(carbon && mix ? mixReferences(mix) : []),
  ];
  const remembered = items.filter(isFromMemory);
  return {
    kind: "references",
    items: [...items.filter((item) => !isFromMemory(item)), ...remembered],
  };
}

/** One line below the references: which of them were not read, and what the applicant has to do about it. */
export function rememberedNote({ items }: ReferencesBlock): Text | undefined {
  const count = items.filter(isFromMemory).length;
  if (count === 0) return undefined;
  const [first, last] = [items.length - count + 1, items.length];
  if (count === 1)
    return say`Entry ${last} is from memory: check it in the source before citing it.`;
  return count === 2
    ? say`Entries ${first} and ${last} are wholly or partly from memory: check them in the source before citing them.`
    : say`Entries ${first} to ${last} are wholly or partly from memory: check them in the source before citing them.`;
}

/** The entries of checks, each once. */
export function entriesOf(checks: readonly { readonly entry: GuidanceEntry }[]): GuidanceEntry[] {
  return [...new Map(checks.map(({ entry }) => [entry.id, entry])).values()];
}

function isFromMemory({ mark }: References[number]): boolean {
  return render(mark, "en").includes("from memory");
}

/** A source as a reader cites it: author, year, title, place. */
export function entrySource({ source }: GuidanceEntry): Text {
  const { authors, year, title, locator } = source;
  return year === undefined
    ? say`${authors}, ${title}, ${locator}`
    : say`${authors} (${String(year)}), ${title}, ${locator}`;
}

/** Where the effective depth of each sort of hydrometer comes from. */
const HYDROMETERS: Readonly<Record<HydrometerType, References[number]>> = {
  "152H": {
    text: say`Murthy, chapter of doi 10.1201/9781482275858-30, equations 3.28 and 3.29, year not known: effective depth of the 152H hydrometer`,
    mark: say`read`,
  },
  "151H": {
    text: say`ASTM D422 (edition not recalled): the 151H hydrometer`,
    mark: say`from memory`,
  },
  BS: {
    text: say`BS 1377-2 (edition not recalled), form of the hydrometer test; effective depth by the instrument's own calibration`,
    mark: say`form read; clause from memory`,
  },
  "g/mL": {
    text: say`Hydrometer in g/mL: effective depth by its own calibration`,
    mark: say`as entered, not checked`,
  },
};

const CALIBRATED_152H: References[number] = {
  text: say`152H hydrometer: effective depth by its own calibration`,
  mark: say`as entered, not checked`,
};

/** Of each hydrometer that was used, once. */
function hydrometerReferences(analyses: readonly HydrometerAnalysis[]): References {
  const used = analyses.map(({ hydrometer, calibration }) =>
    hydrometer === "152H" && calibration ? CALIBRATED_152H : HYDROMETERS[hydrometer],
  );
  return [...new Set(used)];
}

const NO_PROOF: References[number] = {
  text: say`Ciancio, Jaquin and Walker (2013), Construction and Building Materials 42, 40–47: grading alone does not establish suitability`,
  mark: say`abstract read`,
};

const SIEVING: References[number] = {
  text: say`University of Waterloo, CIVE 153 hand-out (2013): composite sieving, loss of at most 2 %`,
  mark: say`read`,
};

/** Viscosity by the form of test, where anything settled in water. */
function waterReferences(
  materials: readonly Pick<MaterialResult, "sedimentation" | "pipette">[],
): References {
  const bases = new Set(
    materials.flatMap(({ sedimentation, pipette }) => sedimentation?.water ?? pipette?.water ?? []),
  );
  if (bases.size === 0) return [];
  return [
    ...[...bases].map((basis) => ({
      text: say`Viscosity of water: ${WATER_SOURCES[basis].text}`,
      mark: WATER_SOURCES[basis].mark,
    })),
    {
      text: say`International Critical Tables (1928/29), as tabulated in Encyclopedia of Environmental Science and Engineering, year not known, p. 1332: density of water`,
      mark: say`read`,
    },
  ];
}

const BLENDING: References[number] = {
  text: say`Iowa DOT (2015), Materials I.M. 531, Method A: passing of a blend by dry mass`,
  mark: say`read`,
};

const CLASSES: References = [
  {
    text: say`ASTM D2487 (edition not recalled): groups of soils; U-line of the plasticity chart`,
    mark: say`from memory; agrees with the worked examples read`,
  },
  {
    text: say`AASHTO M 145 (edition not stated): groups of soils, as reproduced on a reference page`,
    mark: say`read in that copy; rounding from memory`,
  },
  {
    text: say`USDA texture triangle, ISO 14688 boundaries and letters, BS 5930 letters (editions not recalled)`,
    mark: say`from memory, but five of the USDA classes`,
  },
];

const STRENGTH: References = [
  {
    text: say`EN 1990:2002, Annex D: characteristic value with variation unknown`,
    mark: say`its table read as coded in open software; recomputed`,
  },
  {
    text: say`Draper and Smith (1998), Applied Regression Analysis, 3rd edition: least squares, lack of fit`,
    mark: say`from memory; checked against published data in the tests`,
  },
  {
    text: say`Lieberman and Miller (1963), Biometrika 50: tolerance bounds in regression`,
    mark: say`from memory; coverage checked by simulation`,
  },
];
