import { phrase } from "../words/say.js";
import type { SourcedRange } from "./carbonFactors.js";

/**
 * Carbon of what else goes into a wall, as ranges: kg CO2e per kg, and per tonne and kilometre of haul.
 * All from memory: good for seeing that cement outweighs the rest, not for a declaration.
 *
 * @example
 * MATERIAL_CARBON_FACTORS.map(({ id }) => id) // => ["site-soil", "aggregate", "road-haul"]
 */
export const MATERIAL_CARBON_FACTORS: readonly SourcedRange[] = [
  {
    id: "site-soil",
    name: phrase`Soil dug on site, by hand to by machine`,
    unit: "kg CO2e/kg",
    low: 0,
    high: 0.024,
    source: phrase`0 by definition for hand work; upper end the rammed-soil entry of ICE V2.0, 2011, from memory`,
    basis: "memory",
  },
  {
    id: "aggregate",
    name: phrase`Sand and gravel from a pit or quarry`,
    unit: "kg CO2e/kg",
    low: 0.005,
    high: 0.0075,
    source: phrase`ICE V2.0, 2011, and V3.0, 2019, from memory; both editions have been replaced`,
    basis: "memory",
  },
  {
    id: "road-haul",
    name: phrase`Lorry, part empty on the way back`,
    unit: "kg CO2e/(t km)",
    low: 0.07,
    high: 0.2,
    source: phrase`order of magnitude of freight emission tables, from memory`,
    basis: "memory",
  },
];
