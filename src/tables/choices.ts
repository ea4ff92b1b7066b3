import { type BlendInput, designBlend } from "../blend/design.js";
import type { TableBlock } from "../blocks/block.js";
import type { RequirementConfig } from "../entries/studyConfig.js";
import { formatQuantity, type UnitSystem } from "../quantities/format.js";
import { convertFromBase } from "../quantities/units.js";
import { leastCement } from "../strength/leastCement.js";
import type { FittedStrength } from "../strength/regression/curve.js";
import { say, type Text } from "../words/message.js";
import { fixed, numberColumn, plain } from "./cell.js";
import { statisticName } from "./strength.js";

/**
 * The least cement when the mean, one further block, or nearly all blocks must reach the requirement: three
 * answers of the same blocks.
 */
export function leastCementByStatisticTable(
  fit: FittedStrength,
  requirement: RequirementConfig,
  units: UnitSystem,
): TableBlock {
  const { strengthMpa, ageDays, confidence } = requirement;
  return {
    kind: "table",
    caption: say`Least cement for ${formatQuantity(strengthMpa, "stress", units)} at ${ageDays} days, by what must reach it`,
    columns: [
      { header: say`Held against the requirement` },
      numberColumn(say`Least cement`, "%"),
      numberColumn(say`Rounded up`, "%"),
      { header: say`What it says` },
    ],
    rows: (["mean", "prediction", "tolerance"] as const).map((statistic) => {
      const least = leastCement(fit, { ...requirement, statistic });
      return [
        statisticName(statistic, confidence),
        fixed(least.cementPct, 2),
        plain(least.batchablePct),
        least.message,
      ];
    }),
  };
}

/** The mass that a price is of, and how many of it a tonne is. */
const PRICED_BY: Readonly<Record<UnitSystem, { readonly per: Text; readonly perTonne: number }>> = {
  SI: { per: say`per t`, perTonne: 1 },
  US: { per: say`per short ton`, perTonne: convertFromBase(1e6, "short ton", "mass") },
};

/**
 * The blend nearest to each of several power curves, with the same limits.
 *
 * @param currency of the prices, where the study names one @param units of the mass that they are of
 */
export function powerTargetsTable(
  input: BlendInput,
  exponents: readonly number[],
  topSizeMm: number,
  currency?: string,
  units: UnitSystem = "SI",
): TableBlock {
  const { per, perTonne } = PRICED_BY[units];
  return {
    kind: "table",
    caption: say`Blends nearest to power curves with a top size of ${topSizeMm} mm`,
    columns: [
      numberColumn(say`Exponent`),
      ...input.materials.map(({ id, name = id }) => numberColumn(name, "%")),
      numberColumn(say`Difference from its target`, say`points`),
      numberColumn(
        say`Price of the dry blend`,
        currency === undefined ? per : say`${currency} ${per}`,
      ),
    ],
    rows: exponents.map((exponent) => {
      const design = designBlend({ ...input, target: { kind: "power", exponent, topSizeMm } });
      const shareOf = new Map(design.shares.map(({ id, sharePct }) => [id, sharePct]));
      return [
        plain(exponent),
        ...input.materials.map(({ id }) => fixed(shareOf.get(id) ?? 0, 1)),
        design.status === "ok" ? fixed(design.rmsDifferencePct, 2) : design.message,
        fixed(design.costPerT === null ? null : design.costPerT / perTonne, 2),
      ];
    }),
  };
}
