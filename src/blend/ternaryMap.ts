import { blendAims } from "./blendAims.js";
import { blendPoints, rmsOf } from "./describeBlend.js";
import { type BlendInput, designBlend } from "./designBlend.js";
import { keepsConditions } from "./keepsConditions.js";
import { limitRows } from "./limitRows.js";

export interface TernaryPoint {
  readonly sharesPct: readonly [number, number, number];
  readonly rmsDifferencePct: number;
  /** All bounds and limits are kept. */
  readonly allowed: boolean;
}

export interface TernaryMap {
  readonly ids: readonly [string, string, string];
  readonly points: readonly TernaryPoint[];
  /** Null where no blend keeps the limits. */
  readonly best: TernaryPoint | null;
}

/**
 * Every blend of three materials in even steps: how far from the target, and whether it is allowed.
 *
 * @param steps from one corner to another, 2 to 100; default 20 (shares in steps of 5 %).
 * @throws RangeError for other than three materials, or steps out of range. Source: own arithmetic.
 *
 * @example
 * const curve = (finesPct) => ({ points: [{ sizeMm: 0.063, passingPct: finesPct, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] });
 * const material = (id, finesPct) => ({ id, curve: curve(finesPct), minSharePct: 0, maxSharePct: 100 });
 * const map = ternaryMap({ materials: [material("a", 40), material("b", 10), material("c", 0)], target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 40 }] } }, 2);
 * map.points.map(({ rmsDifferencePct }) => rmsDifferencePct) // => [40, 35, 30, 20, 15, 0]
 * map.best.sharesPct // => [100, 0, 0]
 */
export function ternaryMap(input: BlendInput, steps = 20): TernaryMap {
  const { materials, limits = [] } = input;
  if (materials.length !== 3) {
    throw new RangeError(`invalid \`materials\`: ${materials.length}; expected three`);
  }
  if (!(Number.isInteger(steps) && steps >= 2 && steps <= 100)) {
    throw new RangeError(`invalid \`steps\`: ${steps}; expected a whole number from 2 to 100`);
  }
  const design = designBlend(input);
  const aims = blendAims(input, design);
  const rows = limitRows(materials, limits);
  const most = input.mostMaterials ?? 3;
  const points: TernaryPoint[] = [];
  for (let a = 0; a <= steps; a += 1) {
    for (let b = 0; b <= steps - a; b += 1) {
      const shares = [a / steps, b / steps, (steps - a - b) / steps] as const;
      points.push({
        sharesPct: [100 * shares[0], 100 * shares[1], 100 * shares[2]],
        rmsDifferencePct: rmsOf(blendPoints(aims, shares), aims.weights),
        allowed:
          keepsConditions(materials, rows, shares) && shares.filter((x) => x > 0).length <= most,
      });
    }
  }
  const [first, second, third] = materials.map(({ id }) => id);
  const best = design.shares.map(({ sharePct }) => sharePct);
  return {
    ids: [first, second, third],
    points,
    best:
      design.status === "ok"
        ? {
            sharesPct: [best[0], best[1], best[2]],
            rmsDifferencePct: design.rmsDifferencePct,
            allowed: true,
          }
        : null,
  };
}
