import type { GradingModel } from "./gradingModel.js";

/** Steps after which a refit is given up; from the fit's own values it takes about six. */
const MOST_STEPS = 60;
/** Relative change of the sum of squares below which a refit is at rest: far below the width of a band. */
const AT_REST = 1e-7;
const MOST_DAMPING = 1e12;

/**
 * Refits a model to other passings at the same sizes; gives values in the model's order, and
 * `converged: false` where it did not come to rest.
 */
export type QuickFit = (
  passingPct: ArrayLike<number>,
  start: readonly number[],
) => { readonly values: number[]; readonly converged: boolean };

/**
 * Prepares refits of one model at fixed sizes: damped Gauss–Newton on the normal equations with
 * columns scaled to length one, Cholesky, bounds by cutting steps and holding what is pushed out.
 *
 * The normal equations lose half of the digits, which a band never shows; the fit that a report names
 * is always that of `fitGrading`, by QR.
 *
 * @param sdPct standard deviation of each passing; all alike where left out.
 */
export function quickFit(
  model: GradingModel,
  sizesMm: readonly number[],
  sdPct?: readonly number[],
): QuickFit {
  const n = sizesMm.length;
  const p = model.parameters.length;
  const log = model.parameters.map(({ scale }) => scale === "logarithm");
  const bound = (key: "lower" | "upper") =>
    model.parameters.map((parameter, j) => (log[j] ? Math.log(parameter[key]) : parameter[key]));
  const [lower, upper] = [bound("lower"), bound("upper")];
  const weight = sizesMm.map((_, i) => 1 / (sdPct?.[i] ?? 1));
  const matrix = new Float64Array(p * p);
  const factor = new Float64Array(p * p);
  const gradient = new Float64Array(p);
  const length = new Float64Array(p);
  const step = new Float64Array(p);
  const held = new Uint8Array(p);
  const residual = new Float64Array(n);

  const toValues = (at: ArrayLike<number>, into: number[]) => {
    for (let j = 0; j < p; j++) into[j] = log[j] ? Math.exp(at[j]) : at[j];
    return into;
  };
  const square = (values: number[], passing: ArrayLike<number>, keep: boolean): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const r = (model.evaluate(sizesMm[i], values) - passing[i]) * weight[i];
      if (keep) residual[i] = r;
      sum += r * r;
    }
    return sum;
  };
  const equations = (values: number[], at: ArrayLike<number>) => {
    matrix.fill(0);
    gradient.fill(0);
    for (let i = 0; i < n; i++) {
      const slopes = model.slopes(sizesMm[i], values);
      for (let j = 0; j < p; j++) {
        slopes[j] *= weight[i] * (log[j] ? values[j] : 1);
        gradient[j] += slopes[j] * residual[i];
        for (let k = 0; k <= j; k++) matrix[j * p + k] += slopes[j] * slopes[k];
      }
    }
    for (let j = 0; j < p; j++) {
      const pushed =
        (at[j] <= lower[j] && gradient[j] > 0) || (at[j] >= upper[j] && gradient[j] < 0);
      held[j] = pushed || matrix[j * p + j] === 0 ? 1 : 0;
      length[j] = Math.sqrt(matrix[j * p + j]) || 1;
    }
  };
  /** Solves the damped equations into `step`; false where they are not positive definite. */
  const solve = (damping: number): boolean => {
    for (let j = 0; j < p; j++) {
      for (let k = 0; k <= j; k++) {
        const off = held[j] || held[k] ? 0 : matrix[j * p + k] / (length[j] * length[k]);
        let sum = j === k ? 1 + damping : off;
        for (let l = 0; l < k; l++) sum -= factor[j * p + l] * factor[k * p + l];
        if (j !== k) factor[j * p + k] = sum / factor[k * p + k];
        else if (sum > 1e-14) factor[j * p + j] = Math.sqrt(sum);
        else return false;
      }
    }
    for (let j = 0; j < p; j++) {
      let sum = held[j] ? 0 : -gradient[j] / length[j];
      for (let l = 0; l < j; l++) sum -= factor[j * p + l] * step[l];
      step[j] = sum / factor[j * p + j];
    }
    for (let j = p - 1; j >= 0; j--) {
      let sum = step[j];
      for (let l = j + 1; l < p; l++) sum -= factor[l * p + j] * step[l];
      step[j] = sum / factor[j * p + j];
    }
    for (let j = 0; j < p; j++) step[j] /= length[j];
    return true;
  };

  return (passingPct, start) => {
    const at = start.map((value, j) =>
      Math.min(upper[j], Math.max(lower[j], log[j] ? Math.log(value) : value)),
    );
    const trial = [...at];
    const values = toValues(at, [...at]);
    const tried = [...values];
    let misfit = square(values, passingPct, true);
    let damping = 1e-4;
    for (let count = 0; count < MOST_STEPS && misfit > 0; count++) {
      equations(values, at);
      let next = Infinity;
      while (true) {
        if (solve(damping)) {
          for (let j = 0; j < p; j++) {
            trial[j] = Math.min(upper[j], Math.max(lower[j], at[j] + step[j]));
          }
          next = square(toValues(trial, tried), passingPct, false);
          if (next < misfit) break;
        }
        // No shorter step helps: this is as low as the digits go.
        if (damping > MOST_DAMPING) return { values, converged: Number.isFinite(misfit) };
        damping *= 8;
      }
      const fall = (misfit - next) / misfit;
      for (let j = 0; j < p; j++) {
        at[j] = trial[j];
        values[j] = tried[j];
      }
      misfit = square(values, passingPct, true);
      damping = Math.max(1e-10, damping / 6);
      if (fall < AT_REST) return { values, converged: true };
    }
    return { values, converged: misfit === 0 };
  };
}
