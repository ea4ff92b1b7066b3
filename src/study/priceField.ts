import { z } from "zod";
import { parseNumber } from "../quantities/parseNumber.js";
import { say } from "../words/say.js";
import type { WrittenPrice } from "./supplyConfig.js";
import { writtenForms } from "./writtenForm.js";

type Per = "t" | "m3" | "bag" | "load";

const TONNES = { t: 1, kg: 1000, lb: 1000 / 0.45359237, "short ton": 1 / 0.90718474 };
const CUBIC_METRES = { m3: 1, yd3: 1 / 0.764554857984, ft3: 1 / 0.028316846592 };
/** Units that a price may be for, and what a price for one of them is for one tonne, cubic metre, bag, load. */
const UNITS_OF: Readonly<Record<Per, Readonly<Record<string, number>>>> = {
  t: TONNES,
  m3: CUBIC_METRES,
  bag: { bag: 1 },
  load: { load: 1 },
};

/**
 * A price such as `38 per t`, `25 to 31 per t` or `52 per yd3`, in the study's currency.
 *
 * @param kinds what the price may be for.
 */
export function priceField<K extends Per>(kinds: readonly K[], example: string) {
  const units = kinds.flatMap((per) =>
    Object.entries(UNITS_OF[per]).map(([name, factor]) => ({ per, name, factor })),
  );
  const field = z.union([z.string(), z.number()]).transform((written, context): WrittenPrice<K> => {
    const text = String(written).trim();
    const refuse = (message: string) => {
      const names = units.map(({ name }) => name).join(", ");
      context.addIssue({
        code: "custom",
        message,
        params: {
          expected: say`a number or a range, “per”, and one of ${names}; for example “${example}”`,
          value: text,
        },
      });
      return z.NEVER;
    };
    const [, first, second, unit] =
      /^([\d.,]+)(?:\s+to\s+([\d.,]+))?(?:\s*(?:per\b|\/)\s*(.+?))?$/.exec(text) ?? [];
    const numbers = [first ?? "", second ?? first ?? ""].map(parseNumber);
    const [low, high] = numbers.flatMap((number) => ("value" in number ? [number.value] : []));
    if (low === undefined || high === undefined) return refuse(say`This is not a price.`);
    if (unit === undefined) return refuse(say`This price has no unit.`);
    if (low > high) return refuse(say`This range runs from its larger end to its smaller.`);
    const known = units.find(({ name }) => name === unit.replace("³", "3"));
    if (!known) return refuse(say`The unit “${unit}” is not known here.`);
    const { per, factor } = known;
    const amount = ((low + high) / 2) * factor;
    return { amount, low: low * factor, high: high * factor, per, written: text };
  });
  const names = units.map(({ name }) => name);
  return field.register(writtenForms, {
    type: "string",
    description: `A price or a range of prices in the study's currency, for example “${example}”. Per: ${names.join(", ")}.`,
    examples: [example],
    pattern: `^\\s*[\\d.]+(\\s+to\\s+[\\d.]+)?\\s*(per\\b|/)\\s*(${names.join("|").replace(/([mydft]+)3/g, "$1[3³]")})\\s*$`,
  });
}
