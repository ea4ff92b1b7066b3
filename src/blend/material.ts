import { type GradingCurve, type GradingPoint, passingAmong } from "../grading/curve.js";
import { checkThat } from "../quantities/checkNumber.js";

/** A material that may go into the blend, with the share of dry mass that it may have. */
export interface BlendMaterial {
  readonly id: string;
  readonly curve: GradingCurve;
  /** A share already on site is one whose smallest and largest value are the same. */
  readonly minSharePct: number;
  readonly maxSharePct: number;
  /** What messages call it; default the id. */
  readonly name?: string;
  /** It is soil of the site, which costs least to carry: see the aim `most-site-soil`. */
  readonly siteSoil?: boolean;
  /** Of dry mass, in the study's currency. */
  readonly costPerT?: number;
  /** kg CO₂e per tonne of dry mass. */
  readonly carbonKgPerT?: number;
  /** Of the part that passes 0.425 mm; 0 for a material that is not plastic. */
  readonly plasticityIndexPct?: number;
  /** Of the part that passes 0.425 mm; 0 for a material that does not shrink. */
  readonly linearShrinkagePct?: number;
}

/** What each material brings to a quantity; @throws RangeError for one that does not tell it. */
export function valuesOf(
  materials: readonly BlendMaterial[],
  key: "costPerT" | "carbonKgPerT" | "plasticityIndexPct" | "linearShrinkagePct",
  asker: string,
): number[] {
  return materials.map(({ id, [key]: value }) => {
    if (value === undefined || !Number.isFinite(value)) {
      throw new RangeError(
        `invalid \`${key}\` of ${id}: ${value}; expected a number, as ${asker} asks for it`,
      );
    }
    return value;
  });
}

/** Refuses a list that has not one number, 0 or more, for each material. */
export function checkOneEach(
  name: string,
  values: readonly number[],
  materials: readonly BlendMaterial[],
): void {
  checkThat(
    values.length === materials.length && values.every((value) => value >= 0),
    { [name]: `[${values}]` },
    `${materials.length} numbers, 0 or more`,
  );
}

/** What the blend should pass at a size. */
export interface TargetPoint {
  readonly sizeMm: number;
  readonly passingPct: number;
  /**
   * Weight of the squared difference at this size. Default 1: standard sieves stand about evenly on
   * the logarithm of size, so that equal weights treat coarse and fine alike.
   */
  readonly weight?: number;
}

/** Grains below this do not count any more: the curve of an unmeasured fine end is drawn down to it. */
const FINE_END_MM = 0.001;

export interface BlendPassing {
  readonly passingPct: number;
  /** The size is finer than the material's finest measured one: drawn straight to 0 at 0.001 mm. */
  readonly assumed: boolean;
}

/**
 * A material's passing at any size, as blending needs it: log-linear between the points, 100 above the
 * coarsest point if the material passes it whole, and below the finest point a straight line (on the
 * logarithm of size) to 0 at 0.001 mm, told as assumed.
 *
 * @throws RangeError where the size is coarser than the curve and the curve does not reach 100 %.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.1, passingPct: 10, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * blendPassing(curve, 10) // => { passingPct: 100, assumed: false }
 * blendPassing(curve, 0.01) // => { passingPct: 5, assumed: true }
 */
export function blendPassing(curve: GradingCurve, sizeMm: number): BlendPassing {
  const { points } = curve;
  const [first, last] = [points[0], points[points.length - 1]];
  if (sizeMm > last.sizeMm) {
    if (last.passingPct >= 100 - 1e-9) return { passingPct: last.passingPct, assumed: false };
    checkThat(
      false,
      { sizeMm },
      `at most ${last.sizeMm}, where the curve ends at ${last.passingPct} %`,
    );
  }
  if (sizeMm < first.sizeMm) {
    const slope = Math.log(sizeMm / FINE_END_MM) / Math.log(first.sizeMm / FINE_END_MM);
    return { passingPct: first.passingPct * Math.max(0, slope), assumed: true };
  }
  return { passingPct: passingAmong(points, sizeMm)!, assumed: false };
}

/**
 * The size up to which every one of some curves was measured: the coarsest sieve of one on which material
 * stayed, so that nothing is known beyond it; infinity where all pass their coarsest sieve whole.
 *
 * @example
 * const point = (sizeMm, passingPct) => ({ sizeMm, passingPct, origin: "sieve" });
 * measuredTopMm([{ points: [point(0.1, 10), point(8, 91)] }, { points: [point(0.1, 0), point(4, 100)] }]) // => 8
 */
export function measuredTopMm(curves: readonly GradingCurve[]): number {
  const ends = curves.map(({ points }) => points[points.length - 1]);
  return Math.min(
    ...ends.map(({ sizeMm, passingPct }) => (passingPct >= 100 - 1e-9 ? Infinity : sizeMm)),
  );
}

export interface BlendedCurve {
  readonly curve: GradingCurve;
  /**
   * Percent of the blend whose size below the finest sieve was not measured but assumed: the most by
   * which the blend's fine end could be wrong.
   */
  readonly unmeasuredFinesPct: number;
}

/**
 * The grading curve of a blend: at each size that any of its materials was measured at, the mean of
 * the materials' passings weighted by their dry-mass shares. Beyond the coarsest sieve of a material that
 * holds something back the blend is not known either: its curve then ends below 100 %.
 *
 * @param parts shares in percent that sum to 100; parts with share 0 are left out.
 * @throws RangeError for shares that do not sum to 100, such as fractions of one.
 *
 * @example
 * const a = { points: [{ sizeMm: 0.1, passingPct: 0, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * const b = { points: [{ sizeMm: 0.1, passingPct: 40, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * const { curve } = blendCurve([{ curve: a, sharePct: 50 }, { curve: b, sharePct: 50 }]);
 * curve.points.map(({ passingPct }) => passingPct) // => [20, 100]
 */
export function blendCurve(
  parts: readonly { readonly curve: GradingCurve; readonly sharePct: number }[],
): BlendedCurve {
  const used = parts.filter(({ sharePct }) => sharePct > 0);
  const sum = used.reduce((total, { sharePct }) => total + sharePct, 0);
  checkThat(Math.abs(sum - 100) < 0.5, { "sum of the shares": sum }, "percent that sum to 100");
  const top = measuredTopMm(used.map(({ curve }) => curve));
  const measured = used.flatMap(({ curve }) => curve.points.map(({ sizeMm }) => sizeMm));
  const sizes = [...new Set(measured)].filter((sizeMm) => sizeMm <= top);
  sizes.sort((a, b) => a - b);
  const coarsestFineEnd = Math.max(...used.map(({ curve }) => curve.points[0].sizeMm));
  const points = sizes.map((sizeMm): GradingPoint => {
    const passings = used.map(({ curve }) => blendPassing(curve, sizeMm).passingPct);
    const mean = used.reduce((sum, { sharePct }, i) => sum + (sharePct / 100) * passings[i], 0);
    // Where all of each material passes, all of the blend does: shares add up to 100 but for rounding.
    const passingPct = passings.every((pct) => pct >= 100) ? 100 : Math.min(100, mean);
    return { sizeMm, passingPct, origin: sizeMm < coarsestFineEnd ? "sedimentation" : "sieve" };
  });
  const finest = sizes[0];
  const unmeasuredFinesPct = used.reduce(
    (sum, { curve, sharePct }) =>
      curve.points[0].sizeMm > finest ? sum + (sharePct / 100) * curve.points[0].passingPct : sum,
    0,
  );
  return { curve: { points }, unmeasuredFinesPct };
}
