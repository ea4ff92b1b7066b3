import type { Figure } from "../figures/figure.js";
import { escapeHtml } from "./escapeHtml.js";
import { HTML_MIME, type MimeBundle, PLOTLY_MIME, SVG_MIME, TEXT_MIME } from "./mimeBundle.js";

/** A figure, perhaps drawn already. */
export type ShownFigure = Figure & { readonly svg?: string };

/** Takes a value as a figure by its shape; `undefined` where it is none. */
export function asFigure(value: unknown): ShownFigure | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  if (!("kind" in value) || value.kind !== "figure") return undefined;
  const { title, altText, data, layout } = value as Partial<ShownFigure>;
  const wrong = (name: string, found: unknown, expected: string): never => {
    throw new TypeError(
      `invalid \`figure.${name}\`: ${JSON.stringify(found)}; expected ${expected}`,
    );
  };
  if (typeof title !== "string") wrong("title", title, "a text");
  if (typeof altText !== "string" || altText === "") wrong("altText", altText, "a text");
  if (!Array.isArray(data)) wrong("data", data, "a list of plotly traces");
  if (typeof layout !== "object" || layout === null) wrong("layout", layout, "a plotly layout");
  return value as ShownFigure;
}

/** What stands before an SVG document has no place inside HTML. */
function inlineSvg(svg: string): string {
  return svg.replace(/^\s*(?:<\?xml[^>]*\?>|<!DOCTYPE[^>]*>|\s)*/i, "").trim();
}

/**
 * Makes the bundle of a figure: plotly's JSON for front ends that draw it, HTML with the drawing in it
 * that works without script, the SVG alone, and the title with the text alternative.
 */
export async function figureBundle(figure: ShownFigure): Promise<MimeBundle> {
  const { title, altText, data, layout } = figure;
  // drawing takes jsdom and plotly: loaded only when there is something to draw
  const svg = figure.svg ?? (await (await import("../figures/renderSvg.js")).renderSvg(figure));
  const html =
    `<figure style="margin:0">\n<div role="img" aria-label="${escapeHtml(altText)}">${inlineSvg(svg)}</div>\n` +
    `<figcaption>${escapeHtml(title)}</figcaption>\n</figure>`;
  const words = { alt: altText, caption: title };
  return {
    data: {
      [PLOTLY_MIME]: { data, layout, config: { displaylogo: false, responsive: true } },
      [HTML_MIME]: html,
      [SVG_MIME]: svg,
      [TEXT_MIME]: `${title}\n${altText}`,
    },
    metadata: {
      [PLOTLY_MIME]: words,
      [HTML_MIME]: words,
      [SVG_MIME]: words,
      [TEXT_MIME]: words,
    },
  };
}
