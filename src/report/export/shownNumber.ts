import { localNumber } from "../../words/language.js";

/** A number as a report prints it. */
export interface ShownNumber {
  readonly value: number;
  /** How many decimals are printed. */
  readonly decimals: number;
}

/**
 * Reads a number as a report prints it, in the language that words are said in now; none where the
 * text is anything else, also where it has more digits than a number of the machine keeps.
 *
 * @example
 * shownNumber("−0.50") // => { value: -0.5, decimals: 2 }
 * shownNumber("≥ 12") // => undefined
 */
export function shownNumber(text: string): ShownNumber | undefined {
  const [whole, fraction, more] = text.replace("−", "-").split(localNumber("."));
  const known = /^-?\d{1,15}$/.test(whole) && (fraction === undefined || /^\d+$/.test(fraction));
  if (!known || more !== undefined || text.length > 16) return undefined;
  return { value: Number(`${whole}.${fraction ?? "0"}`), decimals: fraction?.length ?? 0 };
}
