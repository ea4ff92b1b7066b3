import type { TableBlock } from "../blocks/block.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import type { UnitSystem } from "../quantities/format.js";
import type { AspectCorrected } from "../strength/aspectRatio.js";
import type { CharacteristicStrength } from "../strength/characteristicStrength.js";
import { say, type Text } from "../words/message.js";
import { fixed, MARKS, numberColumn, quantity } from "./cell.js";
import { quantityCells, tableOf } from "./tableOf.js";

/** Characteristic strengths of one set of blocks by several rules, each with its factor and source. */
export function characteristicTable(
  found: readonly CharacteristicStrength[],
  units: UnitSystem,
): TableBlock {
  const [first] = found;
  return tableOf(
    say`Characteristic strength, rule by rule`,
    found,
    [
      [
        say`Rule`,
        ({ rule, status, message }) =>
          status === "ok" ? rule.name : say`${rule.name}. ${message}`,
      ],
      [numberColumn(say`Factor`), ({ factor }) => fixed(factor, 2)],
      quantityCells(say`Characteristic`, "stress", units, ({ valueMpa }) => valueMpa),
      [say`Source`, ({ rule }) => rule.source],
      [say`Mark`, ({ rule }) => MARKS[rule.basis]],
    ],
    first
      ? [
          say`${first.blocks} blocks, mean ${quantity(first.meanMpa, "stress", units)}, standard deviation ${quantity(first.sdMpa, "stress", units)}, in the unit of the table. With few blocks the rules differ widely: say which one is used.`,
        ]
      : [],
  );
}

/** Strengths corrected for the blocks' proportions, the measured ones beside them. */
export function aspectTable(
  rows: readonly { readonly block: SpecimenRecord; readonly corrected: AspectCorrected }[],
  units: UnitSystem,
): TableBlock {
  const used = [...new Set(rows.map(({ corrected }) => corrected.table))];
  const sources: Text[] = used.map(({ name, source }) => say`${name}: ${source}.`);
  return tableOf(
    say`Strength corrected for height over thickness`,
    rows,
    [
      [say`Block`, ({ block }) => block.id],
      [numberColumn(say`Height over thickness`), ({ corrected }) => fixed(corrected.ratio, 2)],
      quantityCells(say`Measured`, "stress", units, ({ corrected }) => corrected.uncorrectedMpa),
      [numberColumn(say`Factor`), ({ corrected }) => fixed(corrected.factor, 3)],
      quantityCells(say`Corrected`, "stress", units, ({ corrected }) => corrected.correctedMpa),
    ],
    [
      ...sources,
      say`The tables disagree with one another; the regression uses the measured strengths.`,
    ],
  );
}
