import { type SheetValues, textRule } from "./sheet/layout.js";

/** The line that names the form of the test, such as ASTM D422 or ISO 17892-4. */
export const METHOD_FACT = textRule("method", "method");

/** The form of the test as the sheet names it. */
export function readMethod({ facts }: SheetValues): { readonly method?: string } {
  return typeof facts.method === "string" ? { method: facts.method } : {};
}
