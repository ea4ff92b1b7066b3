import { z } from "zod";
import { phrase } from "../words/say.js";
import type { CompareConfig } from "./compareConfig.js";
import { density, percent, text } from "./schemaFields.js";

/** `compare-blend`: shares and a cement content to hold the chosen mix against. */
export const compareSchema = z
  .strictObject({
    name: text,
    shares: z
      .record(z.string(), percent("100 %"))
      .refine(
        (shares) =>
          Math.abs(Object.values(shares).reduce((sum, share) => sum + share, 0) - 100) <= 0.05,
        {
          message: phrase`The shares do not sum to 100 %.`,
          params: { expected: phrase`shares that sum to 100 %` },
        },
      ),
    cement: percent("10 %", 50),
    density: density("1850 kg/m3").optional(),
    moisture: percent("11 %", 60).optional(),
    basis: text,
  })
  .transform(
    (entry): CompareConfig => ({
      ...{ name: entry.name, sharesPct: entry.shares, cementPct: entry.cement },
      ...(entry.density === undefined ? {} : { densityKgM3: entry.density }),
      ...(entry.moisture === undefined ? {} : { moisturePct: entry.moisture }),
      basis: entry.basis,
    }),
  );
