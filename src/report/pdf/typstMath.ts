import { symbolMap, tex2typst } from "tex2typst";

/** Longest formula that is tried; nothing a notebook shows to a reader is longer. */
const LONGEST = 1000;
const DEEPEST = 24;

/** Functions of Typst's maths that tex2typst writes, besides the names of symbols. */
const FUNCTIONS =
  "frac sqrt root binom mat vec cases upright bold italic sans mono cal frak bb scr attach limits " +
  "scripts overline underline overbrace underbrace overbracket underbracket cancel lr mid abs norm " +
  "floor ceil round hat tilde macron dot diaer acute grave breve caron arrow display inline op " +
  "dif quad wide thin med thick space delim none " +
  "sin cos tan cot sec csc sinh cosh tanh arcsin arccos arctan log ln lg exp min max sup inf lim " +
  "limsup liminf det dim gcd deg ker arg mod Pr";

const allowed = new Set([
  ...FUNCTIONS.split(" "),
  ...[...symbolMap.values()].flatMap((name) => name.match(/[A-Za-z]+/g) ?? []),
]);
// tex2typst knows these, but in Typst they reach code, files or other parts of a page
for (const name of ["std", "sys", "math", "image", "text", "eval"]) allowed.delete(name);

const PLAIN = /^[\x20-\x7e\n\u00b0-\u03ff\u2032\u2033\u2212]*$/;

function depth(text: string): number {
  let [now, max] = [0, 0];
  for (const sign of text) {
    if ("([{".includes(sign)) max = Math.max(max, ++now);
    if (")]}".includes(sign)) now -= 1;
  }
  return max;
}

/**
 * Turns a TeX formula into Typst maths that is safe to evaluate, or undefined.
 *
 * Typst's maths can reach its standard library by name, so the result may hold only names on a
 * list (symbols and maths functions), no `#`, `@`, `$`, comment or escaped quote, and no deep
 * nesting. Whatever does not pass is shown as TeX by the caller.
 */
export function typstMath(tex: string): string | undefined {
  if (tex.length > LONGEST) return undefined;
  let typst: string;
  try {
    typst = tex2typst(tex);
  } catch {
    // an unreadable formula is an expected case here: the caller shows the TeX and tells it
    return undefined;
  }
  if (!PLAIN.test(typst) || /[#@$`]|\/\/|\/\*|\\"/.test(typst) || depth(typst) > DEEPEST) {
    return undefined;
  }
  const outsideStrings = typst.replace(/"[^"\\]*"/g, " ");
  if (outsideStrings.includes('"')) return undefined;
  const names = outsideStrings.match(/[A-Za-z]{2,}/g) ?? [];
  return names.every((name) => allowed.has(name)) ? typst : undefined;
}
