import { CONCRETE_AGGREGATE_KG_M3 } from "../batch/carbonComparison.js";
import { formatQuantity } from "../quantities/displayUnits.js";
import type { StudyResult } from "../study/studyResult.js";
import { say, sayOf } from "../words/say.js";
import { markedSource } from "./basisMark.js";
import { BLANK, fixed, quantity, quantityColumn } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

/** Cement and its carbon beside an all-concrete element of the same volume. */
export function comparisonTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { comparison, carbonComparison } = mix;
  const { units } = config;
  const mass = (kilograms: number) => quantity(1000 * kilograms, "mass", units);
  const range = ({ low, high }: { low: number; high: number }) =>
    say`${mass(low)} to ${mass(high)}`;
  const { carbonFactor, concreteCement } = comparison;
  return {
    kind: "table",
    caption: say`Cement with cement, for the net volume of the element`,
    columns: [
      { header: say`Element` },
      quantityColumn(say`Cement`, "mass", units),
      quantityColumn(say`CO₂e of that cement`, "mass", units),
      quantityColumn(say`CO₂e of all materials`, "mass", units),
    ],
    rows: [
      [
        say`Earth, as specified`,
        mass(comparison.earthCementKg),
        range(comparison.earthCementCarbonKg),
        carbonComparison ? range(carbonComparison.earth) : BLANK,
      ],
      [
        config.carbon.concreteVolumeM3 === undefined
          ? say`Concrete, same volume`
          : say`Concrete of ${formatQuantity(1e6 * config.carbon.concreteVolumeM3, "volume", units)}`,
        range(comparison.concreteCementKg),
        range(comparison.concreteCementCarbonKg),
        carbonComparison ? range(carbonComparison.concrete) : BLANK,
      ],
    ],
    notes: [
      config.carbon.concreteVolumeM3 === undefined
        ? say`The earth element holds ${fixed(comparison.cementPctOfConcrete.low, 0)} to ${fixed(comparison.cementPctOfConcrete.high, 0)} % of the cement of a concrete element of the same volume. A thinner concrete wall would narrow that.`
        : say`The earth element holds ${fixed(comparison.cementPctOfConcrete.low, 0)} to ${fixed(comparison.cementPctOfConcrete.high, 0)} % of the cement of the concrete element.`,
      ...(carbonComparison
        ? [
            say`All materials, earth with concrete: ${fixed(carbonComparison.earthPctOfConcrete.low, 0)} to ${fixed(carbonComparison.earthPctOfConcrete.high, 0)} % of the carbon of making them. Neither side counts haul, waste, forms or reinforcement; the concrete holds ${CONCRETE_AGGREGATE_KG_M3.low} to ${CONCRETE_AGGREGATE_KG_M3.high} kg/m³ of sand and stone (common practice, no source).`,
          ]
        : []),
      say`Concrete: ${sayOf(concreteCement.name)}, ${concreteCement.low} to ${concreteCement.high} ${concreteCement.unit} (${markedSource(concreteCement)}).`,
      say`Carbon: ${carbonFactor.low} to ${carbonFactor.high} ${carbonFactor.unit} (${markedSource(carbonFactor)}).`,
    ],
  };
}
