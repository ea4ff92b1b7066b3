import { resolve } from "node:path";
import type { Finding } from "../../lab/finding.js";
import type { ReportDocument } from "../documentNode.js";
import { coveredData, coveredText } from "./coveredText.js";
import { pdfData } from "./pdfData.js";
import { reportFonts } from "./reportFonts.js";
import { template } from "./template.js";
import { typstMath } from "./typstMath.js";

/** How the PDF is made. */
export interface PdfOptions {
  /** Archival and tagged (`a-2a`, the default), universally accessible (`ua-1`), or neither. */
  readonly standard?: "a-2a" | "ua-1" | "none";
  /** Default: the page of the report's `meta`. */
  readonly page?: "A4" | "us-letter";
  /** Date of the title page and of the PDF's properties; default: that of `meta`. */
  readonly date?: string;
}

/** A PDF and what was changed to make it. */
export interface PdfResult {
  readonly pdf: Uint8Array;
  readonly findings: readonly Finding[];
}

// the compiler sees virtual files only; nothing stands or is looked for at this path
const ROOT = resolve("/loambook-report");
const TRIAL = '#math.equation(alt: "trial", eval(sys.inputs.formula, mode: "math"))';

function finding(code: string, value: string, words: readonly [string, string, string]): Finding {
  const [message, expected, wayOut] = words;
  return { severity: "warning", code, file: "report.pdf", value, message, expected, wayOut };
}

/**
 * Renders a report as PDF with Typst: no browser and no TeX.
 *
 * Title page, contents, numbered headings, captioned figures and tables whose headers repeat,
 * bookmarks, tags and text alternatives; fonts embedded. The template reads the report as JSON,
 * so its text cannot become markup. The same report gives the same bytes. A formula Typst cannot
 * set is shown as TeX, a character no embedded font has as its code; both are told as findings.
 *
 * @param document report made by `notebookToDocument`
 * @param options standard, page and date
 * @throws Error with Typst's message when the document cannot be compiled
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
  const { NodeCompiler } = await import("@myriaddreamin/typst-ts-node-compiler");
  const compiler = NodeCompiler.create({
    workspace: ROOT,
    fontArgs: [{ fontPaths: reportFonts().folders }],
  });
  const findings: Finding[] = [];
  const known = new Map<string, string | undefined>();
  const mathOf = (tex: string): string | undefined => {
    if (known.has(tex)) return known.get(tex);
    let typst = typstMath(tex);
    if (typst !== undefined) {
      const trial = compiler.compile({ mainFileContent: TRIAL, inputs: { formula: typst } });
      if (trial.hasError()) typst = undefined;
    }
    known.set(tex, typst);
    if (typst === undefined) {
      const message = "A formula could not be set in the PDF and is shown as TeX.";
      const wayOut = "write it with common TeX commands only";
      findings.push(finding("formula-shown-as-tex", tex, [message, "plain TeX maths", wayOut]));
    }
    return typst;
  };

  const missing = new Set<string>();
  const data = coveredData(pdfData(document, mathOf, page, date), missing);
  const virtual = (path: string, text: string): void =>
    compiler.mapShadow(resolve(ROOT, path), Buffer.from(text, "utf8"));
  virtual("document.json", JSON.stringify(data));
  for (const node of document.nodes) {
    if (node.kind === "figure") {
      virtual(`figures/${node.number}.svg`, coveredText(node.svg, missing));
    }
  }
  if (missing.size > 0) {
    const signs = [...missing].join(" ");
    const message = `The PDF's fonts have no glyph for ${signs}; each is shown by its code, like ‹U+4E2D›.`;
    const wayOut = "write the text in letters these fonts have; the HTML file shows it as it is";
    const expected = "Latin, Greek or Cyrillic text";
    findings.push(finding("characters-not-in-font", signs, [message, expected, wayOut]));
  }

  const compiled = compiler.compile({ mainFileContent: template });
  if (compiled.result === null) {
    const diagnostics = (compiled.takeError() ?? compiled.takeDiagnostics())?.shortDiagnostics;
    throw new Error(`the PDF could not be compiled: ${JSON.stringify(diagnostics)}`);
  }
  const pdf = compiler.pdf(
    compiled.result,
    standard === "none" ? undefined : { pdfStandard: standard },
  );
  // Typst keeps compiled parts for the whole process; a report needs nothing of the one before
  compiler.evictCache(0);
  return { pdf: new Uint8Array(pdf), findings };
}
