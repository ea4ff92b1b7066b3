import { mean } from "simple-statistics";
import type { SpecimenRecord } from "../../lab/specimens.js";
import { say, type Text, wordFor } from "../../words/message.js";

/** Shape of the curve of strength on cement content. */
export type StrengthModel = "linear" | "quadratic" | "logarithmic" | "power";

export interface StrengthModelFacts {
  readonly model: StrengthModel;
  /** f: strength in MPa, c: cement content in percent of the dry mass of soil and aggregate. */
  readonly formula: string;
  readonly coefficientNames: readonly string[];
  readonly contentScale: "plain" | "logarithm";
  readonly strengthScale: "plain" | "logarithm";
  readonly degree: 1 | 2;
}

/**
 * The four curve shapes, simplest first. All are linear in their coefficients, so each is fitted
 * exactly, without starting values. The power curve is fitted as a straight line of ln f on ln c:
 * back in MPa its line is the median, not the mean, of the strengths at a content.
 *
 * @example
 * STRENGTH_MODELS.power.formula // => "ln f = ln a + b ln c, that is f = a c^b"
 */
export const STRENGTH_MODELS: Readonly<Record<StrengthModel, StrengthModelFacts>> = {
  linear: {
    model: "linear",
    formula: "f = a + b c",
    coefficientNames: ["a", "b"],
    contentScale: "plain",
    strengthScale: "plain",
    degree: 1,
  },
  quadratic: {
    model: "quadratic",
    formula: "f = a + b c + d c²",
    coefficientNames: ["a", "b", "d"],
    contentScale: "plain",
    strengthScale: "plain",
    degree: 2,
  },
  logarithmic: {
    model: "logarithmic",
    formula: "f = a + b ln c",
    coefficientNames: ["a", "b"],
    contentScale: "logarithm",
    strengthScale: "plain",
    degree: 1,
  },
  power: {
    model: "power",
    formula: "ln f = ln a + b ln c, that is f = a c^b",
    coefficientNames: ["ln a", "b"],
    contentScale: "logarithm",
    strengthScale: "logarithm",
    degree: 1,
  },
};

/**
 * How the scatter of blocks goes with their strength: `even`, one standard deviation on the fitted
 * scale; `proportional`, one coefficient of variation, so that strong blocks scatter more.
 */
export type StrengthVariance = "even" | "proportional";

/**
 * Standard deviation at a fitted strength over that at the reference strength. A line that falls to
 * nothing would have no scatter at all, so a hundredth of the reference is the least.
 */
export function relativeSd(
  spread: StrengthVariance,
  fittedValue: number,
  reference: number,
): number {
  return spread === "even" ? 1 : Math.max(Math.abs(fittedValue / reference), 0.01);
}

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

/** Content shifted to its mean and divided by its spread: keeps the fit well conditioned. */
export interface ContentBasis {
  readonly centre: number;
  readonly scale: number;
}

/** Content on the scale that the model is straight or quadratic in: c, or ln c. */
function scaledContent(facts: StrengthModelFacts, cementPct: number): number {
  return facts.contentScale === "logarithm" ? Math.log(cementPct) : cementPct;
}

export function contentBasis(
  facts: StrengthModelFacts,
  contentsPct: readonly number[],
): ContentBasis {
  const values = contentsPct.map((content) => scaledContent(facts, content));
  const centre = mean(values);
  const spread = Math.max(...values.map((value) => Math.abs(value - centre)));
  return { centre, scale: spread > 0 ? spread : 1 };
}

/** One design row: 1, u and, for the quadratic model, u². */
export function basisRow(
  facts: StrengthModelFacts,
  basis: ContentBasis,
  cementPct: number,
): readonly number[] {
  const u = (scaledContent(facts, cementPct) - basis.centre) / basis.scale;
  return facts.degree === 2 ? [1, u, u * u] : [1, u];
}

/** Rows that turn coefficients on u into coefficients on c (or ln c). */
export function toPlainCoefficients(
  facts: StrengthModelFacts,
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

/** The columns of a regression: the curve's, then one a covariate, then the batches'. */
export interface StrengthDesign {
  readonly rows: readonly (readonly number[])[];
  /** The columns after the curve's own; one unit of each times its scale gives its printed unit. */
  readonly terms: readonly { readonly name: Text; readonly scale: number }[];
}

/**
 * Builds the design. Covariates are measured from the value that the curve is asked at and divided by
 * their spread; batches are coded to sum to zero. So the curve's own columns alone give the curve at
 * those values, for the average of the batches.
 */
export function strengthDesign(
  facts: StrengthModelFacts,
  basis: ContentBasis,
  options: {
    readonly used: readonly SpecimenRecord[];
    readonly covariates: readonly CovariateAt[];
    readonly batches: readonly string[];
  },
): StrengthDesign {
  const { used, covariates, batches } = options;
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
    terms: [
      ...columns.map(({ kind, scale }) => ({ name: wordFor(kind), scale: 1 / scale })),
      ...shown.map((batch) => ({ name: say`batch ${batch}`, scale: 1 })),
    ],
  };
}
