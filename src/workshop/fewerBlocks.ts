import type { TableBlock } from "../blocks/block.js";
import type { SpecimenRecord } from "../lab/specimens.js";
import { displayUnit, displayValue, type UnitSystem } from "../quantities/format.js";
import { offsetOf, reachMargin } from "../strength/contentInterval.js";
import { leastCement, reachOf } from "../strength/leastCement.js";
import type { StrengthStatistic } from "../strength/regression/bounds.js";
import { type FittedStrength, strengthAt } from "../strength/regression/curve.js";
import { fitStrength } from "../strength/regression/fit.js";
import { BLANK, fixed, numberColumn } from "../tables/cell.js";
import { statisticName } from "../tables/strength.js";
import { say } from "../words/message.js";

/** What one way of having fewer blocks would have said. */
export interface FewerBlocksDraw {
  readonly ids: readonly string[];
  readonly residualSdMpa: number;
  /**
   * Where the line reaches the requirement. Not above the lowest tested content counts as that content: it
   * meets the requirement, and nothing is extrapolated. Null where no tested content meets it.
   */
  readonly lineContentPct: number | null;
  /** Least cement by each bound, in the same way. */
  readonly minPct: Readonly<Record<StrengthStatistic, number | null>>;
}

export interface FewerBlocksRequirement {
  readonly strengthMpa: number;
  readonly ageDays: number;
  /** Default 0.95. */
  readonly confidence?: number;
}

/**
 * Takes one block of each of three contents, in every possible way, and asks each triple for the least
 * cement: what a class with three blocks might have been told, by luck.
 *
 * The contents are the lowest, the highest and the one nearest the middle. Linear form; bounds one-sided
 * as in `leastCement`. Nothing is drawn by chance: all ways are tried.
 *
 * @throws RangeError where there are not three contents with a block of that age. Source: `leastCement`.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.5), block("B", 4, 1.7), block("C", 6, 2.4), block("D", 8, 2.9), block("E", 8, 3.1)];
 * const draws = fewerBlocks(blocks, { strengthMpa: 2, ageDays: 28 });
 * draws.map(({ ids }) => ids.join("")) // => ["ACD", "ACE", "BCD", "BCE"]
 * draws[0].minPct.mean // => 7.673
 */
export function fewerBlocks(
  specimens: readonly SpecimenRecord[],
  requirement: FewerBlocksRequirement,
): FewerBlocksDraw[] {
  const { strengthMpa, ageDays, confidence = 0.95 } = requirement;
  const blocks = specimens.filter((block) => block.ageDays === ageDays && !block.excluded);
  const contents = [...new Set(blocks.map(({ cementPct }) => cementPct))].sort((a, b) => a - b);
  if (contents.length < 3) {
    throw new RangeError(
      `invalid \`specimens\`: ${contents.length} cement contents at ${ageDays} days; expected 3 or more`,
    );
  }
  const [first, last] = [contents[0], contents[contents.length - 1]];
  const middle = contents
    .slice(1, -1)
    .reduce((best, content) =>
      Math.abs(content - (first + last) / 2) < Math.abs(best - (first + last) / 2) ? content : best,
    );
  const at = (content: number) => blocks.filter(({ cementPct }) => cementPct === content);
  const rule = { strengthMpa, confidence, coverage: 0.95, probability: 1 - confidence };
  // all triples have the same contents, hence one offset
  const offsets = new Map<StrengthStatistic, ReturnType<typeof offsetOf>>();
  const least = (fit: FittedStrength, statistic: StrengthStatistic) => {
    const offset = offsets.get(statistic) ?? offsetOf(fit, { ...rule, statistic });
    offsets.set(statistic, offset);
    return (
      reachOf(fit, reachMargin(fit, { ...rule, statistic }, offset)).reached?.cementPct ?? null
    );
  };
  return at(first).flatMap((low) =>
    at(middle).flatMap((centre) =>
      at(last).flatMap((high): FewerBlocksDraw[] => {
        const three = [low, centre, high];
        const fit = fitStrength(three, { model: "linear", ageDays });
        if (fit.status !== "ok") return [];
        return [
          {
            ids: three.map(({ id }) => id),
            residualSdMpa: fit.residualSd,
            lineContentPct: lineContent(fit, strengthMpa),
            minPct: {
              mean: least(fit, "mean"),
              prediction: least(fit, "prediction"),
              tolerance: least(fit, "tolerance"),
            },
          },
        ];
      }),
    ),
  );
}

/** Where a fitted line reaches a strength within its contents: null only where it is too weak in all of them. */
function lineContent(fit: FittedStrength, strengthMpa: number): number | null {
  const [first, last] = [fit.contentsPct[0], fit.contentsPct[fit.contentsPct.length - 1]];
  const [atFirst, atLast] = [first, last].map((content) => strengthAt(fit, content).value);
  if (atFirst >= strengthMpa) return first;
  if (atLast < strengthMpa) return null;
  return first + ((strengthMpa - atFirst) * (last - first)) / (atLast - atFirst);
}

const STATISTICS: readonly StrengthStatistic[] = ["mean", "prediction", "tolerance"];

/**
 * The least cement that all blocks give beside what every way of having only three of them would have
 * given: lowest and highest answer, and how often there is none.
 *
 * @param requirement as the draws were made with.
 *
 * @example
 * const block = (id, cementPct, strengthMpa) => ({ id, cementPct, strengthMpa, ageDays: 28, row: 2 });
 * const blocks = [block("A", 4, 1.5), block("B", 4, 1.7), block("C", 6, 2.4), block("D", 8, 2.9), block("E", 8, 3.1)];
 * const requirement = { strengthMpa: 2, ageDays: 28 };
 * const table = fewerBlocksTable(fitStrength(blocks, { model: "linear", ageDays: 28 }), fewerBlocks(blocks, requirement), requirement);
 * renderAll(table.rows[0]) // => ["the line itself, without any margin", "5.09", "4.9 to 5.2", "0 of 4"]
 */
export function fewerBlocksTable(
  all: FittedStrength,
  draws: readonly FewerBlocksDraw[],
  requirement: Omit<FewerBlocksRequirement, "ageDays">,
  units: UnitSystem = "SI",
): TableBlock {
  const { strengthMpa, confidence = 0.95 } = requirement;
  const answers = (values: readonly (number | null)[]) => {
    const found = values.filter((value) => value !== null);
    return [
      found.length === 0
        ? BLANK
        : say`${fixed(Math.min(...found), 1)} to ${fixed(Math.max(...found), 1)}`,
      say`${values.length - found.length} of ${values.length}`,
    ];
  };
  const scatter = draws.map(({ residualSdMpa }) => displayValue(residualSdMpa, "stress", units));
  const decimals = units === "US" ? 1 : 3;
  return {
    kind: "table",
    caption: say`Least cement with ${all.blocks} blocks and with three`,
    columns: [
      { header: say`Held against the requirement` },
      numberColumn(say`${all.blocks} blocks`, "%"),
      numberColumn(say`Three blocks, lowest to highest`, "%"),
      numberColumn(say`Three blocks, no answer`),
    ],
    rows: [
      [
        say`the line itself, without any margin`,
        fixed(lineContent(all, strengthMpa), 2),
        ...answers(draws.map(({ lineContentPct }) => lineContentPct)),
      ],
      ...STATISTICS.map((statistic) => [
        statisticName(statistic, confidence),
        fixed(leastCement(all, { strengthMpa, statistic, confidence }).cementPct ?? undefined, 2),
        ...answers(draws.map(({ minPct }) => minPct[statistic])),
      ]),
    ],
    notes: [
      say`Three blocks leave one degree of freedom: the scatter is then a matter of luck, from ${fixed(Math.min(...scatter), decimals)} to ${fixed(Math.max(...scatter), decimals)} ${displayUnit("stress", units)}.`,
      say`Where the lowest tested content already meets the requirement it is the answer, though less might do: nothing is extrapolated. “No answer” means that no tested content meets it.`,
    ],
  };
}
