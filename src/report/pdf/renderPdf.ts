import { resolve } from "node:path";
import type { Finding } from "../../lab/finding.js";
import type { ReportDocument } from "../documentNode.js";
import { coverageOf, coveredData, coveredText } from "./coveredText.js";
import type { PdfAttachment } from "./pdfAttachment.js";
import { pdfData } from "./pdfData.js";
import { charactersFinding, fontFinding, formulaFinding, typstFinding } from "./pdfFinding.js";
import type { PdfStandard } from "./pdfStandard.js";
import { reportFonts } from "./reportFonts.js";
import { setPages } from "./setPages.js";
import { typstMath } from "./typstMath.js";

/** How the PDF is made. */
export interface PdfOptions {
  /** Default `a-2a`. */
  readonly standard?: PdfStandard;
  /** Default: the page of the report's `meta`. */
  readonly page?: "A4" | "us-letter";
  /** Date of the title page and of the PDF's properties; default: that of `meta`. */
  readonly date?: string;
  /** Files to stand inside the PDF; only with the standard `a-3a`. */
  readonly attachments?: readonly PdfAttachment[];
}

/** A PDF and what was changed to make it. */
export interface PdfResult {
  readonly pdf: Uint8Array;
  readonly findings: readonly Finding[];
}

// the compiler sees virtual files only; nothing stands or is looked for at this path
const ROOT = resolve("/loambook-report");
const TRIAL = '#math.equation(alt: "trial", eval(sys.inputs.formula, mode: "math"))';
const FONT_TRIAL = "#text(font: sys.inputs.family)[x]";

/**
 * Renders a report as PDF with Typst: no browser and no TeX.
 *
 * Title page, contents, numbered headings, captioned figures and tables whose headers repeat,
 * bookmarks, tags and text alternatives; fonts embedded. The template reads the report as JSON,
 * so its text cannot become markup. The same report gives the same bytes. A formula Typst cannot
 * set is shown as TeX, a character no embedded font has as its code, and a Typst file of the study that
 * fails is left out; all are told as findings.
 *
 * @param document report made by `notebookToDocument`
 * @param options standard, page, date and files to attach
 * @throws RangeError for attachments with a standard that forbids them; Error with Typst's message when
 * the document cannot be compiled
 *
 * @example
 * const meta = { title: "Mix", date: "2024-05-02", language: "en", page: "A4" };
 * const { pdf } = await renderPdf({ meta, nodes: [], annex: [], findings: [] });
 * String.fromCharCode(...pdf.slice(0, 5)) // => "%PDF-"
 */
export async function renderPdf(
  document: ReportDocument,
  options: PdfOptions = {},
): Promise<PdfResult> {
  const { standard = "a-2a", page = document.meta.page, date = document.meta.date } = options;
  const { attachments = [] } = options;
  if (attachments.length > 0 && standard !== "a-3a") {
    throw new RangeError(
      `invalid \`attachments\`: ${attachments.length} with standard ${standard}; expected none, or a-3a`,
    );
  }
  const { style = {} } = document.meta;
  const { NodeCompiler } = await import("@myriaddreamin/typst-ts-node-compiler");
  const asked = style.fonts ?? [];
  const compiler = NodeCompiler.create({
    workspace: ROOT,
    // fonts in memory first: the compiler aborts the process when they come after folders
    fontArgs: [
      { fontBlobs: asked.map(({ bytes }) => Buffer.from(bytes)) },
      { fontPaths: reportFonts().folders },
    ],
  });
  const findings: Finding[] = [];
  const fonts = asked.filter(({ file, family }) => {
    const trial = compiler.compile({ mainFileContent: FONT_TRIAL, inputs: { family } });
    const known = trial.takeWarnings() === null && !trial.hasError();
    if (!known) findings.push(fontFinding(file, family));
    return known;
  });
  const tried = new Map<string, string | undefined>();
  const mathOf = (tex: string): string | undefined => {
    if (tried.has(tex)) return tried.get(tex);
    let typst = typstMath(tex);
    if (typst !== undefined) {
      const trial = compiler.compile({ mainFileContent: TRIAL, inputs: { formula: typst } });
      if (trial.hasError()) typst = undefined;
    }
    tried.set(tex, typst);
    if (typst === undefined) findings.push(formulaFinding(tex));
    return typst;
  };

  const coverage = { covered: coverageOf(fonts), missing: new Set<string>() };
  const dressed = { ...document, meta: { ...document.meta, style: { ...style, fonts } } };
  const data = coveredData(pdfData(dressed, mathOf, page, date, attachments), coverage);
  const virtual = (path: string, content: string | Uint8Array): void => {
    const bytes = typeof content === "string" ? Buffer.from(content, "utf8") : Buffer.from(content);
    compiler.mapShadow(resolve(ROOT, path), bytes);
  };
  virtual("document.json", JSON.stringify(data));
  for (const node of document.nodes) {
    if (node.kind === "figure") {
      virtual(`figures/${node.number}.svg`, coveredText(node.svg, coverage));
    }
  }
  if (style.logo?.type === "svg") virtual("logo.svg", coveredText(style.logo.svg, coverage));
  if (style.logo?.type === "png") virtual("logo.png", style.logo.bytes);
  attachments.forEach(({ bytes }, at) => {
    virtual(`attached/${at}`, bytes);
  });
  if (coverage.missing.size > 0) findings.push(charactersFinding(coverage.missing));

  virtual("own.typ", style.typst ?? "");
  let made = setPages(compiler, standard);
  if ("problem" in made && style.typst !== undefined) {
    findings.push(typstFinding(made.problem));
    virtual("own.typ", "");
    made = setPages(compiler, standard);
  }
  // Typst keeps compiled parts for the whole process; a report needs nothing of the one before
  compiler.evictCache(0);
  if ("problem" in made) throw new Error(`the PDF could not be compiled: ${made.problem}`);
  return { pdf: made.pdf, findings };
}
