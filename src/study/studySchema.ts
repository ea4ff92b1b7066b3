import { z } from "zod";
import { ASPECT_RATIO_TABLES } from "../strength/aspectRatioTables.js";
import { limitsField } from "./limitsField.js";
import { priceField } from "./priceField.js";
import { quantityField } from "./quantityField.js";
import type { CovariateConfig, StudyConfig } from "./studyConfig.js";
import { targetField } from "./targetField.js";

/** The value of `format` in a `study.yaml` of this version. */
export const STUDY_FORMAT = "loambook-study/1";

const text = z.string().trim().min(1, "This text is empty.");
const sheet = text;
const metres = (example: string) => quantityField("length", example, { positive: true }, 0.001);
const kilograms = (example: string) => quantityField("mass", example, { positive: true }, 0.001);
const percent = (example: string, max = 100) => quantityField("ratio", example, { min: 0, max });
const density = (example: string) => quantityField("density", example, { min: 500, max: 5000 });

const share = z
  .strictObject({ min: percent("40 %").default(0), max: percent("85 %").default(100) })
  .default({ min: 0, max: 100 })
  .refine(({ min, max }) => min <= max, {
    message: "The smallest share is above the largest.",
    params: { expected: "min at most max" },
  });

const material = z
  .strictObject({
    id: z.string().regex(/^[a-z][a-z0-9-]*$/, "An id is lower-case letters, digits and hyphens."),
    name: text,
    role: z.enum(["soil", "sand", "gravel"]),
    sieve: sheet,
    hydrometer: sheet.optional(),
    limits: sheet.optional(),
    "particle-density": quantityField("density", "2670 kg/m3", { min: 2000, max: 3500 }),
    "loose-bulk-density": density("1250 kg/m3"),
    moisture: percent("6.5 %", 60),
    price: priceField.optional(),
    share,
    varies: z
      .strictObject({
        fines: percent("4 %", 50).optional(),
        batching: percent("3 %", 50).optional(),
      })
      .default({}),
  })
  .transform((entry) => ({
    id: entry.id,
    name: entry.name,
    role: entry.role,
    sieve: entry.sieve,
    hydrometer: entry.hydrometer,
    limits: entry.limits,
    particleDensityKgM3: entry["particle-density"],
    looseBulkDensityKgM3: entry["loose-bulk-density"],
    moisturePct: entry.moisture,
    price: entry.price,
    minSharePct: entry.share.min,
    maxSharePct: entry.share.max,
    finesPlusMinusPct: entry.varies.fines,
    batchingPlusMinusPct: entry.varies.batching,
  }));

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

const strength = z
  .strictObject({
    sheet,
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

const cement = z
  .strictObject({
    name: text,
    "loose-bulk-density": density("1200 kg/m3"),
    bag: kilograms("25 kg"),
    price: priceField.optional(),
  })
  .transform((entry) => ({
    name: entry.name,
    looseBulkDensityKgM3: entry["loose-bulk-density"],
    bagMassKg: entry.bag,
    price: entry.price,
  }));

const opening = z
  .strictObject({
    width: metres("1.2 m"),
    height: metres("1.0 m"),
    count: z.int().min(1).max(1000).default(1),
  })
  .transform((entry) => ({ widthM: entry.width, heightM: entry.height, count: entry.count }));

const element = z
  .strictObject({
    name: text,
    length: metres("6.4 m"),
    height: metres("2.7 m"),
    thickness: metres("400 mm"),
    openings: z.array(opening).default([]),
    "compacted-lift": metres("100 mm"),
    waste: percent("5 %", 50),
  })
  .transform((entry) => ({
    name: entry.name,
    lengthM: entry.length,
    heightM: entry.height,
    thicknessM: entry.thickness,
    openings: entry.openings,
    compactedLiftM: entry["compacted-lift"],
    wastePct: entry.waste,
  }));

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
    date: z.iso.date("A date is written year-month-day, for example 2026-05-18."),
    units: z.enum(["SI", "US"]),
    page: z.enum(["A4", "us-letter"]).default("A4"),
    currency: text.optional(),
    seed: z.int().min(0).max(4_294_967_295).default(1),
    materials: z.array(material).min(1).max(12),
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
    envelope: sheet.optional(),
    compaction: sheet.optional(),
    cement,
    strength,
    batch: z
      .strictObject({ "dry-mass": kilograms("120 kg") })
      .transform((entry) => entry["dry-mass"]),
    element,
    methods: z.array(method).default([]),
  })
  .transform(
    ({
      format: _,
      batch,
      "most-materials": mostMaterials,
      "reading-errors": readingErrors,
      ...rest
    }): StudyConfig => ({ ...rest, mostMaterials, readingErrors, batchDryMassKg: batch }),
  );
