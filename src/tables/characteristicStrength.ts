import type { TableBlock } from "../blocks/block.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import type { UnitSystem } from "../quantities/format.js";
import type { AspectCorrected } from "../strength/aspectRatio.js";
import type { CharacteristicStrength } from "../strength/characteristicStrength.js";
import { say, type Text } from "../words/message.js";
import { fixed, MARKS, numberColumn, quantity, quantityColumn } from "./cell.js";

/** Characteristic strengths of one set of blocks by several rules, each with its factor and source. */
export function characteristicTable(
  found: readonly CharacteristicStrength[],
  units: UnitSystem,
): TableBlock {
  const [first] = found;
  return {
    kind: "table",
    caption: say`Characteristic strength, rule by rule`,
    columns: [
      { header: say`Rule` },
      numberColumn(say`Factor`),
      quantityColumn(say`Characteristic`, "stress", units),
      { header: say`Source` },
      { header: say`Mark` },
    ],
    rows: found.map(({ rule, factor, valueMpa, status, message }) => [
      status === "ok" ? rule.name : say`${rule.name}. ${message}`,
      fixed(factor, 2),
      quantity(valueMpa, "stress", units),
      rule.source,
      MARKS[rule.basis],
    ]),
    notes: first
      ? [
          say`${first.blocks} blocks, mean ${quantity(first.meanMpa, "stress", units)}, standard deviation ${quantity(first.sdMpa, "stress", units)}, in the unit of the table. With few blocks the rules differ widely: say which one is used.`,
        ]
      : [],
  };
}

/** Strengths corrected for the blocks' proportions, the measured ones beside them. */
export function aspectTable(
  rows: readonly { readonly block: SpecimenRecord; readonly corrected: AspectCorrected }[],
  units: UnitSystem,
): TableBlock {
  const used = [...new Set(rows.map(({ corrected }) => corrected.table))];
  const sources: Text[] = used.map(({ name, source }) => say`${name}: ${source}.`);
  return {
    kind: "table",
    caption: say`Strength corrected for height over thickness`,
    columns: [
      { header: say`Block` },
      numberColumn(say`Height over thickness`),
      quantityColumn(say`Measured`, "stress", units),
      numberColumn(say`Factor`),
      quantityColumn(say`Corrected`, "stress", units),
    ],
    rows: rows.map(({ block, corrected }) => [
      block.id,
      fixed(corrected.ratio, 2),
      quantity(corrected.uncorrectedMpa, "stress", units),
      fixed(corrected.factor, 3),
      quantity(corrected.correctedMpa, "stress", units),
    ]),
    notes: [
      ...sources,
      say`The tables disagree with one another; the regression uses the measured strengths.`,
    ],
  };
}
