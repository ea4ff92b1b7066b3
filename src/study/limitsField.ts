import { z } from "zod";
import type { BlendLimit } from "../blend/blendTarget.js";
import { phrase } from "../words/say.js";
import { quantityField } from "./quantityField.js";
import { sizeField } from "./sizeField.js";

const percent = quantityField("ratio", "12 %", { min: 0, max: 100 });
const window = z
  .strictObject({ min: percent.optional(), max: percent.optional() })
  .refine(({ min, max }) => min !== undefined || max !== undefined, {
    message: phrase`This limit limits nothing.`,
    params: { expected: phrase`min, max or both` },
  })
  .refine(({ min, max }) => min === undefined || max === undefined || min <= max, {
    message: phrase`The smallest value is above the largest.`,
    params: { expected: phrase`min at most max` },
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
