import type { StrengthStatistic } from "../strength/boundOffset.js";
import { leastCement } from "../strength/leastCement.js";
import type { FittedStrength } from "../strength/strengthFit.js";
import { BLANK, fixed } from "../tables/cell.js";
import type { TableBlock } from "../tables/reportBlock.js";
import { statisticName } from "../tables/statisticName.js";
import { say } from "../words/say.js";
import type { FewerBlocksDraw } from "./fewerBlocks.js";

const STATISTICS: readonly StrengthStatistic[] = ["mean", "prediction", "tolerance"];

/**
 * The least cement that all blocks give beside what every way of having only three of them would have
 * given: lowest and highest answer, and how often there is none.
 *
 * @param of.confidence default 0.95, as the draws were made with.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.5), block("B", 4, 1.7), block("C", 6, 2.4), block("D", 8, 2.9), block("E", 8, 3.1)];
 * const of = { strengthMpa: 2, ageDays: 28 };
 * const table = fewerBlocksTable(fitStrength(blocks, { form: "linear", ageDays: 28 }), fewerBlocks(blocks, of), of);
 * table.rows[0] // => ["the line itself, without any margin", "5.09", "4.9 to 5.2", "0 of 4"]
 */
export function fewerBlocksTable(
  all: FittedStrength,
  draws: readonly FewerBlocksDraw[],
  of: { readonly strengthMpa: number; readonly confidence?: number },
): TableBlock {
  const { strengthMpa, confidence = 0.95 } = of;
  const answers = (values: readonly (number | null)[]) => {
    const found = values.filter((value) => value !== null);
    return [
      found.length === 0
        ? BLANK
        : say`${fixed(Math.min(...found), 1)} to ${fixed(Math.max(...found), 1)}`,
      say`${values.length - found.length} of ${values.length}`,
    ];
  };
  const line = leastCement(all, { strengthMpa, statistic: "mean", confidence }).lineContentPct;
  return {
    kind: "table",
    caption: say`Least cement with ${all.blocks} blocks and with three`,
    columns: [
      { header: say`Held against the requirement` },
      { header: say`${all.blocks} blocks`, unit: "%", align: "right" },
      { header: say`Three blocks, lowest to highest`, unit: "%", align: "right" },
      { header: say`Three blocks, no answer`, align: "right" },
    ],
    rows: [
      [
        say`the line itself, without any margin`,
        fixed(line ?? undefined, 2),
        ...answers(draws.map(({ lineContentPct }) => lineContentPct)),
      ],
      ...STATISTICS.map((statistic) => [
        statisticName(statistic, confidence),
        fixed(leastCement(all, { strengthMpa, statistic, confidence }).cementPct ?? undefined, 2),
        ...answers(draws.map(({ leastPct }) => leastPct[statistic])),
      ]),
    ],
    notes: [
      say`Three blocks leave one degree of freedom: the scatter is then a matter of luck, from ${fixed(Math.min(...draws.map(({ residualSdMpa }) => residualSdMpa)), 3)} to ${fixed(Math.max(...draws.map(({ residualSdMpa }) => residualSdMpa)), 3)} MPa here, where all blocks give ${fixed(all.residualSd, 3)} MPa.`,
      say`An answer at the lowest tested content may be lower still: nothing is extrapolated.`,
    ],
  };
}
