import type { KeyValuesBlock } from "../blocks/block.js";
import type { TargetConfig } from "../entries/studyConfig.js";
import type { BlendStudy, StrengthStudy, StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { OBJECTIVE_WORDS } from "./blend.js";
import { digits, plain } from "./cell.js";
import { statisticName } from "./strength.js";
import { listOf } from "./tableOf.js";

/** How the numbers of this study were computed: what was minimised, which model, which variance, which bound. */
export function computationTable({
  config,
  materials,
  blend,
  strength,
}: Pick<StudyResult, "config" | "materials" | "blend" | "strength">): KeyValuesBlock {
  const { requirement } = config.strength;
  return listOf(say`How the numbers were computed`, [
    materials.length > 0 && [say`Fines below the finest sieve`, finesText(materials)],
    blend && [say`Blend`, blendText(blend.target, config.target)],
    strength && [say`Strength`, strengthText(strength.fit)],
    requirement &&
      strength && [
        say`Least cement`,
        say`where ${statisticName(requirement.statistic, requirement.confidence)} reaches the requirement`,
      ],
  ]);
}

function finesText(materials: StudyResult["materials"]): Text {
  return joinTexts(
    materials.map(({ name, sedimentation, pipette }) => {
      if (sedimentation) return say`${name}: hydrometer, Stokes' law`;
      return pipette ? say`${name}: pipette, Stokes' law` : say`${name}: not measured`;
    }),
    "; ",
  );
}

function blendText(sought: BlendStudy["target"], target: TargetConfig | undefined): Text {
  if (!sought) return say`the shares that the study gives, without a target`;
  const { kind, exponent, topSizeMm } = sought;
  if (kind === "band") {
    return target?.kind === "band"
      ? say`least breach of the band; among blends that keep to it, ${OBJECTIVE_WORDS[target.objective]}`
      : say`least breach of the band`;
  }
  if (kind === "power" && exponent !== null && topSizeMm !== null) {
    return say`least sum of squared differences from the power curve of exponent ${digits(exponent)} and top size ${plain(topSizeMm)} mm`;
  }
  return say`least sum of squared differences from the target`;
}

function strengthText({ model, basis, batches, covariates }: StrengthStudy["fit"]): Text {
  const method =
    basis.variance === "proportional"
      ? say`${wordFor(model)} model, weighted least squares, the variance growing with the square of the strength`
      : say`${wordFor(model)} model, ordinary least squares, one variance at all contents`;
  return joinTexts(
    [
      method,
      batches.length > 0 ? say`each batch with a level of its own` : undefined,
      covariates.length > 0
        ? say`with ${joinTexts(covariates.map(({ kind }) => wordFor(kind)))} in the regression`
        : undefined,
    ],
    "; ",
  );
}
