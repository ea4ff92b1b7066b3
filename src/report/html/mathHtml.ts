import { createRequire } from "node:module";
import type { KatexOptions } from "katex";
import { escapeHtml } from "../../notebook/escapeHtml.js";

interface Katex {
  renderToString(tex: string, options: KatexOptions): string;
  readonly ParseError: new (message: string) => Error;
}

const require = createRequire(import.meta.url);

/**
 * TeX maths as MathML, which browsers draw with their own fonts.
 * A formula that cannot be read is shown as the TeX it is.
 */
export function mathHtml(tex: string, display: boolean): string {
  // loaded with the first formula, not with the package
  const katex = require("katex") as Katex;
  try {
    return katex.renderToString(tex, {
      output: "mathml",
      displayMode: display,
      throwOnError: true,
      strict: "ignore",
      trust: false,
      maxExpand: 500,
    });
  } catch (error) {
    if (!(error instanceof katex.ParseError)) throw error;
    return `<code class="tex">${escapeHtml(tex)}</code>`;
  }
}
