import { z } from "zod";
import { parseNumber } from "../quantities/parseNumber.js";
import { say } from "../words/say.js";
import type { Price } from "./studyConfig.js";

const PER_TONNE = { t: 1, kg: 1000, lb: 1000 / 0.45359237, "short ton": 1 / 0.90718474 } as const;
const PER_CUBIC_METRE = { m3: 1, yd3: 1 / 0.764554857984, ft3: 1 / 0.028316846592 } as const;

/** A price such as `38 per t` or `52 per yd3`, in the study's currency. */
export const priceField = z.union([z.string(), z.number()]).transform((written, context): Price => {
  const text = String(written);
  const [, numeral, unit] = /^\s*([\d.,]+)(?:\s*(?:per|\/)\s*(.+?))?\s*$/.exec(text) ?? [];
  const number = parseNumber(numeral ?? text);
  const name = unit?.replace("³", "3");
  if ("value" in number && name !== undefined) {
    if (Object.hasOwn(PER_TONNE, name)) {
      return {
        amount: number.value * PER_TONNE[name as keyof typeof PER_TONNE],
        per: "t",
        written: text.trim(),
      };
    }
    if (Object.hasOwn(PER_CUBIC_METRE, name)) {
      const factor = PER_CUBIC_METRE[name as keyof typeof PER_CUBIC_METRE];
      return { amount: number.value * factor, per: "m3", written: text.trim() };
    }
  }
  context.addIssue({
    code: "custom",
    message:
      "value" in number && unit === undefined
        ? say`This price has no unit.`
        : say`This is not a price.`,
    params: {
      expected: say`a number, “per”, and one of ${[...Object.keys(PER_TONNE), ...Object.keys(PER_CUBIC_METRE)].join(", ")}; for example “38 per t”`,
      value: text,
    },
  });
  return z.NEVER;
});
