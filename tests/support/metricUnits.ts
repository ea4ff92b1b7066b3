/**
 * Units that nobody reads in the United States. Grain sizes stand in mm beside the sieve there too, and
 * laboratories weigh soil in grams.
 */
export const SI =
  /\d ?(MPa|kPa|kN|kgf?|km|m|cm|m²|m³|cm³|L|l|°C|t|kg\/m³|g\/cm³)(?![\p{L}\d³²/·])/u;

/** Sources say what was published, a caution may say both, and carbon by mass is the same in any unit of mass. */
const BOTH = /\((?:read|from memory)|from memory\)|as read|\d kg \(\d+ lb\)|kg CO2e\/kg/;

/** Texts of a page, without those of worked calculations: they are made in SI and end in both. */
export function textsOf(node: unknown): string[] {
  if (typeof node === "string") return [node];
  if (typeof node !== "object" || node === null) return [];
  if (/^Worked calculation/.test(String((node as { caption?: unknown }).caption))) return [];
  // The unit of a column stands beside its header, with no number before it.
  const { unit, ...others } = node as { readonly unit?: unknown };
  const ofColumn = typeof unit === "string" && unit !== "" ? [`1 ${unit}`] : [];
  return [...ofColumn, ...Object.values(others).flatMap(textsOf)];
}

/** Texts with a metric unit. */
export const metric = (texts: readonly string[], pattern = SI) => [
  ...new Set(texts.filter((text) => pattern.test(text) && !BOTH.test(text))),
];
