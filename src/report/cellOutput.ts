import type { ReportBlock } from "../blocks/block.js";
import { readBlock } from "../blocks/kinds.js";
import { type Finding, type FindingWords, finding, type Severity } from "../findings/finding.js";
import {
  MARKDOWN_MIME,
  NODE_MIME,
  PLOTLY_MIME,
  SVG_MIME,
  TEXT_MIME,
} from "../notebook/mimeBundle.js";
import {
  type CellOutput,
  type DisplayOutput,
  isText,
  joinText,
  record,
  type StreamOutput,
} from "../notebook/notebookFile.js";
import { say, type Text } from "../words/message.js";
import { cleanSvg } from "./cleanSvg.js";
import type { DocumentNode, FigureNode } from "./document.js";
import { markdownToNodes } from "./markdown.js";

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

/** Turns one output of a code cell into nodes: the richest form that can be shown as data wins. */
export function outputToNodes(output: CellOutput, place: OutputPlace): OutputResult {
  switch (output.output_type) {
    case "stream":
      return streamNodes(output, place);
    case "error":
      return leftOut(place, "error", "cell-failed", {
        message: say`Cell ${place.cell} failed: ${output.ename}: ${output.evalue}`,
        expected: say`a cell that runs to its end`,
        remedy: say`mend the cell and run again`,
      });
    case "display_data":
    case "execute_result":
      return displayNodes(output, place);
    default:
      return cannotShow(place, say`nothing`);
  }
}

function streamNodes({ name, text }: StreamOutput, { file, cell }: OutputPlace): OutputResult {
  const printed = joinText(text).trimEnd();
  if (printed.trim() === "") return { nodes: [], findings: [] };
  const warning = name === "stderr";
  const nodes: DocumentNode[] = [{ kind: "stream", text: printed, cell, warning }];
  if (!warning) return { nodes, findings: [] };
  const words = {
    message: say`Cell ${cell} wrote to its error stream.`,
    expected: say`no text on stderr`,
    remedy: say`read the text and mend its cause`,
  };
  return { nodes, findings: [finding({ file }, "warning", "cell-stderr", words)] };
}

function displayNodes(output: DisplayOutput, place: OutputPlace): OutputResult {
  if (NODE_MIME in output.data) return blockNodes(output.data[NODE_MIME], place);
  const svg = textOf(output, SVG_MIME);
  if (svg !== undefined) return figureNodes(output, svg, place);
  const markdown = textOf(output, MARKDOWN_MIME);
  if (markdown !== undefined) return { nodes: markdownToNodes(markdown), findings: [] };
  const plain = textOf(output, TEXT_MIME);
  if (plain !== undefined && plain.trim() !== "") {
    const { cell } = place;
    return { nodes: [{ kind: "stream", text: plain, cell, warning: false }], findings: [] };
  }
  return cannotShow(place, Object.keys(output.data).join(", ") || say`nothing`);
}

function cannotShow(place: OutputPlace, types: Text): OutputResult {
  return leftOut(place, "warning", "output-left-out", {
    message: say`Cell ${place.cell} shows something a report cannot hold (${types}).`,
    expected: say`a figure, a table, markdown or text`,
    remedy: say`show it with loambook's own “show”`,
  });
}

/** A block stands in a file that somebody may have edited: what is wrong with it is told. */
function blockNodes(value: unknown, place: OutputPlace): OutputResult {
  let reason = "";
  try {
    const block = readBlock(value);
    if (block?.kind === "section") return { nodes: [headingOf(block)], findings: [] };
    if (block !== undefined) return { nodes: [block], findings: [] };
    reason = "unknown kind";
  } catch (problem) {
    if (!(problem instanceof TypeError || problem instanceof RangeError)) throw problem;
    reason = problem.message;
  }
  return leftOut(place, "error", "block-unreadable", {
    message: say`Cell ${place.cell} shows a report block that cannot be read (${reason}).`,
    expected: say`a block made by loambook`,
    remedy: say`run the notebook again`,
  });
}

/** The heading of a section that is part of what a cell shows. */
function headingOf({ level, title, key, annex }: Extract<ReportBlock, { kind: "section" }>) {
  const inlines = [{ kind: "text", text: String(title) }] as const;
  // in a notebook the title has the first level
  return { kind: "heading", level: level + 1, inlines, id: "", key, annex } as const;
}

function figureNodes(output: DisplayOutput, svgText: string, place: OutputPlace): OutputResult {
  const words = record(output.metadata[SVG_MIME]);
  const alt = typeof words.alt === "string" ? words.alt : "";
  const caption = typeof words.caption === "string" ? words.caption : "";
  const cleaned = cleanSvg(svgText, `c${place.cell}o${place.output}-`, alt || caption);
  if (cleaned === undefined) {
    return leftOut(place, "error", "figure-unreadable", {
      message: say`The figure of cell ${place.cell} is not a well-formed SVG and was left out.`,
      expected: say`an SVG document`,
      remedy: say`run the notebook again`,
    });
  }
  const { data, layout } = record(output.data[PLOTLY_MIME]);
  const plotly: FigureNode["plotly"] = Array.isArray(data)
    ? { data: data as object[], layout: record(layout) }
    : undefined;
  const figure: FigureNode = {
    kind: "figure",
    svg: cleaned.svg,
    plotly,
    alt: alt || caption || say`Figure`,
    caption,
    key: typeof words.key === "string" ? words.key : undefined,
    half: words.half === true,
  };
  const nodes = [figure];
  if (alt !== "") return { nodes, findings: [] };
  const noAlt = {
    message: say`The figure of cell ${place.cell} has no text alternative.`,
    expected: say`a text alternative in the output's metadata`,
    remedy: say`show the figure with loambook's own “show”, or give it an alt text`,
  };
  return {
    nodes,
    findings: [finding({ file: place.file }, "warning", "figure-without-alt", noAlt)],
  };
}

/** What cannot be shown is told in its place, and as a finding. */
function leftOut(
  { file }: OutputPlace,
  severity: Severity,
  code: string,
  words: FindingWords,
): OutputResult {
  return {
    nodes: [{ kind: "note", tone: "warning", text: words.message }],
    findings: [finding({ file }, severity, code, words)],
  };
}

function textOf({ data }: DisplayOutput, mime: string): string | undefined {
  const value = data[mime];
  return isText(value) ? joinText(value) : undefined;
}
