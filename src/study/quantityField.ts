import { z } from "zod";
import { acceptedUnits, parseQuantity } from "../quantities/parseQuantity.js";
import type { Dimension } from "../quantities/units.js";

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
  return z.union([z.string(), z.number()]).transform((written, context): number => {
    const text = String(written);
    const refuse = (message: string, expected: string): never => {
      context.addIssue({ code: "custom", message, params: { expected, value: text } });
      return z.NEVER;
    };
    const parsed = parseQuantity(text, dimension);
    if ("problem" in parsed) {
      const message = {
        empty: "This field is empty.",
        "comma-decimal": "This number is written with a decimal comma.",
        "not-a-number": "This is not a number with a unit.",
        "missing-unit": "This number has no unit.",
        "unknown-unit": `The unit “${parsed.unit}” is not known here.`,
      }[parsed.problem];
      return refuse(message, `for example “${example}” (units: ${acceptedUnits(dimension)})`);
    }
    const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = limits;
    const { value } = parsed;
    if (value < min || value > max || (limits.positive && value <= 0)) {
      const low = limits.positive ? "more than 0" : Number.isFinite(min) ? `at least ${min}` : "";
      const high = Number.isFinite(max) ? `at most ${max}` : "";
      return refuse(
        "This value is outside the allowed range.",
        `${[low, high].filter(Boolean).join(", ")} in ${acceptedUnits(dimension).split(", ")[0]}, for example “${example}”`,
      );
    }
    return value * perBase;
  });
}
