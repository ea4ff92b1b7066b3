import { FIELD_TESTS, type FieldTest } from "../../batch/fieldTests.js";
import type { ReportBlock } from "../../blocks/block.js";
import { cautionsFor } from "../../guidance/cautions.js";
import { inUnits, type UnitSystem } from "../../quantities/format.js";
import { joinTexts, say } from "../../words/message.js";
import { MARKS } from "../cell.js";
import { tableOf, warning } from "../tableOf.js";
import { blankLines, pairsTable, type SiteSheet } from "./siteSheet.js";

/**
 * The forms for the field tests, one page each: what to do, what to write down, what may be concluded and how
 * that is known, and the laboratory test that settles it.
 *
 * @param tests default all of `FIELD_TESTS`. @param units of rule, tape and scale.
 *
 * @example
 * siteFieldTests([FIELD_TESTS[1]]).blocks.map(({ kind }) => kind) // => ["table", "table", "table", "note"]
 */
export function siteFieldTests(
  tests: readonly FieldTest[] = FIELD_TESTS,
  units: UnitSystem = "SI",
): SiteSheet {
  return {
    name: "field-tests",
    title: say`Field tests`,
    blocks: tests.flatMap((test, index): ReportBlock[] => [
      ...(index === 0 ? [] : [{ kind: "pageBreak" as const }]),
      ...formOf(inUnits(test, units), units),
    ]),
  };
}

/** What a crew measures with, where it has no metric rule or scale. */
const US_UNITS: Readonly<Record<string, string>> = { mm: "in", m: "ft", g: "oz" };

function formOf(test: FieldTest, units: UnitSystem): ReportBlock[] {
  // That nothing is an approval stands at the foot of each page; the sheet has room for titles only.
  const cautions = cautionsFor(...test.work)
    .filter(({ id }) => id !== "no-approval")
    .map(({ title }) => title);
  return [
    pairsTable(say`${test.name}. ${test.asks}`, [
      [say`With`, test.tools],
      ...test.steps.map((step, index) => [`${index + 1}`, step] as const),
    ]),
    blankLines(
      say`Sample, place, depth, date, by: ______________________________`,
      [say`To write down`, say`Reading`],
      test.readings.map(({ label, unit }) => {
        const shown = unit && units === "US" ? (US_UNITS[unit] ?? unit) : unit;
        return shown ? say`${label}, ${shown}` : label;
      }),
    ),
    tableOf(
      say`What may be concluded`,
      test.conclusions,
      [
        [say`Seen`, ({ seen }) => seen],
        [say`Means`, ({ means, basis }) => say`${means} (${MARKS[basis]})`],
      ],
      [say`Source: ${test.source}.`],
    ),
    warning(
      joinTexts(
        [
          say`It does not tell: ${test.doesNotTell}`,
          test.notToBeMistakenFor && say`Not to be mistaken for ${test.notToBeMistakenFor}.`,
          say`Settled by: ${test.settledBy}.`,
          cautions.length > 0 ? say`Caution: ${joinTexts(cautions)}.` : undefined,
        ],
        " ",
      ),
    ),
  ];
}
