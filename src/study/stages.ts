import type { NoteBlock } from "../blocks/block.js";
import { missingToBuild } from "../entries/buildable.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { joinTexts, say, type Text } from "../words/message.js";
import type { Stage, StageName, StudyResult } from "./studyResult.js";

/** What of a result says how far its study has come. */
type Known = Pick<
  StudyResult,
  "config" | "materials" | "ungraded" | "compaction" | "blend" | "strength" | "life" | "mix"
>;

/**
 * How far a study has come, stage by stage, each resting on those before it: whether it is known, and if
 * not, which sheet or entry of `study.yaml` would tell it.
 *
 * Source: own.
 */
export function stagesOf(result: Known): Stage[] {
  const { config, materials, compaction, blend, strength, life, mix } = result;
  const { requirement } = config.strength;
  const tested = life?.state === "tested";
  const stage = (name: StageName, known: boolean, needs: () => Text): Stage =>
    known ? { stage: name, known } : { stage: name, known, needs: needs() };
  const targeted = config.target !== undefined && materials.length === config.materials.length;
  return [
    stage("soil", materials.length > 0, () => soilNeeds(config)),
    stage("target", targeted, () => targetNeeds(config)),
    stage("blend", blend !== undefined, () =>
      targeted ? say`See the findings on the blend.` : say`The materials and the target.`,
    ),
    stage("compaction", compaction?.peak !== undefined, () =>
      compaction
        ? say`The points of the compaction sheet show no top: test at more water contents.`
        : say`A compaction test of the blend that is to be built: its sheet under “compaction”.`,
    ),
    stage("blocks", strength !== undefined, () =>
      config.strength.sheet === undefined
        ? say`Blocks of that blend with three cement contents or more: their sheet under “strength”, as “sheet”.`
        : say`See the findings on the blocks.`,
    ),
    stage("cement", tested && strength?.chosenCementPct !== undefined, () => {
      if (requirement === undefined) {
        return say`The strength that is required, its age and where it comes from: “strength.requirement”.`;
      }
      if (!strength) return say`The blocks.`;
      if (!tested)
        return life?.message ?? say`The blend, so that it can be said whether it was tested.`;
      return say`See the findings on the least cement.`;
    }),
    stage(
      "element",
      config.element !== undefined,
      () => say`What is to be built: “element”, with its size, the depth of a lift and the waste.`,
    ),
    stage("quantities", mix !== undefined, () => quantityNeeds(config)),
  ];
}

const TITLES: Readonly<Record<StageName, Text>> = {
  soil: say`The soil`,
  target: say`Materials and target`,
  blend: say`The blend`,
  compaction: say`Compaction`,
  blocks: say`Blocks`,
  cement: say`The least cement`,
  element: say`The element`,
  quantities: say`The mix and its quantities`,
};

/** What a stage is called. */
export function stageTitle(stage: StageName): Text {
  return TITLES[stage];
}

/** Which sheet or entry would tell a stage; undefined where it is known. */
export function stageNeeds(
  { stages }: Pick<StudyResult, "stages">,
  stage: StageName,
): Text | undefined {
  return stages.find((one) => one.stage === stage)?.needs;
}

/** What stands in the place of a table or figure of a stage that is not known yet: what would tell it. */
export function notKnownYet(result: Pick<StudyResult, "stages">, stage: StageName): NoteBlock {
  const needs = stageNeeds(result, stage);
  const title = TITLES[stage];
  return {
    kind: "note",
    tone: "note",
    text: needs ? say`${title}: not known yet. ${needs}` : say`${title}: not known yet.`,
  };
}

function soilNeeds({ materials }: StudyConfig): Text {
  const [{ name }] = materials;
  return say`A sieve analysis of ${name}: its sheet under “sieve” of the material.`;
}

function targetNeeds({ materials, target }: StudyConfig): Text {
  const needs: Text[] = materials.flatMap(({ name, sieve }) =>
    sieve === undefined ? [say`a sieve analysis of ${name}`] : [],
  );
  if (target === undefined) {
    needs.push(
      say`what the blend aims at, which the designer must choose: “target”, with an exponent and a top size, or a band`,
    );
  }
  return say`Still open: ${joinTexts(needs)}.`;
}

function quantityNeeds(config: StudyConfig): Text {
  const missing = missingToBuild(config);
  if (missing.length === 0) return say`A tested blend with its least cement.`;
  return say`A tested blend with its least cement, and in study.yaml: ${missing.join(", ")}.`;
}
