import { blendCurve } from "../blend/material.js";
import { isBuildable } from "../entries/buildable.js";
import { sheetsOf } from "../entries/sheets.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { FIRST_TRIAL, type TrialEntry, trialEntries, trialShares } from "../entries/trials.js";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { passingAtSize } from "../grading/curve.js";
import type { CompactionRecord } from "../lab/compaction.js";
import { formatFixed, formatPlain } from "../quantities/format.js";
import { analyseCompaction, type CompactionAnalysis } from "../soil/compaction/compactionTest.js";
import type { Oversize } from "../soil/compaction/phaseRelations.js";
import { trialFindings as lookFindings } from "../strength/trials.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { particleDensity } from "./blend.js";
import { computeMix } from "./mix.js";
import { noMixFinding } from "./mixGuard.js";
import { computeStrength } from "./strength.js";
import type { Study, StudyTrial } from "./study.js";
import type {
  Crushed,
  MaterialResult,
  MixTesting,
  StudyResult,
  TrialPair,
  TrialStudy,
} from "./studyResult.js";
import {
  CLOSE_SHARE_POINTS,
  compareBlends,
  isWithin,
  remoteness,
  testedBlendFindings,
} from "./testedBlend.js";

/** What a tested blend would take to build the element, with the same prices and factors as the mix. */
function trialPair(config: StudyConfig, trial: TrialStudy): TrialPair | undefined {
  const { sharesPct, strength, compaction } = trial;
  if (!sharesPct || !strength || !isBuildable(config)) return undefined;
  const shares = config.materials.map(({ id }, index) => ({ id, sharePct: sharesPct[index] }));
  // What is set by hand is the mix to build; a trial stands for itself.
  const own = { ...config, specified: undefined };
  const { mix } = computeMix(own, { shares }, strength, compaction);
  if (!mix) return undefined;
  return {
    cementPct: mix.recipe.cementPct,
    moisturePct: mix.recipe.targetMoisturePct,
    densityKgM3: mix.density.valueKgM3,
    cementKgM3: mix.quantities.cementKgM3,
    cementKg: mix.quantities.mix.cement.dryMassKg,
    siteSoilPct: config.materials.reduce(
      (sum, { role }, index) => sum + (role === "soil" ? sharesPct[index] : 0),
      0,
    ),
    ...(mix.cost ? { cost: { low: mix.cost.total.low, high: mix.cost.total.high } } : {}),
    carbonKg: { low: mix.carbon.total.low, high: mix.carbon.total.high },
  };
}

/**
 * What is wrong with what a study says of its tested blends: ids that no material has, a `mix-from` that
 * names none, a trial that has the id of the first.
 */
export function trialEntryFindings(config: StudyConfig): Finding[] {
  const known = config.materials.map(({ id }) => id);
  const entries = trialEntries(config);
  const { mixFrom, specified } = config;
  const told = [...entries, { key: "mix", sharesPct: specified?.sharesPct }];
  const findings = told.flatMap(({ key, sharesPct = {} }) =>
    Object.keys(sharesPct).flatMap((id): Finding[] =>
      known.includes(id)
        ? []
        : [
            finding(
              { file: STUDY_FILE, column: `${key}.shares.${id}`, value: id },
              "error",
              "unknown-material",
              {
                message: say`No material of the study has this id.`,
                expected: say`one of ${known.join(", ")}`,
                remedy: say`Correct the id, or add the material.`,
              },
            ),
          ],
    ),
  );
  entries.forEach(({ id, key }) => {
    if (id !== FIRST_TRIAL || key === FIRST_TRIAL) return;
    const place = { file: STUDY_FILE, column: `${key}.id`, value: id };
    const words = {
      message: say`This id belongs to the study's own sheets.`,
      expected: say`another id than “${FIRST_TRIAL}”`,
      remedy: say`Give the trial another id.`,
    };
    findings.push(finding(place, "error", "trial-id-taken", words));
  });
  findings.push(...sharedSheets(config));
  if (mixFrom === undefined) return findings;
  const place = { file: STUDY_FILE, column: "mix-from", value: mixFrom };
  if (specified?.sharesPct !== undefined) {
    const words = {
      message: say`The study sets the shares of its mix by hand and takes them from a trial too.`,
      expected: say`“mix.shares” or “mix-from”`,
      remedy: say`Leave one of them out.`,
    };
    findings.push(finding(place, "error", "two-mixes", words));
  }
  const chosen = entries.find(({ id }) => id === mixFrom);
  if (!chosen) {
    const words = {
      message: say`No trial of the study has this id.`,
      expected: say`one of ${entries.map(({ id }) => id).join(", ")}`,
      remedy: say`Correct the id, or leave the key out.`,
    };
    findings.push(finding(place, "error", "unknown-trial", words));
  } else if (chosen.sharesPct === undefined && known.length > 1) {
    const words = {
      message: say`The study does not say of which blend this trial is, so that it cannot be built.`,
      expected: say`the shares of the tested blend under “tested”`,
      remedy: say`Write the shares that the laboratory weighed.`,
    };
    findings.push(finding(place, "error", "trial-without-shares", words));
  }
  return findings;
}

/** One sheet named by trials whose shares lie farther apart than one blend is weighed. */
function sharedSheets(config: StudyConfig): Finding[] {
  const entries = trialEntries(config);
  return (["compaction", "blocks"] as const).flatMap((kind) =>
    entries.flatMap((entry, index): Finding[] => {
      const own = sheetsOf(entry[kind]);
      const earlier = entries
        .slice(0, index)
        .find((one) => sheetsOf(one[kind]).some((sheet) => own.includes(sheet)));
      if (!earlier || !differentShares(config, entry, earlier)) return [];
      const place = { file: STUDY_FILE, column: entry.sheetKeys[kind], value: own.join(", ") };
      return [
        finding(place, "error", "sheet-of-two-trials", {
          message: say`Two trials of different blends, “${earlier.id}” and “${entry.id}”, name the same sheet.`,
          expected: say`a sheet of its own for each tested blend`,
          remedy: say`Name the sheet that belongs to each trial.`,
        }),
      ];
    }),
  );
}

function differentShares(config: StudyConfig, one: TrialEntry, other: TrialEntry): boolean {
  const [first, second] = [trialShares(config, one), trialShares(config, other)];
  if (first === undefined || second === undefined) return false;
  return first.some((share, index) => !isWithin(share - second[index], CLOSE_SHARE_POINTS));
}

/**
 * Computes each tested blend from its own sheets, and holds the proposed blend against it.
 *
 * @param proposedPct shares of the proposed blend; absent where there is none, so that no curve is blended.
 * @returns the trials with what was found. What stops the regression of a further trial is a warning: the
 * study can do without it, unless its mix is to be built.
 */
export function computeTrials(
  study: Study,
  materials: readonly MaterialResult[],
  proposedPct: readonly number[] | undefined,
): { readonly trials: readonly TrialStudy[]; readonly findings: readonly Finding[] } {
  const { config } = study;
  const findings: Finding[] = [];
  const trials = study.trials.map((trial): TrialStudy => {
    const computed = computeTrial(trial, config, materials, proposedPct);
    const own = trial.entry.key === FIRST_TRIAL;
    const mustHold = trial.entry.id === config.mixFrom;
    findings.push(
      ...computed.findings.map((one) => (own ? one : ofTrial(one, computed.trial, mustHold))),
    );
    const pair = trialPair(config, computed.trial);
    const { looks } = trial;
    return { ...computed.trial, ...(pair ? { pair } : {}), ...(looks ? { looks } : {}) };
  });
  return { trials, findings };
}

function computeTrial(
  { entry, compaction: sheet, specimens, looks }: StudyTrial,
  config: StudyConfig,
  materials: readonly MaterialResult[],
  proposedPct: readonly number[] | undefined,
): { readonly trial: TrialStudy; readonly findings: readonly Finding[] } {
  const { id, key, name, crushed, curing, shape } = entry;
  // Of a single material every blend is the whole.
  const whole = config.materials.length === 1 ? [100] : undefined;
  const sharesPct = trialShares(config, entry) ?? whole;
  const densityShares = sharesPct ?? proposedPct;
  const particleDensityKgM3 = densityShares && particleDensity(config, densityShares);
  const screened = screenedOff(entry, config, materials, sharesPct);
  const compaction = sheet && compactionOf(sheet, particleDensityKgM3, screened);
  const crushedBlocks = specimens && computeStrength(config, specimens);
  const { strength, blocks } = crushedBlocks ?? {};
  return {
    trial: {
      id,
      name: name ?? (id === FIRST_TRIAL ? say`the tested blend` : id),
      key,
      crushed,
      curing,
      shape,
      compaction,
      strength,
      blocks,
      ...(sharesPct === undefined ? {} : ofShares(materials, sharesPct, proposedPct)),
    },
    findings: [
      ...(compaction?.findings ?? []),
      ...(crushedBlocks?.findings ?? []),
      ...(looks && entry.looks ? lookFindings(looks, sheetsOf(entry.looks)[0]) : []),
    ],
  };
}

/** The compaction test of a trial, with what is found about grains that were taken out before. */
function compactionOf(
  sheet: CompactionRecord,
  particleDensityKgM3: number | undefined,
  { oversize, findings }: ReturnType<typeof screenedOff>,
): CompactionAnalysis {
  const analysis = analyseCompaction(sheet, { particleDensityKgM3, oversize });
  return { ...analysis, findings: [...findings, ...analysis.findings] };
}

/** Share up to which densities are usually corrected for what was screened off; from memory. */
const MOST_OVERSIZE_PCT = 30;

/** The coarse grains of a blend that its compaction test was made without, and what is to be known of them. */
function screenedOff(
  { screenedAtMm, key }: TrialEntry,
  config: StudyConfig,
  materials: readonly MaterialResult[],
  sharesPct: readonly number[] | undefined,
): { readonly oversize?: Oversize; readonly findings: readonly Finding[] } {
  if (screenedAtMm === undefined) return { findings: [] };
  const place = { file: STUDY_FILE, column: `${key}.screened-at` };
  const coarsePct = coarserThan(screenedAtMm, materials, sharesPct);
  const oversizePct = coarsePct?.reduce((sum, pct) => sum + pct, 0);
  if (oversizePct === 0) return { findings: [] };
  const density =
    oversizePct &&
    coarsePct &&
    particleDensity(
      config,
      coarsePct.map((pct) => (100 * pct) / oversizePct),
    );
  if (!density) {
    return {
      findings: [
        finding(place, "warning", "screened-not-corrected", {
          message: say`Coarse grains were taken out before compaction, and how many is not known: density and water are those of what was in the mould.`,
          expected: say`the shares of the blend, a curve of each material that reaches this sieve, and particle densities`,
          remedy: say`Enter what is missing: with its coarse grains the blend is denser and takes less water.`,
        }),
      ],
    };
  }
  const share = say`${formatFixed(oversizePct, 1)} %`;
  return {
    oversize: { oversizePct, oversizeParticleDensityKgM3: density },
    findings: [
      oversizePct > MOST_OVERSIZE_PCT
        ? finding(place, "warning", "much-screened-off", {
            message: say`${share} of the blend was taken out before compaction. Density and water are corrected for it, and so large a share makes that doubtful.`,
            expected: say`at most ${MOST_OVERSIZE_PCT} % (from memory)`,
            remedy: say`Compact the whole blend in a larger mould.`,
          })
        : finding(place, "note", "compaction-corrected", {
            message: say`${share} of the blend was taken out before compaction: density and water of the compaction test are corrected for it.`,
            expected: say`density and water of the whole blend`,
            remedy: say`Nothing to do; the sheet keeps what was measured in the mould.`,
          }),
    ],
  };
}

/** Of each material what is coarser than a sieve, percent of the blend; undefined where not all is known. */
function coarserThan(
  sizeMm: number,
  materials: readonly MaterialResult[],
  sharesPct: readonly number[] | undefined,
): number[] | undefined {
  const coarse = sharesPct?.flatMap((share, index) => {
    const finer = share === 0 ? 100 : passingAtSize(materials[index].curve, sizeMm);
    return finer === undefined ? [] : [(share * (100 - finer)) / 100];
  });
  return coarse?.length === materials.length ? coarse : undefined;
}

/** What the shares of a trial's blend tell, beside the proposed ones where there are any. */
function ofShares(
  materials: readonly MaterialResult[],
  sharesPct: readonly number[],
  proposedPct: readonly number[] | undefined,
): Pick<TrialStudy, "sharesPct" | "blended" | "difference"> {
  if (!proposedPct) return { sharesPct };
  const parts = materials.map(({ curve }, index) => ({ curve, sharePct: sharesPct[index] }));
  const difference = compareBlends(materials, proposedPct, sharesPct);
  return { sharesPct, blended: blendCurve(parts), difference };
}

/** A finding of a further trial says whose it is. */
function ofTrial(one: Finding, { name, key }: TrialStudy, mustHold: boolean): Finding {
  return {
    ...one,
    severity: one.severity === "error" && !mustHold ? "warning" : one.severity,
    ...(one.file === STUDY_FILE ? { column: key } : {}),
    message: say`Trial ${name}: ${one.message}`,
  };
}

/** Whether compaction and blocks of a trial are there to build on. */
function isComplete({ compaction, strength }: TrialStudy): boolean {
  return compaction?.peak !== undefined && strength !== undefined;
}

/**
 * Which trial the mix of a study follows, and whether its blend may be called tested.
 *
 * With `mix-from` it is that trial, whose blend is then the one that is built. Otherwise it is the trial
 * close to the proposed blend (see `compareBlends`). Of several with compaction and strength those come first
 * whose blocks were crushed as the requirement asks, then those that need more cement, then the nearest;
 * where none is close, the blend is proposed, and compaction and strength are shown as those of the study's
 * own sheets, of another blend.
 */
export function mixTesting(config: StudyConfig, trials: readonly TrialStudy[]): MixTesting {
  const named = trials.find(({ id }) => id === config.mixFrom);
  if (named) {
    const tested = isComplete(named) && named.sharesPct !== undefined;
    return {
      state: tested ? "tested" : "proposed",
      trial: named.id,
      chosenBy: "mix-from",
      message: tested
        ? say`Tested: compaction and blocks were made of this blend, ${named.name}.`
        : proposedWords(named),
    };
  }
  const asked = config.strength.requirement?.crushed;
  const close = trials.flatMap((trial) =>
    trial.difference?.close && isComplete(trial)
      ? [
          {
            trial,
            // Whose tests give no content has the least claim that little cement will do.
            rank: [
              stateRank(asked, trial.crushed),
              -(trial.strength?.chosenCementPct ?? Number.MAX_VALUE),
              remoteness(trial.difference),
            ],
          },
        ]
      : [],
  );
  if (close.length === 0) {
    const [first] = trials;
    return {
      state: "proposed",
      ...(first ? { trial: first.id } : {}),
      chosenBy: "nothing",
      message: proposedWords(trials.find(({ difference }) => difference?.close)),
    };
  }
  const { trial } = close.reduce((first, one) => {
    const at = one.rank.findIndex((value, index) => value !== first.rank[index]);
    return at >= 0 && one.rank[at] < first.rank[at] ? one : first;
  });
  return {
    state: "tested",
    trial: trial.id,
    chosenBy: "closeness",
    message: say`Tested: compaction and blocks were made of ${trial.name}, to which this blend is close.`,
  };
}

/** Crushed as the requirement asks, then not told, then otherwise. */
function stateRank(asked: Crushed | undefined, crushed: Crushed | undefined): number {
  if (asked === undefined || crushed === asked) return 0;
  return crushed === undefined ? 1 : 2;
}

/** Close to the blend of the study as the trial that its mix follows is, and yet with another cement content. */
export function rivalTrials(followed: TrialStudy, trials: readonly TrialStudy[]): TrialStudy[] {
  return trials.filter(
    (trial) =>
      trial.id !== followed.id &&
      trial.difference?.close &&
      isComplete(trial) &&
      trial.strength?.chosenCementPct !== followed.strength?.chosenCementPct,
  );
}

/** The cement contents that several tests of one blend give. */
export function disagreeWords(trial: TrialStudy, rivals: readonly TrialStudy[]): Text {
  const list = [trial, ...rivals].map(({ name, strength }) =>
    strength?.chosenCementPct === undefined
      ? say`${name} none`
      : say`${name} ${formatPlain(strength.chosenCementPct, 3)} %`,
  );
  return say`Tests of this blend disagree on the cement content: ${joinTexts(list, "; ")}. The mix follows ${trial.name}.`;
}

/** Where several close trials give different contents, and the study does not say which one counts. */
function disagreeFindings(
  { mixFrom }: StudyConfig,
  trials: readonly TrialStudy[],
  testing: MixTesting | undefined,
): Finding[] {
  const followed = trials.find(({ id }) => id === testing?.trial);
  if (mixFrom !== undefined || testing?.state !== "tested" || !followed) return [];
  const rivals = rivalTrials(followed, trials);
  if (rivals.length === 0) return [];
  const ids = [followed, ...rivals].map(({ id }) => id);
  return [
    finding({ file: STUDY_FILE, column: "mix-from" }, "warning", "trials-disagree", {
      message: disagreeWords(followed, rivals),
      expected: say`one cement content from all tests of one blend`,
      remedy: say`Find out why they differ, and name the trial that counts: “mix-from”, one of ${ids.join(", ")}.`,
    }),
  ];
}

/** How far the tests of a blend that is not tested whole have come. */
function proposedWords(close: TrialStudy | undefined): Text {
  if (close?.strength) {
    return say`Proposed: blocks of this blend were crushed, but no compaction test tells its water and density.`;
  }
  if (close?.blocks) {
    return say`Proposed: blocks of this blend were crushed, but they give no curve of strength against cement yet.`;
  }
  return close?.compaction
    ? say`Proposed: this blend was compacted; no blocks of it were crushed yet.`
    : say`Proposed: nothing was compacted and crushed with this blend.`;
}

/** All that is found about which blend was tested and in what state its blocks were. */
export function trialFindings(
  config: StudyConfig,
  trials: readonly TrialStudy[],
  testing: MixTesting | undefined,
): Finding[] {
  const near = trials.filter(
    ({ id, difference }) => id === config.mixFrom || (!config.mixFrom && difference?.close),
  );
  return [
    ...(!testing || testing.chosenBy === "mix-from" || trials.length === 0
      ? []
      : testedBlendFindings(trials)),
    // Close, and yet its tests do not tell how wet and how dense the mix is.
    ...(testing?.state === "proposed" && near[0]?.strength
      ? [noMixFinding(near[0].compaction, near[0].key)]
      : []),
    ...disagreeFindings(config, trials, testing),
    ...trials.flatMap((trial) => untoldFindings(config, trial)),
    ...trials.flatMap((trial) => crushedFindings(config, trial)),
  ];
}

/** What the study leaves untold of a trial, and what rests on it. */
function untoldFindings({ strength: { requirement } }: StudyConfig, trial: TrialStudy): Finding[] {
  const { id, name, key, crushed, curing, shape } = trial;
  // Nothing was crushed, or nothing rests on it yet.
  if (!trial.strength || !requirement) return [];
  const missing = [
    ...(crushed === undefined ? [`${key}.crushed`] : []),
    ...(curing === undefined ? [`${key}.curing`] : []),
    ...(shape === undefined ? [`${key}.shape`] : []),
    ...(id === FIRST_TRIAL && requirement.crushed === undefined
      ? ["strength.requirement.crushed"]
      : []),
  ];
  if (missing.length === 0) return [];
  return [
    finding({ file: STUDY_FILE, column: key }, "warning", "test-not-told", {
      message: say`For ${name} the study has no entry for ${missing.join(", ")}. The cement content rests on that: a dry cube of a cement-stabilised mix may be far stronger than the same cube soaked, a short block stronger than a tall one.`,
      expected: say`crushed (dry, moist, soaked), curing and shape of what was tested, and the state that the requirement speaks of`,
      remedy: say`Ask whoever made and crushed the blocks, and write it under “${key}” and “strength.requirement”.`,
    }),
  ];
}

/** A strength of one state does not show a requirement of another. */
function crushedFindings({ strength }: StudyConfig, { name, key, crushed }: TrialStudy): Finding[] {
  const asked = strength.requirement?.crushed;
  if (asked === undefined || crushed === undefined || asked === crushed) return [];
  return [
    finding(
      { file: STUDY_FILE, column: `${key}.crushed`, value: crushed },
      "warning",
      "crushed-otherwise",
      {
        message: crushedWords(name, crushed, asked),
        expected: say`blocks crushed ${CRUSHED[asked]}`,
        remedy: say`Crush blocks in the state that the requirement speaks of, or ask the responsible person which state is meant.`,
      },
    ),
  ];
}

const CRUSHED: Readonly<Record<Crushed, Text>> = {
  dry: say`dry`,
  moist: say`moist`,
  soaked: say`soaked`,
};

/** That the requirement speaks of another state than the blocks were in; for findings, cards and pages. */
export function crushedWords(name: Text, crushed: Crushed, asked: Crushed): Text {
  return say`The blocks of ${name} were crushed ${CRUSHED[crushed]}; the requirement speaks of blocks crushed ${CRUSHED[asked]}. The cement content does not show that the requirement is met.`;
}

/** Whether compaction and strength of a result are of a blend that is neither its own nor close to it. */
export function testedAnotherBlend({
  trials,
  testing,
}: Pick<StudyResult, "trials" | "testing">): boolean {
  if (testing?.state !== "proposed" || testing.chosenBy === "mix-from") return false;
  const tested = trials.find(({ id }) => id === testing.trial);
  return tested !== undefined && !tested.difference?.close;
}
