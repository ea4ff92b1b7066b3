import { isBuildable } from "../entries/buildable.js";
import { sheetsOf } from "../entries/sheets.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { FIRST_TRIAL, type TrialEntry, trialEntries, trialShares } from "../entries/trials.js";
import {
  type Finding,
  type FindingWords,
  finding,
  findingIf,
  STUDY_FILE,
} from "../findings/finding.js";
import { passingAtSize } from "../grading/curve.js";
import { formatFixed, formatPlain } from "../quantities/format.js";
import { analyseCompaction } from "../soil/compaction/compactionTest.js";
import type { Oversize } from "../soil/compaction/phaseRelations.js";
import { trialFindings as lookFindings } from "../strength/trials.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { blendOf, particleDensity, wholeOf } from "./blend.js";
import { unknownMaterial } from "./materialIds.js";
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
    cost: mix.cost && { low: mix.cost.total.low, high: mix.cost.total.high },
    carbonKg: { low: mix.carbon.total.low, high: mix.carbon.total.high },
  };
}

/**
 * What is wrong with what a study says of the shares of its blends: ids that no material has, a `mix-from` that
 * names none, a trial that has the id of the first.
 */
export function trialEntryFindings(config: StudyConfig): Finding[] {
  const entries = trialEntries(config);
  const mixes = [
    ...entries,
    { key: "mix", ...config.specified },
    { key: "compare-mix", ...config.compareMix },
  ];
  return [
    ...mixes.flatMap(({ key, sharesPct = {} }) =>
      Object.keys(sharesPct).flatMap((id) => unknownMaterial(config, `${key}.shares.${id}`, id)),
    ),
    ...entries.flatMap(({ id, key }) =>
      refusedIf(id === FIRST_TRIAL && key !== FIRST_TRIAL, `${key}.id`, id, "trial-id-taken", {
        message: say`This id belongs to the study's own sheets.`,
        expected: say`another id than “${FIRST_TRIAL}”`,
        remedy: say`Give the trial another id.`,
      }),
    ),
    ...sharedSheets(config, entries),
    ...mixFromFindings(config, entries),
  ];
}

function refusedIf(
  isSo: boolean,
  column: string,
  value: string,
  code: string,
  words: FindingWords,
): Finding[] {
  return findingIf(isSo, { file: STUDY_FILE, column, value }, "error", code, words);
}

/** A `mix-from` that cannot be followed. */
function mixFromFindings(
  { mixFrom, specified, materials }: StudyConfig,
  entries: readonly TrialEntry[],
): Finding[] {
  if (mixFrom === undefined) return [];
  const refuse = (isSo: boolean, code: string, words: FindingWords) =>
    refusedIf(isSo, "mix-from", mixFrom, code, words);
  const chosen = entries.find(({ id }) => id === mixFrom);
  const isUntold = chosen !== undefined && chosen.sharesPct === undefined && materials.length > 1;
  return [
    ...refuse(specified?.sharesPct !== undefined, "two-mixes", {
      message: say`The study sets the shares of its mix by hand and takes them from a trial too.`,
      expected: say`“mix.shares” or “mix-from”`,
      remedy: say`Leave one of them out.`,
    }),
    ...refuse(chosen === undefined, "unknown-trial", {
      message: say`No trial of the study has this id.`,
      expected: say`one of ${entries.map(({ id }) => id).join(", ")}`,
      remedy: say`Correct the id, or leave the key out.`,
    }),
    ...refuse(isUntold, "trial-without-shares", {
      message: say`The study does not say of which blend this trial is, so that it cannot be built.`,
      expected: say`the shares of the tested blend under “tested”`,
      remedy: say`Write the shares that the laboratory weighed.`,
    }),
  ];
}

/** One sheet named by trials whose shares lie farther apart than one blend is weighed. */
function sharedSheets(config: StudyConfig, entries: readonly TrialEntry[]): Finding[] {
  return (["compaction", "blocks"] as const).flatMap((kind) =>
    entries.flatMap((entry, index): Finding[] => {
      const own = sheetsOf(entry[kind]);
      const earlier = entries
        .slice(0, index)
        .find((one) => sheetsOf(one[kind]).some((sheet) => own.includes(sheet)));
      if (!earlier) return [];
      const isOther = differentShares(config, entry, earlier);
      const sheets = own.join(", ");
      return refusedIf(isOther, entry.sheetKeys[kind], sheets, "sheet-of-two-trials", {
        message: say`Two trials of different blends, “${earlier.id}” and “${entry.id}”, name the same sheet.`,
        expected: say`a sheet of its own for each tested blend`,
        remedy: say`Name the sheet that belongs to each trial.`,
      });
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
  const computed = study.trials.map((trial) =>
    computeTrial(trial, study.config, materials, proposedPct),
  );
  return {
    trials: computed.map(({ trial }) => trial),
    findings: computed.flatMap(({ findings }) => findings),
  };
}

function computeTrial(
  { entry, compaction: sheet, specimens, looks }: StudyTrial,
  config: StudyConfig,
  materials: readonly MaterialResult[],
  proposedPct: readonly number[] | undefined,
): { readonly trial: TrialStudy; readonly findings: readonly Finding[] } {
  const { id, key, name, crushed, curing, shape } = entry;
  const sharesPct = trialShares(config, entry) ?? wholeOf(config);
  const densityShares = sharesPct ?? proposedPct;
  const particleDensityKgM3 = densityShares && particleDensity(config, densityShares);
  const screened = screenedOff(entry, config, materials, sharesPct);
  const { oversize } = screened;
  const compaction = sheet && analyseCompaction(sheet, { particleDensityKgM3, oversize });
  const blocks = specimens && computeStrength(config, specimens);
  const trial: TrialStudy = {
    id,
    name: name ?? (id === FIRST_TRIAL ? say`the tested blend` : id),
    key,
    crushed,
    curing,
    shape,
    compaction: compaction && {
      ...compaction,
      findings: [...screened.findings, ...compaction.findings],
    },
    strength: blocks?.strength,
    blocks: blocks?.blocks,
    sharesPct,
    blended: sharesPct && proposedPct && blendOf(materials, sharesPct),
    difference: sharesPct && proposedPct && compareBlends(materials, proposedPct, sharesPct),
  };
  const findings = [
    ...(trial.compaction?.findings ?? []),
    ...(blocks?.findings ?? []),
    ...(looks && entry.looks ? lookFindings(looks, sheetsOf(entry.looks)[0]) : []),
  ];
  return {
    trial: { ...trial, pair: trialPair(config, trial), looks },
    findings:
      key === FIRST_TRIAL
        ? findings
        : findings.map((one) => ofTrial(one, trial, id === config.mixFrom)),
  };
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
  const close = trials.filter((trial) => trial.difference?.close && isComplete(trial));
  if (close.length === 0) {
    return {
      state: "proposed",
      trial: trials[0]?.id,
      chosenBy: "nothing",
      message: proposedWords(trials.find(({ difference }) => difference?.close)),
    };
  }
  const asked = config.strength.requirement?.crushed;
  const ranks = (trial: TrialStudy) => [
    stateRank(asked, trial.crushed),
    // Whose tests give no content has the least claim that little cement will do.
    -(trial.strength?.chosenCementPct ?? Number.MAX_VALUE),
    remoteness(trial.difference!),
  ];
  const [trial] = close.toSorted((a, b) => {
    const differences = ranks(a).map((rank, index) => rank - ranks(b)[index]);
    return differences.find((difference) => difference !== 0) ?? 0;
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

/**
 * Where other tests of the blend that is built give another cement content than the trial that the mix follows,
 * and the study does not say which one counts.
 */
export function disagreeFindings(
  { mixFrom }: StudyConfig,
  followed: TrialStudy,
  trials: readonly TrialStudy[],
): Finding[] {
  const rivals = trials.filter(
    (trial) =>
      trial.id !== followed.id &&
      trial.difference?.close &&
      isComplete(trial) &&
      trial.strength?.chosenCementPct !== followed.strength?.chosenCementPct,
  );
  if (mixFrom !== undefined || rivals.length === 0) return [];
  const all = [followed, ...rivals];
  const contents = all.map(({ name, strength }) =>
    strength?.chosenCementPct === undefined
      ? say`${name} none`
      : say`${name} ${formatPlain(strength.chosenCementPct, 3)} %`,
  );
  return [
    finding({ file: STUDY_FILE, column: "mix-from" }, "warning", "trials-disagree", {
      message: say`Tests of this blend disagree on the cement content: ${joinTexts(contents, "; ")}. The mix follows ${followed.name}.`,
      expected: say`one cement content from all tests of one blend`,
      remedy: say`Find out why they differ, and name the trial that counts: “mix-from”, one of ${all.map(({ id }) => id).join(", ")}.`,
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
  const near = trials.find(
    ({ id, difference }) => id === config.mixFrom || (!config.mixFrom && difference?.close),
  );
  const followed = trials.find(({ id }) => id === testing?.trial);
  return [
    ...(!testing || testing.chosenBy === "mix-from" || trials.length === 0
      ? []
      : testedBlendFindings(trials)),
    // Close, and yet its tests do not tell how wet and how dense the mix is.
    ...(testing?.state === "proposed" && near?.strength
      ? [noMixFinding(near.compaction, near.key)]
      : []),
    ...(followed && testing?.state === "tested" ? disagreeFindings(config, followed, trials) : []),
    ...trials.flatMap((trial) => untoldFindings(config, trial)),
    ...trials.flatMap((trial) => crushedFindings(config, trial)),
  ];
}

/** What the study leaves untold of a trial, and what rests on it. */
function untoldFindings({ strength: { requirement } }: StudyConfig, trial: TrialStudy): Finding[] {
  const { id, name, key } = trial;
  // Nothing was crushed, or nothing rests on it yet.
  if (!trial.strength || !requirement) return [];
  const missing = (["crushed", "curing", "shape"] as const)
    .filter((entry) => trial[entry] === undefined)
    .map((entry) => `${key}.${entry}`);
  if (id === FIRST_TRIAL && requirement.crushed === undefined) {
    missing.push("strength.requirement.crushed");
  }
  const place = { file: STUDY_FILE, column: key };
  return findingIf(missing.length > 0, place, "warning", "test-not-told", {
    message: say`For ${name} the study has no entry for ${missing.join(", ")}. The cement content rests on that: a dry cube of a cement-stabilised mix may be far stronger than the same cube soaked, a short block stronger than a tall one.`,
    expected: say`crushed (dry, moist, soaked), curing and shape of what was tested, and the state that the requirement speaks of`,
    remedy: say`Ask whoever made and crushed the blocks, and write it under “${key}” and “strength.requirement”.`,
  });
}

/** A strength of one state does not show a requirement of another. */
function crushedFindings(config: StudyConfig, trial: TrialStudy): Finding[] {
  const message = crushedOtherwise(config, trial);
  const asked = config.strength.requirement?.crushed;
  if (message === undefined || asked === undefined) return [];
  const place = { file: STUDY_FILE, column: `${trial.key}.crushed`, value: trial.crushed };
  return [
    finding(place, "warning", "crushed-otherwise", {
      message,
      expected: say`blocks crushed ${CRUSHED[asked]}`,
      remedy: say`Crush blocks in the state that the requirement speaks of, or ask the responsible person which state is meant.`,
    }),
  ];
}

const CRUSHED: Readonly<Record<Crushed, Text>> = {
  dry: say`dry`,
  moist: say`moist`,
  soaked: say`soaked`,
};

/** That the blocks were crushed in another state than the requirement speaks of; undefined where they were not. */
export function crushedOtherwise(
  { strength }: Pick<StudyConfig, "strength">,
  { name, crushed }: Pick<TrialStudy, "name" | "crushed">,
): Text | undefined {
  const asked = strength.requirement?.crushed;
  if (asked === undefined || crushed === undefined || asked === crushed) return undefined;
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
