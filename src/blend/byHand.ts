import { checkThat } from "../quantities/checkNumber.js";
import { formatNumber } from "../quantities/format.js";
import { say, type Text, wordFor } from "../words/message.js";

export interface HandBlend {
  /** `already`: the soil has no more than the target; `unreachable`: the sand has as much or more. */
  readonly status: "ok" | "already" | "unreachable";
  readonly message: Text;
  /** Of dry mass; 0 where none is needed, null where it does not help. */
  readonly sandToOneOfSoil: number | null;
  readonly soilSharePct: number | null;
  readonly sandSharePct: number | null;
  /** The sum step by step, for doing it on paper. */
  readonly steps: readonly Text[];
}

/**
 * How much sand brings a soil down to a share of fines (or of clay), by hand.
 *
 * Formula: sand to one of soil = (soil − target) / (target − sand), all in percent of dry mass; so the
 * share of soil = (target − sand) / (soil − sand). From the balance: soil's fines + sand's fines = target
 * × (soil + sand). Source: mass balance; the rule is common practice, no source.
 *
 * @param input fines (or clay) of soil, sand and blend, 0 to 100. `sandPct` default 0: washed sand.
 * A jar shows volumes, not masses, and reads clay high: take its result for a first trial only.
 * @throws RangeError for a value not 0 to 100.
 *
 * @example
 * const { sandToOneOfSoil, soilSharePct } = blendByHand({ soilPct: 40, targetPct: 30 });
 * [sandToOneOfSoil, soilSharePct] // => [0.333333, 75]
 */
export function blendByHand(input: {
  readonly soilPct: number;
  readonly targetPct: number;
  readonly sandPct?: number;
  /** What the percentages are of, for the words: default `fines`. */
  readonly share?: "fines" | "clay";
}): HandBlend {
  const { soilPct, targetPct, sandPct = 0 } = input;
  const what = wordFor(input.share ?? "fines");
  for (const [name, value] of Object.entries({ soilPct, targetPct, sandPct })) {
    checkThat(value >= 0 && value <= 100, { [`${name}`]: value }, "0 to 100");
  }
  const text = (value: number) => formatNumber(value, 3);
  const read = say`The soil has ${text(soilPct)} % ${what}, the sand ${text(sandPct)} %; the blend is to have ${text(targetPct)} %.`;
  if (soilPct <= targetPct) {
    const message =
      soilPct === targetPct
        ? say`The soil is on the target as it is.`
        : say`The soil already has less ${what} than the target: sand would take it further away.`;
    const shares = { sandToOneOfSoil: 0, soilSharePct: 100, sandSharePct: 0 };
    return { status: "already", message, ...shares, steps: [read, message] };
  }
  if (sandPct >= targetPct) {
    const message = say`This sand has as much ${what} as the target or more: it cannot bring the soil down to it.`;
    const shares = { sandToOneOfSoil: null, soilSharePct: null, sandSharePct: null };
    return { status: "unreachable", message, ...shares, steps: [read, message] };
  }
  const [excess, room] = [soilPct - targetPct, targetPct - sandPct];
  const sand = excess / room;
  const soilSharePct = 100 / (1 + sand);
  return {
    status: "ok",
    message: say`${text(sand)} parts of sand to one part of soil, by dry mass.`,
    sandToOneOfSoil: sand,
    soilSharePct,
    sandSharePct: 100 - soilSharePct,
    steps: [
      read,
      say`One part of soil is ${text(soilPct)} − ${text(targetPct)} = ${text(excess)} points above the target.`,
      say`One part of sand is ${text(targetPct)} − ${text(sandPct)} = ${text(room)} points below it.`,
      say`So one part of soil needs ${text(excess)} ÷ ${text(room)} = ${text(sand)} parts of sand.`,
      say`That is ${text(soilSharePct)} % soil and ${text(100 - soilSharePct)} % sand of the dry mass, cement not counted.`,
      say`Check: (${text(soilPct)} + ${text(sand)} × ${text(sandPct)}) ÷ (1 + ${text(sand)}) = ${text(targetPct)} %.`,
    ],
  };
}
