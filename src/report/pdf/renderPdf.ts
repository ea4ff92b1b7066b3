import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import type { NodeCompiler, NodeTypstDocument } from "@myriaddreamin/typst-ts-node-compiler";
import { type Finding, finding } from "../../findings/finding.js";
import { say, type Text } from "../../words/message.js";
import { render } from "../../words/render.js";
import type { PdfAttachment } from "../attachments.js";
import type { ReportDocument } from "../document.js";
import type { PdfStandard, ReportMeta } from "../reportMeta.js";
import { coverageOf, fontsForScripts, reportFonts, withoutMissingGlyphs } from "./fonts.js";
import { pdfData } from "./pdfData.js";
import { NOTICE_COLOUR, noticeTemplate, template } from "./template.js";
import { typstMath } from "./typstMath.js";

/** How the PDF is made. */
export interface PdfOptions {
  /** Default `a-2a`. */
  readonly standard?: PdfStandard;
  /** Files to stand inside the PDF; only with the standard `a-3a`. */
  readonly attachments?: readonly PdfAttachment[];
  /** How long a Typst file of the study's own may take; default 60. */
  readonly ownTypstSeconds?: number;
}

/** A PDF and what was changed to make it. */
export interface PdfResult {
  readonly pdf: Uint8Array;
  /** Size of a sheet of one page, part of the usual one. */
  readonly printScale: number;
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
 * fails or does not end in time is left out; all are told as findings.
 *
 * @param document report made by `notebookToDocument`
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
  const { standard = "a-2a", attachments = [], ownTypstSeconds = 60 } = options;
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

  const styled = { ...document, meta: { ...document.meta, style: { ...style, fonts } } };
  const drawings = document.nodes.flatMap((node) =>
    node.kind === "figure" ? [{ path: `figures/${node.number}.svg`, svg: node.svg }] : [],
  );
  if (style.logo?.type === "svg") drawings.push({ path: "logo.svg", svg: style.logo.svg });
  const { data, missing } = withoutMissingGlyphs(
    { report: pdfData(styled, mathOf, attachments), drawings },
    coverageOf(fonts),
  );
  const files = new Map<string, Buffer>();
  const virtual = (path: string, content: string | Uint8Array): void => {
    const bytes = typeof content === "string" ? Buffer.from(content, "utf8") : Buffer.from(content);
    files.set(resolve(ROOT, path), bytes);
    compiler.mapShadow(resolve(ROOT, path), bytes);
  };
  virtual("document.json", JSON.stringify(data.report));
  for (const { path, svg } of data.drawings) virtual(path, svg);
  if (style.logo?.type === "png") virtual("logo.png", style.logo.bytes);
  attachments.forEach(({ bytes }, at) => {
    virtual(`attached/${at}`, bytes);
  });
  if (missing.size > 0) findings.push(charactersFinding(missing));

  virtual("own.typ", style.typst ?? "");
  const own = style.typst !== undefined;
  const guarded = document.meta.invented === true && own;
  const inTime = !own || endsInTime(files, asked, ownTypstSeconds);
  let made: Made = inTime
    ? compilePdf(compiler, standard, guarded)
    : { problem: say`not finished after ${ownTypstSeconds} s` };
  if ("problem" in made && own) {
    findings.push(typstFinding(made.problem));
    virtual("own.typ", "");
    made = compilePdf(compiler, standard, false);
  }
  // Typst keeps compiled parts for the whole process; a report needs nothing of the one before
  compiler.evictCache(0);
  if ("problem" in made) throw new Error(`the PDF could not be compiled: ${render(made.problem)}`);
  const { pdf, printScale, pages } = made;
  return { pdf, printScale, findings: [...findings, ...pageFindings(document.meta, pages)] };
}

/** Compiles what it is handed, and says nothing: only whether it ends matters. */
const TRYING = `
const { library, root, files, fontBlobs, fontPaths, main } = JSON.parse(require("node:fs").readFileSync(0, "utf8"));
const { NodeCompiler } = require(library);
const blobs = fontBlobs.map((blob) => Buffer.from(blob, "base64"));
const compiler = NodeCompiler.create({ workspace: root, fontArgs: [{ fontBlobs: blobs }, { fontPaths }] });
for (const [path, content] of files) compiler.mapShadow(path, Buffer.from(content, "base64"));
compiler.compile({ mainFileContent: main });
`;

/**
 * Whether a Typst file of the study's own comes to an end: tried in a process that can be ended, which the
 * compiler cannot while it counts.
 */
function endsInTime(
  files: ReadonlyMap<string, Buffer>,
  fonts: readonly { readonly bytes: Uint8Array }[],
  seconds: number,
): boolean {
  const input = JSON.stringify({
    library: createRequire(import.meta.url).resolve("@myriaddreamin/typst-ts-node-compiler"),
    root: ROOT,
    files: [...files].map(([path, bytes]) => [path, bytes.toString("base64")]),
    fontBlobs: fonts.map(({ bytes }) => Buffer.from(bytes).toString("base64")),
    fontPaths: reportFonts().folders,
    main: template,
  });
  const { error } = spawnSync(process.execPath, ["-e", TRYING], {
    input,
    stdio: ["pipe", "ignore", "ignore"],
    timeout: 1000 * seconds,
    killSignal: "SIGKILL",
  });
  return (error as NodeJS.ErrnoException | undefined)?.code !== "ETIMEDOUT";
}

type Made =
  | { readonly pdf: Uint8Array; readonly printScale: number; readonly pages: number }
  | { readonly problem: Text };

/** What Typst says, without the report's own data or the spans that only its compiler understands. */
function messages(diagnostics: readonly { readonly message?: string }[] | undefined): string {
  const said = (diagnostics ?? []).flatMap(({ message }) => message ?? []);
  return [...new Set(said)].join("; ") || "no reason given";
}

/** Compiles the template with the files that were handed to the compiler, and writes the PDF. */
function compilePdf(compiler: NodeCompiler, standard: PdfStandard, guarded: boolean): Made {
  const compiled = compiler.compile({ mainFileContent: template });
  if (compiled.result === null) {
    const found = compiled.takeError() ?? compiled.takeDiagnostics();
    return { problem: messages(found?.shortDiagnostics) };
  }
  if (guarded && !showsNotice(compiler, compiled.result)) {
    return { problem: "it hides the notice that the data are invented" };
  }
  const options = standard === "none" ? undefined : { pdfStandard: standard };
  try {
    return {
      pdf: new Uint8Array(compiler.pdf(compiled.result, options)),
      printScale: printScaleOf(compiler, compiled.result),
      pages: compiled.result.numOfPages,
    };
  } catch (problem) {
    // what breaks the standard, as Typst's debugging text holds it
    const said = [...String(problem).matchAll(/message: "((?:[^"\\]|\\.)*)"/g)].map(
      ([, text]) => text,
    );
    return { problem: said.join("; ") || String(problem) };
  }
}

/** What the template chose for a sheet of one page. */
function printScaleOf(compiler: NodeCompiler, report: NodeTypstDocument): number {
  const [chosen] = compiler.query(report, { selector: "<print-scale>" }) as { value: number }[];
  return chosen?.value ?? 1;
}

/** Whether each page draws the notice of invented data with all its letters: a maker's rules could hide it. */
function showsNotice(compiler: NodeCompiler, report: NodeTypstDocument): boolean {
  const letters = (drawn: NodeTypstDocument) =>
    compiler.plainSvg(drawn).split(`fill="${NOTICE_COLOUR}"`).length - 1;
  const { result } = compiler.compile({ mainFileContent: noticeTemplate });
  return result !== null && letters(report) >= letters(result) * report.numOfPages;
}

const FILE = "report.pdf";

function formulaFinding(tex: string): Finding {
  return finding({ file: FILE, value: tex }, "warning", "formula-shown-as-tex", {
    message: say`A formula could not be set in the PDF and is shown as TeX.`,
    expected: say`plain TeX maths`,
    remedy: say`write it with common TeX commands only`,
  });
}

function charactersFinding(missing: ReadonlySet<string>): Finding {
  const signs = [...missing].join(" ");
  const fonts = fontsForScripts(missing).join(", ");
  return finding({ file: FILE, value: signs }, "warning", "characters-not-in-font", {
    message: say`The PDF's fonts have no glyph for ${signs}; each is shown by its code, like ‹U+4E2D›.`,
    expected: say`text in Latin, Greek or Cyrillic letters, or fonts for other scripts`,
    remedy:
      fonts === ""
        ? say`Put a font that has these signs into a folder of the study and name the folder under “report: fonts”; the HTML file shows them as they are.`
        : say`Put a font with these letters (for example ${fonts}) into a folder of the study and name the folder under “report: fonts”; the HTML file shows them as they are.`,
  });
}

function fontFinding(file: string, family: string): Finding {
  return finding({ file: FILE, value: file }, "warning", "font-not-used", {
    message: say`The typesetter does not know this font by its family name “${family}”; it is not used.`,
    expected: say`a font whose family name is plain`,
    remedy: say`Take another cut or file of the font.`,
  });
}

function pageFindings({ onePage = false, title }: ReportMeta, pages: number): Finding[] {
  if (!onePage || pages === 1) return [];
  const words = {
    message: say`“${title}” does not fit on one page, even in small letters: it takes ${pages}.`,
    expected: say`a card of one page`,
    remedy: say`Shorten what was entered for it, settle the doubts that it prints, or print it on both sides of one sheet.`,
  };
  return [finding({ file: FILE }, "warning", "card-on-several-pages", words)];
}

function typstFinding(problem: Text): Finding {
  return finding({ file: FILE }, "error", "typst-template-failed", {
    message: say`The study's own Typst file does not work, so the PDF was made without it: ${problem}`,
    expected: say`a file that Typst can compile, for the PDF standard asked for`,
    remedy: say`Mend the file and make the report again.`,
  });
}
