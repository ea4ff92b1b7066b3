import { z } from "zod";
import { metres, percent, text } from "./schemaFields.js";
import type { ToleranceConfig } from "./toleranceConfig.js";

/** `tolerances`: every key may be left out. */
export const toleranceSchema = z
  .strictObject({
    cement: percent("5 %", 50).optional(),
    moisture: z.strictObject({ below: percent("1 %", 20), above: percent("1 %", 20) }).optional(),
    shares: percent("5 %", 50).optional(),
    density: percent("96 %", 105).optional(),
    lift: metres("20 mm").optional(),
    basis: text.optional(),
  })
  .transform((entry): ToleranceConfig => {
    const config: ToleranceConfig = {
      cementPct: entry.cement,
      moistureBelowPct: entry.moisture?.below,
      moistureAbovePct: entry.moisture?.above,
      sharesPct: entry.shares,
      densityPct: entry.density,
      liftM: entry.lift,
      basis: entry.basis,
    };
    // Only what was said: an entry that is there but empty would hide a default.
    return Object.fromEntries(
      Object.entries(config).filter(([, value]) => value !== undefined),
    ) as ToleranceConfig;
  });
