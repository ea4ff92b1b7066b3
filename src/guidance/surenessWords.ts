import { say } from "../words/say.js";

/** From here on a verdict is called sure, given the stated errors; common practice, no source. */
export const SURE = 0.95;
/** The other steps between the words; common practice, no source. */
const LIKELY = 0.75;
const OPEN = 0.25;

/**
 * How sure something is, in a word and in percent: `sure` from 95 %, `likely` from 75 %, `open` from
 * 25 %, `doubtful` below (common practice, no source).
 *
 * A few hundred draws that all agree do not make certainty: the ends read `over 99` and `below 1`.
 *
 * @param share 0 to 1.
 * @throws RangeError where the share is not 0 to 1.
 *
 * @example
 * surenessWords(0.82) // => "likely, 82 %"
 * surenessWords(1) // => "sure, over 99 %"
 */
export function surenessWords(share: number): string {
  const percent = surenessPercent(share);
  if (share >= SURE) return say`sure, ${percent} %`;
  if (share >= LIKELY) return say`likely, ${percent} %`;
  return share >= OPEN ? say`open, ${percent} %` : say`doubtful, ${percent} %`;
}

/** A share of draws in percent, never more certain than some hundred draws can be. */
export function surenessPercent(share: number): string {
  if (!(share >= 0 && share <= 1)) {
    throw new RangeError(`invalid \`share\`: ${share}; expected 0 to 1`);
  }
  if (share > 0.99) return say`over 99`;
  return share < 0.01 ? say`below 1` : String(Math.round(100 * share));
}
