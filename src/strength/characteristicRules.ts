import { phrase } from "../words/say.js";
/** How a characteristic strength is made from the blocks. */
export interface CharacteristicRule {
  readonly id: string;
  readonly name: string;
  readonly formula: string;
  readonly distribution: "normal" | "lognormal" | "none";
  readonly factorKind:
    | "prediction-unknown"
    | "prediction-known"
    | "tolerance-75"
    | "tolerance-95"
    | "margin-1.65"
    | "least-block";
  /** Fewest blocks that the rule is meant for. */
  readonly leastBlocks: number;
  readonly source: string;
  readonly basis: "read" | "own calculation" | "memory";
}

const EN1990 = phrase`EN 1990:2002 Annex D.7.2; its Table D.1 read as coded in open software, recomputed here without its truncation`;
const TOLERANCE = phrase`Exact one-sided tolerance factor, noncentral t; own calculation`;

const rule = (
  id: string,
  name: string,
  formula: string,
  distribution: CharacteristicRule["distribution"],
  factorKind: CharacteristicRule["factorKind"],
  leastBlocks: number,
  source: string,
  basis: CharacteristicRule["basis"],
): CharacteristicRule => ({
  id,
  name,
  formula,
  distribution,
  factorKind,
  leastBlocks,
  source,
  basis,
});

/**
 * The rules for a characteristic (5 %) strength from a handful of blocks. They differ widely for few
 * blocks: with three, the factor is 3.37, 3.15 or 7.66; so a report must say which was used.
 *
 * @example
 * CHARACTERISTIC_RULES.length // => 9
 */
export const CHARACTERISTIC_RULES: readonly CharacteristicRule[] = [
  rule(
    "en1990-normal",
    phrase`EN 1990 Annex D, scatter from these blocks, normal`,
    "m − k s, k = t(0.95, n−1) √(1 + 1/n)",
    "normal",
    "prediction-unknown",
    3,
    EN1990,
    "read",
  ),
  rule(
    "en1990-lognormal",
    phrase`EN 1990 Annex D, scatter from these blocks, lognormal`,
    "exp(m_ln − k s_ln), k = t(0.95, n−1) √(1 + 1/n)",
    "lognormal",
    "prediction-unknown",
    3,
    EN1990,
    "read",
  ),
  rule(
    "en1990-normal-known",
    phrase`EN 1990 Annex D, coefficient of variation known beforehand, normal`,
    "m (1 − k V), k = 1.645 √(1 + 1/n)",
    "normal",
    "prediction-known",
    1,
    EN1990,
    "read",
  ),
  rule(
    "en1990-lognormal-known",
    phrase`EN 1990 Annex D, coefficient of variation known beforehand, lognormal`,
    "exp(m_ln − k √(ln(V² + 1))), k = 1.645 √(1 + 1/n)",
    "lognormal",
    "prediction-known",
    1,
    EN1990,
    "read",
  ),
  rule(
    "tolerance-75",
    phrase`95 % of all blocks above, with 75 % confidence, normal`,
    "m − k s",
    "normal",
    "tolerance-75",
    2,
    TOLERANCE,
    "own calculation",
  ),
  rule(
    "tolerance-95",
    phrase`95 % of all blocks above, with 95 % confidence, normal`,
    "m − k s",
    "normal",
    "tolerance-95",
    2,
    TOLERANCE,
    "own calculation",
  ),
  rule(
    "tolerance-95-lognormal",
    phrase`95 % of all blocks above, with 95 % confidence, lognormal`,
    "exp(m_ln − k s_ln)",
    "lognormal",
    "tolerance-95",
    2,
    TOLERANCE,
    "own calculation",
  ),
  rule(
    "margin-1.65",
    phrase`Mean less 1.65 s: no allowance for how few the blocks are`,
    "m − 1.65 s",
    "normal",
    "margin-1.65",
    2,
    phrase`IS 10262 margin for concrete, read in a forum discussion; not in the standard itself`,
    "read",
  ),
  rule(
    "nzs4298-least-block",
    phrase`NZS 4298:1998 small sample`,
    "(1 − 1.5 s/m) × least block",
    "none",
    "least-block",
    5,
    phrase`NZS 4298:1998, from memory: check against the standard; strengths there are corrected for aspect ratio first`,
    "memory",
  ),
];
