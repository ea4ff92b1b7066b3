import type { Text } from "../words/message.js";

/**
 * A figure as data: plotly traces and layout, with a title and a text alternative made from the same
 * numbers. Nothing is drawn until somebody shows it. Title and size stand in the layout too, for front
 * ends that draw the layout alone.
 */
export interface Figure {
  readonly kind: "figure";
  readonly title: Text;
  readonly altText: Text;
  readonly data: readonly object[];
  readonly layout: object;
  /** What other parts of a report cite the figure by. */
  readonly key?: string;
  /** Two figures of half width that follow each other stand side by side in a report. */
  readonly half?: boolean;
}

/** Sizes of the figures of a report, in CSS pixels: letters come out alike on paper. */
const REPORT_SIZES = {
  full: { width: 720, height: 370 },
  low: { width: 720, height: 320 },
  half: { width: 400, height: 300 },
  /** As it was made. */
  own: {},
} as const;

/** A title of usual length fits a figure of half width. */
const HALF_TITLE = { font: { size: 11 } } as const;

/**
 * A figure as a report places it: what it is cited by, and across the page, lower, beside another one, or in
 * its own size.
 *
 * @example
 * figureInReport({ kind: "figure", title: "Lots", altText: "Lots.", data: [], layout: { height: 450 } }, "lots", "low").layout // => { width: 720, height: 320 }
 */
export function figureInReport(
  figure: Figure,
  key: string,
  size: keyof typeof REPORT_SIZES,
): Figure {
  const { title } = figure.layout as { readonly title?: object };
  const half = size === "half";
  return {
    ...figure,
    key,
    ...(half ? { half } : {}),
    layout: {
      ...figure.layout,
      ...REPORT_SIZES[size],
      ...(half && title ? { title: { ...title, ...HALF_TITLE } } : {}),
    },
  };
}

/** What a front end without a size of its own draws, in CSS pixels. */
const SIZE = { width: 720, height: 450 } as const;

/** A figure of its parts, with the title and the size in its layout; a small one is less high. */
export function figureOf(
  title: Text,
  altText: Text,
  data: readonly object[],
  layout: object,
  height: number = SIZE.height,
): Figure {
  return {
    kind: "figure",
    title,
    altText,
    data,
    layout: {
      ...layout,
      ...SIZE,
      height,
      title: {
        text: title,
        x: 0.02,
        xanchor: "left",
        yref: "container",
        y: 0.98,
        yanchor: "top",
        automargin: true,
        font: { size: 15 },
      },
    },
  };
}

/**
 * The layout of a figure for where a caption stands beside it and the page gives the size.
 *
 * @example
 * withoutTitle({ title: { text: "Grading" }, width: 720, height: 450, showlegend: false }) // => { showlegend: false }
 */
export function withoutTitle(layout: object): object {
  const { title, width, height, ...rest } = layout as Record<string, unknown>;
  const { legend } = rest as { legend?: { readonly yref?: string } };
  // A legend below the title moves up to where the title was.
  return legend?.yref === "container" ? { ...rest, legend: { ...legend, y: 1 } } : rest;
}

/** Trace types that the small part of plotly draws. */
const BASIC_TRACES = new Set(["scatter", "bar", "pie"]);

/** Whether the small part of plotly can draw all traces of a figure. */
export function isBasic(data: readonly object[]): boolean {
  return data.every((trace) => BASIC_TRACES.has((trace as { type?: string }).type ?? "scatter"));
}
