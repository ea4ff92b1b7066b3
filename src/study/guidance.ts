import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import { type Finding, finding, findingIf, STUDY_FILE } from "../findings/finding.js";
import { checkGuidance, guidanceFindings } from "../guidance/check.js";
import { envelopeEntry, type GuidanceEntry } from "../guidance/entry.js";
import { verdictProbability } from "../guidance/probability.js";
import { GUIDANCE_ENTRIES, guidanceEntry } from "../guidance/published/recommendations.js";
import { formatPlain } from "../quantities/format.js";
import { drawLimits, limitErrors } from "../soil/consistency/drawnLimits.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { materialPlace } from "./materialIds.js";
import type { DrawnCurves } from "./sampledCurves.js";
import type { Study } from "./study.js";
import type { BlendStudy, GuidanceStudy, MaterialResult } from "./studyResult.js";

/** The entries that a study is held against: its own envelope first, then the recommendation that it names. */
export function studyGuidance({ config, envelope }: Pick<Study, "config" | "envelope">): {
  readonly entries: readonly GuidanceEntry[];
  readonly findings: readonly Finding[];
} {
  const own = envelope ? [envelopeEntry(envelope)] : [];
  const { guidance } = config;
  const entry = guidance === undefined ? undefined : guidanceEntry(guidance);
  const place = { file: STUDY_FILE, column: "guidance" };
  if (guidance !== undefined && !entry) {
    const unknown = finding({ ...place, value: guidance }, "error", "unknown-guidance", {
      message: say`There is no guidance entry of this name.`,
      expected: say`one of ${GUIDANCE_ENTRIES.map(({ id }) => id).join(", ")}, or power curves such as power-20mm-0.2-0.25`,
      remedy: say`Correct the name in study.yaml.`,
    });
    return { entries: own, findings: [unknown] };
  }
  return {
    entries: entry ? [...own, entry] : own,
    findings: [
      ...(entry ? guidanceFindings(entry, testedOfAll(config), place) : []),
      ...chemistryFindings(config, entry),
    ],
  };
}

/** As `study.yaml` has it, in every language. */
const NOT_TESTED = "not tested";

const CHEMISTRY = ["organicPct", "sulphatePct", "saltsPct"] as const;

const CHEMISTRY_NAMES: Readonly<Record<(typeof CHEMISTRY)[number], Text>> = {
  organicPct: say`organic matter`,
  sulphatePct: say`sulphates`,
  saltsPct: say`soluble salts`,
};

type Chemistry = Partial<Readonly<Record<(typeof CHEMISTRY)[number], number>>>;

/** Organic matter, sulphates and salts of a material, as far as they were tested. */
export function testedChemistry({ chemistry = {} }: Pick<MaterialConfig, "chemistry">): Chemistry {
  return Object.fromEntries(
    CHEMISTRY.flatMap((key) => {
      const value = chemistry[key];
      return typeof value === "number" ? [[key, value]] : [];
    }),
  );
}

const soilsOf = ({ materials }: StudyConfig) => materials.filter(({ role }) => role === "soil");

/** What was tested of every soil, each at its highest. */
function testedOfAll(config: StudyConfig): Chemistry {
  const tested = soilsOf(config).map(testedChemistry);
  return Object.fromEntries(
    CHEMISTRY.flatMap((key) => {
      const values = tested.flatMap((one) => one[key] ?? []);
      return values.length > 0 && values.length === tested.length
        ? [[key, Math.max(...values)]]
        : [];
    }),
  );
}

/** Sulphates of the dry soil from which cement may be attacked years later; common practice, no source. */
const SULPHATE_TO_ASK_PCT = 0.2;

/** What was not tested of a soil that cement goes into, and what lies outside the entry's limits. */
function chemistryFindings(config: StudyConfig, entry: GuidanceEntry | undefined): Finding[] {
  const others = entry?.others ?? [];
  return soilsOf(config).flatMap((soil): Finding[] => {
    const { id, name } = soil;
    const tested = testedChemistry(soil);
    const place = materialPlace(config, id, "chemistry");
    const outside = CHEMISTRY.flatMap((key): Finding[] => {
      const max = others.find(({ quantity }) => quantity === key)?.max ?? Infinity;
      const value = tested[key];
      if (value === undefined || value <= max) return [];
      return [
        finding({ ...place, value: `${value} %` }, "warning", "chemistry-outside", {
          message: say`${name} holds ${formatPlain(value)} % ${CHEMISTRY_NAMES[key]}; “${entry!.title}” allows ${max} %.`,
          expected: say`at most ${max} %`,
          remedy: say`Take another soil, or have its effect on cement shown by tests of the mix.`,
        }),
      ];
    });
    if (!config.cement) return outside;
    const { sulphatePct = 0 } = tested;
    // The entry's own finding names those that it limits.
    const open = CHEMISTRY.filter(
      (key) => tested[key] === undefined && !others.some(({ quantity }) => quantity === key),
    );
    const sulphates = { ...place, value: `${sulphatePct} %` };
    return [
      ...outside,
      // A specialist has to be asked before cement goes into a soil with sulphates.
      ...findingIf(sulphatePct > SULPHATE_TO_ASK_PCT, sulphates, "warning", "sulphates-to-ask", {
        message: say`${name} holds ${formatPlain(sulphatePct)} % sulphates: they may swell with cement and break a wall years later.`,
        expected: say`at most ${SULPHATE_TO_ASK_PCT} % of the dry mass, unless a specialist advises otherwise (common practice, no source)`,
        remedy: say`Ask a laboratory or engineer about this soil with this cement before anything is built, or take another soil.`,
      }),
      ...findingIf(open.length > 0, place, "note", "chemistry-not-tested", {
        message: say`${name} was not tested, or the study does not say so, for: ${joinTexts(open.map((key) => CHEMISTRY_NAMES[key]))}.`,
        expected: say`a value for each, or “${NOT_TESTED}”`,
        remedy: say`Have the soil tested for it. Organic matter and sulphates can keep cement from setting, or break a wall years later.`,
      }),
    ];
  });
}

/**
 * Holds the soils, and the blend where there is one, against each entry, and says how sure each verdict is.
 *
 * @param config tells what was tested of the soils beside their grains.
 * @param blend with the dry density that it is rammed to, where its own tests tell it.
 */
export function computeGuidance(
  entries: readonly GuidanceEntry[],
  {
    config,
    materials,
  }: { readonly config: StudyConfig; readonly materials: readonly MaterialResult[] },
  blend: (Pick<BlendStudy, "curve"> & { readonly dryDensityKgM3?: number }) | undefined,
  drawn: DrawnCurves,
): GuidanceStudy[] {
  const soils = materials.flatMap(({ id, role, name, curve, limits }, index) => {
    if (role !== "soil") return [];
    const tested = testedChemistry(config.materials.find((one) => one.id === id)!);
    const curves = drawn.materials[index];
    const drawnLimits =
      limits &&
      drawLimits(limits, limitErrors(limits), curves.length, config.seed).map((one) => ({
        ...one,
        ...tested,
      }));
    return [{ name, curve, curves, limits: { ...limits, ...tested }, drawnLimits }];
  });
  const rammed =
    blend?.dryDensityKgM3 === undefined ? {} : { dryDensityKgM3: blend.dryDensityKgM3 };
  return entries.flatMap((entry) => [
    ...soils.map(({ name, curve, curves, limits, drawnLimits }) => ({
      name,
      check: checkGuidance(curve, entry, limits),
      probability: verdictProbability(curve, curves, entry, limits, drawnLimits),
    })),
    ...(blend
      ? [
          {
            name: say`Blend`,
            check: checkGuidance(blend.curve, entry, rammed),
            probability: verdictProbability(blend.curve, drawn.blend, entry, rammed),
          },
        ]
      : []),
  ]);
}
