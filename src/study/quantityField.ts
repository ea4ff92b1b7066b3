import { z } from "zod";
import { acceptedUnits, parseQuantity } from "../quantities/parseQuantity.js";
import type { Dimension } from "../quantities/units.js";
import { say } from "../words/say.js";
import { writtenForms } from "./writtenForm.js";

/** A number, then something that may be a unit; which one it is, reading tells. */
const QUANTITY = "^\\s*[+−-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?\\s*[^\\s\\d.,].*$";

export interface QuantityLimits {
  readonly min?: number;
  readonly max?: number;
  readonly positive?: boolean;
}

/**
 * A field of `study.yaml` that holds a number with its unit, such as `1650 kg/m3`; gives the value in
 * `unit`, a multiple of the dimension's base unit (`perBase` of them make one base unit).
 */
export function quantityField(
  dimension: Dimension,
  example: string,
  limits: QuantityLimits = {},
  perBase = 1,
) {
  const field = z.union([z.string(), z.number()]).transform((written, context): number => {
    const text = String(written);
    const refuse = (message: string, expected: string): never => {
      context.addIssue({ code: "custom", message, params: { expected, value: text } });
      return z.NEVER;
    };
    const parsed = parseQuantity(text, dimension);
    if ("problem" in parsed) {
      const message = {
        empty: say`This field is empty.`,
        "comma-decimal": say`This number is written with a decimal comma.`,
        "not-a-number": say`This is not a number with a unit.`,
        "missing-unit": say`This number has no unit.`,
        "unknown-unit": say`The unit “${parsed.unit}” is not known here.`,
      }[parsed.problem];
      return refuse(message, say`for example “${example}” (units: ${acceptedUnits(dimension)})`);
    }
    const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = limits;
    const { value } = parsed;
    if (value < min || value > max || (limits.positive && value <= 0)) {
      const low = limits.positive
        ? say`more than 0`
        : Number.isFinite(min)
          ? say`at least ${min}`
          : "";
      const high = Number.isFinite(max) ? say`at most ${max}` : "";
      return refuse(
        say`This value is outside the allowed range.`,
        say`${[low, high].filter(Boolean).join(", ")} in ${acceptedUnits(dimension).split(", ")[0]}, for example “${example}”`,
      );
    }
    return value * perBase;
  });
  return field.register(writtenForms, {
    type: "string",
    description: `A number with its unit, for example “${example}”. Units: ${acceptedUnits(dimension)}.`,
    examples: [example],
    pattern: QUANTITY,
  });
}
