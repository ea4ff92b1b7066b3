import { say, type Text } from "../words/message.js";
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

/** Entries of `study.yaml` that a mix and its quantities need and that the study does not tell yet, with their keys. */
export function missingToBuild({
  materials,
  cement,
  batchDryMassKg,
  elements,
}: StudyConfig): Text[] {
  return [
    ...materials.flatMap(({ name, moisturePct }) =>
      moisturePct === undefined ? [say`the moisture of ${name} as it is stored (“moisture”)`] : [],
    ),
    ...(cement === undefined ? [say`the cement (“cement”)`] : []),
    ...(batchDryMassKg === undefined ? [say`the dry mass of a batch (“dry-mass” of “batch”)`] : []),
    ...(elements.length === 0 ? [say`what is to be built (“element”)`] : []),
  ];
}

/** Whether a study tells what is to be built, of what, and in which batches. */
export function isBuildable(config: StudyConfig): config is BuildableConfig {
  return missingToBuild(config).length === 0;
}
