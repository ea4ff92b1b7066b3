import type { StrengthConfig } from "../study/studyConfig.js";
import type { StrengthStudy } from "../study/studyResult.js";

/** What the exercises on cement need of a computed study; any study has it. */
export interface ClassStrength {
  readonly config: { readonly strength: Pick<StrengthConfig, "requirement"> };
  readonly strength: Pick<StrengthStudy, "fit" | "specimens" | "leastCement">;
}
