import type { CautionsBlock, ReferencesBlock, TableBlock } from "../blocks/block.js";
import { CAUTIONS } from "../guidance/cautions.js";
import { verdictWords } from "../guidance/check.js";
import type { GuidanceComparison } from "../guidance/comparison.js";
import { surenessWords } from "../guidance/probability.js";
import type { GuidanceStudy, StudyResult } from "../study/studyResult.js";
import { say, type Text, wordFor } from "../words/message.js";
import { mixReferences } from "./carbon.js";
import { BLANK, fixed, numberColumn } from "./cell.js";

/** A table for each entry that the study is held against. */
export function guidanceTables(guidance: readonly GuidanceStudy[]): TableBlock[] {
  const entries = [...new Set(guidance.map(({ check }) => check.entry.id))];
  return entries.map((id) => guidanceTable(guidance.filter(({ check }) => check.entry.id === id)));
}

/** The soils and the blend against one recommendation, criterion by criterion, and how sure each verdict is. */
function guidanceTable(guidance: readonly GuidanceStudy[]): TableBlock {
  const [{ check }] = guidance;
  const { entry } = check;
  return {
    kind: "table",
    caption: say`Against guidance: ${entry.title}`,
    columns: [
      { header: say`Curve` },
      { header: say`Criterion` },
      numberColumn(say`Recommended`, "%"),
      numberColumn(say`Measured`, "%"),
      { header: say`Verdict` },
      { header: say`How sure, given the readings` },
    ],
    rows: guidance.flatMap(({ name, check: { criteria }, sureness }) =>
      criteria.flatMap(({ kind, what, lowPct, highPct, measuredPct, verdict, byPct }, index) =>
        // The points of passing are the fractions added up: shown in the figure, not twice here.
        entry.derived && kind === "passing"
          ? []
          : [
              [
                name,
                what,
                range(lowPct, highPct),
                fixed(measuredPct, 1),
                verdict === "outside" && byPct !== undefined
                  ? say`outside by ${fixed(byPct, 1)}`
                  : verdictWords(verdict),
                verdict === "not measured" ? BLANK : surenessWords(sureness.criteria[index].sure),
              ],
            ],
      ),
    ),
    notes: [
      say`${entry.source.authors}${entry.source.year ? ` (${entry.source.year})` : ""}, ${wordFor(entry.source.title)}, ${entry.source.locator}.`,
      check.honesty,
      ...guidance.map(
        ({ name, check: { verdict }, sureness }) =>
          say`${name}, all criteria together: ${verdictWords(verdict)}. ${sureness.text}`,
      ),
      say`How sure: the share of ${guidance[0].sureness.draws} curves, drawn again within the stated reading errors, that get the same verdict; consistency limits are drawn within their own 95 % intervals where they have any. A blend is drawn from all of its materials at the shares as designed. Not in it: how well the samples stand for the deposit, errors of batching, and fines below the finest sieve of a material without a sedimentation test.`,
      check.caution,
    ],
  };
}

function range(low: number | undefined, high: number | undefined): Text {
  if (low === undefined) return high === undefined ? BLANK : say`at most ${fixed(high, 1)}`;
  return high === undefined
    ? say`at least ${fixed(low, 1)}`
    : say`${fixed(low, 1)} to ${fixed(high, 1)}`;
}

/** The usual cautions, each with where it comes from. */
export function cautionsBlock(): CautionsBlock {
  return {
    kind: "cautions",
    items: CAUTIONS.map(({ title, text, source }) => ({
      title: title,
      text: text,
      source: source,
    })),
  };
}

/** What the numbers of an appendix rest on, and whether it was read. */
export function referencesBlock(result: StudyResult): ReferencesBlock {
  const entries = [
    ...new Map(result.guidance.map(({ check }) => [check.entry.id, check.entry])).values(),
  ];
  const mark = (how: "read" | "memory") =>
    how === "read" ? say`read` : say`from memory; not read`;
  return {
    kind: "references",
    items: [
      ...entries.map(({ source, basis, own }) => ({
        text: say`${source.authors}${source.year ? ` (${source.year})` : ""}, ${source.title}, ${source.locator}: limits of grading and consistency`,
        mark: own ? say`the study's own; its origin was not checked` : mark(basis),
      })),
      {
        text: say`Ciancio, Jaquin and Walker (2013), Construction and Building Materials 42, 40–47: grading alone does not establish suitability`,
        mark: say`abstract read`,
      },
      {
        text: say`Encyclopedia of Environmental Science and Engineering, p. 1332, after the International Critical Tables: viscosity and density of water`,
        mark: say`read`,
      },
      {
        text: say`University of Waterloo, CIVE 153 hand-out (2013): composite sieving, loss of at most 2 %`,
        mark: say`read`,
      },
      {
        text: say`Murthy, equations 3.28 and 3.29: effective depth of the 152H hydrometer`,
        mark: say`read`,
      },
      {
        text: say`ASTM D2487: groups of soils; U-line of the plasticity chart`,
        mark: say`from memory; agrees with the worked examples read`,
      },
      {
        text: say`AASHTO M 145: groups of soils, as reproduced on a reference page`,
        mark: say`read in that copy; rounding from memory`,
      },
      {
        text: say`USDA texture triangle, ISO 14688 boundaries and letters, BS 5930 letters`,
        mark: say`from memory, but five of the USDA classes`,
      },
      {
        text: say`EN 1990:2002, Annex D: characteristic value with variation unknown`,
        mark: say`its table read as coded in open software; recomputed`,
      },
      {
        text: say`Iowa DOT, I.M. 531: passing of a blend by dry mass`,
        mark: say`read`,
      },
      {
        text: say`Draper and Smith, Applied Regression Analysis: least squares, lack of fit`,
        mark: say`from memory; checked against published data in the tests`,
      },
      {
        text: say`Lieberman and Miller (1963), Biometrika 50: tolerance bounds in regression`,
        mark: say`from memory; coverage checked by simulation`,
      },
      ...(result.mix ? mixReferences(result.mix) : []),
    ],
  };
}

/** Where published recommendations disagree, side by side, none of them chosen. */
export function guidanceComparisonTable(
  name: string,
  { disagreements, checks }: GuidanceComparison,
): TableBlock {
  const range = (low: number | undefined, high: number | undefined) => {
    if (low === undefined) return high === undefined ? BLANK : say`up to ${high}`;
    return high === undefined ? say`from ${low}` : say`${low} to ${high}`;
  };
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
        index === 0 ? say`${what}${irreconcilable ? say`: no soil meets all` : ""}` : "",
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
          say`${id}: ${source.authors}${source.year ? ` (${source.year})` : ""}, ${source.title}. ${honesty}`,
      ),
      ...(checks[0] ? [checks[0].caution] : []),
    ],
  };
}
