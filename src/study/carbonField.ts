import { z } from "zod";
import type { SourcedRange } from "../batch/carbonFactors.js";
import { parseNumber } from "../quantities/parseNumber.js";
import { phrase, say } from "../words/say.js";
import { text } from "./schemaFields.js";
import { writtenForms } from "./writtenForm.js";

/** A number or two with “to” between them, not below 0, before a unit that must be written. */
export function rangeField(unit: string, example: string) {
  const field = z.union([z.string(), z.number()]).transform((written, context) => {
    const value = String(written).trim();
    const refuse = (message: string) => {
      const expected = say`a number or a range with its unit, for example “${example}”`;
      context.addIssue({ code: "custom", message, params: { expected, value } });
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
function ownFactor(id: string, name: string, unit: string, example: string) {
  return z.strictObject({ factor: rangeField(unit, example), source: text }).transform(
    ({ factor, source }): SourcedRange => ({
      ...{ id, name, unit: unit.replace("m3", "m³"), ...factor },
      ...{ source, basis: "entered" },
    }),
  );
}

/** Making of a material, kg CO2e per kg. The name is filled in where the material is known. */
export const carbonField = ownFactor("", "", "kg CO2e/kg", "0.62 to 0.70 kg CO2e/kg");
/** Haul by road. */
export const haulFactorField = ownFactor(
  "own-haul",
  phrase`Haul, factor entered by the user`,
  "kg CO2e/(t km)",
  "0.06 to 0.10 kg CO2e/(t km)",
);
/** Cement in the concrete that is compared with. */
export const concreteCementField = ownFactor(
  "own-concrete",
  phrase`Concrete mix entered by the user`,
  "kg/m3",
  "300 to 340 kg/m3",
);
