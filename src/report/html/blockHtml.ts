import type { Finding } from "../../lab/finding.js";
import { escapeHtml } from "../../notebook/escapeHtml.js";
import { say } from "../../words/say.js";
import type { DocumentNode } from "../documentNode.js";
import { findingDetail } from "../findingPlace.js";
import { plainText } from "../plainText.js";
import { severityWord } from "../severityWord.js";
import { checklistHtml } from "./checklistHtml.js";
import { figureHtml } from "./figureHtml.js";
import { inlineHtml } from "./inlineHtml.js";
import { mathHtml } from "./mathHtml.js";
import { proseTableHtml, tableHtml } from "./tableHtml.js";
import { textDir } from "./textDir.js";

function findingHtml(finding: Finding): string {
  return `<li class="finding ${finding.severity}"><p><strong class="tag">${severityWord(finding.severity)}</strong> ${escapeHtml(finding.message)}</p>
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
      return `<${tag} id="${node.id}"${textDir(plainText(node.inlines))}>${number}${inlineHtml(node.inlines)}</${tag}>`;
    }
    case "prose":
      return `<p${textDir(plainText(node.inlines))}>${inlineHtml(node.inlines)}</p>`;
    case "paragraph":
      return `<p${textDir(node.text)}>${escapeHtml(node.text)}</p>`;
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
    case "writingLines":
      return `<div class="writing-lines" style="--lines:${node.lines}"></div>`;
    case "pageBreak":
      return '<div class="page-break"></div>';
    case "mathBlock":
      return `<div class="scroll formula" role="region" tabindex="0" aria-label="${escapeHtml(say`Formula`)}">${mathHtml(node.tex, true)}</div>`;
    case "proseTable":
      return proseTableHtml(node);
    case "table":
    case "keyValues":
      return tableHtml(node);
    case "checklist":
      return checklistHtml(node);
    case "figure":
      return figureHtml(node);
    case "code":
      return codeHtml(say`Code of cell ${node.cell}`, node.text);
    case "stream":
      return node.warning
        ? `<div class="note warning"><p><strong class="tag">${severityWord("warning")}</strong> ${escapeHtml(say`Cell ${node.cell} wrote to its error stream:`)}</p><pre tabindex="0">${escapeHtml(node.text)}</pre></div>`
        : `<pre class="stream" tabindex="0">${escapeHtml(node.text)}</pre>`;
    case "note":
      return `<div class="note ${node.tone}"><p><strong class="tag">${severityWord(node.tone)}</strong> ${escapeHtml(node.text)}</p></div>`;
    case "findings":
      return `<ul class="findings">\n${node.findings.map(findingHtml).join("\n")}\n</ul>`;
    case "cautions":
      return `<ul class="cautions">\n${node.items
        .map(
          (item) =>
            `<li><p class="caution-title">${escapeHtml(item.title)}</p><p>${escapeHtml(item.text)}</p><p class="detail">${escapeHtml(say`Source: ${item.source}`)}</p></li>`,
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
