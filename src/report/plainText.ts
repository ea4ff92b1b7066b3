import type { Inline } from "./documentNode.js";

/** The words of inline nodes without their form: for ids, contents lists and PDF bookmarks. */
export function plainText(inlines: readonly Inline[]): string {
  return inlines
    .map((inline) => {
      switch (inline.kind) {
        case "text":
        case "code":
          return inline.text;
        case "math":
          return inline.tex;
        case "break":
          return " ";
        default:
          return plainText(inline.children);
      }
    })
    .join("");
}
