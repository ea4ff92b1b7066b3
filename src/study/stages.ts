import type { NoteBlock } from "../blocks/block.js";
import { missingToBuild } from "../entries/buildable.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { FIRST_SHEET_KEYS, FIRST_TRIAL, trialEntries } from "../entries/trials.js";
import { formatPlain } from "../quantities/format.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { Stage, StageName, StudyResult } from "./studyResult.js";
import { testedAnotherBlend } from "./trials.js";

/** What of a result says how far its study has come. */
type Known = Pick<
  StudyResult,
  | "config"
  | "materials"
  | "ungraded"
  | "compaction"
  | "blend"
  | "strength"
  | "blocks"
  | "trials"
  | "testing"
  | "mix"
> & {
  /** Why blend and tests give no mix, where they would but for that. */
  readonly refused?: readonly Text[];
};

/**
 * How far a study has come, stage by stage, each resting on those before it: whether it is known, and if
 * not, which sheet or entry of `study.yaml` would tell it.
 *
 * Source: own.
 */
export function stagesOf(result: Known): Stage[] {
  const { config, materials, blend, testing, mix } = result;
  const given = blend !== undefined && blend.target === undefined;
  const graded = materials.length === config.materials.length;
  const targeted = graded && (config.target !== undefined || given);
  // Tests of another blend leave this one untested.
  const others = testedAnotherBlend(result);
  const followed = others
    ? undefined
    : trialEntries(config).find(({ id }) => id === (testing?.trial ?? FIRST_TRIAL));
  const sheetKeys = followed?.sheetKeys ?? FIRST_SHEET_KEYS;
  const { compaction, strength, blocks }: Partial<Known> = others ? {} : result;
  const stage = (name: StageName, needs: Text | false): Stage =>
    needs === false ? { stage: name, known: true } : { stage: name, known: false, needs };
  return [
    stage(
      "soil",
      materials.length === 0 &&
        say`A sieve analysis of ${config.materials[0].name}: its sheet under “sieve” of the material.`,
    ),
    stage("target", !targeted && targetNeeds(config)),
    stage("blend", !blend && blendNeeds(targeted)),
    stage(
      "compaction",
      !compaction?.peak && compactionNeeds(compaction, config, sheetKeys.compaction),
    ),
    stage(
      "blocks",
      !strength && blockNeeds(blocks, followed?.blocks !== undefined, sheetKeys.blocks),
    ),
    stage(
      "cement",
      !(testing?.state === "tested" && strength?.chosenCementPct !== undefined) &&
        cementNeeds(result),
    ),
    stage(
      "element",
      config.elements.length === 0 &&
        say`What is to be built: “element”, with its size, the depth of a lift and the waste.`,
    ),
    stage("quantities", !mix && quantityNeeds(result)),
  ];
}

const TITLES: Readonly<Record<StageName, Text>> = {
  soil: say`the soil`,
  target: say`the materials and the target`,
  blend: say`the blend`,
  compaction: say`the compaction of the blend`,
  blocks: say`the strength of its blocks`,
  cement: say`the least cement`,
  element: say`the element`,
  quantities: say`the mix and its quantities`,
};

/** What a stage is called within a sentence. */
export function stageTitle(stage: StageName): Text {
  return TITLES[stage];
}

/** What stands in the place of a table or figure of a stage that is not known yet: what would tell it. */
export function notKnownYet({ stages }: Pick<StudyResult, "stages">, stage: StageName): NoteBlock {
  const needs = stages.find((one) => one.stage === stage)?.needs;
  const title = TITLES[stage];
  return {
    kind: "note",
    tone: "note",
    text: needs ? say`Not known yet: ${title}. ${needs}` : say`Not known yet: ${title}.`,
  };
}

function targetNeeds({ materials, target }: StudyConfig): Text {
  const needs = [
    ...materials.map(({ name, sieve }) =>
      sieve === undefined ? say`a sieve analysis of ${name}` : undefined,
    ),
    materials.length === 1
      ? say`which sand or gravel is available nearby, with a sieve analysis of each`
      : undefined,
    target === undefined
      ? say`what the blend aims at, which the designer must choose (“target”: an exponent and a top size, or a band), or its shares (“mix.shares”, or “mix-from” for those of a tested blend)`
      : undefined,
  ];
  return say`Still open: ${joinTexts(needs, "; ")}.`;
}

function blendNeeds(targeted: boolean): Text {
  return targeted
    ? say`Limits that some blend of these materials can keep: the finding on “limits” says what stands in the way.`
    : say`The materials, and what the blend aims at or its shares.`;
}

function compactionNeeds(
  compaction: Known["compaction"],
  { materials }: StudyConfig,
  key: string,
): Text {
  if (compaction) {
    return say`The points of the compaction sheet show no maximum: test at more water contents.`;
  }
  return materials.length === 1
    ? say`A compaction test of the soil, if it is to be built with alone: its sheet under “${key}”. If not, a sieve analysis of the sand or gravel that is available nearby, and then a target.`
    : say`A compaction test of the blend that is to be built: its sheet under “${key}”.`;
}

function blockNeeds(blocks: Known["blocks"], hasSheet: boolean, key: string): Text {
  if (!blocks) {
    return hasSheet
      ? say`See the findings on the blocks.`
      : say`Blocks of that blend with three cement contents or more, three blocks or more of each: their sheet under “${key}”. “loambook site” prints the card of the trial batch.`;
  }
  const contents = [...new Set(blocks.means.map(({ cementPct }) => cementPct))];
  // Enough contents: what is missing is something else, and the message says it.
  if (contents.length >= 3) return blocks.message;
  const made = joinTexts(contents.map((cementPct) => say`${formatPlain(cementPct, 3)} %`));
  return contents.length === 0
    ? say`Blocks that are not excluded, with three cement contents or more.`
    : say`Blocks with further cement contents, below and above: three contents or more in all, three blocks or more of each. Crushed so far: ${made}. ${blocks.message}`;
}

function cementNeeds({ config, strength, blocks, testing }: Known): Text {
  if (config.strength.requirement === undefined) {
    return say`The strength that is required, its age and where it comes from: “strength.requirement”.`;
  }
  if (!strength) return blocks ? say`The curve of strength against cement.` : say`Crushed blocks.`;
  if (!testing) return say`The blend, so that it can be said whether it was tested.`;
  if (testing.state === "tested") return say`See the findings on the least cement.`;
  return say`Compaction and blocks of this blend: “loambook site” prints the card of its trial batch. Or build a blend that was tested: “mix-from”.`;
}

function quantityNeeds({ config, refused = [] }: Known): Text {
  if (refused.length > 0) return joinTexts(refused, " ");
  const missing = missingToBuild(config);
  if (missing.length === 0)
    return say`A tested blend with its least cement; the findings say what is missing.`;
  return say`A tested blend with its least cement, and in study.yaml: ${joinTexts(missing, "; ")}.`;
}
