import { escapeHtml } from "../../notebook/escapeHtml.js";
import type { Inline } from "../documentNode.js";
import { plainText } from "../plainText.js";
import { mathHtml } from "./mathHtml.js";

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
