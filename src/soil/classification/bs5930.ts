import { formatFixed } from "../../quantities/format.js";
import { say, type Text, wordFor } from "../../words/message.js";
import { aLine } from "../consistency/plasticityChart.js";
import { checkSizeShares, type SizeClass, type SizeClassInput } from "./sizeClass.js";

const SOURCE = say`BS 5930 letters, from memory; 35 % fines, 0.063 mm, the A-line and the letters G S M C F read in Smith, Elements of Soil Mechanics. For W the limits of ASTM D2487 are taken (Cu 4 for gravel, 6 for sand, Cc 1 to 3).`;

/**
 * Soil group of BS 5930 by letters.
 *
 * Fines of 35 % or more: M or C by the A-line with a letter for plasticity, then G or S below 65 % fines,
 * then O where organic. Coarse: G or S; below 5 % fines W, or P (Pu uniform, Pg gap); 5 to 15 % W or P and
 * M or C after a hyphen; 15 to 35 % M or C with the letter for plasticity.
 *
 * @returns without a symbol where a value that decides is missing; `missing` names it.
 * @throws RangeError where a share is not 0 to 100, or they do not add up.
 *
 * @example
 * classifyBs5930({ gravelPct: 0, sandPct: 27, finesPct: 73, liquidLimitPct: 32, plasticityIndexPct: 8 }).symbol // => "ML"
 * classifyBs5930({ gravelPct: 31, sandPct: 67, finesPct: 2, cu: 9.8, cc: 1.27 }).symbol // => "SW"
 */
export function classifyBs5930(input: SizeClassInput): SizeClass {
  checkSizeShares(input);
  const { gravelPct, sandPct, finesPct, organic } = input;
  const pct = (value: number) => say`${formatFixed(value, 1)} %`;
  const fines = bsFines(input);
  const noLimits = [say`liquid limit and plasticity index`];
  if (finesPct >= 35) {
    const path = [say`${pct(finesPct)} fines, 35 % or more: fine soil.`, fines.reason];
    if (!fines.letter) return { path, missing: noLimits, source: SOURCE };
    const coarse = finesPct < 65 ? (gravelPct > sandPct ? "G" : "S") : "";
    if (coarse) path.push(say`Fines below 65 %: ${coarse === "G" ? "gravelly" : "sandy"}.`);
    if (organic) path.push(say`Organic: O.`);
    return {
      symbol: `${fines.letter}${fines.band ?? ""}${coarse}${organic ? "O" : ""}`,
      name: `${organic ? "organic " : ""}${coarse === "G" ? "gravelly " : coarse ? "sandy " : ""}${fines.words}`,
      path,
      missing: [],
      source: SOURCE,
    };
  }
  const gravel = gravelPct > sandPct;
  const [letter, word] = gravel ? ["G", "gravel"] : ["S", "sand"];
  const path = [
    say`${pct(finesPct)} fines, below 35 %: coarse soil.`,
    say`${pct(gravelPct)} gravel ${gravel ? say`exceeds` : say`does not exceed`} ${pct(sandPct)} sand: ${word}.`,
  ];
  if (finesPct >= 15) {
    path.push(say`Fines of 15 to 35 %: named by the fines. ${fines.reason}`);
    if (!fines.letter) return { path, missing: noLimits, source: SOURCE };
    return {
      symbol: `${letter}${fines.letter}${fines.band ?? ""}`,
      name: `very ${fines.letter === "C" ? "clayey" : "silty"} ${word}`,
      path,
      missing: [],
      source: SOURCE,
    };
  }
  const graded = grading(input, gravel);
  path.push(graded.reason);
  const missing = graded.letters ? [] : [say`D10, D30 and D60`];
  if (finesPct < 5) {
    path.push(say`Fines below 5 %: clean.`);
    if (!graded.letters) return { path, missing, source: SOURCE };
    return {
      symbol: letter + graded.letters,
      name: `${graded.words} ${word}`,
      path,
      missing,
      source: SOURCE,
    };
  }
  path.push(say`Fines of 5 to 15 %: both. ${fines.reason}`);
  if (!graded.letters || !fines.letter) {
    return {
      path,
      missing: [...missing, ...(fines.letter ? [] : noLimits)],
      source: SOURCE,
    };
  }
  return {
    symbol: `${letter}${graded.letters.slice(0, 1)}-${letter}${fines.letter}`,
    name: `${graded.words} ${fines.letter === "C" ? "clayey" : "silty"} ${word}`,
    path,
    missing: [],
    source: SOURCE,
  };
}

function grading(
  { cu, cc }: SizeClassInput,
  gravel: boolean,
): { readonly letters?: string; readonly words?: string; readonly reason: Text } {
  if (cu === undefined || cc === undefined) {
    return { reason: say`Well or poorly graded cannot be told without D10, D30 and D60.` };
  }
  const least = gravel ? 4 : 6;
  const told = say`Cu ${formatFixed(cu, 1)}, Cc ${formatFixed(cc, 2)}`;
  if (cu >= least && cc >= 1 && cc <= 3) {
    return { letters: "W", words: "well-graded", reason: say`${told}: well-graded, W.` };
  }
  return cu < least
    ? { letters: "Pu", words: "uniformly graded", reason: say`${told}: uniform, Pu.` }
    : { letters: "Pg", words: "gap-graded", reason: say`${told}: a gap in the grading, Pg.` };
}

const BANDS = [
  { letter: "L", below: 35, word: "low" },
  { letter: "I", below: 50, word: "intermediate" },
  { letter: "H", below: 70, word: "high" },
  { letter: "V", below: 90, word: "very high" },
  { letter: "E", below: Infinity, word: "extremely high" },
];

interface BsFines {
  readonly letter?: "M" | "C";
  /** L, I, H, V or E; absent for non-plastic fines. */
  readonly band?: string;
  readonly words: string;
  readonly reason: Text;
}

/**
 * The fine part on the plasticity chart of BS 5930: C on or above the A-line, M below it; L below a
 * liquid limit of 35, I to 50, H to 70, V to 90, E beyond (A-line read in Smith; bands from memory).
 */
function bsFines({
  liquidLimitPct: liquid,
  plasticityIndexPct: index,
  nonPlastic,
}: Pick<SizeClassInput, "liquidLimitPct" | "plasticityIndexPct" | "nonPlastic">): BsFines {
  if (nonPlastic) return { letter: "M", words: "silt", reason: say`The fines are non-plastic: M.` };
  if (liquid === undefined || index === undefined) {
    return {
      words: "fines",
      reason: say`The fines cannot be named without liquid limit and plasticity index.`,
    };
  }
  const line = aLine(liquid);
  const letter = index >= line ? "C" : "M";
  const { letter: band, word } = BANDS.find(({ below }) => liquid < below) ?? BANDS[4];
  return {
    letter,
    band,
    words: `${letter === "C" ? "clay" : "silt"} of ${word} plasticity`,
    reason: say`PI ${formatFixed(index, 1)} lies ${letter === "C" ? say`on or above` : say`below`} the A-line (${formatFixed(line, 1)}): ${letter}; LL ${formatFixed(liquid, 1)}: ${word} plasticity, ${band}.`,
  };
}
