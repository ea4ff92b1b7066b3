import { z } from "zod";
import { sandBulking } from "../batch/bulkDensity.js";
import { say } from "../words/message.js";
import { render } from "../words/render.js";
import { sheetField } from "./sheets.js";
import { priceField, supplyFields, supplyOf } from "./supply.js";
import {
  density,
  kilograms,
  metres,
  percent,
  quantityField,
  text,
  writtenAs,
} from "./writtenValue.js";

const heights = z
  .strictObject({ damp: metres("200 mm"), flooded: metres("160 mm") })
  .transform(({ damp, flooded }, context): number => {
    const { bulkingPct, message } = sandBulking({ dampHeight: damp, floodedHeight: flooded });
    if (bulkingPct !== null) return bulkingPct;
    context.addIssue({
      code: "custom",
      message: render(message),
      params: {
        expected: say`a flooded height at most the damp one`,
        value: `${damp} m, ${flooded} m`,
      },
    });
    return z.NEVER;
  });

const bulkingShare = percent("20 %", 60);
const field = z.unknown().transform((entry, context): number => {
  const outcome = (typeof entry === "object" ? heights : bulkingShare).safeParse(entry);
  if (outcome.success) return outcome.data;
  for (const issue of outcome.error.issues) context.addIssue({ ...issue, code: "custom" });
  return z.NEVER;
});

/**
 * `bulking` of a material whose bulk density was measured dry: percent, or the two heights of the
 * flooding test.
 */
const bulkingField = field.register(writtenAs, { schema: z.union([bulkingShare, heights]) });

const share = z
  .strictObject({ min: percent("40 %").default(0), max: percent("85 %").default(100) })
  .default({ min: 0, max: 100 })
  .refine(({ min, max }) => min <= max, {
    message: render(say`The smallest share is above the largest.`),
    params: { expected: say`min at most max` },
  });

/** One entry of `materials`. */
export const materialSchema = z
  .strictObject({
    id: z
      .string()
      .regex(/^[a-z][a-z0-9-]*$/, render(say`An id is lower-case letters, digits and hyphens.`)),
    name: text,
    role: z.enum(["soil", "sand", "gravel"]),
    sieve: sheetField,
    hydrometer: sheetField.optional(),
    pipette: sheetField.optional(),
    jar: sheetField.optional(),
    limits: sheetField.optional(),
    "particle-density": quantityField("density", "2670 kg/m3", { min: 2000, max: 3500 }),
    "loose-bulk-density": density("1250 kg/m3"),
    moisture: percent("6.5 %", 60),
    bulking: bulkingField.optional(),
    price: priceField(["t", "m3"], "38 per t").optional(),
    ...supplyFields,
    share,
    varies: z
      .strictObject({
        fines: percent("4 %", 50).optional(),
        batching: percent("3 %", 50).optional(),
      })
      .default({}),
  })
  .refine(({ hydrometer, pipette }) => hydrometer === undefined || pipette === undefined, {
    path: ["pipette"],
    message: render(say`This material has a hydrometer and a pipette sheet.`),
    params: { expected: say`one of the two, so that the fine end of the curve has one source` },
  })
  .transform((entry) => ({
    id: entry.id,
    name: entry.name,
    role: entry.role,
    sieve: entry.sieve,
    hydrometer: entry.hydrometer,
    ...(entry.pipette === undefined ? {} : { pipette: entry.pipette }),
    ...(entry.jar === undefined ? {} : { jar: entry.jar }),
    limits: entry.limits,
    particleDensityKgM3: entry["particle-density"],
    looseBulkDensityKgM3: entry["loose-bulk-density"],
    moisturePct: entry.moisture,
    ...(entry.bulking === undefined ? {} : { bulkingPct: entry.bulking }),
    price: entry.price,
    ...supplyOf(entry),
    minSharePct: entry.share.min,
    maxSharePct: entry.share.max,
    finesPlusMinusPct: entry.varies.fines,
    batchingPlusMinusPct: entry.varies.batching,
  }));

/** `cement`: what is bought, loose and in bags. */
export const cementSchema = z
  .strictObject({
    name: text,
    "loose-bulk-density": density("1200 kg/m3"),
    bag: kilograms("25 kg"),
    price: priceField(["t", "m3", "bag"], "190 per t").optional(),
    ...supplyFields,
  })
  .transform((entry) => ({
    name: entry.name,
    looseBulkDensityKgM3: entry["loose-bulk-density"],
    bagMassKg: entry.bag,
    price: entry.price,
    ...supplyOf(entry),
  }));
