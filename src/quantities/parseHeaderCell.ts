export interface HeaderCell {
  /** Lower case, spaces folded. */
  readonly name: string;
  /** Text in the last pair of brackets, as written. */
  readonly unit?: string;
}

/**
 * Splits a header cell of a sheet into its name and its unit.
 *
 * @example
 * parseHeaderCell("Retained (g)") // => { name: "retained", unit: "g" }
 * parseHeaderCell(" remark ") // => { name: "remark" }
 */
export function parseHeaderCell(text: string): HeaderCell {
  const [, name, unit] = /^\s*(.*?)\s*(?:\(([^()]*)\))?\s*$/u.exec(text) ?? [];
  const folded = (name ?? text).toLowerCase().replace(/\s+/g, " ");
  return unit === undefined ? { name: folded } : { name: folded, unit: unit.trim() };
}
