import type { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import type { PdfStandard } from "./pdfStandard.js";
import { template } from "./template.js";

/** What Typst says, without the report's own data or the spans that only its compiler understands. */
function messages(diagnostics: readonly { readonly message?: string }[] | undefined): string {
  const said = (diagnostics ?? []).flatMap(({ message }) => message ?? []);
  return [...new Set(said)].join("; ") || "no reason given";
}

/** Compiles the template with the files that were handed to the compiler, and writes the PDF. */
export function setPages(
  compiler: NodeCompiler,
  standard: PdfStandard,
): { readonly pdf: Uint8Array } | { readonly problem: string } {
  const compiled = compiler.compile({ mainFileContent: template });
  if (compiled.result === null) {
    const found = compiled.takeError() ?? compiled.takeDiagnostics();
    return { problem: messages(found?.shortDiagnostics) };
  }
  const options = standard === "none" ? undefined : { pdfStandard: standard };
  try {
    return { pdf: new Uint8Array(compiler.pdf(compiled.result, options)) };
  } catch (problem) {
    // what breaks the standard, as Typst's debugging text holds it
    const said = [...String(problem).matchAll(/message: "((?:[^"\\]|\\.)*)"/g)].map(
      ([, text]) => text,
    );
    return { problem: said.join("; ") || String(problem) };
  }
}
