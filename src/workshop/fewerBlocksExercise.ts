import { formatFixed } from "../quantities/formatNumber.js";
import type { LeastCement, StrengthRequirement } from "../strength/leastCement.js";
import { say } from "../words/say.js";
import type { Exercise } from "./exercise.js";
import type { FewerBlocksDraw } from "./fewerBlocks.js";

/** Asks what becomes of the least cement by the requirement's own bound when only three blocks are at hand. */
export function fewerBlocksExercise(
  least: Pick<LeastCement, "cementPct">,
  draws: readonly FewerBlocksDraw[],
  { statistic }: Pick<StrengthRequirement, "statistic">,
): Exercise {
  const [same, more, less] = ["about the same", "mostly more, or no answer", "mostly less"];
  const values = draws.map(({ leastPct }) => leastPct[statistic]);
  const all = least.cementPct ?? Infinity;
  const above = values.filter((value) => value === null || value > all + 0.25).length;
  const below = values.filter((value) => value !== null && value < all - 0.25).length;
  const value = above > values.length / 2 ? more : below > values.length / 2 ? less : same;
  const found = values.filter((number) => number !== null);
  const none = values.length - found.length;
  const one = (number: number) => formatFixed(number, 1);
  const span =
    found.length === 0
      ? say`None of the ${values.length} ways of having three blocks gives an answer.`
      : say`Of ${values.length} ways of having three blocks, ${none} give no answer; the others ask for ${one(Math.min(...found))} to ${one(Math.max(...found))} %.`;
  return {
    kind: "choice",
    id: "three-blocks",
    question: say`With three blocks in place of all, what happens to the least cement? Answer "${same}", "${more}" or "${less}".`,
    options: [same, more, less],
    value,
    wrongTurns: [
      {
        value: same,
        text: say`The line may stay where it was. The margin below it does not: look at t for one degree of freedom.`,
      },
      {
        value: less,
        text: say`By luck three blocks may lie so well on a line that little margin seems needed. Look at how many of the ways do that.`,
      },
      {
        value: more,
        text: say`Look at the table: most ways do not ask for more here.`,
      },
    ].filter((turn) => turn.value !== value),
    hint: say`Three blocks and two coefficients leave one degree of freedom; t is then 6.3 at 95 %.`,
    worked: `${span} ${say`All blocks ask for ${least.cementPct === null ? "–" : one(least.cementPct)} %.`}`,
    why: span,
  };
}
