import type { Between } from "../batch/cementComparison.js";
import type { CostRange } from "../batch/costRange.js";
import type { ElementAmounts } from "../batch/elementQuantities.js";
import type { MixCarbon } from "../batch/mixCarbon.js";
import type { MixSaving } from "../batch/mixSaving.js";

/** Another mix of the same element, and what the chosen one saves against it. */
export interface ComparedMix {
  readonly name: string;
  /** The user's words. */
  readonly basis: string;
  readonly quantities: ElementAmounts;
  readonly cost?: CostRange;
  readonly carbon: MixCarbon;
  /** Absent where nothing has a price. */
  readonly saving?: MixSaving;
  readonly savedCementKg: number;
  /** kg CO2e; null where a factor is missing. */
  readonly savedCarbonKg: Between | null;
}
