import { blendCurve } from "../blend/material.js";
import type { GradingCurve } from "../grading/curve.js";

export interface GradingChange {
  /** Size at which the passing moved most. */
  readonly sizeMm: number;
  readonly fromPct: number;
  readonly toPct: number;
  /** Percentage points, with its sign. */
  readonly changePct: number;
}

interface MaterialShare {
  readonly id: string;
  readonly sharePct: number;
}

/**
 * Finds where a change of shares (by rounding to buckets, say) moves the blend's grading most.
 *
 * Both blends are the mean of the materials' passings weighted by their shares, compared at each size
 * that any of the curves was measured at.
 *
 * @param curves by material id.
 * @param before shares in percent; what is missing has none.
 * @param after shares in percent; what is missing has none.
 * @throws RangeError where a material with a share has no curve. Source: own arithmetic.
 *
 * @example
 * const fine = { points: [{ sizeMm: 0.1, passingPct: 40, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * const coarse = { points: [{ sizeMm: 0.1, passingPct: 0, origin: "sieve" }, { sizeMm: 1, passingPct: 100, origin: "sieve" }] };
 * gradingChange({ fine, coarse }, [{ id: "fine", sharePct: 50 }, { id: "coarse", sharePct: 50 }], [{ id: "fine", sharePct: 55 }, { id: "coarse", sharePct: 45 }]) // => { sizeMm: 0.1, fromPct: 20, toPct: 22, changePct: 2 }
 */
export function gradingChange(
  curves: Readonly<Record<string, GradingCurve>>,
  before: readonly MaterialShare[],
  after: readonly MaterialShare[],
): GradingChange {
  const ids = [
    ...new Set([...before, ...after].filter(({ sharePct }) => sharePct > 0).map(({ id }) => id)),
  ];
  const missing = ids.find((id) => !Object.hasOwn(curves, id));
  if (missing !== undefined || ids.length === 0) {
    throw new RangeError(`invalid \`curves\`: no curve of ${missing ?? "any material"}`);
  }
  // The smallest share keeps every material's sizes in both curves without counting.
  const blended = (shares: readonly MaterialShare[]) =>
    blendCurve(
      ids.map((id) => ({
        curve: curves[id],
        sharePct: Math.max(shares.find((share) => share.id === id)?.sharePct ?? 0, 1e-12),
      })),
    ).curve.points;
  const from = blended(before);
  const changes = blended(after).map(({ sizeMm, passingPct }, index): GradingChange => {
    const fromPct = from[index].passingPct;
    return { sizeMm, fromPct, toPct: passingPct, changePct: passingPct - fromPct };
  });
  return changes.reduce((most, here) =>
    Math.abs(here.changePct) > Math.abs(most.changePct) + 1e-9 ? here : most,
  );
}
