import type { TableColumn } from "../blocks/block.js";
import {
  type DisplayKind,
  displayUnit,
  displayValue,
  formatFixed,
  formatNumber,
  formatPlain,
  type UnitSystem,
} from "../quantities/format.js";
import type { Text } from "../words/message.js";

/** What stands in a cell that has no value. */
export const BLANK = "–";

/** A number column with a unit that does not depend on the study's unit system. */
export function numberColumn(header: Text, unit?: Text): TableColumn {
  return { header, unit, align: "right" };
}

/** A number column in the study's units. */
export function quantityColumn(header: Text, kind: DisplayKind, units: UnitSystem): TableColumn {
  return { header, unit: displayUnit(kind, units), align: "right" };
}

/** A number with fixed decimals, or a dash. */
export function fixed(value: number | undefined, decimals: number): Text {
  return value === undefined ? BLANK : formatFixed(value, decimals);
}

/** A number with significant digits, or a dash. */
export function digits(value: number | undefined, count = 3): Text {
  return value === undefined ? BLANK : formatNumber(value, count);
}

/** A value in base units as a bare number in the study's units, or a dash. */
export function quantity(
  value: number | undefined,
  kind: DisplayKind,
  units: UnitSystem,
  count = 3,
): Text {
  return value === undefined ? BLANK : formatNumber(displayValue(value, kind, units), count);
}

/** A number as somebody entered it: up to so many significant digits, without zeros that say nothing. */
export function plain(value: number | undefined, count = 4): Text {
  return value === undefined ? BLANK : formatPlain(value, count);
}
