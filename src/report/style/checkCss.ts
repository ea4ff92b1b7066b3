import type { Finding } from "../../lab/finding.js";
import { say } from "../../words/say.js";
import { styleFinding } from "./styleFinding.js";

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
  const words = [
    say`Line ${row} of this style sheet holds “${bad[0].trim()}”, which reaches outside the page.`,
    say`a style sheet without @import, outside url(…), addresses or markup`,
    say`Take it out; a small picture can stand in it as a data: address.`,
  ] as const;
  return [styleFinding("css", file, "error", "css-reaches-outside", words)];
}
