import type { TableColumn } from "../blocks/block.js";
import {
  type DisplayKind,
  displayUnit,
  displayValue,
  formatFixed,
  formatNumber,
  formatPlain,
  formatQuantity,
  type UnitSystem,
} from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import { convertFromBase } from "../quantities/units.js";
import { say, type Text } from "../words/message.js";

/** What stands in a cell that has no value. */
export const BLANK = "–";

/** How a value or a rule is known. */
export const MARKS = {
  read: say`read`,
  memory: say`from memory`,
  entered: say`as entered, not checked`,
  "own calculation": say`own calculation`,
  "common practice": say`common practice`,
} as const;

/** A number column with a unit that does not depend on the study's unit system. */
export function numberColumn(header: Text, unit?: Text): TableColumn {
  return { header, unit, align: "right" };
}

/** A number column in the study's units. */
export function quantityColumn(header: Text, kind: DisplayKind, units: UnitSystem): TableColumn {
  return { header, unit: displayUnit(kind, units), align: "right" };
}

/** A number with fixed decimals, or a dash. */
export function fixed(value: number | null | undefined, decimals: number): Text {
  return value === undefined || value === null ? BLANK : formatFixed(value, decimals);
}

/** A number with significant digits, or a dash. */
export function digits(value: number | null | undefined, count = 3): Text {
  return value === undefined || value === null ? BLANK : formatNumber(value, count);
}

/** A value in base units as a bare number in the study's units, or a dash. */
export function quantity(
  value: number | null | undefined,
  kind: DisplayKind,
  units: UnitSystem,
  count = 3,
): Text {
  return value === undefined || value === null
    ? BLANK
    : formatNumber(displayValue(value, kind, units), count);
}

/** A number as somebody entered it: up to so many significant digits, without zeros that say nothing. */
export function plain(value: number | null | undefined, count = 4): Text {
  return value === undefined || value === null ? BLANK : formatPlain(value, count);
}

/** Yes or no, or a dash. */
export function yesOrNo(value: boolean | undefined): Text {
  if (value === undefined) return BLANK;
  return value ? say`yes` : say`no`;
}

/** Two ends written in one way, once where they read the same, or a dash. */
export function ends(interval: Interval | null | undefined, write: (end: number) => Text): Text {
  if (!interval) return BLANK;
  const [low, high] = [write(interval.low), write(interval.high)];
  return JSON.stringify(low) === JSON.stringify(high) ? low : say`${low} to ${high}`;
}

/** A p-value: small ones are not told apart. */
export function pValueText(value: number | null): Text {
  if (value === null) return BLANK;
  return value < 0.001 ? say`< ${0.001}` : formatNumber(value, 2);
}

/** A mass with its unit in the study's units. */
export function massText(kilograms: number, units: UnitSystem, count = 3): Text {
  return formatQuantity(1000 * kilograms, "mass", units, count);
}

/** The depth of a lift or the side of a pier with its unit. */
export function depthText(metres: number, units: UnitSystem, count = 3): Text {
  return formatQuantity(1000 * metres, "depth", units, count);
}

/** A rammed or loose volume with its unit. */
export function volumeText(cubicMetres: number, units: UnitSystem, count = 3): Text {
  return formatQuantity(1e6 * cubicMetres, "volume", units, count);
}

/** Litres or cubic feet: what a crew measures loose material with. */
export const LOOSE_UNIT: Readonly<Record<UnitSystem, string>> = { SI: "L", US: "ft³" };

/** A loose volume as a bare number in `LOOSE_UNIT`, or a dash. */
export function looseVolume(litres: number | null, units: UnitSystem): Text {
  if (litres === null) return BLANK;
  return formatNumber(units === "SI" ? litres : convertFromBase(1000 * litres, "ft3", "volume"), 3);
}

/**
 * A price as the user wrote it, in words of ours: `2 to 4 per t`.
 *
 * @example
 * render(priceText("2 to 4 per t"), "es") // => "2 a 4 por t"
 */
export function priceText(written: string): Text {
  const [amount = "", per] = written.split(/\s+per\s+/);
  const [low = "", high] = amount.split(/\s+to\s+/).map((end) => end.trim());
  const range = high === undefined ? low : say`${low} to ${high}`;
  return per === undefined ? range : say`${range} per ${per.trim()}`;
}
