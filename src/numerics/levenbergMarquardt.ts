import { checkBounds } from "./checkVector.js";
import { GaussNewtonStep } from "./gaussNewtonStep.js";
import { unscaledCovariance } from "./householderQr.js";
import { powerOf } from "./powerOf.js";

/** A nonlinear least-squares problem: find the parameters that make `Σ residuals²` least. */
export interface NonlinearProblem {
  /** Residuals at given parameters, always the same number of them; weights already applied. */
  readonly residuals: (parameters: readonly number[]) => number[];
  readonly start: readonly number[];
  /** Smallest values, -Infinity for none; none by default. */
  readonly lower?: readonly number[];
  /** Largest values, Infinity for none; none by default. */
  readonly upper?: readonly number[];
  /**
   * Writes the derivatives of the residuals, those along the first parameter first; central differences by
   * default.
   */
  readonly jacobian?: (parameters: readonly number[], into: Float64Array) => void;
  /** Default 200. */
  readonly maxIterations?: number;
  /** Relative step and relative gradient at which to stop; default 1e-10. */
  readonly tolerance?: number;
  /** First damping, in squared lengths of the Jacobian's columns; less for a start near the minimum. Default 1e-3. */
  readonly damping?: number;
  /** Memory of an earlier fit with as many residuals and parameters. */
  readonly memory?: GaussNewtonStep;
}

/** What a nonlinear least-squares fit found. */
export interface NonlinearFit {
  /**
   * `no-progress`: no shorter step helps, yet the gradient is not small. `invalid-start`: residuals
   * not finite at the start, a start outside its bounds, or fewer residuals than parameters.
   */
  readonly status: "converged" | "iteration-limit" | "no-progress" | "invalid-start";
  readonly message: string;
  readonly parameters: number[];
  /** NaN for a parameter on a bound, and for all where the data do not settle those left. */
  readonly standardErrors: number[];
  /** `s² (JᵀJ)⁻¹` over the parameters not on a bound. */
  readonly covariance: number[][];
  readonly correlation: number[][];
  readonly residuals: number[];
  readonly residualSumOfSquares: number;
  /** Residuals less parameters, those on a bound included. */
  readonly degreesOfFreedom: number;
  /** `√(RSS / df)`; NaN without degrees of freedom. */
  readonly residualSd: number;
  /** -1: on its least value; 1: on its largest; 0: between. */
  readonly activeBounds: (-1 | 0 | 1)[];
  /** True for a parameter that never left its start: a sign that the data say nothing about it. */
  readonly unmoved: boolean[];
  readonly iterations: number;
  /** Calls of `residuals`. */
  readonly evaluations: number;
  /** Largest cosine between the residuals and a free column of the Jacobian, 0 to 1. */
  readonly gradientNorm: number;
}

/**
 * Finds the parameters, within bounds, that make the sum of squared residuals least nearby.
 *
 * Levenberg–Marquardt: minimises `Σ rᵢ(p)²` by steps that solve `min ‖r + J s‖² + λ ‖D s‖²` by QR, with
 * `D` the longest column lengths of the Jacobian so far (so units do not matter), steps cut off at the
 * bounds, and parameters pushed against a bound held there. Ends with undamped steps on finer
 * differences, which fix the last digits. The minimum is a local one: try several starts.
 *
 * @param problem See `NonlinearProblem`. Residuals carry their weights, for example `(model - y) / sd`.
 *   Differences take steps of about 6e-6 of each parameter (7e-4 at the end) and stay inside the bounds.
 * @returns Never throws for not converging: see `status`, `unmoved`, `activeBounds`, `gradientNorm`.
 * @throws TypeError when lengths differ; RangeError for bounds that cross.
 *
 * Source: Moré, *The Levenberg–Marquardt algorithm: implementation and theory* (1978), from memory;
 * proved on the NIST Statistical Reference Datasets for nonlinear regression.
 *
 * @example
 * const days = [1, 3, 7, 14, 28];
 * const strengthMpa = [0.9, 1.9, 2.9, 3.5, 3.8];
 * const fit = levenbergMarquardt({
 *   residuals: ([end, rate]) => days.map((t, i) => end * (1 - Math.exp(-rate * t)) - strengthMpa[i]),
 *   start: [3, 0.1],
 * });
 * fit.status // => "converged"
 * fit.parameters // => [3.71237533, 0.23297835]
 */
export function levenbergMarquardt(problem: NonlinearProblem): NonlinearFit {
  const { model, solver, found } = descent(problem);
  if (found.status === "invalid-start") return nonlinearReport(model, solver, problem.start, found);
  const polished = polishedMinimum(model, solver, found);
  return nonlinearReport(model, solver, problem.start, { ...found, ...polished });
}

/**
 * The minimum alone, for one of hundreds of fits of which nobody reads the last digits or an error: the steps of
 * `levenbergMarquardt` to its tolerance, without the finer ones that fix the last digits.
 *
 * @example
 * nonlinearMinimum({ residuals: ([x]) => [x * x - 2, 0], start: [1] }).parameters // => [1.41421356]
 */
export function nonlinearMinimum(
  problem: NonlinearProblem,
): Pick<NonlinearFit, "status" | "parameters"> {
  return descent(problem).found;
}

function descent(problem: NonlinearProblem): {
  model: NonlinearModel;
  solver: GaussNewtonStep;
  found: DampedResult;
} {
  const { start } = problem;
  checkBounds(problem, start.length);
  const residuals = problem.residuals(start);
  const model = new NonlinearModel(problem, residuals.length);
  model.evaluations = 1;
  const solver = problem.memory?.restart() ?? new GaussNewtonStep(residuals.length, start.length);
  const message = whyInvalid(model, start, residuals);
  if (message !== undefined) {
    const status = "invalid-start";
    const found: DampedResult = {
      status,
      message,
      parameters: [...start],
      residuals,
      iterations: 0,
    };
    return { model, solver, found };
  }
  const found = dampedGaussNewton(model, solver, start, residuals, {
    maxIterations: problem.maxIterations ?? 200,
    tolerance: problem.tolerance ?? 1e-10,
    damping: problem.damping ?? 1e-3,
  });
  return { model, solver, found };
}

function whyInvalid(
  model: NonlinearModel,
  start: readonly number[],
  residuals: readonly number[],
): string | undefined {
  if (residuals.length < start.length) {
    return `${residuals.length} residuals cannot settle ${start.length} parameters`;
  }
  const outside = start.findIndex(
    (value, j) => !(value >= model.lower[j] && value <= model.upper[j]),
  );
  if (outside >= 0) {
    return `start[${outside}] = ${start[outside]} lies outside ${model.lower[outside]} to ${model.upper[outside]}`;
  }
  const bad = residuals.findIndex((value) => !Number.isFinite(value));
  return bad >= 0 ? `residual ${bad} is ${residuals[bad]} at the start` : undefined;
}

/** Beyond this damping a step no longer changes the parameters' digits. */
const MAX_DAMPING = 1e20;
/** Differences of the residuals know the gradient to about this; anything smaller is a minimum. */
const GRADIENT_NOISE = 1e-5;

interface DampedResult
  extends Pick<NonlinearFit, "status" | "parameters" | "residuals" | "iterations"> {
  /** Why it could not start. */
  readonly message?: string;
}

/**
 * Levenberg–Marquardt iterations: damped steps cut off at the bounds, damping led by the ratio of the
 * fall to the promised fall (Nielsen, *Damping parameter in Marquardt's method*, 1999, from memory).
 */
// biome-ignore lint/complexity/noExcessiveCognitiveComplexity: one iteration, read beside its source
function dampedGaussNewton(
  model: NonlinearModel,
  solver: GaussNewtonStep,
  start: readonly number[],
  startResiduals: number[],
  options: { maxIterations: number; tolerance: number; damping: number },
): DampedResult {
  const { lower, upper } = model;
  let p = [...start];
  let residuals = startResiduals;
  let square = sumOfSquares(residuals);
  let damping = options.damping;
  let growth = 2;
  const done = (status: NonlinearFit["status"], iterations: number): DampedResult => ({
    status,
    parameters: p,
    residuals,
    iterations,
  });
  for (let iteration = 1; iteration <= options.maxIterations; iteration++) {
    if (!model.jacobian(p, residuals, solver.jacobian, false))
      return done("no-progress", iteration);
    solver.prepare(p, residuals, lower, upper);
    if (square === 0 || solver.gradientNorm <= options.tolerance)
      return done("converged", iteration);
    while (true) {
      solver.find(damping);
      const { trial, moved } = boundedStep(model, solver, p);
      const promised = solver.predictedFall();
      const found = moved > 0 ? model.residuals(trial) : undefined;
      const trialSquare = found ? sumOfSquares(found) : Infinity;
      const fell = square - trialSquare;
      // At the floor of rounding a fall can no longer be told from a rise.
      const level = moved <= options.tolerance || promised <= 4 * Number.EPSILON * square;
      if (found && fell > 0) {
        p = trial;
        residuals = found;
        square = trialSquare;
        const ratio = Math.min(1, fell / promised);
        const past = 2 * ratio - 1;
        damping = Math.max(1e-15, damping * Math.max(1 / 3, 1 - past * past * past));
        growth = 2;
        if (level) return done("converged", iteration);
        break;
      }
      if (level && damping < 1) return done("converged", iteration);
      if (level || damping > MAX_DAMPING) {
        const isMinimum = solver.gradientNorm < GRADIENT_NOISE;
        return done(isMinimum ? "converged" : "no-progress", iteration);
      }
      damping *= growth;
      growth *= 2;
    }
  }
  return done("iteration-limit", options.maxIterations);
}

/** The parameters after the solver's step, cut off at the bounds, and the largest relative move. */
function boundedStep(
  { lower, upper }: NonlinearModel,
  { step }: GaussNewtonStep,
  p: readonly number[],
): { trial: number[]; moved: number } {
  let moved = 0;
  const trial = p.map((value, j) => {
    const next = Math.min(upper[j], Math.max(lower[j], value + step[j]));
    step[j] = next - value;
    if (next === value) return next;
    moved = Math.max(moved, Math.abs(next - value) / Math.max(Math.abs(next), Math.abs(value)));
    return next;
  });
  return { trial, moved };
}

function sumOfSquares(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}

const MAX_STEPS = 30;

/**
 * Takes undamped Gauss–Newton steps with finer differences while each is shorter than the last.
 *
 * Near a minimum the sum of squares is flat, so comparing it fixes only half of the digits of the
 * parameters; the steps themselves fix the others. Leaves in the solver the Jacobian at the last
 * point, or within 1e-9 of it.
 */
// biome-ignore lint/complexity/noExcessiveCognitiveComplexity: one iteration, read beside its source
function polishedMinimum(
  model: NonlinearModel,
  solver: GaussNewtonStep,
  found: DampedResult,
): { parameters: number[]; residuals: number[] } {
  const { lower, upper } = model;
  let { parameters, residuals } = found;
  let square = sumOfSquares(residuals);
  let before = 1e-3;
  for (let step = 0; ; step++) {
    if (!model.jacobian(parameters, residuals, solver.jacobian, true)) break;
    solver.prepare(parameters, residuals, lower, upper);
    if (found.status !== "converged" || step === MAX_STEPS) break;
    if (solver.qr.rank < solver.qr.columns) break;
    solver.find(0);
    const next = parameters.map((value, j) =>
      Math.min(upper[j], Math.max(lower[j], value + solver.step[j])),
    );
    const size = maxMove(parameters, next);
    if (!(size < 0.9 * before) || size < Number.EPSILON) break;
    const trial = model.residuals(next);
    if (!trial) break;
    const trialSquare = sumOfSquares(trial);
    if (trialSquare > square * (1 + 1e-12)) break;
    parameters = next;
    residuals = trial;
    square = trialSquare;
    // The next step would be shorter in about the same ratio: not worth its evaluations.
    if (size < 1e-9 && size * (size / before) < 1e-15) break;
    before = size;
  }
  return { parameters, residuals };
}

/** Relative to where each parameter was; one at zero counts for nothing. */
function maxMove(from: readonly number[], to: readonly number[]): number {
  return from.reduce(
    (most, value, j) =>
      value === 0 ? most : Math.max(most, Math.abs(to[j] - value) / Math.abs(value)),
    0,
  );
}

function allFinite(values: ArrayLike<number>): boolean {
  for (let i = 0; i < values.length; i++) if (!Number.isFinite(values[i])) return false;
  return true;
}

/** Central differences of second order lose least at the cube root of the rounding unit. */
const STEP = Math.cbrt(Number.EPSILON);
/** Those of fourth order at its fifth root. */
const LONG_STEP = powerOf(Number.EPSILON, 0.2);
/** Ways to find a slope: of fourth order, of second order, and of second order to one side. */
const STENCILS = [
  { places: [-2, -1, 1, 2], factors: [1, -8, 8, -1], divisor: 12, relative: LONG_STEP },
  { places: [-1, 1], factors: [-1, 1], divisor: 2, relative: STEP },
  { places: [0, 1, 2], factors: [-3, 4, -1], divisor: 2, relative: STEP },
  { places: [0, -1, -2], factors: [3, -4, 1], divisor: 2, relative: STEP },
];

/** A nonlinear problem with counted evaluations and a Jacobian in every case. */
class NonlinearModel {
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  evaluations = 0;
  private readonly moved: number[];

  constructor(
    private readonly problem: NonlinearProblem,
    readonly rows: number,
  ) {
    const { start, lower, upper } = problem;
    this.lower = new Float64Array(start.length).fill(-Infinity);
    this.upper = new Float64Array(start.length).fill(Infinity);
    if (lower) this.lower.set(lower);
    if (upper) this.upper.set(upper);
    this.moved = [...start];
  }

  /** Residuals at `p`, or undefined where one is not finite. */
  residuals(p: readonly number[]): number[] | undefined {
    this.evaluations++;
    const found = this.problem.residuals(p);
    if (found.length !== this.rows) {
      throw new TypeError(
        `invalid \`residuals\`: ${found.length} values; expected ${this.rows} as at the start`,
      );
    }
    return allFinite(found) ? found : undefined;
  }

  /**
   * Writes the Jacobian at `p`, column-major, into `into`.
   *
   * @param fine Fourth-order differences, for the last steps and the covariance.
   * @returns False where a column cannot be found because the residuals around are not finite.
   */
  jacobian(
    p: readonly number[],
    at: readonly number[],
    into: Float64Array,
    fine: boolean,
  ): boolean {
    const { rows } = this;
    if (this.problem.jacobian) {
      this.problem.jacobian(p, into);
      return allFinite(into);
    }
    for (let j = 0; j < p.length; j++) this.moved[j] = p[j];
    for (let j = 0; j < p.length; j++) {
      if (this.lower[j] === this.upper[j]) {
        into.fill(0, j * rows, (j + 1) * rows);
        continue;
      }
      const stencils = fine ? STENCILS : STENCILS.slice(1);
      if (!stencils.some((stencil) => this.column(p, at, j, into, stencil))) return false;
    }
    return true;
  }

  /** One column by the given stencil; false where that leaves the bounds or a residual is not finite. */
  private column(
    p: readonly number[],
    at: readonly number[],
    j: number,
    into: Float64Array,
    { places, factors, divisor, relative }: (typeof STENCILS)[number],
  ): boolean {
    const { rows, moved } = this;
    const start = Math.abs(this.problem.start[j]);
    const room = (this.upper[j] - this.lower[j]) / 4;
    const wished = Math.min(room, relative * (Math.max(Math.abs(p[j]), 1e-3 * start) || 1));
    // The step as the addition really makes it, so that no digits are lost in dividing by it.
    const step = p[j] + wished - p[j];
    const ends = places.map((place) => p[j] + place * step);
    if (ends.some((end) => end < this.lower[j] || end > this.upper[j])) return false;
    into.fill(0, j * rows, (j + 1) * rows);
    // Factors sum to nothing, so differences from here do too: a parameter without effect gives zeros.
    for (let k = 0; k < places.length; k++) {
      moved[j] = ends[k];
      const found = places[k] === 0 ? at : this.residuals(moved);
      moved[j] = p[j];
      if (!found) return false;
      const factor = factors[k] / (divisor * step);
      for (let i = 0; i < rows; i++) into[j * rows + i] += factor * (found[i] - at[i]);
    }
    return true;
  }
}

const MESSAGES: Record<NonlinearFit["status"], string> = {
  converged: "the residuals are at right angles to every direction left free",
  "iteration-limit": "stopped at the most iterations allowed; the fit may still improve",
  "no-progress": "no step lessens the sum of squares, though the gradient is not small",
  "invalid-start": "the fit could not start",
};

/** From the last point and its Jacobian to everything a nonlinear fit reports. */
function nonlinearReport(
  model: NonlinearModel,
  solver: GaussNewtonStep,
  start: readonly number[],
  found: DampedResult,
): NonlinearFit {
  const { parameters, residuals, status } = found;
  const count = parameters.length;
  const residualSumOfSquares = sumOfSquares(residuals);
  const degreesOfFreedom = Math.max(0, residuals.length - count);
  const variance = degreesOfFreedom > 0 ? residualSumOfSquares / degreesOfFreedom : NaN;
  const covariance = parameters.map(() => new Array<number>(count).fill(NaN));
  if (status !== "invalid-start") {
    const free = parameters.map((_, j) => j).filter((j) => !solver.held[j]);
    const { matrix } = unscaledCovariance(solver.qr);
    free.forEach((a, row) => {
      free.forEach((b, column) => {
        covariance[a][b] = matrix[row][column] * variance;
      });
    });
  }
  const standardErrors = covariance.map((row, j) => Math.sqrt(row[j]));
  return {
    status,
    message: found.message ?? MESSAGES[status],
    parameters,
    standardErrors,
    covariance,
    correlation: covariance.map((row, a) =>
      row.map((value, b) =>
        a === b ? value / value : value / standardErrors[a] / standardErrors[b],
      ),
    ),
    residuals,
    residualSumOfSquares,
    degreesOfFreedom,
    residualSd: Math.sqrt(variance),
    activeBounds: parameters.map((value, j) => {
      if (value === model.lower[j]) return -1;
      return value === model.upper[j] ? 1 : 0;
    }),
    unmoved: parameters.map((value, j) => value === start[j]),
    iterations: found.iterations,
    evaluations: model.evaluations,
    gradientNorm: status === "invalid-start" ? NaN : solver.gradientNorm,
  };
}
