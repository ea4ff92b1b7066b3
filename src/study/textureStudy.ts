import type { UsdaParts } from "../soil/usdaTexture.js";

/** Sand, silt and clay of a soil or of the blend, for the texture triangle. */
export interface TextureStudy {
  readonly name: string;
  readonly parts: UsdaParts;
  /** As they could have come out within the reading errors; those of curves that reach far enough. */
  readonly resampled: readonly UsdaParts[];
}
