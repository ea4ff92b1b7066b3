import { formatFixed } from "../../quantities/format.js";
import { type Sentence, say, soilNamed, type Text } from "../../words/message.js";
import { aLine } from "../consistency/plasticityChart.js";
import {
  type CurveLimits,
  checkSizeShares,
  NO_LIMITS,
  pct,
  type SizeClass,
  type SizeClassInput,
} from "./sizeClass.js";

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
  return input.finesPct >= 35 ? fineSoil(input) : coarseSoil(input);
}

function fineSoil(input: SizeClassInput): SizeClass {
  const { gravelPct, sandPct, finesPct, organic } = input;
  const fines = bsFines(input);
  const path: Text[] = [say`${pct(finesPct)} fines, 35 % or more: fine soil.`, fines.reason];
  if (!fines.letter) return { path, missing: [NO_LIMITS], source: SOURCE };
  let symbol = `${fines.letter}${fines.band ?? ""}`;
  let name = fines.words;
  if (finesPct < 65) {
    const [letter, word] = gravelPct > sandPct ? ["G", "gravelly"] : ["S", "sandy"];
    symbol += letter;
    name = `${word} ${name}`;
    path.push(say`Fines below 65 %: ${soilNamed(word)}.`);
  }
  if (organic) {
    symbol += "O";
    name = `organic ${name}`;
    path.push(say`Organic: O.`);
  }
  return { symbol, name, path, missing: [], source: SOURCE };
}

function coarseSoil(input: SizeClassInput): SizeClass {
  const { gravelPct, sandPct, finesPct } = input;
  const gravel = gravelPct > sandPct;
  const [letter, word] = gravel ? ["G", "gravel"] : ["S", "sand"];
  const fines = bsFines(input);
  const adjective = fines.letter === "C" ? "clayey" : "silty";
  const path = [
    say`${pct(finesPct)} fines, below 35 %: coarse soil.`,
    say`${pct(gravelPct)} gravel ${gravel ? say`exceeds` : say`does not exceed`} ${pct(sandPct)} sand: ${soilNamed(word)}.`,
  ];
  const missing: Text[] = [];
  const result = (symbol: string, name: string): SizeClass =>
    missing.length > 0
      ? { path, missing, source: SOURCE }
      : { symbol, name, path, missing, source: SOURCE };
  if (finesPct >= 15) {
    path.push(say`Fines of 15 to 35 %: named by the fines. ${fines.reason}`);
    if (!fines.letter) missing.push(NO_LIMITS);
    return result(`${letter}${fines.letter}${fines.band ?? ""}`, `very ${adjective} ${word}`);
  }
  const graded = grading(input, gravel);
  path.push(graded.reason);
  if (!graded.letters) missing.push(say`D10, D30 and D60`);
  if (finesPct < 5) {
    path.push(say`Fines below 5 %: clean.`);
    return result(`${letter}${graded.letters}`, `${graded.words} ${word}`);
  }
  path.push(say`Fines of 5 to 15 %: both. ${fines.reason}`);
  if (!fines.letter) missing.push(NO_LIMITS);
  return result(
    `${letter}${graded.letters?.slice(0, 1)}-${letter}${fines.letter}`,
    `${graded.words} ${adjective} ${word}`,
  );
}

function grading(
  { cu, cc }: SizeClassInput,
  gravel: boolean,
): { readonly letters?: string; readonly words?: string; readonly reason: Sentence } {
  if (cu === undefined || cc === undefined) {
    return {
      reason: say`Whether the soil is well or poorly graded cannot be determined without D10, D30 and D60.`,
    };
  }
  const minCu = gravel ? 4 : 6;
  const coefficients = say`Cu ${formatFixed(cu, 1)}, Cc ${formatFixed(cc, 2)}`;
  if (cu < minCu) {
    const reason = say`${coefficients}: uniform, Pu.`;
    return { letters: "Pu", words: "uniformly graded", reason };
  }
  if (cc >= 1 && cc <= 3) {
    return { letters: "W", words: "well-graded", reason: say`${coefficients}: well-graded, W.` };
  }
  const reason = say`${coefficients}: a gap in the grading, Pg.`;
  return { letters: "Pg", words: "gap-graded", reason };
}

const BANDS = [
  { letter: "L", below: 35, word: "low", plasticity: say`low plasticity` },
  { letter: "I", below: 50, word: "intermediate", plasticity: say`intermediate plasticity` },
  { letter: "H", below: 70, word: "high", plasticity: say`high plasticity` },
  { letter: "V", below: 90, word: "very high", plasticity: say`very high plasticity` },
  {
    letter: "E",
    below: Infinity,
    word: "extremely high",
    plasticity: say`extremely high plasticity`,
  },
];

interface BsFines {
  readonly letter?: "M" | "C";
  /** L, I, H, V or E; absent for non-plastic fines. */
  readonly band?: string;
  readonly words: string;
  readonly reason: Sentence;
}

/**
 * The fine part on the plasticity chart of BS 5930: C on or above the A-line, M below it; L below a
 * liquid limit of 35, I to 50, H to 70, V to 90, E beyond (A-line read in Smith; bands from memory).
 */
function bsFines({
  liquidLimitPct: liquid,
  plasticityIndexPct: index,
  nonPlastic,
}: CurveLimits): BsFines {
  if (nonPlastic) return { letter: "M", words: "silt", reason: say`The fines are non-plastic: M.` };
  if (liquid === undefined || index === undefined) {
    return {
      words: "fines",
      reason: say`The fines cannot be named without liquid limit and plasticity index.`,
    };
  }
  const line = aLine(liquid);
  const clay = index >= line;
  const letter = clay ? "C" : "M";
  const band = BANDS.find(({ below }) => liquid < below) ?? BANDS[4];
  return {
    letter,
    band: band.letter,
    words: `${clay ? "clay" : "silt"} of ${band.word} plasticity`,
    reason: say`PI ${formatFixed(index, 1)} lies ${clay ? say`on or above` : say`below`} the A-line (${formatFixed(line, 1)}): ${letter}; LL ${formatFixed(liquid, 1)}: ${band.plasticity}, ${band.letter}.`,
  };
}
