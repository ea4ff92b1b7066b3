import { formatNumber } from "../quantities/formatNumber.js";
import { BLANK } from "../tables/cell.js";
import type { TableBlock } from "../tables/reportBlock.js";
import { localNumber } from "../words/language.js";
import { say } from "../words/say.js";
import { workshopMemory } from "./workshopMemory.js";

/**
 * Sets predictions beside the computed values, with the difference in percent of the computed one.
 *
 * @param computed by the names that `predict` was given; a text where the computed value is one, `null`
 * or `undefined` where there is none.
 *
 * @example
 * const before = predict("D60 of the soil, mm", 2);
 * comparePredictions({ "D60 of the soil, mm": 1.6 }).rows // => [["D60 of the soil, mm", "2", "1.60", "+25 %"]]
 */
export function comparePredictions(
  computed: Readonly<Record<string, number | string | null | undefined>>,
): TableBlock {
  const rows = Object.entries(computed).map(([name, value]) => {
    const prediction = workshopMemory.predictions.get(name);
    workshopMemory.revealed.add(name);
    const predicted =
      prediction === undefined
        ? BLANK
        : typeof prediction.value === "number"
          ? localNumber(String(prediction.value))
          : prediction.value;
    return [
      name,
      prediction?.afterwards ? say`${predicted} (afterwards)` : predicted,
      typeof value === "number" ? formatNumber(value) : (value ?? BLANK),
      difference(prediction?.value, value),
    ];
  });
  return {
    kind: "table",
    caption: say`Predicted and computed`,
    columns: [
      { header: say`What` },
      { header: say`Predicted`, align: "right" },
      { header: say`Computed`, align: "right" },
      { header: say`Off by`, align: "right" },
    ],
    rows,
    notes: [say`A dash: no prediction, or nothing to compare.`],
  };
}

function difference(predicted: number | string | undefined, value: unknown): string {
  if (typeof predicted !== "number" || typeof value !== "number") return BLANK;
  if (!Number.isFinite(value) || value === 0) return BLANK;
  const off = (100 * (predicted - value)) / Math.abs(value);
  const sign = Math.round(off) > 0 ? "+" : "";
  return `${sign}${formatNumber(Math.round(off), 1)} %`;
}
