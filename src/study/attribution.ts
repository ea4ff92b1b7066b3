import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import { type ComparedNumber, comparedResults, resultPairs } from "./compareStudies.js";
import { computeStudy } from "./computeStudy.js";
import type { Study } from "./study.js";

/** A part of a study that is exchanged as a whole. */
export type StudyPart =
  | "materials"
  | "target"
  | "tests"
  | "requirement"
  | "element"
  | "supply"
  | "rest";

/** What the exchange of some parts did to the results. */
export interface AttributedStep {
  /** More than one where the parts hold together only as a whole. */
  readonly parts: readonly StudyPart[];
  /** Change of each result by this step, by its key; null where it is known on one side only. */
  readonly changes: Readonly<Record<string, number | null>>;
}

/**
 * What of the difference between two versions of a study is due to which part of it: the parts of the second
 * are put into the first one after the other, in the order of the analysis, and the study is computed anew
 * each time. Where parts act on each other another order would share out the difference otherwise.
 *
 * @param a the first version, which computes.
 * @param b the second version, which computes.
 * @returns one step for each part that differs; results that do not change in it are left out.
 * Source: own arithmetic.
 */
export function attributeChanges(a: Study, b: Study): AttributedStep[] {
  const steps: AttributedStep[] = [];
  let study = a;
  let before = numbersOf(a)!;
  let parts: StudyPart[] = [];
  for (const [part, exchange] of EXCHANGES) {
    const next = exchange(study, b);
    if (JSON.stringify(next) === JSON.stringify(study)) continue;
    study = next;
    parts = [...parts, part];
    const after = numbersOf(study);
    // Shares of a material that the other version lacks, say: the next part has to come with this one.
    if (!after) continue;
    steps.push({ parts, changes: changesOf(before, after) });
    before = after;
    parts = [];
  }
  return steps;
}

/** Puts one part of the second study into the first. */
type Exchange = (into: Study, from: Study) => Study;

/** What of a material only costs or weighs in the balance of carbon. */
const SUPPLY_KEYS = ["price", "haul", "haulKm", "lossPct", "carbon"] as const;

function supplyOf(material: MaterialConfig | undefined): Partial<MaterialConfig> {
  return Object.fromEntries(SUPPLY_KEYS.map((key) => [key, material?.[key]]));
}

/** The study with other entries, the materials' entries with them. */
function withConfig(study: Study, config: StudyConfig): Study {
  const configOf = (id: string) => config.materials.find((material) => material.id === id)!;
  return {
    ...study,
    config,
    materials: study.materials.map((one) => ({ ...one, config: configOf(one.config.id) })),
    ungraded: study.ungraded.map((one) => ({ ...one, config: configOf(one.config.id) })),
  };
}

/** The study with some entries of another. */
function withEntries(study: Study, { config }: Study, keys: readonly (keyof StudyConfig)[]): Study {
  const entries = Object.fromEntries(keys.map((key) => [key, config[key]]));
  return { ...study, config: { ...study.config, ...entries } };
}

const EXCHANGES: readonly (readonly [StudyPart, Exchange])[] = [
  [
    "materials",
    (into, { config, materials, ungraded }) => {
      const was = new Map(into.config.materials.map((material) => [material.id, material]));
      const kept = config.materials.map((material) =>
        was.has(material.id) ? { ...material, ...supplyOf(was.get(material.id)) } : material,
      );
      const { seed, readingErrors, sampling } = config;
      const entries = { ...into.config, materials: kept, seed, readingErrors, sampling };
      return withConfig({ ...into, materials, ungraded }, entries);
    },
  ],
  [
    "target",
    (into, from) => ({
      ...withEntries(into, from, ["target", "limits", "maxMaterials", "guidance", "envelope"]),
      envelope: from.envelope,
    }),
  ],
  [
    "tests",
    (into, from) => {
      const { requirement, roundUpToPct } = into.config.strength;
      const tested = withEntries(into, from, ["compaction", "tested", "trials", "mixFrom"]);
      const strength = { ...from.config.strength, requirement, roundUpToPct };
      return { ...tested, trials: from.trials, config: { ...tested.config, strength } };
    },
  ],
  ["requirement", (into, from) => withEntries(into, from, ["strength"])],
  [
    "element",
    (into, from) => ({
      ...withEntries(into, from, [
        "elements",
        "batchDryMassKg",
        "site",
        "tolerances",
        "quality",
        "compareMix",
      ]),
      siteBlocks: from.siteBlocks,
    }),
  ],
  [
    "supply",
    (into, { config }) => {
      const priced = into.config.materials.map((material) => ({
        ...material,
        ...supplyOf(config.materials.find(({ id }) => id === material.id)),
      }));
      const { cement, carbon, currency } = config;
      return withConfig(into, { ...into.config, materials: priced, cement, carbon, currency });
    },
  ],
  ["rest", (_, from) => from],
];

/** The results of a study; undefined where it does not compute. */
function numbersOf(study: Study): ComparedNumber[] | undefined {
  const { result } = computeStudy(study);
  return result && comparedResults(result);
}

function changesOf(
  before: readonly ComparedNumber[],
  after: readonly ComparedNumber[],
): AttributedStep["changes"] {
  const changed = resultPairs(before, after).filter((pair) => pair.changed);
  return Object.fromEntries(changed.map(({ key, difference }) => [key, difference]));
}
