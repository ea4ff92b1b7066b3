import { say } from "../words/message.js";
import { type Locale, render } from "../words/render.js";
import type { Placed, ReportBlock } from "./block.js";
import { escapeHtml, textDir } from "./html.js";
import { partsOf } from "./kinds.js";
import {
  aroundCitations,
  gridSides,
  type SaidCell,
  type SaidGrid,
  type SaidPart,
  type Side,
  sentences,
} from "./part.js";

/**
 * Where the HTML stands: in a `page` with our style sheet, ids and scroll boxes, or in a notebook's `cell`,
 * where no class means anything and nothing may have an id.
 */
export type HtmlForm = "page" | "cell";

/** Writes a block as HTML that needs no script; every text in it is escaped. */
export function blockHtml(block: ReportBlock & Placed, form: HtmlForm, locale: Locale): string {
  return partsOf(block, locale)
    .map((part) => partHtml(part, form, locale))
    .join("\n");
}

function partHtml(part: SaidPart, form: HtmlForm, locale: Locale): string {
  const own = (name: string) => (form === "page" ? ` class="${name}"` : "");
  switch (part.part) {
    case "grid":
      return gridHtml(part, form, locale);
    case "entries":
      return entriesHtml(part, own);
    case "box":
      return `<div${own(`note ${part.tone}`)} role="note"><p><strong${own("tag")}>${escapeHtml(part.tag)}</strong> ${escapeHtml(part.text)}</p></div>`;
    case "text":
      return `<p${textDir(part.text)}>${citingHtml(part, form)}</p>`;
    case "title":
      return `<h${part.level + 1}>${escapeHtml(part.text)}</h${part.level + 1}>`;
    // a page has its own list of contents
    case "contents":
      return "";
    case "blanks": {
      const lines = part.lines.map((line) =>
        form === "page"
          ? `<p class="line">${escapeHtml(line)}</p>`
          : `<p>${escapeHtml(line)}: ______________________________</p>`,
      );
      const label = `<p${own("signature-label")}><strong>${escapeHtml(part.label)}</strong></p>`;
      return `<div${own("signature")}>${label}${lines.join("")}</div>`;
    }
    case "break":
      return form === "page" ? '<div class="page-break"></div>' : '<hr style="break-after:page">';
  }
}

/** A paragraph with the numbers of what it speaks of, where they are known. */
function citingHtml(
  { text, cites = [] }: Extract<SaidPart, { readonly part: "text" }>,
  form: HtmlForm,
): string {
  if (form === "cell" || cites.length === 0) return escapeHtml(text);
  const [before, behind] = aroundCitations(text);
  const links = cites.map(({ text: label, to }) => `<a href="#${to}">${escapeHtml(label)}</a>`);
  return `${escapeHtml(before)} (${links.join(", ")})${behind}`;
}

type EntriesOf = Extract<SaidPart, { readonly part: "entries" }>;
type OwnClass = (name: string) => string;

function entriesHtml({ look, entries, whenEmpty }: EntriesOf, own: OwnClass): string {
  if (entries.length === 0) return whenEmpty === undefined ? "" : `<p>${escapeHtml(whenEmpty)}</p>`;
  const items = entries.map((entry) => {
    const { tone, tag, title, text, mark, details } = entry;
    const before = tag === undefined ? "" : `<strong${own("tag")}>${escapeHtml(tag)}</strong> `;
    const behind = mark === undefined ? "" : ` <small${own("mark")}>(${escapeHtml(mark)})</small>`;
    const words = `${before}${escapeHtml(text)}${behind}`;
    if (title === undefined && details === undefined) return `<li>${words}</li>`;
    const above = title && `<p${own("caution-title")}><strong>${escapeHtml(title)}</strong></p>`;
    const below = details && `\n<p${own("detail")}>${escapeHtml(sentences(details))}</p>`;
    return `<li${tone ? own(tone) : ""}>${above ?? ""}<p>${words}</p>${below ?? ""}</li>`;
  });
  const tag = look === "references" ? "ol" : "ul";
  return `<${tag}${own(look)}>\n${items.join("\n")}\n</${tag}>`;
}

/** A cell of longer text keeps a readable width on a phone, where the table scrolls. */
const LONG_TEXT = 40;

/** A cell whose content is escaped already. */
export function cellHtml(
  tag: string,
  side: Side | undefined,
  inner: string,
  form: HtmlForm = "page",
): string {
  const end = tag.split(" ")[0];
  if (form === "cell") return `<${tag} style="text-align:${side ?? "left"}">${inner}</${end}>`;
  const names: string[] = side === undefined || side === "left" ? [] : [side];
  if (inner.replace(/<[^>]*>/g, "").length > LONG_TEXT) names.push("long");
  if (inner.includes("\n")) names.push("lines");
  const shown = names.length === 0 ? "" : ` class="${names.join(" ")}"`;
  return `<${tag}${shown}${textDir(inner)}>${inner}</${end}>`;
}

/** Rows of a table that is not parted in print. */
const SHORT_TABLE = 14;

/** A table that is wider than the page scrolls in its own box, by keyboard too. */
export function scrollBox(label: string, table: string, rows = 0): string {
  // on paper a short table stays on one page
  const names = rows <= SHORT_TABLE ? "scroll short" : "scroll";
  return `<div class="${names}" role="region" tabindex="0" aria-label="${escapeHtml(label)}">${table}</div>`;
}

/** A table with its caption, header cells and notes; a report's has its number and scrolls in its own box. */
function gridHtml(grid: SaidGrid, form: HtmlForm, locale: Locale): string {
  const { look, caption, number, columns, rows, rowIds = [], notes } = grid;
  const sides = gridSides(grid);
  const label = number === undefined ? caption : render(say`Table ${number}`, locale);
  const head = columns.map(({ header, unit }, at) => {
    const name = escapeHtml(header) + unitHtml(unit, form);
    return cellHtml('th scope="col"', sides[at], name, form);
  });
  const body = rows.map((row, index) => {
    const rowId = form === "page" && rowIds[index] ? ` id="${rowIds[index]}"` : "";
    const cells = row.map((cell, at) =>
      cellHtml(at === 0 ? 'th scope="row"' : "td", sides[at], contentHtml(cell, form), form),
    );
    return `<tr${rowId}>${cells.join("")}</tr>`;
  });
  const headed = columns.some(({ header }) => header !== "");
  const thead = headed ? `<thead><tr>${head.join("")}</tr></thead>\n` : "";
  const inside = `${thead}<tbody>\n${body.join("\n")}\n</tbody>`;
  if (form === "cell") {
    const below = notes.map((note) => `\n<p><small>${escapeHtml(note)}</small></p>`);
    return `<table>\n<caption>${escapeHtml(caption)}</caption>\n${inside}\n</table>${below.join("")}`;
  }
  const mark = number === undefined ? "" : `<span class="label">${escapeHtml(label)}</span> `;
  const id = number === undefined ? "" : ` id="table-${number}"`;
  const pairs = look === "pairs" ? ' class="pairs"' : "";
  const table = `<table${id}${pairs}><caption><span>${mark}${escapeHtml(caption)}</span></caption>\n${inside}</table>`;
  const below = notes.map((note) => `<li>${escapeHtml(note)}</li>`).join("");
  const list = below === "" ? "" : `\n<ul class="table-notes">${below}</ul>`;
  return scrollBox(label || render(say`Table`, locale), table, rows.length) + list;
}

function unitHtml(unit: string | undefined, form: HtmlForm): string {
  if (unit === undefined || unit === "") return "";
  return form === "page"
    ? ` <span class="unit">${escapeHtml(unit)}</span>`
    : `, ${escapeHtml(unit)}`;
}

function contentHtml(cell: SaidCell, form: HtmlForm): string {
  if (typeof cell === "string") return escapeHtml(cell);
  const text = escapeHtml(cell.text);
  if (cell.to !== undefined && form === "page") return `<a href="#${cell.to}">${text}</a>`;
  return cell.strong ? `<strong>${text}</strong>` : text;
}
