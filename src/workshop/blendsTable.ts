import { fixed, numberColumn, plain } from "../tables/cell.js";
import type { TableBlock } from "../tables/reportBlock.js";
import { say } from "../words/say.js";
import type { ClassBlend } from "./classBlend.js";

/**
 * The blend by hand and the blend by least squares, size by size against the same target: what each was
 * made to meet, and what it misses.
 *
 * @example
 * const soil = { points: [{ sizeMm: 0.063, passingPct: 40, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const sand = { points: [{ sizeMm: 0.063, passingPct: 0, origin: "sieve" }, { sizeMm: 2, passingPct: 100, origin: "sieve" }] };
 * const materials = [{ id: "soil", curve: soil, minSharePct: 0, maxSharePct: 100 }, { id: "sand", curve: sand, minSharePct: 0, maxSharePct: 100 }];
 * const target = { kind: "curve", points: [{ sizeMm: 0.063, passingPct: 30 }, { sizeMm: 0.5, passingPct: 70 }] };
 * blendsTable(classBlend({ materials, target, looseDryDensityKgM3: [1200, 1500] })).rows[0] // => ["0.063", "30.0", "30.0", "0.0", "29.3", "−0.7"]
 */
export function blendsTable({ handDesign, design }: ClassBlend): TableBlock {
  return {
    kind: "table",
    caption: say`By hand and by least squares, against the same target`,
    columns: [
      numberColumn(say`Size`, "mm"),
      numberColumn(say`Target`, "%"),
      numberColumn(say`By hand`, "%"),
      numberColumn(say`Off by`, say`points`),
      numberColumn(say`Least squares`, "%"),
      numberColumn(say`Off by`, say`points`),
    ],
    rows: design.points.map((point, index) => {
      const hand = handDesign.points[index];
      return [
        plain(point.sizeMm),
        fixed(point.targetPct, 1),
        fixed(hand.blendPct, 1),
        fixed(hand.differencePct, 1),
        fixed(point.blendPct, 1),
        fixed(point.differencePct, 1),
      ];
    }),
    notes: [
      say`Root mean square of the differences: by hand ${fixed(handDesign.rmsDifferencePct, 1)} points, by least squares ${fixed(design.rmsDifferencePct, 1)} points.`,
    ],
  };
}
