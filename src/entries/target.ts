import { z } from "zod";
import type { BlendLimit } from "../blend/target.js";
import { parseSieve } from "../quantities/sieves.js";
import { say, type Text } from "../words/message.js";
import { render } from "../words/render.js";
import type { TargetConfig } from "./studyConfig.js";
import { quantityField, sizeField, writtenForms } from "./writtenValue.js";

type Read = (text: string) => number | undefined;

/** One value, or two with “to” between them. */
function fixedOrRange(read: Read, low: number, high: number, expected: Text) {
  return z.union([z.number(), z.string()]).transform((written, context) => {
    const parts = String(written)
      .split(/\s+to\s+/)
      .map(read);
    const inside = parts.every((value) => value !== undefined && value >= low && value <= high);
    const [first, second] = parts as number[];
    if (inside && parts.length === 1) return first;
    if (inside && parts.length === 2 && first < second) return { min: first, max: second };
    context.addIssue({
      code: "custom",
      message: render(say`This is neither a value nor a range.`),
      params: { expected, value: String(written) },
    });
    return z.NEVER;
  });
}

const exponent = fixedOrRange(
  (text) => (/^\d*\.?\d+$/.test(text.trim()) ? Number(text) : undefined),
  0.05,
  1,
  say`0.05 to 1, for example “0.25” or “0.2 to 0.35”`,
).register(writtenForms, {
  type: ["string", "number"],
  description: "Exponent of the power curve, 0.05 to 1, or a range in which the best is sought.",
  examples: [0.25, "0.2 to 0.35"],
});
const topSize = fixedOrRange(
  // A bare number would be taken as mm in silence.
  (text) => (/^[\d.,\s]+$/.test(text) ? undefined : parseSieve(text)),
  1,
  100,
  say`1 mm to 100 mm, for example “20 mm”, “3/4 in” or “16 mm to 20 mm”`,
).register(writtenForms, {
  type: "string",
  description: "Size that all grains pass, with its unit, or a range in which the best is sought.",
  examples: ["20 mm", "3/4 in", "16 mm to 20 mm"],
});

/** `target` of `study.yaml`: a power curve, or the band of the guidance and what to seek inside it. */
export const targetField = z
  .union([
    z.strictObject({ exponent, "top-size": topSize }),
    z.strictObject({
      band: z.literal("guidance"),
      seek: z.enum(["most-site-soil", "least-cost", "nearest-middle"]).default("nearest-middle"),
    }),
  ])
  .transform(
    (entry): TargetConfig =>
      "band" in entry
        ? { kind: "band", aim: entry.seek }
        : { kind: "power", exponent: entry.exponent, topSizeMm: entry["top-size"] },
  );

const percent = quantityField("ratio", "12 %", { min: 0, max: 100 });
const window = z
  .strictObject({ min: percent.optional(), max: percent.optional() })
  .refine(({ min, max }) => min !== undefined || max !== undefined, {
    message: render(say`This limit limits nothing.`),
    params: { expected: say`min, max or both` },
  })
  .refine(({ min, max }) => min === undefined || max === undefined || min <= max, {
    message: render(say`The smallest value is above the largest.`),
    params: { expected: say`min at most max` },
  });

const WINDOWS = [
  "clay",
  "silt",
  "fines",
  "plasticity-index",
  "linear-shrinkage",
  "site-soil",
] as const;

/** `limits` of `study.yaml`: windows of the blend in percent, and the largest size. */
export const limitsField = z
  .strictObject({
    clay: window.optional(),
    silt: window.optional(),
    fines: window.optional(),
    "plasticity-index": window.optional(),
    "linear-shrinkage": window.optional(),
    "site-soil": window.optional(),
    "top-size": sizeField.optional(),
  })
  .default({})
  .transform((entry): BlendLimit[] => [
    ...WINDOWS.flatMap((kind): BlendLimit[] => {
      const limit = entry[kind];
      if (!limit) return [];
      const { min: minPct, max: maxPct } = limit;
      return [
        {
          kind,
          ...(minPct === undefined ? {} : { minPct }),
          ...(maxPct === undefined ? {} : { maxPct }),
        },
      ];
    }),
    ...(entry["top-size"] === undefined
      ? []
      : [{ kind: "top-size" as const, sizeMm: entry["top-size"] }]),
  ]);
