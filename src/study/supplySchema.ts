import { carbonField } from "./carbonField.js";
import { priceField } from "./priceField.js";
import { kilometres, percent } from "./schemaFields.js";
import type { SupplyConfig } from "./supplyConfig.js";

/** Keys of a material and of the cement: how it gets to the site, and its carbon. */
export const supplyFields = {
  haul: priceField(["t", "m3", "load"], "6 to 8 per t").optional(),
  waste: percent("4 %", 50).optional(),
  carbon: carbonField.optional(),
  "haul-distance": kilometres("35 km").optional(),
};

/** In base units; keys that are not given stay away. */
export function supplyOf(entry: {
  haul?: SupplyConfig["haul"];
  waste?: number;
  carbon?: SupplyConfig["carbon"];
  "haul-distance"?: number;
}): SupplyConfig {
  const { haul, waste, carbon, "haul-distance": haulKm } = entry;
  return {
    ...(haul === undefined ? {} : { haul }),
    ...(waste === undefined ? {} : { lossPct: waste }),
    ...(carbon === undefined ? {} : { carbon }),
    ...(haulKm === undefined ? {} : { haulKm }),
  };
}
