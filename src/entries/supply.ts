import { z } from "zod";
import { parseNumber } from "../quantities/parseQuantity.js";
import type { SourcedRange } from "../quantities/sourcedRange.js";
import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";
import { kilometres, percent, quantityField, text, writtenForms } from "./writtenValue.js";

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

/** For a tonne as weighed on delivery, its water included, or a loose cubic metre. */
export type Price = WrittenPrice<"t" | "m3">;

/** What it takes to get a material to the site. */
export interface SupplyConfig {
  readonly haul?: WrittenPrice<"t" | "m3" | "load">;
  /** Lost in the heap and on the way, percent of what goes into the mix; without it nothing is added. */
  readonly lossPct?: number;
  /** The user's own factor; without it a general one is taken. */
  readonly carbon?: SourcedRange;
  /** One way, in kilometres; without it haul is not counted. */
  readonly haulKm?: number;
}

/** What the element is compared with, and the factor of haul, where they are not the general ones. */
export interface CarbonConfig {
  readonly haul?: SourcedRange;
  /** Volume of the concrete element that would stand in the same place; default that of the earth element. */
  readonly concreteVolumeM3?: number;
  readonly concreteCement?: SourcedRange;
}

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
    const refuse = (message: Text) => {
      const names = units.map(({ name }) => name).join(", ");
      context.addIssue({
        code: "custom",
        message: render(message),
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

/** A number or two with “to” between them, not below 0, before a unit that must be written. */
function rangeField(unit: string, example: string) {
  const field = z.union([z.string(), z.number()]).transform((written, context) => {
    const value = String(written).trim();
    const refuse = (message: Text) => {
      const expected = say`a number or a range with its unit, for example “${example}”`;
      context.addIssue({ code: "custom", message: render(message), params: { expected, value } });
      return z.NEVER;
    };
    const [, first, second, name] = /^([\d.,]+)(?:\s+to\s+([\d.,]+))?\s*(.*)$/.exec(value) ?? [];
    const numbers = [first ?? "", second ?? first ?? ""].map(parseNumber);
    const [low, high] = numbers.flatMap((number) => ("value" in number ? [number.value] : []));
    if (low === undefined || high === undefined) return refuse(say`This is not a range.`);
    if (!name) return refuse(say`This number has no unit.`);
    if (name.replace("³", "3") !== unit) return refuse(say`The unit “${name}” is not known here.`);
    if (low > high) return refuse(say`This range runs from its larger end to its smaller.`);
    return { low, high };
  });
  return field.register(writtenForms, {
    type: "string",
    description: `A number or a range with its unit, for example “${example}”.`,
    examples: [example],
  });
}

/** A factor of the user's own, with the source in their words: it is printed beside the number. */
function ownFactor(id: string, name: Text, unit: string, example: string) {
  return z.strictObject({ factor: rangeField(unit, example), source: text }).transform(
    ({ factor, source }): SourcedRange => ({
      ...{ id, name, unit: unit.replace("m3", "m³"), ...factor },
      ...{ source, basis: "entered" },
    }),
  );
}

/** Making of a material, kg CO2e per kg. The name is filled in where the material is known. */
const carbonField = ownFactor("", "", "kg CO2e/kg", "0.62 to 0.70 kg CO2e/kg");
/** Haul by road. */
const haulFactorField = ownFactor(
  "own-haul",
  say`Haul, factor entered by the user`,
  "kg CO2e/(t km)",
  "0.06 to 0.10 kg CO2e/(t km)",
);
/** Cement in the concrete that is compared with. */
const concreteCementField = ownFactor(
  "own-concrete",
  say`Concrete mix entered by the user`,
  "kg/m3",
  "300 to 340 kg/m3",
);

/** Keys of a material and of the cement: how it gets to the site, and its carbon. */
export const supplyFields = {
  haul: priceField(["t", "m3", "load"], "6 to 8 per t").optional(),
  waste: percent("4 %", 50).optional(),
  carbon: carbonField.optional(),
  "haul-distance": kilometres("35 km").optional(),
};

/** In base units; keys that are not given stay away. */
export function supplyOf(entry: {
  haul?: SupplyConfig["haul"];
  waste?: number;
  carbon?: SupplyConfig["carbon"];
  "haul-distance"?: number;
}): SupplyConfig {
  const { haul, waste, carbon, "haul-distance": haulKm } = entry;
  return {
    ...(haul === undefined ? {} : { haul }),
    ...(waste === undefined ? {} : { lossPct: waste }),
    ...(carbon === undefined ? {} : { carbon }),
    ...(haulKm === undefined ? {} : { haulKm }),
  };
}

/** `carbon`: factors beside those of the materials, and the concrete that is compared with. */
export const carbonSchema = z
  .strictObject({
    haul: haulFactorField.optional(),
    concrete: z
      .strictObject({
        volume: quantityField("volume", "3.2 m3", { positive: true }, 1e-6).optional(),
        cement: concreteCementField.optional(),
      })
      .default({}),
  })
  .default({ concrete: {} })
  .transform(
    ({ haul, concrete: { volume, cement } }): CarbonConfig => ({
      ...(haul === undefined ? {} : { haul }),
      ...(volume === undefined ? {} : { concreteVolumeM3: volume }),
      ...(cement === undefined ? {} : { concreteCement: cement }),
    }),
  );
