import type { Between } from "../batch/cementComparison.js";
import type { CostRange } from "../batch/costRange.js";
import type { MixSaving } from "../batch/mixSaving.js";
import { say } from "../words/say.js";
import { BLANK, fixed, numberColumn } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/**
 * Cost of a mix by material, low to high, and what it saves against another mix where that was worked out.
 *
 * @param options.currency stands over the columns. @param options.against names the other mix.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const at = (cementPct) => recipe({ materials, cementPct, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const prices = { soil: { price: { low: 0, high: 5, per: "t" } }, cement: { price: { low: 150, high: 200, per: "t" } } };
 * const table = siteCostTable(costRange(at(6), prices), { saving: mixSaving({ mix: at(6), other: at(8), prices }), against: "8 % cement" });
 * table.rows[2] // => ["Total", "9 to 17", ""]
 * table.notes[1] // => "Saved against 8 % cement: 3 to 4. This mix costs less at all prices given."
 */
export function siteCostTable(
  cost: CostRange,
  options: {
    readonly currency?: string;
    readonly saving?: MixSaving;
    readonly against?: string;
  } = {},
): TableBlock {
  const { currency, saving, against = say`the other mix` } = options;
  const range = (value: Between | null) =>
    value === null ? BLANK : say`${fixed(value.low, 0)} to ${fixed(value.high, 0)}`;
  return {
    kind: "table",
    caption: say`Cost of the materials, from low to high`,
    columns: [
      { header: say`Material` },
      numberColumn(say`To buy`, currency),
      numberColumn(say`To bring`, currency),
    ],
    rows: [
      ...cost.lines.map(({ name, material, haul }) => [name, range(material), range(haul)]),
      [say`Total`, range(cost.total), ""],
    ],
    notes: [
      cost.message,
      ...(saving
        ? [
            saving.saved === null
              ? say`No saving against ${against} is given: ${saving.message}`
              : say`Saved against ${against}: ${range(saving.saved)}. ${saving.message}`,
          ]
        : []),
    ],
  };
}
