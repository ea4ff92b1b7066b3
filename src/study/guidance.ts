import type { MaterialConfig, StudyConfig } from "../entries/studyConfig.js";
import { type Finding, finding, findingIf, STUDY_FILE } from "../findings/finding.js";
import type { GradingCurve } from "../grading/curve.js";
import { checkGuidance, guidanceFindings, type MeasuredConsistency } from "../guidance/check.js";
import { envelopeEntry, type GuidanceEntry } from "../guidance/entry.js";
import { verdictProbability } from "../guidance/probability.js";
import { GUIDANCE_ENTRIES, guidanceEntry } from "../guidance/published/recommendations.js";
import { formatPlain } from "../quantities/format.js";
import { drawLimits, limitErrors } from "../soil/consistency/drawnLimits.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { GradedMaterial } from "./material.js";
import { materialPlace } from "./materialIds.js";
import type { Study } from "./study.js";
import type { BlendStudy, GuidanceStudy } from "./studyResult.js";

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

/** A curve to be held against recommendations, with what else was measured of its earth. */
export interface HeldCurve {
  readonly name: Text;
  readonly curve: GradingCurve;
  /** As it could have come out within the reading errors. */
  readonly drawn: readonly GradingCurve[];
  readonly measured: MeasuredConsistency;
  /** As that could have come out, one for each drawn curve. */
  readonly drawnMeasured?: readonly MeasuredConsistency[];
}

/** The soils of a study, with what was tested of them beside their grains. */
export function heldSoils(config: StudyConfig, graded: readonly GradedMaterial[]): HeldCurve[] {
  return graded.flatMap(({ material: { id, role, name, curve, limits }, drawn }) => {
    if (role !== "soil") return [];
    const tested = testedChemistry(config.materials.find((one) => one.id === id)!);
    const drawnLimits =
      limits && drawLimits(limits, limitErrors(limits), drawn.length, config.seed);
    const measured = { ...limits, ...tested };
    const drawnMeasured = drawnLimits?.map((one) => ({ ...one, ...tested }));
    return [{ name, curve, drawn, measured, drawnMeasured }];
  });
}

/** A blend, with the dry density that it is rammed to where its own tests tell it. */
export function heldBlend(
  { curve }: Pick<BlendStudy, "curve">,
  drawn: readonly GradingCurve[],
  dryDensityKgM3: number | undefined,
): HeldCurve {
  const measured = dryDensityKgM3 === undefined ? {} : { dryDensityKgM3 };
  return { name: say`Blend`, curve, drawn, measured };
}

/** Holds curves against each entry, and says how sure each verdict is. */
export function computeGuidance(
  entries: readonly GuidanceEntry[],
  held: readonly HeldCurve[],
): GuidanceStudy[] {
  return entries.flatMap((entry) =>
    held.map(({ name, curve, drawn, measured, drawnMeasured }) => ({
      name,
      check: checkGuidance(curve, entry, measured),
      probability: verdictProbability(curve, drawn, entry, measured, drawnMeasured),
    })),
  );
}
