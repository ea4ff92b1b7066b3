import { checklistTable, type ReportBlock, type TableBlock } from "../blocks/block.js";
import { escapeHtml as text } from "../blocks/escapeHtml.js";
import type { Finding } from "../findings/finding.js";
import { say, wordFor } from "../words/message.js";

type Field = "text" | "list" | "texts" | "rows";

/** What each kind of block must hold. */
const FIELDS: Readonly<Record<ReportBlock["kind"], Readonly<Record<string, Field>>>> = {
  table: { caption: "text", columns: "list", rows: "rows" },
  findings: { findings: "list" },
  cautions: { items: "list" },
  keyValues: { caption: "text", items: "list" },
  references: { items: "list" },
  signature: { label: "text", lines: "texts" },
  paragraph: { text: "text" },
  note: { text: "text" },
  checklist: { caption: "text", items: "list" },
  pageBreak: {},
};

const isText = (value: unknown) => typeof value === "string";

const FITS: Readonly<Record<Field, (value: unknown) => boolean>> = {
  text: isText,
  list: (value) =>
    Array.isArray(value) && value.every((item) => typeof item === "object" && item !== null),
  texts: (value) => Array.isArray(value) && value.every(isText),
  rows: (value) =>
    Array.isArray(value) && value.every((row) => Array.isArray(row) && row.every(isText)),
};

const EXPECTED: Readonly<Record<Field, string>> = {
  text: "a text",
  list: "a list of objects",
  texts: "a list of texts",
  rows: "a list of lists of texts",
};

/**
 * Takes a value with the `kind` of a report block as that block; `undefined` where it has none.
 *
 * @throws TypeError when the kind is known and a field is missing or of another sort; RangeError when
 * a row has not as many cells as the table has columns
 */
export function asBlock(value: unknown): ReportBlock | undefined {
  if (typeof value !== "object" || value === null || !("kind" in value)) return undefined;
  const { kind } = value;
  if (typeof kind !== "string" || !Object.hasOwn(FIELDS, kind)) return undefined;
  const record = value as Record<string, unknown>;
  for (const [name, field] of Object.entries(FIELDS[kind as ReportBlock["kind"]])) {
    if (!FITS[field](record[name])) {
      throw new TypeError(
        `invalid \`${kind}.${name}\`: ${JSON.stringify(record[name])}; expected ${EXPECTED[field]}`,
      );
    }
  }
  const block = value as ReportBlock;
  if (block.kind === "table") {
    const wrong = block.rows.findIndex((row) => row.length !== block.columns.length);
    if (wrong >= 0) {
      throw new RangeError(
        `invalid \`table.rows[${wrong}]\`: ${block.rows[wrong]?.length} cells; expected ${block.columns.length}`,
      );
    }
  }
  return block;
}

const SEVERITY: Readonly<Record<Finding["severity"], string>> = {
  error: say`Error`,
  warning: say`Warning`,
  note: say`Note`,
};

function headerText({ header, unit }: TableBlock["columns"][number]): string {
  return unit === undefined ? header : `${header}, ${unit}`;
}

function table({ caption, columns, rows, notes = [] }: TableBlock): string {
  const style = (index: number) => ` style="text-align:${columns[index]?.align ?? "left"}"`;
  const head = columns
    .map((column, index) => `<th scope="col"${style(index)}>${text(headerText(column))}</th>`)
    .join("");
  const body = rows
    .map((row) => {
      const cells = row.map((cell, index) =>
        index === 0 && columns[0]?.align !== "right"
          ? `<th scope="row"${style(index)}>${text(cell)}</th>`
          : `<td${style(index)}>${text(cell)}</td>`,
      );
      return `<tr>${cells.join("")}</tr>`;
    })
    .join("\n");
  const below = notes.map((note) => `<p><small>${text(note)}</small></p>`).join("\n");
  return [
    "<table>",
    `<caption>${text(caption)}</caption>`,
    `<thead><tr>${head}</tr></thead>`,
    `<tbody>\n${body}\n</tbody>`,
    "</table>",
    below,
  ]
    .filter((part) => part !== "")
    .join("\n");
}

function list(items: readonly string[]): string {
  return `<ul>\n${items.map((item) => `<li>${item}</li>`).join("\n")}\n</ul>`;
}

function sentence(words: string): string {
  return text(/[.!?]$/.test(words) ? words : `${words}.`);
}

function finding({ severity, file, row, column, value, message, expected, remedy }: Finding) {
  const place = [file, row === undefined ? "" : say`row ${row}`, column ?? ""].filter(
    (part) => part,
  );
  const found = value === undefined ? "" : ` ${say`Found: ${`<code>${text(value)}</code>`}.`}`;
  return (
    `<strong>${wordFor(SEVERITY[severity])}</strong> (${text(place.join(", "))}): ${sentence(message)}` +
    `${found} ${say`Expected: ${sentence(expected)} Remedy: ${sentence(remedy)}`}`
  );
}

/** Writes a report block as HTML that needs no script and no style sheet; every text in it is escaped. */
export function blockHtml(block: ReportBlock): string {
  switch (block.kind) {
    case "table":
      return table(block);
    case "keyValues": {
      const rows = block.items.map(
        ({ label, value }) => `<tr><th scope="row">${text(label)}</th><td>${text(value)}</td></tr>`,
      );
      return `<table>\n<caption>${text(block.caption)}</caption>\n<tbody>\n${rows.join("\n")}\n</tbody>\n</table>`;
    }
    case "findings":
      return block.findings.length === 0
        ? `<p>${say`No findings.`}</p>`
        : list(block.findings.map(finding));
    case "cautions":
      return list(
        block.items.map(
          (item) =>
            `<strong>${text(item.title)}</strong> ${text(item.text)} <small>(${text(item.source)})</small>`,
        ),
      );
    case "references":
      return list(
        block.items.map((item) => `${text(item.text)} <small>(${text(item.mark)})</small>`),
      );
    case "signature":
      return `<p><strong>${text(block.label)}</strong></p>\n${list(
        block.lines.map((line) => `${text(line)}: ______________________________`),
      )}`;
    case "paragraph":
      return `<p>${text(block.text)}</p>`;
    case "note":
      return `<p role="note"><strong>${block.tone === "warning" ? say`Warning` : say`Note`}:</strong> ${text(block.text)}</p>`;
    case "checklist":
      return table(checklistTable(block));
    case "pageBreak":
      return '<hr style="break-after:page">';
  }
}

/** Columns a text takes in a terminal, near enough: one for each code point, none for combining marks. */
function width(text: string): number {
  return [...text.replace(/\p{Mark}/gu, "")].length;
}

function tableText({ caption, columns, rows, notes = [] }: TableBlock): string {
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

function findingText(found: Finding): string {
  const row = found.row === undefined ? "" : say`, row ${found.row}`;
  const column = found.column === undefined ? "" : `, ${found.column}`;
  const value = found.value === undefined ? "" : say`\n  found: ${found.value}`;
  return (
    `${wordFor(found.severity)}: ${found.file}${row}${column}: ${found.message}${value}\n` +
    say`  expected: ${found.expected}\n  remedy: ${found.remedy}`
  );
}

/** Writes a report block as plain text, for a terminal and for front ends that show nothing richer. */
export function blockText(block: ReportBlock): string {
  switch (block.kind) {
    case "table":
      return tableText(block);
    case "keyValues":
      return [
        block.caption,
        "",
        ...block.items.map(({ label, value }) => `${label}: ${value}`),
      ].join("\n");
    case "findings":
      return block.findings.length === 0
        ? say`No findings.`
        : block.findings.map(findingText).join("\n");
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
      return tableText(checklistTable(block));
    case "pageBreak":
      return say`— page break —`;
  }
}
