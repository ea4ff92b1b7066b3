import type { ElementConfig } from "./element.js";
import type { CementConfig, MaterialConfig, StudyConfig } from "./studyConfig.js";

/** A study that tells all that a mix and its quantities need, beside what is tested. */
export type BuildableConfig = Omit<StudyConfig, "materials"> & {
  readonly materials: readonly (MaterialConfig & { readonly moisturePct: number })[];
  readonly cement: CementConfig;
  readonly batchDryMassKg: number;
  /** One at least. */
  readonly elements: readonly ElementConfig[];
};

/** Keys of `study.yaml` that a mix and its quantities need and that the study does not tell yet. */
export function missingToBuild({
  materials,
  cement,
  batchDryMassKg,
  elements,
}: StudyConfig): string[] {
  return [
    ...materials.flatMap(({ moisturePct }, index) =>
      moisturePct === undefined ? [`materials.${index}.moisture`] : [],
    ),
    ...(cement === undefined ? ["cement"] : []),
    ...(batchDryMassKg === undefined ? ["batch.dry-mass"] : []),
    ...(elements.length === 0 ? ["element"] : []),
  ];
}

/** Whether a study tells what is to be built, of what, and in which batches. */
export function isBuildable(config: StudyConfig): config is BuildableConfig {
  return missingToBuild(config).length === 0;
}
