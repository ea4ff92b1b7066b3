/** Trace types that the small part of plotly draws. */
const BASIC_TRACES = new Set(["scatter", "bar", "pie"]);

/** Whether the small part of plotly can draw all traces of a figure. */
export function isBasic(data: readonly object[]): boolean {
  return data.every((trace) => BASIC_TRACES.has((trace as { type?: string }).type ?? "scatter"));
}
