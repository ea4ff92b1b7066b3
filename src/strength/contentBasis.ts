import type { StrengthFormFacts } from "./strengthForm.js";

/** Content shifted to its mean and divided by its spread: keeps the fit well conditioned. */
export interface ContentBasis {
  readonly centre: number;
  readonly scale: number;
}

/** Content on the scale that the form is straight or quadratic in: c, or ln c. */
export function scaledContent(facts: StrengthFormFacts, cementPct: number): number {
  return facts.contentScale === "logarithm" ? Math.log(cementPct) : cementPct;
}

export function contentBasis(
  facts: StrengthFormFacts,
  contentsPct: readonly number[],
): ContentBasis {
  const values = contentsPct.map((content) => scaledContent(facts, content));
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = Math.max(...values.map((value) => Math.abs(value - centre)));
  return { centre, scale: spread > 0 ? spread : 1 };
}

/** One design row: 1, u and, for the quadratic form, u². */
export function basisRow(
  facts: StrengthFormFacts,
  basis: ContentBasis,
  cementPct: number,
): readonly number[] {
  const u = (scaledContent(facts, cementPct) - basis.centre) / basis.scale;
  return facts.degree === 2 ? [1, u, u * u] : [1, u];
}

/** Rows that turn coefficients on u into coefficients on c (or ln c). */
export function toPlainCoefficients(
  facts: StrengthFormFacts,
  { centre, scale }: ContentBasis,
): readonly (readonly number[])[] {
  if (facts.degree === 1) {
    return [
      [1, -centre / scale],
      [0, 1 / scale],
    ];
  }
  return [
    [1, -centre / scale, (centre / scale) ** 2],
    [0, 1 / scale, (-2 * centre) / scale ** 2],
    [0, 0, 1 / scale ** 2],
  ];
}
