import { formatNumber, formatPlain } from "../quantities/formatNumber.js";

/** A number with its unit, three significant digits. */
export function withUnit(value: number, unit: string): string {
  return unit === "" ? formatPlain(value, 3) : `${formatNumber(value, 3)} ${unit}`;
}
