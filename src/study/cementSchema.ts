import { z } from "zod";
import { priceField } from "./priceField.js";
import { density, kilograms, text } from "./schemaFields.js";
import { supplyFields, supplyOf } from "./supplySchema.js";

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
