import { parseNumber } from "../quantities/parseQuantity.js";
import type { SourcedRange } from "../quantities/sourcedRange.js";
import { convertFromBase } from "../quantities/units.js";
import { say, type Text } from "../words/message.js";
import { byDefault, group, optional, required } from "./groups.js";
import {
  BESIDE,
  type Kind,
  label,
  percent,
  positive,
  quantity,
  Refusal,
  shaped,
  text,
} from "./kinds.js";

/** A price or a range of prices in the study's currency, for one tonne, loose cubic metre, bag or load. */
export interface WrittenPrice<Per extends string> {
  /** Middle of the range. */
  readonly amount: number;
  readonly low: number;
  readonly high: number;
  readonly per: Per;
  /** As the user wrote it. */
  readonly written: string;
}

type Per = "t" | "m3" | "bag" | "load";

const perTonne = (unit: string) => convertFromBase(1e6, unit, "mass");
const TONNES = { t: 1, kg: 1000, lb: perTonne("lb"), "short ton": perTonne("short ton") };
const CUBIC_METRES = { m3: 1, yd3: 1 / 0.764554857984, ft3: 1 / 0.028316846592 };
/** Units that a price may be for, and what a price for one of them is for one tonne, cubic metre, bag, load. */
const UNITS_OF: Readonly<Record<Per, Readonly<Record<string, number>>>> = {
  t: TONNES,
  m3: CUBIC_METRES,
  bag: { bag: 1 },
  load: { load: 1 },
};

/** One number, or two with “to” between them, and what stands behind. */
function rangeAndRest(written: string, problem: Text, expected: Text) {
  const [, first = "", second, rest = ""] =
    /^\s*([\d.,]+)(?:\s+to\s+([\d.,]+))?\s*(.*?)\s*$/.exec(written) ?? [];
  const numbers = [first, second ?? first].map(parseNumber);
  const [low, high] = numbers.flatMap((one) => ("value" in one ? [one.value] : []));
  if (low === undefined || high === undefined) return new Refusal(problem, expected);
  if (low > high) {
    return new Refusal(say`This range runs from its larger end to its smaller.`, expected);
  }
  return { low, high, rest };
}

/**
 * A price such as `38 per t`, `25 to 31 per t` or `52 per yd3`, in the study's currency.
 *
 * @param kinds what the price may be for.
 */
export function price<K extends Per>(kinds: readonly K[], example: string): Kind<WrittenPrice<K>> {
  const units = kinds.flatMap((per) =>
    Object.entries(UNITS_OF[per]).map(([name, factor]) => ({ per, name, factor })),
  );
  const unitNames = units.map(({ name }) => name);
  const form = say`a number or a range, “per”, and one of ${unitNames.join(", ")}`;
  const expected = say`${form}; for example “${example}”`;
  const read = (written: string): WrittenPrice<K> | Refusal => {
    const range = rangeAndRest(written, say`This is not a price.`, expected);
    if (range instanceof Refusal) return range;
    const [, unit] = /^(?:per\b|\/)\s*(.+)$/.exec(range.rest) ?? [];
    if (range.rest === "") return new Refusal(say`This price has no unit.`, expected);
    if (unit === undefined) return new Refusal(say`This is not a price.`, expected);
    const known = units.find(({ name }) => name === unit.replace("³", "3"));
    if (!known) return new Refusal(say`The unit “${unit}” is not known here.`, expected);
    const { per, factor } = known;
    const { low, high } = range;
    const amount = ((low + high) / 2) * factor;
    return { amount, low: low * factor, high: high * factor, per, written };
  };
  const type = `WrittenPrice<${kinds.map((per) => JSON.stringify(per)).join(" | ")}>`;
  return {
    ...shaped(label(example), type, read),
    form,
    schema: () => ({
      type: "string",
      pattern: `^\\s*[\\d.]+(\\s+to\\s+[\\d.]+)?\\s*(per\\b|/)\\s*(${unitNames.join("|").replace(/([mydft]+)3/g, "$1[3³]")})\\s*$`,
    }),
  };
}

/** A number or a range, above 0, before a unit that must be written. */
function range(
  unit: string,
  example: string,
): Kind<{ readonly low: number; readonly high: number }> {
  const form = say`a number or a range with its unit`;
  const expected = say`a number or a range with its unit, for example “${example}”`;
  const read = (written: string) => {
    const found = rangeAndRest(written, say`This is not a range.`, expected);
    if (found instanceof Refusal) return found;
    const { low, high, rest } = found;
    if (rest === "") return new Refusal(say`This number has no unit.`, expected);
    if (!(low > 0)) return new Refusal(say`This factor is not above 0.`, expected);
    if (rest.replace("³", "3") === unit) return { low, high };
    return new Refusal(say`The unit “${rest}” is not known here.`, expected);
  };
  return { ...shaped(label(example), "", read), form, schema: () => ({ type: "string" }) };
}

/** A factor of the user's own, with the source in their words: it is printed beside the number. */
function ownFactor(id: string, name: Text, unit: string, example: string): Kind<SourcedRange> {
  const rows = {
    factor: required(BESIDE, range(unit, example), "The factor, or its range."),
    source: required(
      "source",
      text("Environmental product declaration of the supplier, 2025"),
      "Where it comes from, printed beside the number.",
    ),
  };
  return shaped(
    group(rows),
    "SourcedRange",
    ({ low, high, source }): SourcedRange => ({
      id,
      name,
      unit: unit.replace("m3", "m³"),
      low,
      high,
      source,
      basis: "entered",
    }),
  );
}

/** Keys of a material and of the cement: how it gets to the site, and its carbon. */
export const supplyRows = {
  haul: optional("haul", price(["t", "m3", "load"], "6 to 8 per t"), "Price of haulage."),
  waste: optional(
    "lossPct",
    percent("4 %", 50),
    "Lost in the heap and on the way, of what goes into the mix. Left out, nothing is added.",
  ),
  carbon: optional(
    "carbon",
    // The name is filled in where the material is known.
    ownFactor("", "", "kg CO2e/kg", "0.62 to 0.70 kg CO2e/kg"),
    "Your own carbon factor of its making; left out, a general one is taken.",
  ),
  "haul-distance": optional(
    "haulKm",
    quantity("distance", { min: 0, max: 20_000, example: "35 km" }),
    "Way by road to the site, one way; left out, the carbon of haulage is not counted.",
  ),
} as const;

/** `carbon`: factors beside those of the materials, and the concrete that is compared with. */
export const carbon = group(
  {
    haul: optional(
      "haul",
      ownFactor(
        "own-haul",
        say`Haul, factor entered by the user`,
        "kg CO2e/(t km)",
        "0.06 to 0.10 kg CO2e/(t km)",
      ),
      "Your own carbon factor of haulage by road.",
    ),
    concrete: byDefault(
      BESIDE,
      group({
        volume: optional(
          "concreteVolumeM3",
          positive("m3", "3.2 m3"),
          "Volume of the concrete element that would stand in the same place; left out, that of the earth element.",
        ),
        cement: optional(
          "concreteCement",
          ownFactor(
            "own-concrete",
            say`Concrete mix entered by the user`,
            "kg/m3",
            "300 to 340 kg/m3",
          ),
          "Cement in the concrete that is compared with.",
        ),
      }),
      {},
      "The concrete element that is compared with.",
    ),
  },
  { name: "CarbonConfig" },
);
