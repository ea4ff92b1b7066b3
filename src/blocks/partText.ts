import { plain } from "../findings/format.js";
import { say } from "../words/message.js";
import { type Locale, render } from "../words/render.js";
import type { ReportBlock } from "./block.js";
import { partsOf } from "./kinds.js";
import { cellText, gridSides, type SaidGrid, type SaidPart, sentences } from "./part.js";

/** Writes a block as plain text, for a terminal and for front ends that show nothing richer. */
export function blockText(block: ReportBlock, locale: Locale): string {
  return partsOf(block, locale)
    .map((part) => partText(part, locale))
    .join("\n")
    .split("\n")
    .map(plain)
    .join("\n");
}

function partText(part: SaidPart, locale: Locale): string {
  switch (part.part) {
    case "grid":
      return gridText(part);
    case "entries":
      return part.entries.length === 0
        ? (part.whenEmpty ?? "")
        : part.entries.map(entryText).join("\n");
    case "box":
      return `${part.tag}: ${part.text}`;
    case "text":
    case "title":
      return part.text;
    case "contents":
      return "";
    case "blanks":
      return [part.label, ...part.lines.map((line) => `${line}: ____________________`)].join("\n");
    case "break":
      return render(say`— page break —`, locale);
  }
}

type SaidEntry = Extract<SaidPart, { readonly part: "entries" }>["entries"][number];

function entryText({ tag, title, text, mark, details }: SaidEntry): string {
  const head = [tag, title, text].filter((words) => words !== undefined).join(": ");
  const behind = mark === undefined ? "" : ` (${mark})`;
  return `${head}${behind}${details === undefined ? "" : `\n  ${sentences(details)}`}`;
}

/** Columns a text takes in a terminal, near enough: one for each code point, none for combining marks. */
function width(text: string): number {
  return [...text.replace(/\p{Mark}/gu, "")].length;
}

function gridText(grid: SaidGrid): string {
  const { caption, columns, rows, notes } = grid;
  const sides = gridSides(grid);
  const head = columns.map(({ header, unit }) => (unit ? `${header}, ${unit}` : header));
  // a line break in a cell would break the columns
  const lines = [head, ...rows.map((row) => row.map(cellText))].map((row) =>
    row.map((cell) => cell.replace(/\s+/g, " ")),
  );
  const widths = columns.map((_, at) => Math.max(...lines.map((line) => width(line[at] ?? ""))));
  const [first, ...body] = lines.map((line) =>
    line
      .map((cell, at) => {
        const room = " ".repeat((widths[at] ?? 0) - width(cell));
        return sides[at] === "right" ? room + cell : cell + room;
      })
      .join("  ")
      .trimEnd(),
  );
  const rule = widths.map((size) => "-".repeat(size)).join("  ");
  const headed = head.some((header) => header !== "");
  return [caption, "", ...(headed ? [first, rule] : []), ...body, ...notes].join("\n");
}
