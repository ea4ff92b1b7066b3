import type { Finding } from "../findings/finding.js";
import { NODE_MIME, PLOTLY_MIME } from "../notebook/mimeBundle.js";
import { say } from "../words/message.js";
import { cleanSvg } from "./cleanSvg.js";
import type { DocumentNode, FigureNode } from "./document.js";
import { mimeText, type NotebookOutput, readBlock } from "./executedNotebook.js";
import { markdownToNodes } from "./markdown.js";

const SVG_MIME = "image/svg+xml";

/** Where an output stands: code cells and outputs counted from 1. */
interface OutputPlace {
  readonly file: string;
  readonly cell: number;
  readonly output: number;
}

/** Nodes made from one output, and what was found wrong with it. */
interface OutputResult {
  readonly nodes: readonly DocumentNode[];
  readonly findings: readonly Finding[];
}

function finding(
  place: OutputPlace,
  severity: Finding["severity"],
  code: string,
  words: readonly [message: string, expected: string, remedy: string],
): Finding {
  const [message, expected, remedy] = words;
  return {
    severity,
    code,
    file: place.file,
    column: say`cell ${place.cell}`,
    message,
    expected,
    remedy,
  };
}

function told(found: Finding): OutputResult {
  return { nodes: [{ kind: "note", tone: "warning", text: found.message }], findings: [found] };
}

function record(value: unknown): Record<string, unknown> {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
}

function figure(
  output: Extract<NotebookOutput, { data: unknown }>,
  svgText: string,
  place: OutputPlace,
): OutputResult {
  const words = record(output.metadata[SVG_MIME]);
  const alt = typeof words.alt === "string" ? words.alt : "";
  const caption = typeof words.caption === "string" ? words.caption : "";
  const svg = cleanSvg(svgText, `c${place.cell}o${place.output}-`, alt || caption);
  if (svg === undefined) {
    const message = say`The figure of cell ${place.cell} is not a well-formed SVG and was left out.`;
    return told(
      finding(place, "error", "figure-unreadable", [
        message,
        say`an SVG document`,
        say`run the notebook again`,
      ]),
    );
  }
  const { data, layout } = record(output.data[PLOTLY_MIME]);
  const plotly: FigureNode["plotly"] = Array.isArray(data)
    ? { data: data as object[], layout: record(layout) }
    : undefined;
  const findings = [];
  if (alt === "") {
    const message = say`The figure of cell ${place.cell} has no text alternative.`;
    findings.push(
      finding(place, "warning", "figure-without-alt", [
        message,
        say`a text alternative in the output's metadata`,
        say`show the figure with loambook's own “show”, or give it an alt text`,
      ]),
    );
  }
  const node = {
    kind: "figure",
    svg,
    plotly,
    alt: alt || caption || say`Figure`,
    caption,
  } as const;
  return { nodes: [node], findings };
}

/** Turns one output of a code cell into nodes: the richest form that can be shown as data wins. */
export function outputToNodes(output: NotebookOutput, place: OutputPlace): OutputResult {
  if (output.output_type === "stream") {
    if (output.text.trim() === "") return { nodes: [], findings: [] };
    const warning = output.name === "stderr";
    const node = {
      kind: "stream",
      text: output.text.trimEnd(),
      cell: place.cell,
      warning,
    } as const;
    if (!warning) return { nodes: [node], findings: [] };
    const message = say`Cell ${place.cell} wrote to its error stream.`;
    const words = [message, say`no text on stderr`, say`read the text and mend its cause`] as const;
    return { nodes: [node], findings: [finding(place, "warning", "cell-stderr", words)] };
  }
  if (output.output_type === "error") {
    const message = say`Cell ${place.cell} failed: ${output.ename}: ${output.evalue}`;
    const words = [
      message,
      say`a cell that runs to its end`,
      say`mend the cell and run again`,
    ] as const;
    return told(finding(place, "error", "cell-failed", words));
  }
  if (NODE_MIME in output.data) {
    const block = readBlock(output.data[NODE_MIME]);
    if (typeof block !== "string") return { nodes: [block], findings: [] };
    const message = say`Cell ${place.cell} shows a report block that cannot be read (${block}).`;
    const words = [message, say`a block made by loambook`, say`run the notebook again`] as const;
    return told(finding(place, "error", "block-unreadable", words));
  }
  const svg = mimeText(output.data[SVG_MIME]);
  if (svg !== undefined) return figure(output, svg, place);
  const markdown = mimeText(output.data["text/markdown"]);
  if (markdown !== undefined) return { nodes: markdownToNodes(markdown), findings: [] };
  const plain = mimeText(output.data["text/plain"]);
  if (plain !== undefined && plain.trim() !== "") {
    return {
      nodes: [{ kind: "stream", text: plain, cell: place.cell, warning: false }],
      findings: [],
    };
  }
  const types = Object.keys(output.data).join(", ") || say`nothing`;
  const message = say`Cell ${place.cell} shows something a report cannot hold (${types}).`;
  return told(
    finding(place, "warning", "output-left-out", [
      message,
      say`a figure, a table, markdown or text`,
      say`show it with loambook's own “show”`,
    ]),
  );
}
