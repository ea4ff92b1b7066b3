import type { TableBlock } from "../blocks/block.js";
import { formatFixed } from "../quantities/format.js";
import { BLANK, numberColumn } from "../tables/cell.js";
import { tableOf } from "../tables/tableOf.js";
import type { FrameRow } from "../tables/toDataFrame.js";
import { say } from "../words/message.js";
import type { ClassDay } from "./openClass.js";

/** The results of all groups, one row a group: for a danfo.js frame, and for `classRowsTable`. */
export function classRows({ groups }: ClassDay): FrameRow[] {
  return groups.flatMap(({ name, soil }) => {
    if (!soil) return [];
    const { fractions, sizes, jar, sieve, washed } = soil;
    const [sand, silt, clay] = jar?.shares ?? [];
    return [
      {
        group: name,
        washed: washed ? "yes" : "no",
        jarSandPct: sand?.heightSharePct ?? null,
        jarSiltPct: silt?.heightSharePct ?? null,
        jarClayPct: clay?.heightSharePct ?? null,
        finesPct: sieve.points[0].passingPct,
        sandPct: fractions.sandPct ?? null,
        d60Mm: sizes.d60 ?? null,
      },
    ];
  });
}

/** The crushed blocks as rows: `block`, `batch`, `cementPct`, `ageDays`, `strength` in the class's unit. */
export function blockRows({ blocks }: ClassDay): FrameRow[] {
  return (blocks?.specimens ?? [])
    .filter(({ excluded }) => !excluded)
    .map(({ id, batch, cementPct, ageDays, strengthMpa, dryDensityKgM3 }) => ({
      block: id,
      batch: batch ?? "",
      cementPct,
      ageDays,
      strengthMpa,
      dryDensityKgM3: dryDensityKgM3 ?? null,
    }));
}

/**
 * The way back from a frame: those groups' results as a table of the report, with their names in the language of
 * the class.
 *
 * @param rows of `classRows`, all or some of them.
 */
export function classRowsTable(rows: readonly FrameRow[]): TableBlock {
  const number = (value: FrameRow[string], decimals: number) =>
    typeof value === "number" ? formatFixed(value, decimals) : BLANK;
  return tableOf(say`Results of the groups`, rows, [
    [say`Group`, (row) => String(row.group)],
    [numberColumn(say`Sand in the jar`, "%"), (row) => number(row.jarSandPct, 0)],
    [numberColumn(say`Clay in the jar`, "%"), (row) => number(row.jarClayPct, 0)],
    [numberColumn(say`Passing the finest sieve`, "%"), (row) => number(row.finesPct, 1)],
    [numberColumn("D60", "mm"), (row) => number(row.d60Mm, 2)],
  ]);
}
