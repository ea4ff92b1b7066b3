import type { Between } from "../batch/cementComparison.js";
import type { MixCarbon } from "../batch/mixCarbon.js";
import type { SavingTrap } from "../batch/savingTrap.js";
import type { UnitSystem } from "../quantities/displayUnits.js";
import { say, sayOf } from "../words/say.js";
import { markedSource } from "./basisMark.js";
import { BLANK, fixed, quantity, quantityColumn } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/**
 * Carbon of a mix by material, low to high, with each factor's source and mark; and the trap of the cement
 * saving in words where it was worked out.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const batch = recipe({ materials, cementPct: 8, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const carbon = mixCarbon(batch, { factors: { soil: MATERIAL_CARBON_FACTORS[0], cement: CEMENT_CARBON_FACTORS[0] } });
 * siteCarbonTable(carbon, "SI").rows[1] // => ["Cement", "67.7 to 73.8", "–"]
 */
export function siteCarbonTable(
  carbon: MixCarbon,
  units: UnitSystem,
  trap?: SavingTrap,
): TableBlock {
  const range = (value: Between | null) =>
    value === null
      ? BLANK
      : say`${quantity(1000 * value.low, "mass", units)} to ${quantity(1000 * value.high, "mass", units)}`;
  const { low, high } = carbon.cementPctOfTotal;
  const factors = [
    ...carbon.lines.flatMap(({ factor }) => (factor ? [factor] : [])),
    ...(carbon.haulFactor ? [carbon.haulFactor] : []),
  ];
  const used = [...new Map(factors.map((factor) => [factor.id, factor])).values()];
  return {
    kind: "table",
    caption: say`Carbon of the mix by material, CO₂e`,
    columns: [
      { header: say`Material` },
      quantityColumn(say`Making`, "mass", units),
      quantityColumn(say`Haul`, "mass", units),
    ],
    rows: [
      ...carbon.lines.map(({ name, making, haul }) => [name, range(making), range(haul)]),
      [say`Making and haul together`, range(carbon.total), ""],
    ],
    notes: [
      say`Cement makes ${fixed(low, 0)} to ${fixed(high, 0)} % of it.`,
      ...(carbon.status === "ok" ? [] : [carbon.message]),
      ...used.map(
        (factor) =>
          say`${sayOf(factor.name)}: ${factor.low} to ${factor.high} ${factor.unit} (${markedSource(factor)}).`,
      ),
      ...(trap ? [trap.text] : []),
    ],
  };
}
