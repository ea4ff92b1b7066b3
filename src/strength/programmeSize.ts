import { leastSquares } from "../numerics/leastSquares.js";
import { noncentralTCdf } from "../numerics/noncentralTCdf.js";
import { tQuantile } from "../numerics/tQuantile.js";
import { basisRow, contentBasis } from "./contentBasis.js";
import { STRENGTH_FORMS, type StrengthForm } from "./strengthForm.js";

/** What the blocks are made for. */
export type ProgrammeAim =
  | {
      /** Tell two contents apart whose true means differ by this much, at 5 %, two-sided. */
      readonly kind: "difference";
      readonly differenceMpa: number;
      /** Chance of seeing it; default 0.9. */
      readonly power?: number;
    }
  | {
      /** Know the mean at a content to plus or minus this much, at 95 % confidence. */
      readonly kind: "width";
      readonly halfWidthMpa: number;
      readonly atPct: number;
    };

const LEVEL = 0.05;

/**
 * Power of the two-sided t test between two of `contents` contents with `blocks` blocks each, s pooled
 * over all: noncentral t with δ = difference/(σ √(2/blocks)).
 */
export function differencePower(of: {
  readonly contents: number;
  readonly blocks: number;
  readonly sdMpa: number;
  readonly differenceMpa: number;
}): number {
  const df = of.contents * (of.blocks - 1);
  if (df < 1) return 0;
  const t = tQuantile(1 - LEVEL / 2, df);
  const delta = of.differenceMpa / (of.sdMpa * Math.sqrt(2 / of.blocks));
  return noncentralTCdf(-t, df, -delta) + noncentralTCdf(-t, df, delta);
}

/**
 * Half width of the 95 % band of the mean at a content, were the residual standard deviation σ:
 * t σ √(h₁/blocks), h₁ the leverage with one block a content. Infinite without degrees of freedom.
 */
export function meanHalfWidth(of: {
  readonly contentsPct: readonly number[];
  readonly form: StrengthForm;
  readonly blocks: number;
  readonly sd: number;
  readonly atPct: number;
}): number {
  const facts = STRENGTH_FORMS[of.form];
  const basis = contentBasis(facts, of.contentsPct);
  const df = of.blocks * of.contentsPct.length - facts.coefficientNames.length;
  if (df < 1) return Infinity;
  const { unscaledCovariance } = leastSquares(
    of.contentsPct.map((content) => basisRow(facts, basis, content)),
    of.contentsPct.map(() => 0),
  );
  const row = basisRow(facts, basis, of.atPct);
  const leverage = row.reduce(
    (sum, left, i) =>
      sum + row.reduce((inner, right, j) => inner + left * right * unscaledCovariance[i][j], 0),
    0,
  );
  return tQuantile(1 - LEVEL / 2, df) * of.sd * Math.sqrt(leverage / of.blocks);
}
