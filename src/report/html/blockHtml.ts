import type { Finding } from "../../lab/finding.js";
import { escapeHtml } from "../../notebook/escapeHtml.js";
import type { DocumentNode } from "../documentNode.js";
import { findingDetail } from "../findingPlace.js";
import { figureHtml } from "./figureHtml.js";
import { inlineHtml } from "./inlineHtml.js";
import { mathHtml } from "./mathHtml.js";
import { proseTableHtml, tableHtml } from "./tableHtml.js";

const SEVERITY = { error: "Error", warning: "Warning", note: "Note" } as const;

function findingHtml(finding: Finding): string {
  return `<li class="finding ${finding.severity}"><p><strong class="tag">${SEVERITY[finding.severity]}</strong> ${escapeHtml(finding.message)}</p>
<p class="detail">${escapeHtml(findingDetail(finding))}</p></li>`;
}

function codeHtml(summary: string, text: string): string {
  return `<details class="code"><summary>${escapeHtml(summary)}</summary>\n<pre tabindex="0"><code>${escapeHtml(text)}</code></pre></details>`;
}

/** One document node as HTML; every text in it is escaped here or in the function it calls. */
export function blockHtml(node: DocumentNode): string {
  switch (node.kind) {
    case "heading": {
      const tag = `h${Math.min(6, node.level + 1)}`;
      const number = node.number ? `<span class="number">${node.number}</span> ` : "";
      return `<${tag} id="${node.id}">${number}${inlineHtml(node.inlines)}</${tag}>`;
    }
    case "prose":
      return `<p>${inlineHtml(node.inlines)}</p>`;
    case "paragraph":
      return `<p>${escapeHtml(node.text)}</p>`;
    case "list": {
      const tag = node.ordered ? "ol" : "ul";
      const start = node.ordered && node.start !== 1 ? ` start="${node.start}"` : "";
      const items = node.items.map((item) => `<li>${item.map(blockHtml).join("\n")}</li>`);
      return `<${tag}${start}>\n${items.join("\n")}\n</${tag}>`;
    }
    case "quote":
      return `<blockquote>${node.children.map(blockHtml).join("\n")}</blockquote>`;
    case "rule":
      return "<hr>";
    case "pageBreak":
      return '<div class="page-break"></div>';
    case "mathBlock":
      return `<div class="scroll formula" role="region" tabindex="0" aria-label="Formula">${mathHtml(node.tex, true)}</div>`;
    case "proseTable":
      return proseTableHtml(node);
    case "table":
    case "keyValues":
      return tableHtml(node);
    case "figure":
      return figureHtml(node);
    case "code":
      return codeHtml(`Code of cell ${node.cell}`, node.text);
    case "stream":
      return node.warning
        ? `<div class="note warning"><p><strong class="tag">Warning</strong> Cell ${node.cell} wrote to its error stream:</p><pre tabindex="0">${escapeHtml(node.text)}</pre></div>`
        : `<pre class="stream" tabindex="0">${escapeHtml(node.text)}</pre>`;
    case "note":
      return `<div class="note ${node.tone}"><p><strong class="tag">${node.tone === "warning" ? "Warning" : "Note"}</strong> ${escapeHtml(node.text)}</p></div>`;
    case "findings":
      return `<ul class="findings">\n${node.findings.map(findingHtml).join("\n")}\n</ul>`;
    case "cautions":
      return `<ul class="cautions">\n${node.items
        .map(
          (item) =>
            `<li><p class="caution-title">${escapeHtml(item.title)}</p><p>${escapeHtml(item.text)}</p><p class="detail">Source: ${escapeHtml(item.source)}</p></li>`,
        )
        .join("\n")}\n</ul>`;
    case "signature":
      return `<div class="signature"><p class="signature-label">${escapeHtml(node.label)}</p>${node.lines
        .map((line) => `<p class="line">${escapeHtml(line)}</p>`)
        .join("")}</div>`;
    case "references":
      return `<ol class="references">\n${node.items
        .map(
          (item) =>
            `<li>${escapeHtml(item.text)} <span class="mark">${escapeHtml(item.mark)}</span></li>`,
        )
        .join("\n")}\n</ol>`;
  }
}
