import { mean } from "simple-statistics";
import type { SpecimenRecord } from "../lab/specimens.js";
import { say, type Text } from "../words/message.js";
import { strengthBands } from "./regression/bounds.js";
import { type FitStrengthOptions, fitStrength } from "./regression/fit.js";

/** The curve at one content and age, and the blocks that were crushed there. */
export interface StrengthAtAge {
  readonly ageDays: number;
  /** Of the curve: mean, or median for the power model. */
  readonly meanMpa: number;
  /** Two-sided band of the curve. */
  readonly meanLowMpa: number;
  readonly meanHighMpa: number;
  /** Two-sided band of one block to come. */
  readonly predictionLowMpa: number;
  readonly predictionHighMpa: number;
  /** Crushed at just this content and age. */
  readonly blocks: number;
  /** Null where no block was. */
  readonly blocksMeanMpa: number | null;
}

export interface StrengthByAge {
  readonly status: "ok" | "no-fit";
  readonly message: Text;
  readonly cementPct: number;
  /** Ascending; the tested ages. */
  readonly ages: readonly StrengthAtAge[];
}

/**
 * Strength against age at one cement content: the regression with `ln age` as a covariate, asked at each
 * tested age. Nothing is said of ages in between or beyond.
 *
 * @param options as for `fitStrength`, with `ln age` among the covariates.
 * @throws RangeError without `ln age` among the covariates, and as `fitStrength` and `strengthBands`.
 * Source: as `fitStrength`; strength on ln days is common practice, no source.
 *
 * @example
 * const block = (id, cementPct, ageDays, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays, row: 2 });
 * const blocks = [block("A", 4, 7, 1.0), block("B", 4, 28, 1.5), block("C", 8, 7, 2.1), block("D", 8, 28, 2.5), block("E", 6, 28, 2.0)];
 * const { ages } = strengthByAge(blocks, { model: "linear", ageDays: 28, covariates: ["ln age"] }, 6);
 * ages.map(({ ageDays, blocks, meanMpa }) => [ageDays, blocks, meanMpa]) // => [[7, 0, 1.55], [28, 1, 2.00]]
 */
export function strengthByAge(
  specimens: readonly SpecimenRecord[],
  options: FitStrengthOptions,
  cementPct: number,
): StrengthByAge {
  if (!options.covariates?.includes("ln age")) {
    throw new RangeError("invalid `options.covariates`: expected `ln age` among them");
  }
  const used = specimens.filter(({ excluded }) => !excluded);
  const tested = [...new Set(used.map(({ ageDays }) => ageDays))].sort((a, b) => a - b);
  const ages: StrengthAtAge[] = [];
  for (const ageDays of tested) {
    const fit = fitStrength(specimens, { ...options, ageDays });
    if (fit.status !== "ok") return { status: "no-fit", message: fit.message, cementPct, ages: [] };
    const [band] = strengthBands(fit, { cementPct: [cementPct], confidence: options.confidence });
    const own = used
      .filter((block) => block.cementPct === cementPct && block.ageDays === ageDays)
      .map(({ strengthMpa }) => strengthMpa);
    ages.push({
      ageDays,
      meanMpa: band.meanMpa,
      meanLowMpa: band.meanLowMpa,
      meanHighMpa: band.meanHighMpa,
      predictionLowMpa: band.predictionLowMpa,
      predictionHighMpa: band.predictionHighMpa,
      blocks: own.length,
      blocksMeanMpa: own.length > 0 ? mean(own) : null,
    });
  }
  return {
    status: "ok",
    message: say`Strength at ${cementPct} % cement by age, from ${used.length} blocks of ${tested.length} ages, on the logarithm of the age.`,
    cementPct,
    ages,
  };
}
