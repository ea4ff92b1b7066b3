import { powerOf } from "../numerics/powerOf.js";
import { checkThat } from "../quantities/checkNumber.js";
import { type BlendMaterial, blendPassing, measuredTopMm, valuesOf } from "./material.js";
import type { BlendAims, BlendSolution } from "./solve.js";
import {
  asRange,
  type BandAim,
  type BlendTarget,
  comparisonSizes,
  type FixedOrRange,
  powerTarget,
  type Range,
} from "./target.js";

/** A target as numbers: one value a size. */
export interface SizedAims extends BlendAims {
  readonly sizesMm: readonly number[];
}

/** The sizes at which a target is held, as far as every material was measured. */
export function targetSizes(target: BlendTarget, materials: readonly BlendMaterial[]): number[] {
  const top = measuredTopMm(materials.map(({ curve }) => curve));
  return allTargetSizes(target, materials).filter((sizeMm) => sizeMm <= top);
}

/** The sizes that a target speaks of, measured or not. */
export function allTargetSizes(target: BlendTarget, materials: readonly BlendMaterial[]): number[] {
  if (target.kind !== "power") return target.points.map(({ sizeMm }) => sizeMm);
  if (target.sizesMm) return [...target.sizesMm];
  const curves = materials.map(({ curve }) => curve);
  return comparisonSizes(curves, asRange(target.topSizeMm).max);
}

/** Every target but a power curve, whose exponent and top size are numbers first. */
export function resolveTarget(given: PointTarget, materials: readonly BlendMaterial[]): SizedAims {
  const top = measuredTopMm(materials.map(({ curve }) => curve));
  const measured = given.points.filter(({ sizeMm }) => sizeMm <= top);
  const target = { ...given, points: measured } as PointTarget;
  checkThat(target.points.length > 0, { target: "[]" }, "at least one size");
  const sizesMm = target.points.map(({ sizeMm }) => sizeMm);
  const passing = passingMatrix(materials, sizesMm);
  const weights = target.points.map(({ weight }) => weight ?? 1);
  if (target.kind === "curve") {
    const line = target.points.map(({ passingPct }) => passingPct);
    return lineAims(sizesMm, passing, line, weights);
  }
  target.points.forEach(({ lowPct, highPct }, index) => {
    if (lowPct <= highPct) return;
    const place = { [`target.points[${index}]`]: `${lowPct} to ${highPct}` };
    checkThat(false, place, "the lower value first");
  });
  if (target.kind === "band-middle") {
    const middle = target.points.map(({ lowPct, highPct }) => (lowPct + highPct) / 2);
    return lineAims(sizesMm, passing, middle, weights);
  }
  return {
    sizesMm,
    passing,
    weights,
    lowPct: target.points.map(({ lowPct }) => lowPct),
    highPct: target.points.map(({ highPct }) => highPct),
    second: aimValues(target.aim ?? "nearest-middle", materials),
  };
}

type PointTarget = Exclude<BlendTarget, { kind: "power" }>;

function lineAims(
  sizesMm: readonly number[],
  passing: readonly (readonly number[])[],
  line: readonly number[],
  weights: readonly number[] = sizesMm.map(() => 1),
): SizedAims {
  return { sizesMm, passing, weights, lowPct: line, highPct: line, second: null };
}

/** A power curve at sizes of one weight. */
export function powerAims(
  exponent: number,
  topSizeMm: number,
  sizesMm: readonly number[],
  passing: readonly (readonly number[])[],
): SizedAims {
  const line = powerTarget(exponent, topSizeMm, sizesMm).map(({ passingPct }) => passingPct);
  return lineAims(sizesMm, passing, line);
}

/** Sizes by materials, percent. */
export function passingMatrix(
  materials: readonly BlendMaterial[],
  sizesMm: readonly number[],
): number[][] {
  return sizesMm.map((sizeMm) =>
    materials.map(({ curve }) => blendPassing(curve, sizeMm).passingPct),
  );
}

function aimValues(aim: BandAim, materials: readonly BlendMaterial[]): number[] | null {
  if (aim === "nearest-middle") return null;
  if (aim === "most-site-soil") return materials.map(({ siteSoil }) => (siteSoil ? 0 : 1));
  return valuesOf(materials, aim === "least-cost" ? "costPerT" : "carbonKgPerT", `the aim ${aim}`);
}

interface PowerFit {
  readonly aims: SizedAims;
  readonly solution: BlendSolution;
  readonly exponent: number;
  readonly topSizeMm: number;
}

const STEPS = 12;
/** Of a step of the grid. */
const FINEST_STEP = 1e-6;

/**
 * The power curve within the ranges that some blend comes nearest to, and that blend. For each pair of
 * exponent and top size the shares are exact, so only these two are searched: on a grid first, then about
 * the best by steps that are halved when none of them helps. The sizes are the same throughout, so that a curve is
 * not preferred for having fewer of them.
 */
export function fitPowerTarget(
  target: Extract<BlendTarget, { kind: "power" }>,
  materials: readonly BlendMaterial[],
  solve: (aims: SizedAims) => BlendSolution,
): PowerFit & { readonly atEndOfRange: boolean } {
  const exponent = range("exponent", target.exponent);
  const top = range("topSizeMm", target.topSizeMm);
  const sizesMm = targetSizes(target, materials);
  checkThat(sizesMm.length > 0, { target: "no size below the top size" }, "at least one");
  const passing = passingMatrix(materials, sizesMm);
  const attempt = (n: number, topSizeMm: number) => {
    const aims = powerAims(n, topSizeMm, sizesMm, passing);
    return { aims, solution: solve(aims), exponent: n, topSizeMm };
  };
  const start = attempt(exponent.min, top.min);
  // Limits do not depend on the target: where they exclude one another, no curve helps.
  if (start.solution.fit.status !== "ok") return { ...start, atEndOfRange: false };
  const best = bestInRanges(start, { exponent, top }, attempt);
  return {
    ...best,
    atEndOfRange: isAtEnd(best.exponent, exponent) || isAtEnd(best.topSizeMm, top),
  };
}

function bestInRanges(
  start: PowerFit,
  { exponent, top }: { readonly exponent: Range; readonly top: Range },
  attempt: (exponent: number, topSizeMm: number) => PowerFit,
): PowerFit {
  let best = start;
  const nStep = (exponent.max - exponent.min) / STEPS;
  const topStep = powerOf(top.max / top.min, 1 / STEPS);
  const consider = (n: number, size: number): void => {
    const next = attempt(clamp(n, exponent), clamp(size, top));
    if (next.solution.score[0] < best.solution.score[0]) best = next;
  };
  const isRange = ({ min, max }: Range) => min < max;
  const grid = (range: Range) =>
    Array.from({ length: isRange(range) ? STEPS + 1 : 1 }, (_, i) => i);
  for (const i of grid(exponent)) {
    for (const j of grid(top)) consider(exponent.min + i * nStep, top.min * powerOf(topStep, j));
  }
  const moves = (range: Range) => (isRange(range) ? [-1, 0, 1] : [0]);
  for (let scale = 1 / 2; scale > FINEST_STEP; ) {
    const { exponent: n, topSizeMm: size } = best;
    for (const i of moves(exponent)) {
      for (const j of moves(top))
        consider(n + i * scale * nStep, size * powerOf(topStep, j * scale));
    }
    if (best.exponent === n && best.topSizeMm === size) scale /= 2;
  }
  return best;
}

function range(name: string, value: FixedOrRange): Range {
  const found = asRange(value);
  const isSound = found.min > 0 && found.min <= found.max && Number.isFinite(found.max);
  checkThat(isSound, { [name]: `${found.min} to ${found.max}` }, "more than 0, smallest first");
  return found;
}

function clamp(value: number, { min, max }: Range): number {
  return Math.min(Math.max(value, min), max);
}

function isAtEnd(value: number, { min, max }: Range): boolean {
  if (min === max) return false;
  const near = 1e-6 * (max - min);
  return value - min < near || max - value < near;
}
