import { z } from "zod";
import type { CarbonConfig } from "./carbonConfig.js";
import { concreteCementField, haulFactorField } from "./carbonField.js";
import { quantityField } from "./quantityField.js";

/** `carbon`: factors beside those of the materials, and the concrete that is compared with. */
export const carbonSchema = z
  .strictObject({
    haul: haulFactorField.optional(),
    concrete: z
      .strictObject({
        volume: quantityField("volume", "3.2 m3", { positive: true }, 1e-6).optional(),
        cement: concreteCementField.optional(),
      })
      .default({}),
  })
  .default({ concrete: {} })
  .transform(
    ({ haul, concrete: { volume, cement } }): CarbonConfig => ({
      ...(haul === undefined ? {} : { haul }),
      ...(volume === undefined ? {} : { concreteVolumeM3: volume }),
      ...(cement === undefined ? {} : { concreteCement: cement }),
    }),
  );
