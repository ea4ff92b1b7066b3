import { say } from "../words/say.js";
import type { NumberExercise, WrongTurn } from "./exercise.js";

/** Units that a value may have been given in by mistake, by what the value is then multiplied with. */
function otherUnits(unit: string): Readonly<Record<string, string>> {
  const units: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    mm: { "1000": say`micrometres`, "0.1": say`centimetres`, "0.001": say`metres` },
    MPa: { "1000": say`kilopascals`, "0.001": say`gigapascals (or kN/mm²)`, "0.1": say`kN/cm²` },
    kg: { "1000": say`grams`, "0.001": say`tonnes` },
    "kg/m³": { "0.001": say`g/cm³` },
  };
  return units[unit] ?? {};
}

/**
 * The wrong turns that any number may have taken: a slipped decimal point or decade of the axis, another
 * unit, a fraction for percent, the rest to a hundred, a sign, a quotient upside down. Source: common
 * practice of teaching, no source.
 *
 * @example
 * commonTurns({ value: 20, unit: "%" }).map(({ value }) => value) // => [0.2, 80, 2000, 200, 2, 20000, 0.02, -20, 0.05]
 */
export function commonTurns({
  value,
  unit,
}: Pick<NumberExercise, "value" | "unit">): WrongTurn<number>[] {
  if (value === 0) return [];
  const named = otherUnits(unit);
  const percent = unit === "%";
  const turns: WrongTurn<number>[] = percent
    ? [
        {
          value: value / 100,
          text: say`This is a fraction, and percent are asked for: multiply by 100.`,
        },
        {
          value: 100 - value,
          text: say`This is the rest to 100 %. Ask whether the part passes or is kept back, is meant or is left.`,
        },
        {
          value: 100 * value,
          text: say`This was multiplied by 100 once too often: it was in percent already.`,
        },
      ]
    : [];
  for (const factor of [10, 0.1, 100, 0.01, 1000, 0.001]) {
    if (percent && (factor === 100 || factor === 0.01)) continue;
    const other = named[String(factor)];
    const times = Math.round(Math.max(factor, 1 / factor));
    turns.push({
      value: value * factor,
      text: other
        ? say`This looks like ${other}, and ${unit} are asked for.`
        : factor > 1
          ? say`This is too large by a factor of ${times}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.`
          : say`This is too small by a factor of ${times}. Look at the decimal point, at the unit, and on a chart at the decade of the axis.`,
    });
  }
  turns.push({
    value: -value,
    text: say`The size is right and the sign is wrong: turn the difference round.`,
  });
  turns.push({
    value: 1 / value,
    text: say`The quotient stands upside down: exchange what is divided and what divides.`,
  });
  return turns;
}
