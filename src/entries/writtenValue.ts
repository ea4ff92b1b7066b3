import { z } from "zod";
import { acceptedUnits, parseQuantity } from "../quantities/parseQuantity.js";
import { parseSieve } from "../quantities/sieves.js";
import type { Dimension } from "../quantities/units.js";
import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";

/** What a field looks like in `study.yaml`, as JSON Schema, where its type alone says too little. */
interface WrittenForm {
  readonly type?: "string" | "number" | readonly ["string", "number"];
  readonly description: string;
  readonly examples?: readonly (string | number)[];
  readonly pattern?: string;
}

/** By field; fields that read a text into a number stand here. */
export const writtenForms = z.registry<WrittenForm>();

/**
 * Fields that accept more than one form and sort them out themselves: a schema of those forms. (The
 * registry would rewrite the schema's own type, so it is told nothing of it.)
 */
export const writtenAs = z.registry<{ readonly schema: unknown }>();

/** A number, then something that may be a unit; which one it is, reading tells. */
const QUANTITY = "^\\s*[+−-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?\\s*[^\\s\\d.,].*$";

interface QuantityLimits {
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
    const refuse = (message: Text, expected: Text): never => {
      context.addIssue({
        code: "custom",
        message: render(message),
        params: { expected, value: text },
      });
      return z.NEVER;
    };
    const parsed = parseQuantity(text, dimension);
    if ("problem" in parsed) {
      const message = {
        empty: say`This field is empty.`,
        "comma-decimal": say`This number is written with a decimal comma.`,
        "not-a-number": say`This is not a number with a unit.`,
        "missing-unit": say`This number has no unit.`,
        "unknown-unit": say`The unit “${parsed.unit ?? ""}” is not known here.`,
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

/** A text that says something. */
export const text = z.string().trim().min(1, render(say`This text is empty.`));
/** A length, in metres. */
export const metres = (example: string) =>
  quantityField("length", example, { positive: true }, 0.001);
/** A way on the road, in kilometres. */
export const kilometres = (example: string) =>
  quantityField("distance", example, { min: 0, max: 20_000 });
/** A mass, in kilograms. */
export const kilograms = (example: string) =>
  quantityField("mass", example, { positive: true }, 0.001);
/** A share, in percent. */
export const percent = (example: string, max = 100) =>
  quantityField("ratio", example, { min: 0, max });
/** A density of soil, aggregate or cement, in kg/m³. */
export const density = (example: string) =>
  quantityField("density", example, { min: 500, max: 5000 });

const field = z.string().transform((text, context): number => {
  const sizeMm = /^[\d.,\s]+$/.test(text) ? undefined : parseSieve(text);
  if (sizeMm !== undefined && sizeMm >= 1 && sizeMm <= 100) return sizeMm;
  context.addIssue({
    code: "custom",
    message: render(say`This is not a grain size.`),
    params: { expected: say`1 mm to 100 mm, for example “20 mm” or “3/4 in”`, value: text },
  });
  return z.NEVER;
});

/** A grain size of `study.yaml`: a number with its unit, or a sieve such as `3/4 in` or `No. 4`; gives mm. */
export const sizeField = field.register(writtenForms, {
  type: "string",
  description: "A grain size with its unit, or a sieve, 1 mm to 100 mm.",
  examples: ["20 mm", "3/4 in", "No. 4"],
});
