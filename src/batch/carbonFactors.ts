import type { SourcedRange } from "../quantities/sourcedRange.js";
import { say } from "../words/message.js";

/**
 * Carbon of cement, kg CO2e per kg, cradle to gate. Ask the supplier for the declaration of the cement
 * that is bought: it is better than any of these.
 *
 * @example
 * CEMENT_CARBON_FACTORS[0].high // => 0.922
 */
export const CEMENT_CARBON_FACTORS: readonly SourcedRange[] = [
  {
    id: "us-portland-2021",
    name: say`US portland cement, portland-limestone to plain`,
    unit: "kg CO2e/kg",
    low: 0.846,
    high: 0.922,
    source: say`Portland Cement Association industry declaration 2021: 922 kg/t read; portland-limestone 8.2 % lower read, 846 kg/t by own arithmetic`,
    basis: "read",
  },
  {
    id: "uk-average-to-cem-i",
    name: say`UK average cement to CEM I`,
    unit: "kg CO2e/kg",
    low: 0.832,
    high: 0.912,
    source: say`ICE database V3.0, 2019, from memory; that edition has been replaced`,
    basis: "memory",
  },
];

/**
 * Portland cement in structural concrete, kg per cubic metre of concrete.
 *
 * @example
 * CONCRETE_CEMENT_CONTENT.unit // => "kg/m³"
 */
export const CONCRETE_CEMENT_CONTENT: SourcedRange = {
  id: "us-3000-psi",
  name: say`Ready-mixed concrete of about 21 MPa (3000 psi)`,
  unit: "kg/m³",
  low: 280,
  high: 310,
  source: say`US practice, 470 to 520 lb/yd³, from memory`,
  basis: "memory",
};

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
    name: say`Soil dug on site, by hand to by machine`,
    unit: "kg CO2e/kg",
    low: 0,
    high: 0.024,
    source: say`0 by definition for hand work; upper end the rammed-soil entry of ICE V2.0, 2011, from memory`,
    basis: "memory",
  },
  {
    id: "aggregate",
    name: say`Sand and gravel from a pit or quarry`,
    unit: "kg CO2e/kg",
    low: 0.005,
    high: 0.0075,
    source: say`ICE V2.0, 2011, and V3.0, 2019, from memory; both editions have been replaced`,
    basis: "memory",
  },
  {
    id: "road-haul",
    name: say`Lorry, part empty on the way back`,
    unit: "kg CO2e/(t km)",
    low: 0.07,
    high: 0.2,
    source: say`order of magnitude of freight emission tables, from memory`,
    basis: "memory",
  },
];
