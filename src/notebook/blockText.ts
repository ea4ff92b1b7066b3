import type { Finding } from "../lab/finding.js";
import { checklistTable } from "../tables/checklistTable.js";
import type { ReportBlock, TableBlock } from "../tables/reportBlock.js";
import { say, sayOf } from "../words/say.js";

/** Columns a text takes in a terminal, near enough: one for each code point, none for combining marks. */
function width(text: string): number {
  return [...text.replace(/\p{Mark}/gu, "")].length;
}

function table({ caption, columns, rows, notes = [] }: TableBlock): string {
  const head = columns.map(({ header, unit }) =>
    unit === undefined ? header : `${header}, ${unit}`,
  );
  // a line break in a cell would break the columns
  const lines = [head, ...rows].map((row) => row.map((cell) => cell.replace(/\s+/g, " ")));
  const widths = columns.map((_, index) =>
    Math.max(...lines.map((line) => width(line[index] ?? ""))),
  );
  const written = lines.map((line) =>
    line
      .map((cell, index) => {
        const room = " ".repeat((widths[index] as number) - width(cell));
        return columns[index]?.align === "right" ? room + cell : cell + room;
      })
      .join("  ")
      .trimEnd(),
  );
  const rule = widths.map((size) => "-".repeat(size)).join("  ");
  return [caption, "", written[0], rule, ...written.slice(1), ...notes].join("\n");
}

function finding(found: Finding): string {
  const row = found.row === undefined ? "" : say`, row ${found.row}`;
  const column = found.column === undefined ? "" : `, ${found.column}`;
  const value = found.value === undefined ? "" : say`\n  found: ${found.value}`;
  return (
    `${sayOf(found.severity)}: ${found.file}${row}${column}: ${found.message}${value}\n` +
    say`  expected: ${found.expected}\n  way out: ${found.wayOut}`
  );
}

/** Writes a report block as plain text, for a terminal and for front ends that show nothing richer. */
export function blockText(block: ReportBlock): string {
  switch (block.kind) {
    case "table":
      return table(block);
    case "keyValues":
      return [
        block.caption,
        "",
        ...block.items.map(({ label, value }) => `${label}: ${value}`),
      ].join("\n");
    case "findings":
      return block.findings.length === 0
        ? say`No findings.`
        : block.findings.map(finding).join("\n");
    case "cautions":
      return block.items
        .map(({ title, text, source }) => `${title}: ${text} (${source})`)
        .join("\n");
    case "references":
      return block.items.map(({ text, mark }) => `${text} (${mark})`).join("\n");
    case "signature":
      return [block.label, ...block.lines.map((line) => `${line}: ____________________`)].join(
        "\n",
      );
    case "paragraph":
      return block.text;
    case "note":
      return `${block.tone === "warning" ? say`Warning` : say`Note`}: ${block.text}`;
    case "checklist":
      return table(checklistTable(block));
    case "pageBreak":
      return say`— page break —`;
  }
}
