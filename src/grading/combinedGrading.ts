import { type Finding, finding, findingIf } from "../findings/finding.js";
import { checkThat } from "../quantities/checkNumber.js";
import { formatFixed, formatNumber } from "../quantities/format.js";
import { joinTexts, say } from "../words/message.js";
import { type GradingCurve, type GradingPoint, passingAtSize } from "./curve.js";

export interface CombineInput {
  readonly sieve: readonly GradingPoint[];
  readonly sedimentation?: readonly GradingPoint[];
  /** The sheet that findings about the joint speak of. */
  readonly file: string;
}

/** What both methods say at the finest sieve, where they meet. */
export interface GradingOverlap {
  readonly sizeMm: number;
  readonly sievePct: number;
  readonly sedimentationPct: number;
  /** Sedimentation less sieve, percentage points. */
  readonly differencePct: number;
}

/** A point that was moved so that the curve never falls with size. */
export interface GradingRepair {
  readonly sizeMm: number;
  readonly fromPct: number;
  readonly toPct: number;
}

export interface CombinedGrading {
  readonly curve: GradingCurve;
  /** Absent where sedimentation was not measured on both sides of the finest sieve. */
  readonly overlap?: GradingOverlap;
  readonly repairs: readonly GradingRepair[];
  readonly findings: readonly Finding[];
}

/** Percentage points between the methods beyond which the joint is doubtful; common practice, no source. */
const OVERLAP_LIMIT_PCT = 3;
/** A repair beyond this is more than reading and weighing explain; common practice, no source. */
const REPAIR_LIMIT_PCT = 1;

/**
 * Joins sieve and sedimentation into one curve: sieve points down to the finest sieve, sedimentation
 * below it. Where the joined curve would fall with size it is repaired by pooling the neighbours that
 * are out of order (the nearest non-decreasing curve in least squares), and every point moved is told.
 *
 * @throws RangeError where there is no point at all, or a size or percentage is impossible.
 *
 * @example
 * const sieve = [{ sizeMm: 0.063, passingPct: 30, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }];
 * const sedimentation = [{ sizeMm: 0.002, passingPct: 10, origin: "sedimentation" }, { sizeMm: 0.1, passingPct: 40, origin: "sedimentation" }];
 * const { curve, overlap } = combineGrading({ sieve, sedimentation, file: "soil.csv" });
 * curve.points.map(({ passingPct }) => passingPct) // => [10, 30, 100]
 * overlap.differencePct // => 6.5
 */
export function combineGrading({ sieve, sedimentation = [], file }: CombineInput): CombinedGrading {
  const { coarse, fine, raw, points } = joined(sieve, sedimentation);
  const overlap = coarse.length > 0 ? overlapAt(coarse[0], fine) : undefined;
  const repairs = raw.flatMap(({ sizeMm, passingPct }, index): GradingRepair[] =>
    // Rounding in the last digit is no repair.
    Math.abs(points[index].passingPct - passingPct) <= 1e-9
      ? []
      : [{ sizeMm, fromPct: passingPct, toPct: points[index].passingPct }],
  );
  return {
    curve: { points },
    ...(overlap ? { overlap } : {}),
    repairs,
    findings: [
      ...overlapFindings(file, overlap),
      ...(overlap ? [] : stepFindings(file, coarse, fine)),
      ...repairFindings(file, repairs),
    ],
  };
}

/** The curve alone, for the hundreds of sheets as they could have been read: nobody reads their findings. */
export function combinedCurve(
  sieve: readonly GradingPoint[],
  sedimentation: readonly GradingPoint[],
): GradingCurve {
  return { points: joined(sieve, sedimentation).points };
}

function joined(sieve: readonly GradingPoint[], sedimentation: readonly GradingPoint[]) {
  const coarse = inOrder(sieve, "sieve");
  const fine = inOrder(sedimentation, "sedimentation");
  checkThat(coarse.length + fine.length > 0, { sieve: "[]" }, "at least one point");
  const joint = coarse[0];
  const raw = [...fine.filter(({ sizeMm }) => !joint || sizeMm < joint.sizeMm), ...coarse];
  const level = poolAdjacent(raw.map(({ passingPct }) => passingPct));
  const points = raw.map((point, index): GradingPoint => ({ ...point, passingPct: level[index] }));
  return { coarse, fine, raw, points };
}

function inOrder(points: readonly GradingPoint[], name: string): GradingPoint[] {
  for (const [i, { sizeMm, passingPct }] of points.entries()) {
    const isSize = sizeMm > 0 && sizeMm < Infinity;
    const isPercent = passingPct >= 0 && passingPct <= 100;
    // Names are written only where they are told: hundreds of drawn curves come by here.
    if (isSize && isPercent) continue;
    checkThat(isSize, { [`${name}[${i}].sizeMm`]: sizeMm }, "above 0");
    checkThat(isPercent, { [`${name}[${i}].passingPct`]: passingPct }, "0 to 100");
  }
  const sorted = points.toSorted((a, b) => a.sizeMm - b.sizeMm);
  const twin = sorted.find(({ sizeMm }, index) => sizeMm === sorted[index + 1]?.sizeMm);
  if (twin) throw new RangeError(`invalid \`${name}\`: ${twin.sizeMm} mm twice; expected once`);
  return sorted;
}

function overlapAt(
  { sizeMm, passingPct: sievePct }: GradingPoint,
  fine: readonly GradingPoint[],
): GradingOverlap | undefined {
  if (!fine.some((point) => point.sizeMm >= sizeMm)) return undefined;
  const sedimentationPct = passingAtSize({ points: fine }, sizeMm);
  if (sedimentationPct === undefined) return undefined;
  return { sizeMm, sievePct, sedimentationPct, differencePct: sedimentationPct - sievePct };
}

function overlapFindings(file: string, overlap: GradingOverlap | undefined): Finding[] {
  if (!overlap) return [];
  const { sizeMm, sievePct, sedimentationPct, differencePct } = overlap;
  const why =
    differencePct > 0
      ? say`More in the sedimentation may also mean fines that clung to coarse grains on the sieves: wash the sample.`
      : say`Less in the sedimentation may also mean flocs that were not dispersed: check dispersant and stirring.`;
  const value = say`${formatFixed(Math.abs(differencePct), 1)} points`;
  const isFar = Math.abs(differencePct) > OVERLAP_LIMIT_PCT;
  return findingIf(isFar, { file, value }, "warning", "grading-overlap", {
    message: say`At ${sizeMm} mm the sieve gives ${formatFixed(sievePct, 1)} % passing and the sedimentation ${formatFixed(sedimentationPct, 1)} %.`,
    expected: say`a difference within ${OVERLAP_LIMIT_PCT} points`,
    remedy: say`Check the dispersed mass, the separating sieve, the particle density and the control readings. ${why}`,
  });
}

/** Points by which the curve may fall at the joint beyond twice its slope on either side; common practice, no source. */
const STEP_LIMIT_PCT = 10;

/**
 * A step between the finest sieve and the coarsest reading of the sedimentation, within half that size, which
 * neither side of the joint goes on with: most often the dispersed mass is another than the one entered.
 */
function stepFindings(
  file: string,
  coarse: readonly GradingPoint[],
  fine: readonly GradingPoint[],
): Finding[] {
  const [above, sieve] = [coarse[1], coarse[0]];
  const [below, reading] = fine.slice(-2);
  if (!above || !reading) return [];
  const octaves = Math.log2(sieve.sizeMm / reading.sizeMm);
  if (octaves <= 0 || octaves > 1) return [];
  const slope = (low: GradingPoint, high: GradingPoint) =>
    (high.passingPct - low.passingPct) / Math.log2(high.sizeMm / low.sizeMm);
  const steepest = Math.max(0, slope(below, reading), slope(sieve, above));
  const step = sieve.passingPct - reading.passingPct;
  const isStep = step - 2 * steepest * octaves > STEP_LIMIT_PCT;
  const percent = (value: number) => say`${formatFixed(value, 1)} %`;
  const value = say`${formatFixed(step, 1)} points`;
  return findingIf(isStep, { file, value }, "warning", "grading-step", {
    message: say`The sieve gives ${percent(sieve.passingPct)} passing at ${sieve.sizeMm} mm and the sedimentation ${percent(reading.passingPct)} at ${formatNumber(reading.sizeMm)} mm: a step that neither of them goes on with.`,
    expected: say`a curve that falls at the joint about as it does on both sides (common practice, no source)`,
    remedy: say`Check the dispersed mass, the separating sieve, the particle density and the control readings.`,
  });
}

function repairFindings(file: string, repairs: readonly GradingRepair[]): Finding[] {
  if (repairs.length === 0) return [];
  const max = Math.max(...repairs.map(({ fromPct, toPct }) => Math.abs(toPct - fromPct)));
  const list = repairs.map(
    ({ sizeMm, fromPct, toPct }) =>
      say`${formatNumber(sizeMm)} mm from ${formatFixed(fromPct, 1)} to ${formatFixed(toPct, 1)} %`,
  );
  const value = say`${formatFixed(max, 1)} points at most`;
  const severity = max > REPAIR_LIMIT_PCT ? "warning" : "note";
  return [
    finding({ file, value }, severity, "grading-repaired", {
      message: say`The measured passing decreases somewhere with increasing size; points were adjusted: ${joinTexts(list, "; ")}.`,
      expected: say`percent passing that never decreases with increasing size`,
      remedy: say`Check the readings at these sizes; the adjusted curve is the nearest that never decreases.`,
    }),
  ];
}

/**
 * The non-decreasing sequence nearest to a sequence in least squares (pool adjacent violators):
 * neighbours out of order are replaced by their mean until none are left.
 *
 * Source: Ayer, Brunk, Ewing, Reid and Silverman 1955, from memory.
 *
 * @example
 * poolAdjacent([1, 3, 2, 5]) // => [1, 2.5, 2.5, 5]
 */
export function poolAdjacent(values: readonly number[]): number[] {
  const blocks: { mean: number; count: number }[] = [];
  for (const value of values) {
    let block = { mean: value, count: 1 };
    for (let last = blocks.at(-1); last && last.mean > block.mean; last = blocks.at(-1)) {
      blocks.pop();
      const count = last.count + block.count;
      block = { mean: (last.mean * last.count + block.mean * block.count) / count, count };
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ mean, count }) => Array<number>(count).fill(mean));
}
