import { fixed, numberColumn, plain } from "../tables/cell.js";
import type { TableBlock } from "../tables/reportBlock.js";
import { say } from "../words/say.js";
import type { ClassBlend } from "./classBlend.js";

/**
 * The blend by hand and the blend by least squares, size by size against the same target: what each was
 * made to meet, and what it misses.
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
