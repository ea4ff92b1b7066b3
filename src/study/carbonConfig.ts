import type { SourcedRange } from "../batch/carbonFactors.js";

/** What the element is compared with, and the factor of haul, where they are not the general ones. */
export interface CarbonConfig {
  readonly haul?: SourcedRange;
  /** Volume of the concrete element that would stand in the same place; default that of the earth element. */
  readonly concreteVolumeM3?: number;
  readonly concreteCement?: SourcedRange;
}
