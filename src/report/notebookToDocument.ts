import type { Finding } from "../findings/finding.js";
import { asNotebook, joinText, type NotebookCell, tagsOf } from "../notebook/notebookFile.js";
import { INJECTED_TAG } from "../notebook/parameters.js";
import { languageOf } from "../words/render.js";
import { outputToNodes } from "./cellOutput.js";
import { type CodeNode, type DocumentNode, plainText, type ReportDocument } from "./document.js";
import { markdownToNodes, smartQuotes } from "./markdown.js";
import type { ReportMeta } from "./reportMeta.js";
import { keyedSection, linkSections, numberNodes, placeReferences } from "./sections.js";

/** Name under which findings about the notebook speak of it. */
const DEFAULT_FILE = "notebook.ipynb";

/** The title replaces the notebook's own; what stood at level 2 becomes a main section. */
function belowTitle(nodes: readonly DocumentNode[]): DocumentNode[] {
  const title = nodes.findIndex((node) => node.kind === "heading" && node.level === 1);
  return nodes
    .filter((_, index) => index !== title)
    .map((node) =>
      node.kind === "heading" ? { ...node, level: Math.max(1, node.level - 1) } : node,
    );
}

/**
 * Turns an executed notebook into a report document.
 *
 * Markdown becomes headings, paragraphs, lists, tables and maths; outputs become figures, tables
 * and the other report blocks. Code is left out, unless `meta.code` asks for it: then it is folded into its
 * place and stands in an annex; a cell tagged `hide-code` keeps its code in the annex only, and parameters
 * are never shown. A cell tagged `notebook-only` speaks to who runs the notebook and is left out. In a handout a cell tagged `exercise` is followed by lines to write
 * on, and nothing stands in the annex. The first level-1 heading gives way
 * to `meta.title`. What a cell wrote to its error stream is shown, and told as a finding.
 *
 * @param notebook an nbformat 4 notebook, as parsed from its JSON; not changed
 * @param meta title page and properties
 * @param file name of the notebook for findings; default `notebook.ipynb`
 * @throws TypeError when `notebook` is not an nbformat 4 notebook
 *
 * @example
 * const cell = { cell_type: "markdown", metadata: {}, source: "# Notes\n\n## Soil\n\nSandy." };
 * const meta = { title: "Mix", date: "2024-05-02", language: "en", page: "A4" };
 * const report = notebookToDocument({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] }, meta);
 * report.nodes.map((node) => node.kind) // => ["heading", "prose"]
 * report.nodes[0].number // => "1"
 */
export function notebookToDocument(
  notebook: unknown,
  meta: ReportMeta,
  file: string = DEFAULT_FILE,
): ReportDocument {
  const { cells } = asNotebook(notebook);
  const handout = meta.layout === "handout";
  const shown = cells.filter((cell) => !tagsOf(cell).includes("notebook-only"));
  let cellNumber = 0;
  const read = shown.map((cell) => {
    if (cell.cell_type === "code") cellNumber += 1;
    return cellNodes(cell, cellNumber, meta, file);
  });
  const nodes = read.flatMap((cell) => cell.nodes);
  const annex = read.flatMap(({ code }) => code ?? []);
  const findings = read.flatMap((cell) => cell.findings);
  const linked = linkSections(numberNodes(belowTitle(nodes), meta.language), file);
  return {
    // who works through a handout has the notebook itself
    meta: handout ? { ...meta, inputs: [] } : meta,
    nodes: placeReferences(linked.nodes, meta.language),
    annex: meta.code && !handout ? annex : [],
    findings: [...findings, ...linked.findings],
  };
}

/** Of cells whose lines say where a study lies on the machine that ran the notebook. */
const PARAMETER_TAGS = ["parameters", INJECTED_TAG];

/**
 * What a cell becomes, with its source for the annex.
 *
 * @param cellNumber of the code cells so far
 */
function cellNodes(
  cell: NotebookCell,
  cellNumber: number,
  { layout, language, code: shown = false }: ReportMeta,
  file: string,
): { nodes: readonly DocumentNode[]; code?: CodeNode; findings: readonly Finding[] } {
  const tags = tagsOf(cell);
  const lines = layout === "handout" ? exerciseLines(tags) : 0;
  const toWriteOn: DocumentNode[] = lines > 0 ? [{ kind: "writingLines", lines }] : [];
  const source = joinText(cell.source);
  if (cell.cell_type === "markdown") {
    const prose = smartQuotes(markdownToNodes(source), languageOf(language));
    return { nodes: [...keyedSection(prose, tags), ...toWriteOn], findings: [] };
  }
  if (cell.cell_type !== "code") return { nodes: [], findings: [] };
  const text = source.trimEnd();
  const code: CodeNode | undefined =
    text === "" || !shown || PARAMETER_TAGS.some((tag) => tags.includes(tag))
      ? undefined
      : { kind: "code", text, cell: cellNumber };
  const outputs = (cell.outputs ?? []).map((output, at) =>
    outputToNodes(output, { file, cell: cellNumber, output: at + 1 }),
  );
  return {
    nodes: [
      ...(code === undefined || tags.includes("hide-code") ? [] : [code]),
      ...outputs.flatMap(({ nodes }) => nodes),
      ...toWriteOn,
    ],
    code,
    findings: outputs.flatMap(({ findings }) => findings),
  };
}

/**
 * The words of a notebook's first level-1 heading, which a report's title replaces; undefined without one.
 *
 * @throws TypeError when `notebook` is not an nbformat 4 notebook
 *
 * @example
 * const cell = { cell_type: "markdown", metadata: {}, source: "# Two *mixes*" };
 * notebookTitle({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] }) // => "Two mixes"
 */
export function notebookTitle(notebook: unknown): string | undefined {
  for (const cell of asNotebook(notebook).cells) {
    if (cell.cell_type !== "markdown" || tagsOf(cell).includes("notebook-only")) continue;
    for (const node of markdownToNodes(joinText(cell.source))) {
      if (node.kind === "heading" && node.level === 1) return plainText(node.inlines);
    }
  }
  return undefined;
}

const TAG = /^exercise(?:-([1-9]\d?))?$/;
const USUAL_LINES = 5;

/** Lines to write on below a cell, from its tags: 5 for `exercise`, 8 for `exercise-8`, 0 without. */
export function exerciseLines(tags: readonly string[]): number {
  const found = tags.map((tag) => TAG.exec(tag)).find((match) => match !== null);
  return found ? Number(found[1] ?? USUAL_LINES) : 0;
}
