import { HouseholderQr } from "./householderQr.js";

/** Steps of damped Gauss–Newton from one Jacobian, for as many dampings as are tried. */
export class GaussNewtonStep {
  /** Column-major, residuals by parameters. */
  readonly jacobian: Float64Array;
  /** Step in all parameters; zeros for those held. */
  readonly step: Float64Array;
  /** 1 for a parameter held on its bound. */
  readonly held: Uint8Array;
  readonly qr: HouseholderQr;
  /** Longest length each column has had: damping by it cannot blow a fading parameter up. */
  readonly lengths: Float64Array;
  /** Largest cosine between residuals and a free column. */
  gradientNorm = 0;
  private readonly free: Int32Array;
  private readonly turned: Float64Array;
  private readonly damped: HouseholderQr;
  private readonly work: Float64Array;

  constructor(
    readonly rows: number,
    readonly parameters: number,
  ) {
    this.jacobian = new Float64Array(rows * parameters);
    this.step = new Float64Array(parameters);
    this.held = new Uint8Array(parameters);
    this.lengths = new Float64Array(parameters);
    this.free = new Int32Array(parameters);
    this.qr = new HouseholderQr(new Float64Array(rows * parameters), 0, parameters);
    this.damped = new HouseholderQr(new Float64Array(2 * parameters ** 2), 0, parameters);
    this.turned = new Float64Array(rows);
    this.work = new Float64Array(2 * parameters);
  }

  /** Forgets the problem before this one, so that fits of one size may share the memory. */
  restart(): this {
    this.lengths.fill(0);
    this.held.fill(0);
    this.step.fill(0);
    this.gradientNorm = 0;
    return this;
  }

  /** Takes the Jacobian as filled in: holds parameters pushed against bounds, factorises the others. */
  prepare(
    p: readonly number[],
    residuals: readonly number[],
    lower: Float64Array,
    upper: Float64Array,
  ): void {
    const { rows, parameters, jacobian, qr, turned } = this;
    let size = 0;
    for (let i = 0; i < rows; i++) size += residuals[i] ** 2;
    let count = 0;
    this.gradientNorm = 0;
    for (let j = 0; j < parameters; j++) {
      let slope = 0;
      let square = 0;
      for (let i = 0; i < rows; i++) {
        slope += jacobian[j * rows + i] * residuals[i];
        square += jacobian[j * rows + i] ** 2;
      }
      this.lengths[j] = Math.max(this.lengths[j], Math.sqrt(square));
      const pushed = (p[j] <= lower[j] && slope >= 0) || (p[j] >= upper[j] && slope <= 0);
      this.held[j] = pushed || lower[j] === upper[j] ? 1 : 0;
      if (this.held[j]) continue;
      if (size * square > 0) {
        this.gradientNorm = Math.max(this.gradientNorm, Math.abs(slope) / Math.sqrt(size * square));
      }
      qr.packed.set(jacobian.subarray(j * rows, (j + 1) * rows), count * rows);
      this.free[count++] = j;
    }
    qr.factorise(rows, count);
    for (let i = 0; i < rows; i++) turned[i] = -residuals[i];
    qr.applyTranspose(turned);
  }

  /** Fills `step` with the minimum of `‖r + J s‖² + damping ‖lengths · s‖²`. */
  find(damping: number): void {
    const { qr, damped, work, turned, step, free, lengths } = this;
    const count = qr.columns;
    const root = Math.sqrt(damping);
    const solver = damping > 0 ? damped : qr;
    work.fill(0);
    for (let k = 0; k < qr.rank; k++) work[k] = turned[k];
    if (damping > 0) {
      damped.packed.fill(0);
      for (let k = 0; k < count; k++) {
        const base = 2 * k * count;
        for (let i = 0; i <= Math.min(k, qr.rank - 1); i++) {
          damped.packed[base + i] = qr.packed[k * qr.rows + i];
        }
        const at = qr.order[k];
        damped.packed[base + count + k] = root * lengths[free[at]] * qr.scale[at];
      }
      damped.factorise(2 * count, count);
      damped.applyTranspose(work);
    }
    solver.solveUpper(work);
    step.fill(0);
    for (let k = 0; k < solver.rank; k++) {
      const place = damping > 0 ? damped.order[k] : k;
      const at = qr.order[place];
      const scale = damping > 0 ? damped.scale[place] : 1;
      step[free[at]] = work[k] * scale * qr.scale[at];
    }
  }

  /** Fall of `‖r + J s‖²` from `s = 0` that the straight-line model promises for `step` as it stands. */
  predictedFall(): number {
    const { qr, turned, free, step } = this;
    let fall = 0;
    for (let i = 0; i < qr.rank; i++) {
      let value = 0;
      for (let k = i; k < qr.columns; k++) {
        const at = qr.order[k];
        value += (qr.packed[k * qr.rows + i] * step[free[at]]) / qr.scale[at];
      }
      fall += value * (2 * turned[i] - value);
    }
    return fall;
  }
}
