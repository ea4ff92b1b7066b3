import { say } from "../words/say.js";

/** What a report on invented data says where it can be seen, and on each page of the PDF. */
export function inventedWords(): { readonly long: string; readonly short: string } {
  return {
    long: say`The laboratory data in this report are invented for demonstration. Do not build from it.`,
    short: say`Invented demonstration data: do not build from this report.`,
  };
}
