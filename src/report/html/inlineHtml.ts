import { createRequire } from "node:module";
import type { KatexOptions } from "katex";
import { escapeHtml } from "../../blocks/html.js";
import { type Inline, plainText } from "../document.js";

/**
 * Inline nodes as HTML. A link is shown as its words with the address behind them, as text:
 * the file opens nothing, and the address is there on paper too.
 */
export function inlineHtml(inlines: readonly Inline[]): string {
  return inlines
    .map((inline) => {
      switch (inline.kind) {
        case "text":
          return escapeHtml(inline.text);
        case "code":
          return `<code>${escapeHtml(inline.text)}</code>`;
        case "math":
          return mathHtml(inline.tex, false);
        case "break":
          return "<br>";
        case "emphasis":
          return `<em>${inlineHtml(inline.children)}</em>`;
        case "strong":
          return `<strong>${inlineHtml(inline.children)}</strong>`;
        default: {
          const words = inlineHtml(inline.children);
          const same = plainText(inline.children) === inline.address || inline.address === "";
          const address = `<span class="address">${escapeHtml(inline.address)}</span>`;
          return same ? words : `${words} (${address})`;
        }
      }
    })
    .join("");
}

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
    // Groups in groups without end overflow the stack.
    if (!(error instanceof katex.ParseError || error instanceof RangeError)) throw error;
    return `<code class="tex">${escapeHtml(tex)}</code>`;
  }
}
