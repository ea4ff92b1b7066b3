import type { Finding } from "../lab/finding.js";
import { checklistTable } from "../tables/checklistTable.js";
import type { ReportBlock, TableBlock } from "../tables/reportBlock.js";
import { phrase, say, sayOf } from "../words/say.js";
import { escapeHtml as text } from "./escapeHtml.js";

const SEVERITY: Readonly<Record<Finding["severity"], string>> = {
  error: phrase`Error`,
  warning: phrase`Warning`,
  note: phrase`Note`,
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

function finding({ severity, file, row, column, value, message, expected, wayOut }: Finding) {
  const place = [file, row === undefined ? "" : say`row ${row}`, column ?? ""].filter(
    (part) => part,
  );
  const found = value === undefined ? "" : ` ${say`Found: ${`<code>${text(value)}</code>`}.`}`;
  return (
    `<strong>${sayOf(SEVERITY[severity])}</strong> (${text(place.join(", "))}): ${sentence(message)}` +
    `${found} ${say`Expected: ${sentence(expected)} Way out: ${sentence(wayOut)}`}`
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
