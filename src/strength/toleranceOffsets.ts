import { normalCdf } from "../numerics/normalCdf.js";
import { normalQuantile } from "../numerics/normalQuantile.js";

/** Weights below e^-40 of the largest change the factor by less than 1e-11. */
const DEEPEST = -28;
/** Fewer contents than this are solved one by one. */
const NODES = 16;
/** Fewer do for root leverages that differ by no more than twofold. */
const [NARROW, NARROW_NODES] = [2, 9];
/** Interpolation is trusted where the largest root leverage is at most so many times the least. */
const WIDEST = 3;
const ROOT_TAU = Math.sqrt(2 * Math.PI);

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
  of: {
    readonly confidence: number;
    readonly coverage: number;
    readonly degreesOfFreedom: number;
  },
): number[] {
  const roots = leverages.map(Math.sqrt);
  const offset = toleranceOffset(of, [Math.min(...roots), Math.max(...roots)], leverages.length);
  return roots.map(offset);
}

/**
 * The same as a function of √h, for √h within a range that will be asked about `times` times; outside
 * the range it is solved, not interpolated.
 */
export function toleranceOffset(
  of: {
    readonly confidence: number;
    readonly coverage: number;
    readonly degreesOfFreedom: number;
  },
  [low, high]: readonly [number, number],
  times: number,
): (root: number) => number {
  const z = normalQuantile(of.coverage);
  const solve = factorSolver(of.degreesOfFreedom, of.confidence, z, low);
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
function factorSolver(df: number, confidence: number, z: number, leastRoot: number) {
  const step = Math.min(0.08, 0.85 / Math.sqrt(2 * df + (Math.abs(z) / leastRoot + 9) ** 2));
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
      let chance = -confidence;
      let slope = 0;
      for (let i = 0; i < weights.length; i += 1) {
        const at = (k * spreads[i] - z) / root;
        chance += (weights[i] / sum) * normalCdf(at);
        slope += (weights[i] / sum) * spreads[i] * Math.exp((-at * at) / 2);
      }
      if (chance < 0) below = k;
      else above = k;
      const newton = k - chance / (slope / (ROOT_TAU * root));
      const halved =
        below === -Infinity
          ? above - 1 - 2 * Math.abs(above)
          : above === Infinity
            ? below + 1 + 2 * Math.abs(below)
            : (below + above) / 2;
      // A far start has no slope to speak of: then halve, or reach out.
      const next =
        newton > below && newton < above && Math.abs(newton - k) < 2 + 2 * Math.abs(k)
          ? newton
          : halved;
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
