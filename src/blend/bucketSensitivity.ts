import { blendAims } from "./blendAims.js";
import type { BlendDesign } from "./blendResult.js";
import { blendPoints, rmsOf } from "./describeBlend.js";
import type { BlendInput } from "./designBlend.js";
import { keepsConditions } from "./keepsConditions.js";
import { type LimitRow, limitRows, limitValue } from "./limitRows.js";

export interface BucketChange {
  readonly id: string;
  readonly change: -1 | 1;
  readonly sharesPct: readonly number[];
  readonly rmsDifferencePct: number;
  readonly worst: { readonly sizeMm: number; readonly differencePct: number };
  /** False where the miscount breaks a share's bound or a limit. */
  readonly keepsLimits: boolean;
  readonly limitValues: readonly { readonly label: string; readonly value: number }[];
}

/**
 * What a miscount does: for each material used one part more and one part less, all else as it was.
 *
 * @param massShares dry mass per part of each material, in any one unit: all 1 for parts by mass, the
 * loose dry densities for parts by volume.
 * @throws RangeError where parts or masses are not as many as the materials, or negative.
 * Source: own arithmetic.
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const input = { materials, target: { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 24 }] } };
 * const changes = bucketSensitivity(input, designBlend(input), [3, 2], [1, 1]);
 * changes.map(({ id, change, rmsDifferencePct }) => [id, change, rmsDifferencePct]) // => [["soil", -1, 4], ["soil", 1, 2.666667], ["sand", -1, 6], ["sand", 1, 4]]
 */
export function bucketSensitivity(
  input: BlendInput,
  design: BlendDesign,
  parts: readonly number[],
  massShares: readonly number[],
): BucketChange[] {
  const { materials, limits = [] } = input;
  for (const [name, values] of [
    ["parts", parts],
    ["massShares", massShares],
  ] as const) {
    if (values.length !== materials.length || values.some((value) => !(value >= 0))) {
      throw new RangeError(
        `invalid \`${name}\`: [${values}]; expected ${materials.length} numbers, 0 or more`,
      );
    }
  }
  const aims = blendAims(input, design);
  const rows = limitRows(materials, limits);
  return materials.flatMap(({ id }, at) =>
    ([-1, 1] as const).flatMap((change): BucketChange[] => {
      if (parts[at] === 0 && design.notUsed.includes(id)) return [];
      const changed = parts.map((value, j) => (j === at ? value + change : value));
      const mass = changed.reduce((sum, value, j) => sum + value * massShares[j], 0);
      if (changed[at] < 0 || !(mass > 0)) return [];
      const shares = changed.map((value, j) => (value * massShares[j]) / mass);
      const points = blendPoints(aims, shares);
      const { sizeMm, differencePct } = points.reduce((worst, point) =>
        Math.abs(point.differencePct) > Math.abs(worst.differencePct) ? point : worst,
      );
      return [
        {
          id,
          change,
          sharesPct: shares.map((share) => 100 * share),
          rmsDifferencePct: rmsOf(points, aims.weights),
          worst: { sizeMm, differencePct },
          keepsLimits: keepsConditions(materials, rows, shares),
          limitValues: rows.map((row: LimitRow) => ({
            label: row.label,
            value: limitValue(row, shares),
          })),
        },
      ];
    }),
  );
}
