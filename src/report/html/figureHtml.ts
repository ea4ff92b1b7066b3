import { isBasic } from "../../figures/isBasic.js";
import { escapeHtml } from "../../notebook/escapeHtml.js";
import { say } from "../../words/say.js";
import type { FigureNode } from "../documentNode.js";

/** Whether a figure can be made interactive in the page: only the small part of plotly is inlined. */
export function isInteractive(node: FigureNode): boolean {
  return node.plotly !== undefined && isBasic(node.plotly.data);
}

/** JSON that can stand inside a script element: no `<` can end it or open a comment. */
function scriptJson(value: unknown): string {
  return JSON.stringify(value)
    .replaceAll("<", "\\u003c")
    .replaceAll("\u2028", "\\u2028")
    .replaceAll("\u2029", "\\u2029");
}

/**
 * A figure as inline SVG with its caption. Where plotly can draw it, its JSON stands beside it
 * and a button (hidden until the page's script has run) offers to draw it.
 */
export function figureHtml(node: FigureNode): string {
  const id = `figure-${node.number}`;
  const label = escapeHtml(say`Figure ${node.number}`);
  const caption = `<figcaption><span class="label">${label}</span> ${escapeHtml(node.caption)}</figcaption>`;
  const still = `<div class="scroll drawing" role="region" tabindex="0" aria-label="${label}">${node.svg}</div>`;
  const interactive = isInteractive(node)
    ? `<div class="live" hidden></div>
<p class="act"><button type="button" hidden data-figure="${id}" data-still="${escapeHtml(say`Show the still figure ${node.number}`)}">${escapeHtml(say`Make figure ${node.number} interactive`)}</button></p>
<script type="application/json">${scriptJson(node.plotly)}</script>`
    : "";
  return `<figure id="${id}">\n${still}\n${interactive}${caption}\n</figure>`;
}
