import type { Figure } from "../figures/figure.js";
import { renderSvg } from "../figures/svg/renderSvg.js";
import { type Locale, renderAll } from "../words/render.js";
import { cleanSvg } from "./cleanSvg.js";
import type { FigureNode } from "./document.js";

/**
 * A figure as a document that no notebook made holds it: drawn, and still.
 *
 * @param idPrefix of the ids in its drawing, so that several stand in one page
 */
export async function drawnFigure(
  figure: Figure,
  idPrefix: string,
  locale: Locale,
): Promise<FigureNode> {
  const { title, altText: alt, ...said } = renderAll(figure, locale);
  const cleaned = cleanSvg(await renderSvg({ title, altText: alt, ...said }), idPrefix, alt);
  if (!cleaned) throw new Error("the drawing of a figure is no SVG");
  return { kind: "figure", svg: cleaned.svg, alt, caption: title };
}
