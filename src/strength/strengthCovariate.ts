import type { SpecimenRecord } from "../lab/specimenRecord.js";

/** What else a block's strength may depend on: ln of its age, its dry density, its moisture when crushed. */
export type StrengthCovariate = "ln age" | "dry density" | "moisture at test";

export interface CovariateAt {
  readonly kind: StrengthCovariate;
  /** Where the curve is asked: ln days, kg/m³ or percent. */
  readonly at: number;
}

/** The covariate of a block: ln days, kg/m³ or percent; undefined where it was not measured. */
export function covariateValue(block: SpecimenRecord, kind: StrengthCovariate): number | undefined {
  if (kind === "ln age") return Math.log(block.ageDays);
  if (kind === "dry density") return block.dryDensityKgM3;
  return block.testMoisturePct ?? block.moisturePct;
}
