import { z } from "zod";
import { ASPECT_RATIO_TABLES } from "../strength/aspectRatio.js";
import { sheetField } from "./sheets.js";
import type { CovariateConfig } from "./studyConfig.js";
import { density, percent, quantityField, text } from "./writtenValue.js";

const requirement = z
  .strictObject({
    strength: quantityField("stress", "2.0 MPa", { positive: true }),
    age: quantityField("age", "28 d", { positive: true }),
    statistic: z.enum(["mean", "prediction", "tolerance"]),
    confidence: quantityField("ratio", "95 %", { min: 50, max: 99.9 }),
    basis: text,
  })
  .transform((entry) => ({
    strengthMpa: entry.strength,
    ageDays: entry.age,
    statistic: entry.statistic,
    confidence: entry.confidence / 100,
    basis: entry.basis,
  }));

/** `strength`: the blocks, the curve and the requirement. */
export const strengthSchema = z
  .strictObject({
    sheet: sheetField,
    form: z.enum(["linear", "quadratic", "logarithmic", "power"]).default("linear"),
    "round-up-to": percent("0.5 %", 5).default(0.5),
    batches: z.enum(["ignore", "block"]).default("ignore"),
    covariates: z
      .strictObject({
        age: z.literal(true).optional(),
        "dry-density": z.union([z.literal(true), density("1900 kg/m3")]).optional(),
        moisture: z.union([z.literal(true), percent("6 %", 60)]).optional(),
      })
      .default({}),
    "aspect-table": z
      .enum(ASPECT_RATIO_TABLES.map(({ id }) => id) as [string, ...string[]])
      .optional(),
    spread: z.enum(["even", "proportional"]).default("even"),
    requirement,
  })
  .transform((entry) => ({
    sheet: entry.sheet,
    form: entry.form,
    roundUpToPct: entry["round-up-to"],
    batches: entry.batches,
    covariates: [
      ...(entry.covariates.age ? [{ kind: "ln age" as const }] : []),
      ...asked("dry density", entry.covariates["dry-density"]),
      ...asked("moisture at test", entry.covariates.moisture),
    ],
    aspectTable: entry["aspect-table"],
    spread: entry.spread,
    requirement: entry.requirement,
  }));

/** `true` asks for the mean of the blocks, a number for that value. */
function asked(
  kind: "dry density" | "moisture at test",
  value: number | true | undefined,
): CovariateConfig[] {
  if (value === undefined) return [];
  return [value === true ? { kind } : { kind, at: value }];
}
