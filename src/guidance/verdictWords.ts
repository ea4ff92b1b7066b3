import { phrase, sayOf } from "../words/say.js";
import type { CriterionVerdict, GuidanceCheck } from "./guidanceCheck.js";

const WORDS: Readonly<Record<CriterionVerdict | GuidanceCheck["verdict"], string>> = {
  inside: phrase`inside`,
  outside: phrase`outside`,
  incomplete: phrase`incomplete`,
  "not measured": phrase`not measured`,
  "not classified": phrase`not classified`,
};

/** A verdict in the language of the study. */
export function verdictWords(verdict: keyof typeof WORDS): string {
  return sayOf(WORDS[verdict]);
}
