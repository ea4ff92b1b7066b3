import type { GuidanceComparison } from "../guidance/compareGuidance.js";
import { surenessWords } from "../guidance/surenessWords.js";
import { verdictWords } from "../guidance/verdictWords.js";
import { say } from "../words/say.js";
import { BLANK, fixed, numberColumn } from "./cell.js";
import type { TableBlock } from "./reportBlock.js";

/** Where published recommendations disagree, side by side, none of them chosen. */
export function guidanceComparisonTable(
  name: string,
  { disagreements, checks }: GuidanceComparison,
): TableBlock {
  const range = (low: number | undefined, high: number | undefined) =>
    low === undefined
      ? say`up to ${high}`
      : high === undefined
        ? say`from ${low}`
        : say`${low} to ${high}`;
  return {
    kind: "table",
    caption: say`Where the guidance disagrees: ${name}`,
    columns: [
      { header: say`What` },
      numberColumn(say`Measured`, "%"),
      { header: say`Source` },
      { header: say`Asks for, %` },
      { header: say`Verdict` },
      { header: say`How sure, given the readings` },
    ],
    rows: disagreements.flatMap(({ what, measuredPct, sides, irreconcilable }) =>
      sides.map(({ id, lowPct, highPct, verdict, sure }, index) => [
        index === 0 ? `${what}${irreconcilable ? say`: no soil meets all` : ""}` : "",
        index === 0 ? fixed(measuredPct, 1) : "",
        id,
        range(lowPct, highPct),
        verdictWords(verdict),
        sure === undefined ? BLANK : surenessWords(sure),
      ]),
    ),
    notes: [
      ...checks.map(
        ({ entry: { id, source }, honesty }) =>
          `${id}: ${source.authors}${source.year ? ` (${source.year})` : ""}, ${source.title}. ${honesty}`,
      ),
      ...(checks[0] ? [checks[0].caution] : []),
    ],
  };
}
