/** Shape of the curve of strength on cement content. */
export type StrengthForm = "linear" | "quadratic" | "logarithmic" | "power";

export interface StrengthFormFacts {
  readonly form: StrengthForm;
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
 * STRENGTH_FORMS.power.formula // => "ln f = ln a + b ln c, that is f = a c^b"
 */
export const STRENGTH_FORMS: Readonly<Record<StrengthForm, StrengthFormFacts>> = {
  linear: {
    form: "linear",
    formula: "f = a + b c",
    coefficientNames: ["a", "b"],
    contentScale: "plain",
    strengthScale: "plain",
    degree: 1,
  },
  quadratic: {
    form: "quadratic",
    formula: "f = a + b c + d c²",
    coefficientNames: ["a", "b", "d"],
    contentScale: "plain",
    strengthScale: "plain",
    degree: 2,
  },
  logarithmic: {
    form: "logarithmic",
    formula: "f = a + b ln c",
    coefficientNames: ["a", "b"],
    contentScale: "logarithm",
    strengthScale: "plain",
    degree: 1,
  },
  power: {
    form: "power",
    formula: "ln f = ln a + b ln c, that is f = a c^b",
    coefficientNames: ["ln a", "b"],
    contentScale: "logarithm",
    strengthScale: "logarithm",
    degree: 1,
  },
};
