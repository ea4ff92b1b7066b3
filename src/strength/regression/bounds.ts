import { normalCdf, normalQuantile, tQuantile } from "../../numerics/distributions.js";
import { noncentralTQuantile } from "../../numerics/noncentralT.js";
import { checkFraction, checkThat } from "../../quantities/checkNumber.js";
import {
  fromFittedScale,
  requireFitted,
  type StrengthFit,
  strengthAt,
  testedRange,
} from "./curve.js";

/** What a strength requirement speaks of: the mean, one block to come, or most of all blocks. */
export type StrengthStatistic = "mean" | "prediction" | "tolerance";

export interface StrengthBoundOptions {
  readonly statistic: StrengthStatistic;
  /** One-sided; default 0.95. */
  readonly confidence?: number;
  /** Share of blocks above the tolerance bound; default 0.95. Only used by `tolerance`. */
  readonly coverage?: number;
}

/** A strength that a lower bound must reach: see `strengthBound`. */
export interface StrengthRequirement extends StrengthBoundOptions {
  readonly strengthMpa: number;
  /** One-sided for the bound, two-sided for the interval; between 0 and 1. */
  readonly confidence: number;
}

/** How far below the mean a requirement looks, in standard deviations of blocks. */
export function knownSds({ statistic, confidence, coverage = 0.95 }: StrengthRequirement): number {
  if (statistic === "mean") return 0;
  return normalQuantile(statistic === "prediction" ? confidence : coverage);
}

/** A one-sided bound of whichever side; `probability` is the chance that the truth lies below it. */
export interface OneSided {
  readonly statistic: StrengthStatistic;
  readonly probability: number;
  readonly coverage: number;
}

/**
 * Residual standard deviations from the fitted line to a one-sided bound, negative downwards.
 *
 * mean: t(P, df) √h; prediction of one block: t(P, df) √(1 + h); quantile of the blocks that a share
 * `coverage` exceeds: −√h t′(1 − P, df, z/√h), t′ the noncentral t quantile and z the normal quantile
 * of `coverage`. P is the chance that the truth lies below the bound, so a lower bound of 95 %
 * confidence has P = 0.05.
 */
export function boundOffset(
  options: OneSided & { readonly leverage: number; readonly degreesOfFreedom: number },
): number {
  const { statistic, probability, coverage, leverage, degreesOfFreedom } = options;
  if (statistic === "mean") return tQuantile(probability, degreesOfFreedom) * Math.sqrt(leverage);
  if (statistic === "prediction") {
    return tQuantile(probability, degreesOfFreedom) * Math.sqrt(1 + leverage);
  }
  const root = Math.sqrt(leverage);
  return (
    -root * noncentralTQuantile(1 - probability, degreesOfFreedom, normalQuantile(coverage) / root)
  );
}

/**
 * Gives the one-sided lower bound of strength at a cement content, MPa.
 *
 * - `mean`: the true mean lies above it. ŷ − t s √h.
 * - `prediction`: one more block lies above it. ŷ − t s √(1 + h).
 * - `tolerance`: at least the share `coverage` of all blocks lies above it. ŷ − k s with
 *   k = √h t′(confidence; df, z/√h), the noncentral t with effective number of blocks 1/h.
 *
 * Each with `confidence` at that one content, under normal errors of one spread. For the power model
 * the bounds are made on ln f; `mean` then bounds the median. Between tested contents the curve is
 * trusted, beyond them it is extrapolated: this function does not refuse that, `leastCement` does.
 *
 * Source: Lieberman & Miller 1963, Biometrika 50, for regression tolerance bounds (from memory);
 * coverage checked by seeded simulation in `tests/strength`.
 *
 * @throws RangeError for a fit without a curve, a content the model is not defined at, or a fraction
 * outside 0 to 1.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { model: "linear", ageDays: 28 });
 * strengthBound(fit, 7, { statistic: "mean" }) // => 2.4554
 */
export function strengthBound(
  fit: StrengthFit,
  cementPct: number,
  options: StrengthBoundOptions,
): number {
  const { statistic, confidence = 0.95, coverage = 0.95 } = options;
  const fitted = requireFitted(fit);
  checkFraction("confidence", confidence);
  checkFraction("coverage", coverage);
  const { value, leverage, sd } = strengthAt(fitted, cementPct);
  const { degreesOfFreedom } = fitted;
  const probability = 1 - confidence;
  const offset =
    statistic === "tolerance"
      ? toleranceOffsets([leverage], { confidence, coverage, degreesOfFreedom })[0]
      : boundOffset({ statistic, probability, coverage, leverage, degreesOfFreedom });
  return fromFittedScale(fitted, value + offset * sd);
}

export interface StrengthBand {
  readonly cementPct: number;
  /** The fitted line: mean, or median for the power model. */
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

export interface StrengthBandsOptions extends Omit<StrengthBoundOptions, "statistic"> {
  /** Contents to give the bands at. Default: `steps` even steps across the tested contents. */
  readonly cementPct?: readonly number[];
  /** Default 60. */
  readonly steps?: number;
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
 * const fit = fitStrength([block("A", 4, 1.5), block("B", 6, 2.4), block("C", 8, 3.0), block("D", 10, 3.6)], { model: "linear", ageDays: 28 });
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
  checkThat(Number.isInteger(steps) && steps > 0, { steps }, "a whole number above 0");
  const { degreesOfFreedom } = fitted;
  const [first, last] = testedRange(fitted);
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

/** Weights below e^-28 of the largest change the factor by less than 1e-11. */
const DEEPEST = -28;
/** Fewer contents than this are solved one by one. */
const NODES = 16;
/** Fewer do for root leverages that differ by no more than twofold. */
const [NARROW, NARROW_NODES] = [2, 9];
/** Interpolation is trusted where the largest root leverage is at most so many times the least. */
const WIDEST = 3;
const ROOT_TAU = Math.sqrt(2 * Math.PI);

interface ToleranceOptions {
  readonly confidence: number;
  readonly coverage: number;
  readonly degreesOfFreedom: number;
}

/**
 * One-sided tolerance factors −√h t′(confidence; df, z/√h) for many leverages at once, as `boundOffset`
 * gives them one by one.
 *
 * The mixture over the chi distribution is laid on one fixed grid for all leverages, each factor is found
 * by guarded Newton steps from that of its neighbour, and a long list of leverages is interpolated in √h
 * at Chebyshev points. Relative error below 1e-8 (tested against `boundOffset`).
 *
 * Source: as `noncentralTCdf`; barycentric interpolation after Berrut & Trefethen 2004 (from memory).
 */
export function toleranceOffsets(
  leverages: readonly number[],
  options: ToleranceOptions,
): number[] {
  const roots = leverages.map(Math.sqrt);
  const range = [Math.min(...roots), Math.max(...roots)] as const;
  return roots.map(toleranceOffset(options, range, roots.length));
}

/**
 * The same as a function of √h, for √h within a range that will be asked about `times` times; outside
 * the range it is solved, not interpolated.
 */
export function toleranceOffset(
  options: ToleranceOptions,
  [low, high]: readonly [number, number],
  times: number,
): (root: number) => number {
  const z = normalQuantile(options.coverage);
  const solve = factorSolver(options.degreesOfFreedom, options.confidence, z, low);
  if (times <= NODES || high > WIDEST * low || high - low < 1e-9 * high) {
    return (root) => -solve(root);
  }
  const count = high <= NARROW * low ? NARROW_NODES : NODES;
  const nodes = Array.from({ length: count }, (_, k) => {
    const x = Math.cos((Math.PI * (k + 0.5)) / count);
    const root = (low + high) / 2 + (x * (high - low)) / 2;
    const weight = (k % 2 === 0 ? 1 : -1) * Math.sin((Math.PI * (k + 0.5)) / count);
    return { root, weight, factor: solve(root) };
  });
  return (root) => {
    if (root < low || root > high) return -solve(root);
    let [top, bottom] = [0, 0];
    for (const node of nodes) {
      if (root === node.root) return -node.factor;
      const share = node.weight / (root - node.root);
      top += share * node.factor;
      bottom += share;
    }
    return -top / bottom;
  };
}

/** Solves Σ w Φ((k s − z)/√h) = confidence for k, starting where the last one ended. */
function factorSolver(df: number, confidence: number, z: number, minRoot: number) {
  const step = Math.min(0.08, 0.85 / Math.sqrt(2 * df + (Math.abs(z) / minRoot + 9) ** 2));
  const spreads: number[] = [];
  const weights: number[] = [];
  for (const direction of [1, -1]) {
    for (let k = direction === 1 ? 0 : 1; ; k += 1) {
      const u = direction * k * step;
      const logWeight = df * (u - Math.expm1(2 * u) / 2);
      if (logWeight < DEEPEST) break;
      spreads.push(Math.exp(u));
      weights.push(Math.exp(logWeight));
    }
  }
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const chanceAt = (k: number, root: number) => {
    let [chance, slope] = [-confidence, 0];
    for (let i = 0; i < weights.length; i += 1) {
      const at = (k * spreads[i] - z) / root;
      chance += (weights[i] / sum) * normalCdf(at);
      slope += (weights[i] / sum) * spreads[i] * Math.exp((-at * at) / 2);
    }
    return { chance, slope: slope / (ROOT_TAU * root) };
  };
  const zConfidence = normalQuantile(confidence);
  let last: { readonly root: number; readonly k: number } | undefined;
  let slant = 0;
  return (root: number): number => {
    let [below, above] = [-Infinity, Infinity];
    // The first start: mean and standard deviation taken as independent and normal.
    let k = last
      ? last.k + slant * (root - last.root)
      : z + zConfidence * Math.sqrt(root * root + (z * z) / (2 * df));
    for (let round = 0; round < 200; round += 1) {
      const { chance, slope } = chanceAt(k, root);
      if (chance < 0) below = k;
      else above = k;
      const next = nextFactor(k, k - chance / slope, below, above);
      // The next step would be the square of this one.
      if (Math.abs(next - k) <= 1e-5 * Math.max(1e-3, Math.abs(next))) {
        slant = last && root !== last.root ? (next - last.k) / (root - last.root) : 0;
        last = { root, k: next };
        return next;
      }
      k = next;
    }
    return k;
  };
}

/** Newton's step where it can be trusted: a far start has no slope to speak of, then halve, or reach out. */
function nextFactor(k: number, newton: number, below: number, above: number): number {
  if (newton > below && newton < above && Math.abs(newton - k) < 2 + 2 * Math.abs(k)) return newton;
  if (below === -Infinity) return above - 1 - 2 * Math.abs(above);
  if (above === Infinity) return below + 1 + 2 * Math.abs(below);
  return (below + above) / 2;
}
