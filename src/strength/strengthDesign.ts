import type { SpecimenRecord } from "../lab/specimenRecord.js";
import { say } from "../words/say.js";
import { basisRow, type ContentBasis } from "./contentBasis.js";
import { covariateValue, type StrengthCovariate } from "./strengthCovariate.js";
import type { StrengthFormFacts } from "./strengthForm.js";

/** The columns of a regression: the curve's, then one a covariate, then the batches'. */
export interface StrengthDesign {
  readonly rows: readonly (readonly number[])[];
  /** Names of the columns after the curve's own. */
  readonly termNames: readonly string[];
  /** What one unit of each of those columns is multiplied by to give its printed unit. */
  readonly termScales: readonly number[];
}

/**
 * Builds the design. Covariates are measured from the value that the curve is asked at and divided by
 * their spread; batches are coded to sum to zero. So the curve's own columns alone give the curve at
 * those values, for the average of the batches.
 */
export function strengthDesign(
  facts: StrengthFormFacts,
  basis: ContentBasis,
  of: {
    readonly used: readonly SpecimenRecord[];
    readonly covariates: readonly { readonly kind: StrengthCovariate; readonly at: number }[];
    readonly batches: readonly string[];
  },
): StrengthDesign {
  const { used, covariates, batches } = of;
  const columns = covariates.map(({ kind, at }) => {
    const values = used.map((block) => covariateValue(block, kind)! - at);
    const spread = Math.max(...values.map(Math.abs));
    return { kind, values, scale: spread > 0 ? spread : 1 };
  });
  const last = batches[batches.length - 1];
  const shown = batches.slice(0, -1);
  return {
    rows: used.map((block, index) => [
      ...basisRow(facts, basis, block.cementPct),
      ...columns.map(({ values, scale }) => values[index] / scale),
      ...shown.map((batch) => Number(block.batch === batch) - Number(block.batch === last)),
    ]),
    termNames: [...columns.map(({ kind }) => kind), ...shown.map((batch) => say`batch ${batch}`)],
    termScales: [...columns.map(({ scale }) => 1 / scale), ...shown.map(() => 1)],
  };
}
