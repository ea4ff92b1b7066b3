import type { Finding } from "../../findings/finding.js";
import { say } from "../../words/message.js";
import { styleFinding } from "./styleFile.js";

/** What a style sheet could fetch with, and what could end the element that it stands in. */
const FETCHING = /@import|url\(\s*(?!\s*["']?(?:data:|#))|image-set\(|\bsrc\(|https?:/i;
const ENDING = /<\/style|<!--/i;

/**
 * Checks a style sheet that is to stand in the HTML file: it may not fetch anything nor end its element.
 * The page's content security policy forbids fetching as well, also where a name is written in escapes.
 */
export function checkCss(file: string, css: string): Finding[] {
  const bad = FETCHING.exec(css) ?? ENDING.exec(css);
  if (bad === null) return [];
  const row = css.slice(0, bad.index).split("\n").length;
  const words = {
    message: say`Line ${row} of this style sheet holds “${bad[0].trim()}”, which reaches outside the page.`,
    expected: say`a style sheet without @import, outside url(…), addresses or markup`,
    remedy: say`Take it out; a small picture can stand in it as a data: address.`,
  };
  return [styleFinding("css", file, "error", "css-reaches-outside", words)];
}

/**
 * Names that a user's Typst file may define, in place of ours:
 * - `accent`, `soft`, `hair`, `wash`, `warn`, `warn-wash`: colours;
 * - `serif`, `sans`, `mono`: lists of font families;
 * - `title-page(doc, logo)`: what stands before the contents;
 * - `running-head(doc, page)`, `running-foot(doc, page, pages)`: head and foot of each page;
 * - `styling(body)`: set and show rules around the whole report.
 */
const TYPST_PARTS = (
  "accent soft hair wash warn warn-wash serif sans mono " +
  "title-page running-head running-foot styling"
).split(" ");

/** Ways to code or files that cannot be seen by reading the file: packages would be fetched. */
const OUTSIDE =
  /(?<![\w-])(import|include|eval|std|sys|plugin|read|json|yaml|toml|xml|csv|cbor)(?![\w-])/;

/** Checks a user's Typst file: it must stand alone, and define at least one of the parts. */
export function checkTypst(file: string, source: string): Finding[] {
  const bad = OUTSIDE.exec(source);
  if (bad !== null) {
    const row = source.slice(0, bad.index).split("\n").length;
    const words = {
      message: say`Line ${row} of this file holds the word “${bad[1]}”, which in Typst can reach other files or packages.`,
      expected: say`a file that stands alone: the report's data come to it as doc`,
      remedy: say`Write it without this word, in comments and texts too.`,
    };
    return [styleFinding("typst", file, "error", "typst-reaches-outside", words)];
  }
  const defined = TYPST_PARTS.filter((name) =>
    new RegExp(`^\\s*#let\\s+${name}(?![\\w-])`, "m").test(source),
  );
  if (defined.length > 0) return [];
  const words = {
    message: say`This file defines none of the parts of a report, so it changes nothing.`,
    expected: say`one of ${TYPST_PARTS.join(", ")}`,
    remedy: say`Define a part with #let, or take the entry out.`,
  };
  return [styleFinding("typst", file, "warning", "typst-without-part", words)];
}
