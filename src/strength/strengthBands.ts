import { tQuantile } from "../numerics/tQuantile.js";
import type { StrengthStatistic } from "./boundOffset.js";
import { checkFraction } from "./checkOption.js";
import { requireFitted } from "./requireFitted.js";
import { fromFittedScale, strengthAt } from "./strengthAt.js";
import type { StrengthFit } from "./strengthFit.js";
import { toleranceOffsets } from "./toleranceOffsets.js";

export interface StrengthBand {
  readonly cementPct: number;
  /** The fitted line: mean, or median for the power form. */
  readonly meanMpa: number;
  /** Two-sided band of the line. */
  readonly meanLowMpa: number;
  readonly meanHighMpa: number;
  /** Two-sided band of one block to come. */
  readonly predictionLowMpa: number;
  readonly predictionHighMpa: number;
  /** One-sided lower bounds at the same confidence. */
  readonly lowerBoundMpa: Readonly<Record<StrengthStatistic, number>>;
  readonly leverage: number;
  /** True outside the tested contents: the curve is then only a guess. */
  readonly extrapolated: boolean;
}

export interface StrengthBandsOptions {
  /** Contents to give the bands at. Default: `steps` even steps across the tested contents. */
  readonly cementPct?: readonly number[];
  /** Default 60. */
  readonly steps?: number;
  /** Default 0.95. */
  readonly confidence?: number;
  /** Share of blocks above the tolerance bound; default 0.95. */
  readonly coverage?: number;
}

/**
 * Gives the fitted strength with its bands at each of several cement contents.
 *
 * Confidence band of the line ŷ ± t s √h; prediction band of one block ŷ ± t s √(1 + h), both
 * two-sided with t at (1 + confidence)/2; the one-sided lower bounds as in `strengthBound`. The
 * bands hold content by content, not for the whole curve at once.
 *
 * Source: as `strengthBound`.
 *
 * @throws RangeError as `strengthBound`, and where `steps` is not a whole number above 0.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { form: "linear", ageDays: 28 });
 * const [at] = strengthBands(fit, { cementPct: [7] });
 * [at.meanMpa, at.meanLowMpa, at.predictionLowMpa] // => [2.625, 2.375, 2.0661]
 */
export function strengthBands(
  fit: StrengthFit,
  options: StrengthBandsOptions = {},
): StrengthBand[] {
  const { steps = 60, confidence = 0.95, coverage = 0.95 } = options;
  const fitted = requireFitted(fit);
  checkFraction("confidence", confidence);
  checkFraction("coverage", coverage);
  if (!(Number.isInteger(steps) && steps > 0)) {
    throw new RangeError(`invalid \`steps\`: ${steps}; expected a whole number above 0`);
  }
  const { contentsPct, degreesOfFreedom } = fitted;
  const [first, last] = [contentsPct[0], contentsPct[contentsPct.length - 1]];
  const contents =
    options.cementPct ??
    Array.from({ length: steps + 1 }, (_, i) =>
      i === steps ? last : first + ((last - first) * i) / steps,
    );
  const t = tQuantile((1 + confidence) / 2, degreesOfFreedom);
  const oneSided = -tQuantile(confidence, degreesOfFreedom);
  const places = contents.map((content) => strengthAt(fitted, content));
  const offsets = toleranceOffsets(
    places.map(({ leverage }) => leverage),
    { confidence, coverage, degreesOfFreedom },
  );
  return contents.map((cementPct, index) => {
    const { value, leverage, sd } = places[index];
    const mpa = (sds: number) => fromFittedScale(fitted, value + sds * sd);
    const ofMean = Math.sqrt(leverage);
    const ofBlock = Math.sqrt(1 + leverage);
    return {
      cementPct,
      meanMpa: mpa(0),
      meanLowMpa: mpa(-t * ofMean),
      meanHighMpa: mpa(t * ofMean),
      predictionLowMpa: mpa(-t * ofBlock),
      predictionHighMpa: mpa(t * ofBlock),
      lowerBoundMpa: {
        mean: mpa(oneSided * ofMean),
        prediction: mpa(oneSided * ofBlock),
        tolerance: mpa(offsets[index]),
      },
      leverage,
      extrapolated: cementPct < first || cementPct > last,
    };
  });
}
