import type { LimitsRecord } from "../lab/limitsRecord.js";
import { leastSquares } from "../numerics/leastSquares.js";
import { tQuantile } from "../numerics/tQuantile.js";
import type { FlowLine } from "./consistencyResult.js";

export interface LiquidLimit {
  readonly liquidLimitPct: number;
  readonly interval95?: readonly [number, number];
  readonly flowLine: FlowLine;
}

/**
 * Liquid limit by a least-squares flow line through all points.
 *
 * Formula: cup: w = a + b log10(N) at N = 25 blows; cone: w = a + b h at h = 20 mm (80 g, 30°).
 * The interval is that of the line's height at the limit, Student's t.
 * Source: cup, worked solution of Das problem 4.3 (read); cone, Smith, Example 1.3 (read).
 *
 * @returns `undefined` where two points with different measures are missing.
 * @throws RangeError where a measure is not positive.
 *
 * @example
 * const liquidLimitPoints = [{ measure: 15, waterContentPct: 42, row: 2 }, { measure: 20, waterContentPct: 40.8, row: 3 }, { measure: 28, waterContentPct: 39.1, row: 4 }];
 * liquidLimit({ file: "l.csv", liquidLimitMethod: "cup", liquidLimitPoints, plasticLimitPoints: [], nonPlastic: false }).liquidLimitPct // => 39.67
 */
export function liquidLimit(record: LimitsRecord): LiquidLimit | undefined {
  const { liquidLimitPoints: points, liquidLimitMethod: method = "cup" } = record;
  const measures = points.map(({ measure }, index) => {
    if (!(measure > 0)) {
      throw new RangeError(
        `invalid \`liquidLimitPoints[${index}].measure\`: ${measure}; expected above 0`,
      );
    }
    return method === "cup" ? Math.log10(measure) : measure;
  });
  if (new Set(measures).size < 2) return undefined;
  // Measured from the limit, so that the intercept of the fit is the limit itself.
  const limit = method === "cup" ? Math.log10(25) : 20;
  const fit = leastSquares(
    measures.map((measure) => [1, measure - limit]),
    points.map(({ waterContentPct }) => waterContentPct),
  );
  const [liquidLimitPct, slope] = fit.coefficients;
  const free = fit.degreesOfFreedom;
  const half = free > 0 ? tQuantile(0.975, free) * fit.standardErrors[0] : undefined;
  return {
    liquidLimitPct,
    ...(half === undefined
      ? {}
      : { interval95: [liquidLimitPct - half, liquidLimitPct + half] as const }),
    flowLine: {
      method,
      slope,
      intercept: liquidLimitPct - slope * limit,
      ...(free > 0 ? { residualSdPct: fit.residualSd } : {}),
    },
  };
}
