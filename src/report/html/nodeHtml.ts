import { escapeHtml, textDir } from "../../blocks/html.js";
import { isBlock } from "../../blocks/kinds.js";
import { blockHtml, cellHtml, scrollBox } from "../../blocks/partHtml.js";
import { isBasic } from "../../figures/figure.js";
import { say, type Text } from "../../words/message.js";
import { type Locale, render } from "../../words/render.js";
import { type DocumentNode, type FigureNode, plainText } from "../document.js";
import { inlineHtml, mathHtml } from "./inlineHtml.js";

/** A message of ours as HTML. */
export function wordsHtml(text: Text, locale: Locale): string {
  return escapeHtml(render(text, locale));
}

/** One document node as HTML; every text in it is escaped here or in the function it calls. */
export function nodeHtml(node: DocumentNode, locale: Locale): string {
  if (isBlock(node)) return blockHtml(node, "page", locale);
  const below = (nodes: readonly DocumentNode[]) =>
    nodes.map((child) => nodeHtml(child, locale)).join("\n");
  switch (node.kind) {
    case "heading": {
      const tag = `h${Math.min(6, node.level + 1)}`;
      const number = node.number ? `<span class="number">${node.number}</span> ` : "";
      return `<${tag} id="${node.id}"${textDir(plainText(node.inlines))}>${number}${inlineHtml(node.inlines)}</${tag}>`;
    }
    case "prose":
      return `<p${textDir(plainText(node.inlines))}>${inlineHtml(node.inlines)}</p>`;
    case "list": {
      const tag = node.ordered ? "ol" : "ul";
      const start = node.ordered && node.start !== 1 ? ` start="${node.start}"` : "";
      const items = node.items.map((item) => `<li>${below(item)}</li>`);
      return `<${tag}${start}>\n${items.join("\n")}\n</${tag}>`;
    }
    case "quote":
      return `<blockquote>${below(node.children)}</blockquote>`;
    case "rule":
      return "<hr>";
    case "writingLines":
      return `<div class="writing-lines" style="--lines:${node.lines}"></div>`;
    case "mathBlock":
      return `<div class="scroll formula" role="region" tabindex="0" aria-label="${wordsHtml(say`Formula`, locale)}">${mathHtml(node.tex, true)}</div>`;
    case "proseTable":
      return proseTableHtml(node, locale);
    case "figure":
      return figureHtml(node, locale);
    case "code":
      return `<details class="code"><summary>${wordsHtml(say`Code of cell ${node.cell}`, locale)}</summary>\n<pre tabindex="0"><code>${escapeHtml(node.text)}</code></pre></details>`;
    case "stream": {
      if (!node.warning) return `<pre class="stream" tabindex="0">${escapeHtml(node.text)}</pre>`;
      const lead = wordsHtml(say`Cell ${node.cell} wrote to its error stream:`, locale);
      return `<div class="note warning"><p><strong class="tag">${wordsHtml(say`Warning`, locale)}</strong> ${lead}</p><pre tabindex="0">${escapeHtml(node.text)}</pre></div>`;
    }
  }
}

/** A table written in markdown: no caption, so no number. */
function proseTableHtml(
  node: Extract<DocumentNode, { kind: "proseTable" }>,
  locale: Locale,
): string {
  const head = node.header
    .map((inlines, index) => cellHtml('th scope="col"', node.align[index], inlineHtml(inlines)))
    .join("");
  const rows = node.rows
    .map((row) => {
      const cells = row.map((inlines, index) =>
        cellHtml("td", node.align[index], inlineHtml(inlines)),
      );
      return `<tr>${cells.join("")}</tr>`;
    })
    .join("\n");
  return scrollBox(
    render(say`Table in the text`, locale),
    `<table><thead><tr>${head}</tr></thead>\n<tbody>\n${rows}\n</tbody></table>`,
    node.rows.length,
  );
}

/** Whether a figure can be made interactive in the page: only the small part of plotly is inlined, and a photograph stands still. */
export function isInteractive({ plotly }: FigureNode): boolean {
  return plotly !== undefined && isBasic(plotly.data) && !("images" in plotly.layout);
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
function figureHtml(node: FigureNode, locale: Locale): string {
  const id = `figure-${node.number}`;
  const label = wordsHtml(say`Figure ${node.number ?? ""}`, locale);
  const caption = `<figcaption><span class="label">${label}</span> ${escapeHtml(node.caption)}</figcaption>`;
  const still = `<div class="scroll drawing" role="region" tabindex="0" aria-label="${label}">${node.svg}</div>`;
  return `<figure id="${id}"${node.half ? ' class="half"' : ""}>\n${still}\n${interactiveHtml(node, id, locale)}${caption}\n</figure>`;
}

function interactiveHtml(node: FigureNode, id: string, locale: Locale): string {
  if (!isInteractive(node)) return "";
  const number = node.number ?? "";
  return `<div class="live" hidden></div>
<p class="act"><button type="button" hidden data-figure="${id}" data-still="${wordsHtml(say`Show the still figure ${number}`, locale)}">${wordsHtml(say`Make figure ${number} interactive`, locale)}</button></p>
<script type="application/json">${scriptJson(node.plotly)}</script>`;
}
