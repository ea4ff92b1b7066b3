import { formatFixed } from "../../quantities/format.js";
import { say, wordFor } from "../../words/message.js";
import { checkSizeShares, type SizeClass, type SizeClassInput } from "./sizeClass.js";

const SOURCE = say`ISO 14688-2:2004, its guide table of composite soils and its grading terms, from memory; the boundary 0.063 mm and symbols such as saGr read. Later editions rest more on behaviour by hand: confirm before citing.`;

const WORDS = { Gr: "gravel", Sa: "sand", Si: "silt", Cl: "clay" } as const;
const ADJECTIVES = { gr: "gravelly", sa: "sandy", si: "silty", cl: "clayey" } as const;

/**
 * Name of a soil by size after the guide table of ISO 14688-2:2004 (from memory).
 *
 * Gravel or sand above 40 % gives the main word, 20 to 40 % an adjective. Fines of 40 % or more: silt
 * where clay is below 10 % of them, clayey silt to 20, silty clay to 40, clay beyond. Fines of 15 to 40 %:
 * silty where clay is below 20 % of the fines, else clayey; 5 to 15 % the same with "slightly" and no
 * letter in the symbol. Coarse soils also get a term of grading, see `gradedTerm`.
 *
 * @returns without a symbol where clay is asked for and missing.
 * @throws RangeError where a share is not 0 to 100, or they do not add up.
 *
 * @example
 * const { symbol, name } = classifyIso14688({ gravelPct: 55, sandPct: 35, finesPct: 10, clayPct: 1 });
 * [symbol, name] // => ["saGr", "slightly silty sandy gravel"]
 * classifyIso14688({ gravelPct: 0, sandPct: 30, finesPct: 70, clayPct: 20 }).symbol // => "sasiCl"
 */
export function classifyIso14688(input: SizeClassInput): SizeClass {
  checkSizeShares(input);
  const { gravelPct, sandPct, finesPct, clayPct, cu, cc } = input;
  const pct = (value: number) => say`${formatFixed(value, 1)} %`;
  const path = [say`${pct(gravelPct)} gravel, ${pct(sandPct)} sand, ${pct(finesPct)} fines.`];
  const asked = finesPct >= 5;
  if (asked && clayPct === undefined) {
    path.push(
      say`Fines of 5 % or more: without the clay content silt and clay cannot be told apart.`,
    );
    return { path, missing: [say`clay content`], source: SOURCE };
  }
  const ofFines = finesPct > 0 ? (100 * (clayPct ?? 0)) / finesPct : 0;
  const letters: (keyof typeof ADJECTIVES)[] = [];
  let main: keyof typeof WORDS;
  let slightly = "";

  if (finesPct >= 40) {
    path.push(say`Fines of 40 % or more, clay ${pct(ofFines)} of them.`);
    if (ofFines >= 10 && ofFines < 20) letters.push("cl");
    if (ofFines >= 20 && ofFines < 40) letters.push("si");
    main = ofFines < 20 ? "Si" : "Cl";
  } else {
    main = gravelPct > sandPct ? "Gr" : "Sa";
    path.push(
      say`Fines below 40 %; ${main === "Gr" ? say`gravel exceeds sand` : say`sand is not exceeded by gravel`}.`,
    );
    const fine = ofFines < 20 ? "si" : "cl";
    if (finesPct >= 15) letters.push(fine);
    else if (asked) slightly = `slightly ${ADJECTIVES[fine]} `;
    if (asked)
      path.push(
        say`Clay is ${pct(ofFines)} of the fines: ${slightly ? "slightly " : ""}${ADJECTIVES[fine]}.`,
      );
  }
  if (main !== "Sa" && sandPct >= 20) letters.unshift("sa");
  if (main !== "Gr" && gravelPct >= 20) letters.unshift("gr");
  const symbol = letters.join("") + main;
  const words = `${slightly}${[...letters]
    .reverse()
    .map((letter) => `${ADJECTIVES[letter]} `)
    .join("")}${WORDS[main]}`;
  path.push(`${symbol}: ${words}.`);
  const coarse = main === "Gr" || main === "Sa";
  if (!coarse || finesPct >= 15) return { symbol, name: words, path, missing: [], source: SOURCE };
  if (cu === undefined || cc === undefined) {
    path.push(say`Without D10, D30 and D60 the grading cannot be told.`);
    return { symbol, name: words, path, missing: [say`D10, D30 and D60`], source: SOURCE };
  }
  const graded = gradedTerm(cu, cc);
  path.push(graded.reason);
  return { symbol, name: `${graded.term} ${words}`, path, missing: [], source: SOURCE };
}

export type GradedTerm = "multi-graded" | "medium-graded" | "even-graded" | "gap-graded";

/**
 * How widely a coarse soil is graded, by ISO 14688-2:2004 (from memory): multi-graded Cu above 15 and
 * Cc 1 to 3; medium-graded Cu 6 to 15 and Cc below 1; even-graded Cu below 6 and Cc below 1;
 * gap-graded a high Cu with any Cc, often below 0.5.
 *
 * The lines leave holes (Cu 10 with Cc 1.5). There Cu alone decides here, and the sentence says so.
 *
 * @throws RangeError where a coefficient is not positive.
 *
 * @example
 * gradedTerm(20, 1.5).term // => "multi-graded"
 * gradedTerm(20, 0.3).term // => "gap-graded"
 * gradedTerm(3, 0.9).term // => "even-graded"
 */
export function gradedTerm(
  cu: number,
  cc: number,
): { readonly term: GradedTerm; readonly reason: string } {
  for (const [name, value] of Object.entries({ cu, cc })) {
    if (!(value > 0)) throw new RangeError(`invalid \`${name}\`: ${value}; expected above 0`);
  }
  const told = say`Cu ${formatFixed(cu, 1)}, Cc ${formatFixed(cc, 2)}`;
  const named = (term: GradedTerm, fits: boolean) => ({
    term,
    reason: fits
      ? say`${told}: ${term}.`
      : say`${told}: no line of the table fits both; ${term} by Cu alone.`,
  });
  if (cu > 15) return cc >= 1 && cc <= 3 ? named("multi-graded", true) : named("gap-graded", true);
  if (cu >= 6) return named("medium-graded", cc < 1);
  return named("even-graded", cc < 1);
}
