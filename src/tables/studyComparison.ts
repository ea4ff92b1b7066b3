import type { NoteBlock, TableBlock } from "../blocks/block.js";
import {
  displayUnit,
  displayValue,
  formatFixed,
  formatNumber,
  formatPlain,
  type UnitSystem,
} from "../quantities/format.js";
import type { AttributedStep, StudyPart } from "../study/attribution.js";
import { compareStudies, type EntryChange, type ResultPair } from "../study/compareStudies.js";
import type { StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { BLANK, numberColumn } from "./cell.js";
import { type ColumnCells, note, tableOf } from "./tableOf.js";

const CHANGE = {
  added: say`added`,
  removed: say`removed`,
  changed: say`other content`,
};

/**
 * Two versions of a study side by side: the results with their differences, then the entries and sheets
 * that changed. In the units of the second version.
 *
 * @param names what the versions are called; default the dates of the studies.
 */
export function studyComparisonTable(
  a: StudyResult,
  b: StudyResult,
  names: readonly [string, string] = [a.config.date ?? "", b.config.date ?? ""],
): readonly TableBlock[] {
  const { entries, sheets, results, states, madeWith } = compareStudies(a, b);
  const { units } = b.config;
  const currencies = [a.config.currency ?? "", b.config.currency ?? ""];
  const [first, second] = names[0] === names[1] ? [say`before`, say`after`] : names;
  return [
    tableOf(
      say`Results of two versions of the study`,
      results.filter(({ before, after }) => before !== null || after !== null),
      [
        [say`Result`, (pair) => labelWithUnit(pair, units, currencies)],
        [numberColumn(first), (pair) => shown(pair, pair.before, units)],
        [numberColumn(second), (pair) => shown(pair, pair.after, units)],
        [
          numberColumn(say`Difference`),
          (pair) => (pair.changed ? shown(pair, pair.difference, units, "difference") : say`same`),
        ],
      ],
      [
        ...states,
        currencies[0] !== currencies[1] &&
          say`Money is in two currencies (${currencies[0]}, ${currencies[1]}) and has no difference.`,
        madeWith &&
          say`Computed with ${madeWith[0]} and ${madeWith[1]}: a difference may come from the program.`,
      ],
    ),
    {
      kind: "table",
      caption: say`Entries and sheets that changed`,
      columns: [{ header: say`Entry or sheet` }, { header: first }, { header: second }],
      rows: [
        ...entries.map(({ key, before, after }) => [keyWords(key), entry(before), entry(after)]),
        ...sheets.map(({ file, change }) => [file, BLANK, CHANGE[change]]),
      ],
      notes: [
        entries.length + sheets.length === 0
          ? say`No entry and no sheet changed.`
          : say`Entries by the path of their value, in base units; sheets by their checksum.`,
      ],
    },
  ];
}

const PARTS: Readonly<Record<StudyPart, Text>> = {
  materials: say`Soil and materials`,
  target: say`Target and limits`,
  tests: say`What was tested`,
  requirement: say`Requirement`,
  element: say`Element and site`,
  supply: say`Cement, prices, carbon`,
  rest: say`The rest`,
};

/**
 * Which part of the second version changed each result by how much: in the units of the second version.
 *
 * @param steps see `attributeChanges`.
 * @returns a note where no part changed a result.
 */
export function attributionTable(
  a: StudyResult,
  b: StudyResult,
  steps: readonly AttributedStep[],
): TableBlock | NoteBlock {
  const { units } = b.config;
  const currencies = [a.config.currency ?? "", b.config.currency ?? ""];
  const telling = steps.filter(({ changes }) => Object.keys(changes).length > 0);
  const results = compareStudies(a, b).results.filter(
    ({ key, kind }) =>
      (kind !== "money" || currencies[0] === currencies[1]) &&
      telling.some(({ changes }) => key in changes),
  );
  if (results.length === 0) {
    return note(say`No part of the study changed a result.`);
  }
  const change = (pair: ResultPair, { changes }: AttributedStep): Text => {
    const value = changes[pair.key];
    if (value === undefined) return BLANK;
    return value === null ? say`not comparable` : shown(pair, value, units, "difference");
  };
  const silent = steps.filter((step) => !telling.includes(step)).flatMap(({ parts }) => parts);
  return tableOf(
    say`What the differences are due to`,
    results,
    [
      [say`Result`, (pair) => labelWithUnit(pair, units, currencies)],
      ...telling.map(
        (step): ColumnCells<ResultPair> => [
          numberColumn(joinTexts(step.parts.map((part) => PARTS[part]))),
          (pair) => change(pair, step),
        ],
      ),
    ],
    [
      say`The parts of the second version are put into the first one after the other, from left to right, and the study is computed anew each time. In another order, parts that act on each other would share the difference differently.`,
      silent.length > 0 &&
        say`Changed without an effect on these results: ${joinTexts(silent.map((part) => PARTS[part]))}.`,
      telling.some(({ changes }) => Object.values(changes).includes(null)) &&
        say`Not comparable: known on one side of the step only.`,
    ],
  );
}

/** A path in words that a narrow column can break: `gravel.moisturePct` is `gravel / moisture pct`. */
function keyWords(key: string): string {
  return key
    .split(".")
    .map((part) => part.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase())
    .join(" / ");
}

function entry(value: EntryChange["before"]): Text {
  if (value === undefined) return BLANK;
  return typeof value === "number" ? formatPlain(value, 6) : String(value);
}

function labelWithUnit(pair: ResultPair, units: UnitSystem, currencies: readonly string[]): Text {
  const unit = unitOf(pair, units, currencies);
  return unit === "" ? pair.label : say`${pair.label}, ${unit}`;
}

function unitOf({ kind }: ResultPair, units: UnitSystem, [a, b]: readonly string[]): string {
  if (kind === "percent") return "%";
  if (kind === "money") return a === b ? a : "";
  return kind === "whole" ? "" : displayUnit(kind, units);
}

/** A difference is rounded as the values are, so that the row adds up to the last digit or so. */
function shown(
  { kind, before, after }: ResultPair,
  value: number | null,
  units: UnitSystem,
  as: "value" | "difference" = "value",
): Text {
  if (value === null) return BLANK;
  const sign = as === "difference" && value > 0 ? "+" : "";
  const signed = (text: Text) => (sign === "" ? text : say`+${text}`);
  if (kind === "percent") return signed(formatFixed(value, 2));
  if (kind === "money" || kind === "whole") return signed(formatFixed(value, 0));
  const scaled = displayValue(value, kind, units);
  if (as === "value") return formatNumber(scaled, 4);
  const max = Math.max(Math.abs(before ?? 0), Math.abs(after ?? 0));
  const magnitude = Math.floor(Math.log10(displayValue(max, kind, units)));
  return signed(formatFixed(scaled, Math.max(0, 3 - magnitude)));
}
