import { checklistHeaders } from "../../blocks/block.js";
import { escapeHtml } from "../../blocks/escapeHtml.js";
import { isBasic } from "../../figures/figure.js";
import type { Finding } from "../../findings/finding.js";
import { say } from "../../words/message.js";
import {
  type ChecklistNode,
  cellAlign,
  type DocumentNode,
  type FigureNode,
  type NumberedBlock,
  plainText,
} from "../document.js";
import { findingDetail, severityWord } from "../findingWords.js";
import { inlineHtml, mathHtml, textDir } from "./inlineHtml.js";

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

type Side = "left" | "right" | "center";

/** A cell of longer text keeps a readable width on a phone, where the table scrolls. */
const LONG_TEXT = 40;
/** Rows of a table that is not parted in print. */
const SHORT_TABLE = 14;

function cell(tag: string, side: Side | undefined, inner: string): string {
  const names = [
    side === undefined || side === "left" ? "" : side,
    inner.replace(/<[^>]*>/g, "").length > LONG_TEXT ? "long" : "",
    inner.includes("\n") ? "lines" : "",
  ].filter((name) => name !== "");
  const shown = names.length === 0 ? "" : ` class="${names.join(" ")}"`;
  return `<${tag}${shown}${textDir(inner)}>${inner}</${tag.split(" ")[0]}>`;
}

/** A table that is wider than the page scrolls in its own box, by keyboard too. */
function scrolling(label: string, table: string, rows = 0): string {
  // on paper a short table stays on one page
  const names = rows <= SHORT_TABLE ? "scroll short" : "scroll";
  return `<div class="${names}" role="region" tabindex="0" aria-label="${escapeHtml(label)}">${table}</div>`;
}

/** A report table or label–value list, numbered and captioned, with header cells and notes. */
function tableHtml(node: NumberedBlock): string {
  const numbered = node.number !== undefined;
  const label = numbered ? say`Table ${node.number}` : node.caption || say`Table`;
  const mark = numbered ? `<span class="label">${label}</span> ` : "";
  const caption = `<caption><span>${mark}${escapeHtml(node.caption)}</span></caption>`;
  const id = numbered ? ` id="table-${node.number}"` : "";
  if (node.kind === "keyValues") {
    const rows = node.items
      .map(
        (item) =>
          `<tr><th scope="row"${textDir(item.label)}>${escapeHtml(item.label)}</th><td${textDir(item.value)}>${escapeHtml(item.value)}</td></tr>`,
      )
      .join("\n");
    return scrolling(
      label,
      `<table${id} class="pairs">${caption}\n<tbody>\n${rows}\n</tbody></table>`,
      node.items.length,
    );
  }
  const sides = node.columns.map((column, index) =>
    cellAlign(
      column.align,
      node.rows.map((row) => row[index]!),
    ),
  );
  const head = node.columns
    .map((column, index) => {
      const unit = column.unit ? ` <span class="unit">${escapeHtml(column.unit)}</span>` : "";
      return cell('th scope="col"', sides[index], escapeHtml(column.header) + unit);
    })
    .join("");
  const rows = node.rows
    .map((row) => {
      const cells = row.map((text, index) =>
        cell(index === 0 ? 'th scope="row"' : "td", sides[index], escapeHtml(text)),
      );
      return `<tr>${cells.join("")}</tr>`;
    })
    .join("\n");
  const headed = node.columns.some(({ header }) => header !== "");
  const thead = headed ? `<thead><tr>${head}</tr></thead>\n` : "";
  const table = `<table${id}>${caption}\n${thead}<tbody>\n${rows}\n</tbody></table>`;
  const notes = (node.notes ?? []).map((note) => `<li>${escapeHtml(note)}</li>`).join("");
  return (
    scrolling(label, table, node.rows.length) +
    (notes === "" ? "" : `\n<ul class="table-notes">${notes}</ul>`)
  );
}

/** A table written in markdown: no caption, so no number. */
function proseTableHtml(node: Extract<DocumentNode, { kind: "proseTable" }>): string {
  const head = node.header
    .map((inlines, index) => cell('th scope="col"', node.align[index], inlineHtml(inlines)))
    .join("");
  const rows = node.rows
    .map((row) => {
      const cells = row.map((inlines, index) => cell("td", node.align[index], inlineHtml(inlines)));
      return `<tr>${cells.join("")}</tr>`;
    })
    .join("\n");
  return scrolling(
    say`Table in the text`,
    `<table><thead><tr>${head}</tr></thead>\n<tbody>\n${rows}\n</tbody></table>`,
    node.rows.length,
  );
}

/** A clause checklist: each answered clause links to its section, open ones are marked. */
function checklistHtml({ number, caption, items, sections = [] }: ChecklistNode): string {
  const label = number === undefined ? caption : say`Table ${number}`;
  const mark = number === undefined ? "" : `<span class="label">${escapeHtml(label)}</span> `;
  const id = number === undefined ? "" : ` id="table-${number}"`;
  const head = checklistHeaders().map((header) => `<th scope="col">${escapeHtml(header)}</th>`);
  const rows = items.map(({ clause, requirement, remark, sectionKey }, index) => {
    const section = sections[index];
    const answer = section
      ? `<a href="#${section.id}">${escapeHtml(`${section.number} ${section.title}`.trim())}</a>`
      : `<strong>${escapeHtml(sectionKey === undefined ? say`open` : say`${sectionKey}: not in this report`)}</strong>`;
    return `<tr><th scope="row">${escapeHtml(clause)}</th><td>${escapeHtml(requirement)}</td><td>${answer}</td><td>${escapeHtml(remark)}</td></tr>`;
  });
  return `<div class="scroll" role="region" tabindex="0" aria-label="${escapeHtml(label)}"><table${id}><caption><span>${mark}${escapeHtml(caption)}</span></caption>
<thead><tr>${head.join("")}</tr></thead>
<tbody>
${rows.join("\n")}
</tbody></table></div>`;
}

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
function figureHtml(node: FigureNode): string {
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
