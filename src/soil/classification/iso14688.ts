import { checkThat } from "../../quantities/checkNumber.js";
import { formatFixed } from "../../quantities/format.js";
import { say, soilNamed, type Text } from "../../words/message.js";
import { checkSizeShares, pct, type SizeClass, type SizeClassInput } from "./sizeClass.js";

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
  const path: Text[] = [
    say`${pct(gravelPct)} gravel, ${pct(sandPct)} sand, ${pct(finesPct)} fines.`,
  ];
  if (finesPct >= 5 && clayPct === undefined) {
    path.push(
      say`Fines of 5 % or more: without the clay content, silt and clay cannot be distinguished.`,
    );
    return { path, missing: [say`clay content`], source: SOURCE };
  }
  const clayOfFinesPct = finesPct > 0 ? (100 * (clayPct ?? 0)) / finesPct : 0;
  const { main, letters, slightly, reasons } =
    finesPct >= 40 ? fineSoil(clayOfFinesPct) : coarseSoil(input, clayOfFinesPct);
  path.push(...reasons);
  if (main !== "Sa" && sandPct >= 20) letters.unshift("sa");
  if (main !== "Gr" && gravelPct >= 20) letters.unshift("gr");
  const symbol = letters.join("") + main;
  const adjectives = letters.toReversed().map((letter) => ADJECTIVES[letter]);
  const name = [...slightly, ...adjectives, WORDS[main]].join(" ");
  path.push(say`${symbol}: ${soilNamed(name)}.`);
  const coarse = main === "Gr" || main === "Sa";
  if (!coarse || finesPct >= 15) return { symbol, name, path, missing: [], source: SOURCE };
  if (cu === undefined || cc === undefined) {
    path.push(say`Without D10, D30 and D60 the grading term cannot be determined.`);
    return { symbol, name, path, missing: [say`D10, D30 and D60`], source: SOURCE };
  }
  const { term, reason } = gradedTerm(cu, cc);
  path.push(reason);
  return { symbol, name: `${term} ${name}`, path, missing: [], source: SOURCE };
}

interface SoilParts {
  readonly main: keyof typeof WORDS;
  readonly letters: (keyof typeof ADJECTIVES)[];
  /** Words without a letter in the symbol. */
  readonly slightly: readonly string[];
  readonly reasons: readonly Text[];
}

function fineSoil(clayOfFinesPct: number): SoilParts {
  const letters: SoilParts["letters"] = [];
  if (clayOfFinesPct >= 10 && clayOfFinesPct < 20) letters.push("cl");
  if (clayOfFinesPct >= 20 && clayOfFinesPct < 40) letters.push("si");
  return {
    main: clayOfFinesPct < 20 ? "Si" : "Cl",
    letters,
    slightly: [],
    reasons: [say`Fines of 40 % or more, clay ${pct(clayOfFinesPct)} of them.`],
  };
}

function coarseSoil(
  { gravelPct, sandPct, finesPct }: SizeClassInput,
  clayOfFinesPct: number,
): SoilParts {
  const gravel = gravelPct > sandPct;
  const main = gravel ? "Gr" : "Sa";
  const reasons = [
    say`Fines below 40 %; ${gravel ? say`gravel exceeds sand` : say`sand is not exceeded by gravel`}.`,
  ];
  if (finesPct < 5) return { main, letters: [], slightly: [], reasons };
  const fine = clayOfFinesPct < 20 ? "si" : "cl";
  const named = finesPct >= 15;
  const words = named ? ADJECTIVES[fine] : `slightly ${ADJECTIVES[fine]}`;
  reasons.push(say`Clay is ${pct(clayOfFinesPct)} of the fines: ${soilNamed(words)}.`);
  return { main, letters: named ? [fine] : [], slightly: named ? [] : [words], reasons };
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
): { readonly term: GradedTerm; readonly reason: Text } {
  for (const [name, value] of Object.entries({ cu, cc })) {
    checkThat(value > 0, { [name]: value }, "above 0");
  }
  const coefficients = say`Cu ${formatFixed(cu, 1)}, Cc ${formatFixed(cc, 2)}`;
  const named = (term: GradedTerm, fits: boolean) => ({
    term,
    reason: fits
      ? say`${coefficients}: ${soilNamed(term)}.`
      : say`${coefficients}: no line of the table fits both; ${soilNamed(term)} by Cu alone.`,
  });
  if (cu > 15) return cc >= 1 && cc <= 3 ? named("multi-graded", true) : named("gap-graded", true);
  if (cu >= 6) return named("medium-graded", cc < 1);
  return named("even-graded", cc < 1);
}
