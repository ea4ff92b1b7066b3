import katex from "katex";
import { escapeHtml } from "./escapeHtml.js";

/**
 * TeX maths as MathML, which browsers draw with their own fonts.
 * A formula that cannot be read is shown as the TeX it is.
 */
export function mathHtml(tex: string, display: boolean): string {
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
