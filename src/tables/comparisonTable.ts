import type { StudyResult } from "../study/studyResult.js";
import { say, sayOf } from "../words/say.js";
import { fixed, quantity, quantityColumn } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

/** Cement and its carbon beside an all-concrete element of the same volume. */
export function comparisonTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { comparison } = mix;
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
    ],
    rows: [
      [
        say`Earth, as specified`,
        mass(comparison.earthCementKg),
        range(comparison.earthCementCarbonKg),
      ],
      [
        say`Concrete, same volume`,
        range(comparison.concreteCementKg),
        range(comparison.concreteCementCarbonKg),
      ],
    ],
    notes: [
      say`The earth element holds ${fixed(comparison.cementPctOfConcrete.low, 0)} to ${fixed(comparison.cementPctOfConcrete.high, 0)} % of the cement of a concrete element of the same volume. A thinner concrete wall would narrow that.`,
      say`Concrete: ${sayOf(concreteCement.name)}, ${concreteCement.low} to ${concreteCement.high} ${concreteCement.unit} (${concreteCement.source}).`,
      say`Carbon: ${carbonFactor.low} to ${carbonFactor.high} ${carbonFactor.unit} (${carbonFactor.source}; ${carbonFactor.basis === "read" ? say`read` : say`from memory`}).`,
    ],
  };
}
