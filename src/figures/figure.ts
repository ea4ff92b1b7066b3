import type { Text } from "../words/message.js";

/**
 * A figure as data: plotly traces and layout, with a title and a text alternative made from the same
 * numbers. Nothing is drawn until somebody shows it.
 */
export interface Figure {
  readonly kind: "figure";
  readonly title: Text;
  readonly altText: Text;
  readonly data: readonly object[];
  readonly layout: object;
}

/** Trace types that the small part of plotly draws. */
const BASIC_TRACES = new Set(["scatter", "bar", "pie"]);

/** Whether the small part of plotly can draw all traces of a figure. */
export function isBasic(data: readonly object[]): boolean {
  return data.every((trace) => BASIC_TRACES.has((trace as { type?: string }).type ?? "scatter"));
}
