import type { KeyValuesBlock, NoteBlock, TableBlock, TableColumn } from "../blocks/block.js";
import type { DisplayKind, UnitSystem } from "../quantities/format.js";
import type { Text } from "../words/message.js";
import { quantity, quantityColumn } from "./cell.js";

/** An entry of a list that may not be there: `isWeighed && …`. */
export type Optional<Entry> = Entry | false | null | undefined;

/** A column, or its header alone, with what stands in its cells. */
export type ColumnCells<Item> = readonly [
  column: TableColumn | Text,
  cell: (item: Item, index: number) => Text,
];

/** A column of quantities in the study's units. */
export function quantityCells<Item>(
  header: Text,
  kind: DisplayKind,
  units: UnitSystem,
  value: (item: Item) => number | null | undefined,
  digitCount?: number,
): ColumnCells<Item> {
  return [
    quantityColumn(header, kind, units),
    (item) => quantity(value(item), kind, units, digitCount),
  ];
}

/** The entries of a list that are there. */
export function present<Entry>(entries: readonly Optional<Entry>[]): Entry[] {
  return entries.filter(
    (entry): entry is Entry => entry !== false && entry !== null && entry !== undefined,
  );
}

/** A table with a row for each item. */
export function tableOf<Item>(
  caption: Text,
  items: readonly Item[],
  columns: readonly Optional<ColumnCells<Item>>[],
  notes?: readonly Optional<Text>[],
): TableBlock {
  const there = present(columns);
  return {
    kind: "table",
    caption,
    columns: there.map(([column]) =>
      typeof column === "object" && "header" in column ? column : { header: column },
    ),
    rows: items.map((item, index) => there.map(([, cell]) => cell(item, index))),
    notes: notes && present(notes),
  };
}

/** A line of a list: what is told, and where it leads. */
export type ListLine = readonly [label: Text, value: Text, to?: string];

/** A list of labels with their values. */
export function listOf(caption: Text, lines: readonly Optional<ListLine>[]): KeyValuesBlock {
  const items = present(lines).map(([label, value, to]) =>
    to === undefined ? { label, value } : { label, value, to },
  );
  return { kind: "keyValues", caption, items };
}

/** A line by itself, such as what stands in the place of a table. */
export function note(text: Text): NoteBlock {
  return { kind: "note", tone: "note", text };
}

/** A line that is not to be overlooked. */
export function warning(text: Text): NoteBlock {
  return { kind: "note", tone: "warning", text };
}
