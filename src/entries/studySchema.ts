import { z } from "zod";
import { say } from "../words/message.js";
import type { Locale } from "../words/render.js";
import { render } from "../words/render.js";
import { compareSchema } from "./compareMix.js";
import { elementSchema } from "./element.js";
import { cementSchema, materialSchema } from "./materials.js";
import { qualitySchema, toleranceSchema } from "./quality.js";
import { checklistSchema, decisionsSchema, reportSchema, samplingSchema } from "./report.js";
import { sheetField } from "./sheets.js";
import { siteSchema } from "./site.js";
import { strengthSchema } from "./strength.js";
import type { StudyConfig } from "./studyConfig.js";
import { carbonSchema } from "./supply.js";
import { limitsField, targetField } from "./target.js";
import { kilograms, percent, quantityField, text } from "./writtenValue.js";

/** The value of `format` in a `study.yaml` of this version. */
export const STUDY_FORMAT = "loambook-study/1";

/** The languages that reports are complete in, with or without a country. */
export const LOCALE = /^(en|es)(-[A-Z]{2})?$/;

const method = z.strictObject({
  test: text,
  standard: text,
  edition: z.union([z.string(), z.number()]).transform(String).optional(),
});

/** Checks what `study.yaml` holds and brings it to base units. */
export const studySchema = z
  .strictObject({
    format: z.literal(STUDY_FORMAT),
    invented: z.boolean().default(false),
    title: text,
    place: text,
    purpose: text,
    date: z.iso.date(render(say`A date is written year-month-day, for example 2026-05-18.`)),
    language: z
      .string()
      .regex(LOCALE, render(say`en or es, or one of them with a country such as es-MX.`))
      .default("en")
      .transform((text) => text as Locale),
    units: z.enum(["SI", "US"]),
    page: z.enum(["A4", "us-letter"]).default("A4"),
    currency: text.optional(),
    seed: z.int().min(0).max(4_294_967_295).default(1),
    materials: z.array(materialSchema).min(1).max(12),
    "reading-errors": z
      .strictObject({
        balance: quantityField("mass", "0.1 g", { min: 0, max: 100 }).optional(),
        sieving: percent("1 %", 10).optional(),
        hydrometer: z.number().min(0).max(5).optional(),
        temperature: quantityField("temperature", "0.5 C", { min: 0, max: 5 }).optional(),
      })
      .default({})
      .transform((errors) => ({
        ...(errors.balance === undefined ? {} : { balanceG: errors.balance }),
        ...(errors.sieving === undefined ? {} : { sievingPct: errors.sieving }),
        ...(errors.hydrometer === undefined ? {} : { hydrometerUnits: errors.hydrometer }),
        ...(errors.temperature === undefined ? {} : { temperatureC: errors.temperature }),
      })),
    target: targetField,
    limits: limitsField,
    "most-materials": z.int().min(1).max(12).optional(),
    guidance: text,
    envelope: sheetField.optional(),
    compaction: sheetField.optional(),
    cement: cementSchema,
    strength: strengthSchema,
    batch: z
      .strictObject({ "dry-mass": kilograms("120 kg") })
      .transform((entry) => entry["dry-mass"]),
    element: elementSchema,
    "compare-blend": compareSchema.optional(),
    carbon: carbonSchema,
    site: siteSchema,
    report: reportSchema.optional(),
    methods: z.array(method).default([]),
    sampling: samplingSchema.optional(),
    tolerances: toleranceSchema.optional(),
    quality: qualitySchema.optional(),
    checklist: checklistSchema.optional(),
    decisions: decisionsSchema.optional(),
  })
  .transform(
    ({
      format: _,
      batch,
      "most-materials": mostMaterials,
      "compare-blend": compareBlend,
      "reading-errors": readingErrors,
      ...rest
    }): StudyConfig => ({
      ...rest,
      mostMaterials,
      compareBlend,
      readingErrors,
      batchDryMassKg: batch,
    }),
  );
