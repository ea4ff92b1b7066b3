import { normalCdf, normalQuantile } from "../../numerics/distributions.js";
import { powerOf } from "../../numerics/powerOf.js";
import { say } from "../../words/message.js";
import { passingAtSize } from "../curve.js";
import {
  type GradingModel,
  type GradingModelName,
  lineOnSize,
  sizeNear,
  straightLine,
} from "./gradingModel.js";

/**
 * Power curve with a top size: 100 (d / D)^n up to D, 100 beyond. With n = 0.5 it is the curve that
 * Fuller and Thompson (1907) gave for dense concrete aggregate.
 *
 * @example
 * power.evaluate(5, [20, 0.5]) // => 50
 */
export const power: GradingModel = {
  name: "power",
  title: say`Power curve (Talbot)`,
  parameters: [
    { name: "topSize", unit: "mm", scale: "logarithm", lower: 1e-3, upper: 1e3 },
    { name: "exponent", unit: "", scale: "plain", lower: 0.01, upper: 5 },
  ],
  evaluate(sizeMm, [topSizeMm, exponent], slopes) {
    if (sizeMm >= topSizeMm) {
      slopes?.fill(0);
      return 100;
    }
    const passing = 100 * powerOf(sizeMm / topSizeMm, exponent);
    slopes?.set([(-exponent * passing) / topSizeMm, passing * Math.log(sizeMm / topSizeMm)]);
    return passing;
  },
  starts(curve) {
    const line = lineOnSize(curve, 1, Math.log);
    const top = sizeNear(curve, 100);
    const { crossMm, slope } = line && line.slope > 0.02 ? line : { crossMm: top, slope: 0.3 };
    return [
      [crossMm, slope],
      [top, slope],
      [sizeNear(curve, 95), slope],
    ];
  },
  source: say`Equation with n from 0.3 to 0.6: Das, Fundamentals of Geotechnical Engineering, 5th ed., problem 2.15 (read); Talbot and Richart 1923, from memory`,
};

/**
 * Lognormal grading: 100 Φ(ln(d / d50) / s), s the standard deviation of ln d.
 *
 * @example
 * lognormal.evaluate(0.1, [0.1, 1.5]) // => 50
 * lognormal.evaluate(0.063, [0.1, 1.5]) // => 37.9032
 */
export const lognormal: GradingModel = {
  name: "lognormal",
  title: say`Lognormal`,
  parameters: [
    { name: "median", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "spread", unit: "", scale: "plain", lower: 0.02, upper: 15 },
  ],
  evaluate(sizeMm, [medianMm, spread], slopes) {
    const z = Math.log(sizeMm / medianMm) / spread;
    if (slopes) {
      const steep = (-100 * normalDensity(z)) / spread;
      slopes.set([steep / medianMm, steep * z]);
    }
    return 100 * normalCdf(z);
  },
  starts(curve) {
    const line = lineOnSize(curve, 0.5, normalQuantile);
    if (line && line.slope > 0) return [[line.crossMm, 1 / line.slope]];
    const spread = Math.log(sizeNear(curve, 84) / sizeNear(curve, 16)) / 2 || 1;
    return [[sizeNear(curve, 50), spread]];
  },
  source: say`Buchan et al. (in its list of forms, read); equation from memory`,
};

/**
 * Weibull (Rosin–Rammler) grading: 100 (1 − exp(−(d / d63)^n)); at d63 63.2 % pass.
 *
 * @example
 * weibull.evaluate(0.5, [0.5, 0.9]) // => 63.2121
 */
export const weibull: GradingModel = {
  name: "weibull",
  title: say`Weibull (Rosin–Rammler)`,
  parameters: [
    { name: "size63", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "exponent", unit: "", scale: "plain", lower: 0.02, upper: 20 },
  ],
  evaluate(sizeMm, [size63Mm, exponent], slopes) {
    const raised = powerOf(sizeMm / size63Mm, exponent);
    if (slopes) {
      const steep = 100 * Math.exp(-raised) * raised;
      // A power beyond the largest number has long since flattened the curve.
      if (!Number.isFinite(steep)) slopes.fill(0);
      else slopes.set([(-steep * exponent) / size63Mm, steep * Math.log(sizeMm / size63Mm)]);
    }
    return -100 * Math.expm1(-raised);
  },
  starts(curve) {
    const line = lineOnSize(curve, 0.5, (part) => Math.log(-Math.log1p(-part)));
    return [line && line.slope > 0 ? [line.crossMm, line.slope] : [sizeNear(curve, 63.2), 1]];
  },
  source: say`R = exp(−(d/k)^n): codecogs (read); regression form: Doll 2017 (read)`,
};

/**
 * Curve of the Haverkamp–Parlange form: 100 (1 + (dg / d)^N)^−M.
 *
 * @example
 * haverkampParlange.evaluate(0.063, [0.1, 2.5, 0.2]) // => 75.1421
 */
export const haverkampParlange: GradingModel = {
  name: "haverkamp-parlange",
  title: say`Haverkamp–Parlange`,
  parameters: [
    { name: "dg", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "N", unit: "", scale: "plain", lower: 0.05, upper: 30 },
    { name: "M", unit: "", scale: "plain", lower: 0.005, upper: 30 },
  ],
  evaluate(sizeMm, [dg, n, m], slopes) {
    const raised = powerOf(dg / sizeMm, n);
    const passing = 100 * powerOf(1 + raised, -m);
    if (slopes && Number.isFinite(raised)) {
      const steep = (-m * passing * raised) / (1 + raised);
      slopes.set([(steep * n) / dg, steep * Math.log(dg / sizeMm), -passing * Math.log1p(raised)]);
    } else slopes?.fill(0);
    return passing;
  },
  starts: (curve) =>
    [40, 75].flatMap((pct) =>
      [0.7, 1.5, 4].flatMap((n) => [0.15, 0.5, 1.5].map((m) => [sizeNear(curve, pct), n, m])),
    ),
  source: say`Haverkamp and Parlange 1986, from memory`,
};

/** Smallest grain: a fixed value, because no sedimentation test measures it. */
const SMALLEST_MM = 1e-4;

/**
 * Unimodal curve of Fredlund et al. (2000):
 * 100 (ln(e + (a / d)^n))^−m (1 − (ln(1 + dr / d) / ln(1 + dr / dm))^7), with dm fixed at 0.0001 mm.
 *
 * @example
 * fredlund.evaluate(0.063, [0.5, 2, 0.8, 0.001]) // => 31.8147
 */
export const fredlund: GradingModel = {
  name: "fredlund",
  title: say`Fredlund unimodal`,
  parameters: [
    { name: "a", unit: "mm", scale: "logarithm", lower: 1e-5, upper: 1e4 },
    { name: "n", unit: "", scale: "plain", lower: 0.05, upper: 20 },
    { name: "m", unit: "", scale: "plain", lower: 0.02, upper: 20 },
    { name: "residualSize", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 10 },
  ],
  evaluate(sizeMm, [a, n, m, residualMm], slopes) {
    if (sizeMm <= SMALLEST_MM) {
      slopes?.fill(0);
      return 0;
    }
    // the powers of `powerOf`, whose logarithms the slopes need
    const finer = Math.log(a / sizeMm);
    const raised = Math.exp(n * finer);
    const level = Math.log(Math.E + raised);
    const levelLog = Math.log(level);
    const below = Math.log1p(residualMm / SMALLEST_MM);
    const ratio = Math.log1p(residualMm / sizeMm) / below;
    const ratioLog = Math.log(ratio);
    const main = 100 * Math.exp(-m * levelLog);
    const cut = 1 - Math.exp(7 * ratioLog);
    if (slopes && Number.isFinite(raised)) {
      const steep = (-m * main * cut * raised) / (level * (Math.E + raised));
      const ratioSlope = (1 / (sizeMm + residualMm) - ratio / (SMALLEST_MM + residualMm)) / below;
      slopes[0] = (steep * n) / a;
      slopes[1] = steep * finer;
      slopes[2] = -main * cut * levelLog;
      slopes[3] = -7 * main * Math.exp(6 * ratioLog) * ratioSlope;
    } else slopes?.fill(0);
    return main * cut;
  },
  starts: (curve) =>
    [60, 85].flatMap((pct) =>
      [0.8, 2, 4].flatMap((n) => [0.4, 1, 2].map((m) => [sizeNear(curve, pct), n, m, 0.001])),
    ),
  source: say`Fredlund et al. 2000 (abstract read, which names a unimodal form of five parameters); equation from memory`,
};

/** Where the curve begins: the upper size of clay. It says nothing about anything finer. */
const FIRST_MM = 0.002;

/**
 * Curve of Skaggs et al. (2001): 100 / (1 + (1 / f − 1) exp(−u R^c)), R = (d − d0) / d0, with f the share
 * finer than d0 = 0.002 mm. Finer than that it is held level. Not for soils with more than 70 % silt.
 *
 * @example
 * skaggs.evaluate(0.02, [0.2, 0.76976, 0.26585]) // => 49.86
 */
export const skaggs: GradingModel = {
  name: "skaggs",
  title: say`Skaggs`,
  parameters: [
    { name: "clayShare", unit: "", scale: "plain", lower: 0.0005, upper: 0.999 },
    { name: "u", unit: "", scale: "logarithm", lower: 1e-8, upper: 1e3 },
    { name: "c", unit: "", scale: "plain", lower: 0.02, upper: 5 },
  ],
  evaluate(sizeMm, [share, u, c], slopes) {
    const ratio = Math.max(0, sizeMm / FIRST_MM - 1);
    const raised = powerOf(ratio, c);
    const fade = Math.exp(-u * raised);
    const odds = 1 / share - 1;
    const steep = (100 * fade) / (1 + odds * fade) ** 2;
    if (steep > 0) {
      slopes?.set([
        steep / share ** 2,
        odds * steep * raised,
        ratio > 0 ? odds * steep * u * raised * Math.log(ratio) : 0,
      ]);
    } else slopes?.fill(0);
    return 100 / (1 + odds * fade);
  },
  starts(curve) {
    const finest = curve.points[0];
    const share = Math.min(
      0.95,
      Math.max(0.005, (passingAtSize(curve, FIRST_MM) ?? finest.passingPct / 2) / 100),
    );
    const line = straightLine(
      curve.points
        .map(({ sizeMm, passingPct }) => ({
          x: Math.log(sizeMm / FIRST_MM - 1),
          y: Math.log(Math.log((1 / share - 1) / (100 / passingPct - 1))),
        }))
        .filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)),
    );
    const from = line
      ? [[share, Math.exp(line.intercept), Math.min(4, Math.max(0.05, line.slope))]]
      : [];
    return [...from, [share, 0.5, 0.3], [share, 0.05, 0.8]];
  },
  source: say`Skaggs et al. 2001 (abstract read, with its limit of 70 % silt); equation from memory, fitted to all points here`,
};

/**
 * Two lognormal gradings mixed, for gap-graded soils: 100 (w Φ(ln(d / d1) / s1) + (1 − w) Φ(ln(d / d2) / s2)).
 *
 * @example
 * bimodalLognormal.evaluate(0.1, [0.4, 0.1, 1, 1000, 1]) // => 20
 */
export const bimodalLognormal: GradingModel = {
  name: "bimodal-lognormal",
  title: say`Bimodal lognormal`,
  parameters: [
    { name: "fineShare", unit: "", scale: "plain", lower: 0.001, upper: 0.999 },
    { name: "fineMedian", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "fineSpread", unit: "", scale: "plain", lower: 0.05, upper: 10 },
    { name: "coarseMedian", unit: "mm", scale: "logarithm", lower: 1e-6, upper: 1e4 },
    { name: "coarseSpread", unit: "", scale: "plain", lower: 0.05, upper: 10 },
  ],
  evaluate(sizeMm, [share, median1, spread1, median2, spread2], slopes) {
    const z1 = Math.log(sizeMm / median1) / spread1;
    const z2 = Math.log(sizeMm / median2) / spread2;
    const [fine, coarse] = [normalCdf(z1), normalCdf(z2)];
    if (slopes) {
      const steep1 = (-100 * share * normalDensity(z1)) / spread1;
      const steep2 = (-100 * (1 - share) * normalDensity(z2)) / spread2;
      slopes.set([
        100 * (fine - coarse),
        steep1 / median1,
        steep1 * z1,
        steep2 / median2,
        steep2 * z2,
      ]);
    }
    return 100 * (share * fine + (1 - share) * coarse);
  },
  starts: (curve) =>
    [0.2, 0.35, 0.5, 0.65, 0.8].flatMap((share) =>
      [0.7, 2].map((spread) => [
        share,
        sizeNear(curve, 50 * share),
        spread,
        sizeNear(curve, 50 * (1 + share)),
        spread,
      ]),
    ),
  source: say`Bimodal lognormal: Buchan et al. (named there, read); equation from memory`,
};

const [A, N, M, RESIDUAL] = fredlund.parameters;

/**
 * Two-mode curve of Fredlund et al. (2000): two of their one-mode curves mixed by a share, with one
 * residual size for both. Eight parameters: only for gap-graded soils with many points.
 *
 * @example
 * fredlundBimodal.evaluate(0.063, [0.5, 0.5, 2, 0.8, 0.5, 2, 0.8, 0.001]) // => 31.8147
 */
export const fredlundBimodal: GradingModel = {
  name: "fredlund-bimodal",
  title: say`Fredlund two-mode`,
  parameters: [
    { name: "fineShare", unit: "", scale: "plain", lower: 0.001, upper: 0.999 },
    { ...A, name: "fineA" },
    { ...N, name: "fineN" },
    { ...M, name: "fineM" },
    { ...A, name: "coarseA" },
    { ...N, name: "coarseN" },
    { ...M, name: "coarseM" },
    RESIDUAL,
  ],
  evaluate(sizeMm, [share, a1, n1, m1, a2, n2, m2, residualMm], slopes) {
    const [ofFine, ofCoarse] = slopes ? [new Float64Array(4), new Float64Array(4)] : [];
    const fine = fredlund.evaluate(sizeMm, [a1, n1, m1, residualMm], ofFine);
    const coarse = fredlund.evaluate(sizeMm, [a2, n2, m2, residualMm], ofCoarse);
    const rest = 1 - share;
    if (slopes && ofFine && ofCoarse) {
      slopes[0] = fine - coarse;
      for (let j = 0; j < 3; j++) {
        slopes[1 + j] = share * ofFine[j];
        slopes[4 + j] = rest * ofCoarse[j];
      }
      slopes[7] = share * ofFine[3] + rest * ofCoarse[3];
    }
    return share * fine + rest * coarse;
  },
  starts: (curve) =>
    [0.25, 0.4, 0.55, 0.75].flatMap((share) =>
      [1.5, 3].flatMap((n) =>
        [0.7, 1.5].map((m) => [
          share,
          sizeNear(curve, 70 * share),
          n,
          m,
          sizeNear(curve, 100 * share + 70 * (1 - share)),
          n,
          m,
          0.001,
        ]),
      ),
    ),
  source: say`Fredlund et al. 2000 (abstract read, which names a bimodal form); equation from memory`,
};

/**
 * The grading models by name.
 *
 * @example
 * GRADING_MODELS.power.evaluate(1, [16, 0.25]) // => 50
 */
export const GRADING_MODELS: Readonly<Record<GradingModelName, GradingModel>> = {
  power,
  lognormal,
  weibull,
  "haverkamp-parlange": haverkampParlange,
  fredlund,
  skaggs,
  "bimodal-lognormal": bimodalLognormal,
  "fredlund-bimodal": fredlundBimodal,
};

const SCALE = 1 / Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
function normalDensity(z: number): number {
  return SCALE * Math.exp(-0.5 * z * z);
}
