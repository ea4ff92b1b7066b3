import { escapeHtml } from "../../notebook/escapeHtml.js";
import { say } from "../../words/say.js";
import { cellAlign } from "../cellAlign.js";
import type { DocumentNode, NumberedBlock } from "../documentNode.js";
import { inlineHtml } from "./inlineHtml.js";
import { textDir } from "./textDir.js";

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
export function tableHtml(node: NumberedBlock): string {
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
export function proseTableHtml(node: Extract<DocumentNode, { kind: "proseTable" }>): string {
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
