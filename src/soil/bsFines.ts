import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import { aLine } from "./aLine.js";
import type { SizeClassInput } from "./sizeClassInput.js";

const BANDS = [
  { letter: "L", below: 35, word: "low" },
  { letter: "I", below: 50, word: "intermediate" },
  { letter: "H", below: 70, word: "high" },
  { letter: "V", below: 90, word: "very high" },
  { letter: "E", below: Infinity, word: "extremely high" },
];

export interface BsFines {
  readonly letter?: "M" | "C";
  /** L, I, H, V or E; absent for non-plastic fines. */
  readonly band?: string;
  readonly words: string;
  readonly reason: string;
}

/**
 * The fine part on the plasticity chart of BS 5930: C on or above the A-line, M below it; L below a
 * liquid limit of 35, I to 50, H to 70, V to 90, E beyond (A-line read in Smith; bands from memory).
 */
export function bsFines({
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
