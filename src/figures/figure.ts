/**
 * A figure as data: plotly traces and layout, with a title and a text alternative made from the same
 * numbers. Nothing is drawn until somebody shows it.
 */
export interface Figure {
  readonly kind: "figure";
  readonly title: string;
  readonly altText: string;
  readonly data: readonly object[];
  readonly layout: object;
}
