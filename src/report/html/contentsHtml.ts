import { escapeHtml } from "../../notebook/escapeHtml.js";
import { say } from "../../words/say.js";
import type { DocumentNode, HeadingNode } from "../documentNode.js";
import { plainText } from "../plainText.js";

function entry(heading: Pick<HeadingNode, "id" | "number" | "inlines">): string {
  const number = heading.number ? `<span class="number">${heading.number}</span> ` : "";
  return `<a href="#${heading.id}">${number}${escapeHtml(plainText(heading.inlines))}</a>`;
}

/** List of contents with links: main sections and the sections one level below them. */
export function contentsHtml(nodes: readonly DocumentNode[], annexes: readonly string[]): string {
  const items: { head: string; under: string[] }[] = [];
  for (const node of nodes) {
    if (node.kind !== "heading") continue;
    if (node.level === 1) items.push({ head: entry(node), under: [] });
    else if (node.level === 2) items.at(-1)?.under.push(`<li>${entry(node)}</li>`);
  }
  for (const annex of annexes) items.push({ head: annex, under: [] });
  const list = items
    .map(({ head, under }) => {
      const below = under.length > 0 ? `<ol>${under.join("")}</ol>` : "";
      return `<li>${head}${below}</li>`;
    })
    .join("\n");
  return `<nav class="contents" aria-labelledby="contents"><h2 id="contents">${escapeHtml(say`Contents`)}</h2>\n<ol>\n${list}\n</ol></nav>`;
}
