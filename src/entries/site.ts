import { z } from "zod";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import { kilograms, percent, quantityField } from "./writtenValue.js";

/** What the crew works with. All have a default, and the sheet says where a default was used. */
export interface SiteConfig {
  /** Struck level, measured with water. Default 10 L, in US units 5 gal. */
  readonly bucketL?: number;
  /** Smallest part of a bucket. Default 0.5. */
  readonly bucketStep?: 1 | 0.5;
  /** Loose volume that the mixer takes. Default the batch of the study. */
  readonly mixerVolumeL?: number;
  /** The batch is as near below one lift of the element as buckets allow, where no mixer volume is given. */
  readonly batchFills?: "lift";
  /** Default `scale`. */
  readonly cementBy?: "bucket" | "scale";
  /** Points below and above the target moisture. Default: the window of the compaction test. */
  readonly tolerancePct?: number;
  /** Hours until the forms come off. Default: left open to be written in. */
  readonly strippingHours?: number;
  /** Days of damp curing. Default: left open to be written in. */
  readonly dampDays?: number;
  /** Labels to print, 1 to 200. Default 8. */
  readonly labels?: number;
  /** What a lorry takes. Default: no loads. */
  readonly lorry?: { readonly payloadKg: number; readonly bodyM3: number };
  /** The forms at hand and the pace. Default: no days. */
  readonly forms?: {
    readonly formsAtHandM2: number;
    readonly hoursToSetAndRam: number;
    readonly workingHoursADay: number;
  };
  /** A small batch to try first, shown beside the full one. Default: none. */
  readonly trial?: {
    /** Soil and aggregate. */
    readonly dryMassKg: number;
    /** The least that the scale for it shows. */
    readonly scaleStepKg: number;
  };
}

const litres = (example: string) => quantityField("volume", example, { positive: true }, 0.001);
const hours = (example: string, max: number) =>
  quantityField("duration", example, { min: 0, max: max * 60 }, 1 / 60);

/** `site`: what the crew works with. Every key may be left out. */
export const siteSchema = z
  .strictObject({
    bucket: litres("12 L").optional(),
    "bucket-step": z.union([z.literal(1), z.literal(0.5)]).optional(),
    "cement-by": z.enum(["bucket", "scale"]).optional(),
    mixer: litres("150 L").optional(),
    "batch-fills": z.literal("lift").optional(),
    tolerance: percent("1 %", 10).optional(),
    stripping: hours("24 h", 1000).optional(),
    "damp-curing": quantityField("age", "7 d", { min: 1, max: 90 }).optional(),
    labels: z.int().min(1).max(200).optional(),
    lorry: z
      .strictObject({
        payload: kilograms("9 t"),
        body: quantityField("volume", "6 m3", { positive: true }, 1e-6),
      })
      .transform(({ payload, body }) => ({ payloadKg: payload, bodyM3: body }))
      .optional(),
    forms: z
      .strictObject({
        area: quantityField("area", "8 m2", { positive: true }),
        "set-and-ram": quantityField("duration", "8 h", { positive: true, max: 60_000 }, 1 / 60),
        "working-day": quantityField("duration", "8 h", { positive: true, max: 1440 }, 1 / 60),
      })
      .transform((entry) => ({
        formsAtHandM2: entry.area,
        hoursToSetAndRam: entry["set-and-ram"],
        workingHoursADay: entry["working-day"],
      }))
      .optional(),
    trial: z
      .strictObject({ "dry-mass": kilograms("10 kg"), "scale-step": kilograms("10 g") })
      .transform((entry) => ({ dryMassKg: entry["dry-mass"], scaleStepKg: entry["scale-step"] }))
      .optional(),
  })
  .refine((entry) => entry.mixer === undefined || entry["batch-fills"] === undefined, {
    message: render(say`A batch cannot be sized both by the mixer and by the lift.`),
    params: { expected: say`mixer or batch-fills, not both` },
  })
  .default({})
  .transform((entry): SiteConfig => {
    const config: SiteConfig = {
      bucketL: entry.bucket,
      bucketStep: entry["bucket-step"],
      mixerVolumeL: entry.mixer,
      batchFills: entry["batch-fills"],
      cementBy: entry["cement-by"],
      tolerancePct: entry.tolerance,
      strippingHours: entry.stripping,
      dampDays: entry["damp-curing"] === undefined ? undefined : Math.ceil(entry["damp-curing"]),
      labels: entry.labels,
      lorry: entry.lorry,
      forms: entry.forms,
      trial: entry.trial,
    };
    // Only what was said: an option that is there but empty would hide a default.
    return Object.fromEntries(
      Object.entries(config).filter(([, value]) => value !== undefined),
    ) as SiteConfig;
  });
